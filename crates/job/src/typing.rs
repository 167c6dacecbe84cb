//! A length as it stands in a field while it is typed.

use measure::{Decimal, Sign, Typed, Unit};
use words::say;

use crate::{Check, Doubt, doubt, shim_doubt};

/// What stands in a field.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Typing {
    /// What was read of it.
    pub typed: Option<Typed>,
    /// Why what was typed is not taken, a sentence for the field; `None` for an empty field.
    pub refused: Option<String>,
    /// What is doubtful about it; it is kept.
    pub doubt: Option<Doubt>,
}

/// Thickest shim or spacer, mm.
pub(crate) const THICKEST: Decimal = Decimal::from_parts(50, 0, 0, false, 0);
/// Longest reading, mm.
pub(crate) const LONGEST: Decimal = Decimal::from_parts(1000, 0, 0, false, 0);

impl Typing {
    /// Reads a thickness. Digits without a unit take `unit`.
    pub(crate) fn shim(text: &str, unit: Unit) -> Typing {
        Typing::of(text, unit, Sign::Positive, THICKEST, shim_doubt)
    }

    /// Reads a reading of a check: digits without a unit take `unit` where it fits the check.
    pub(crate) fn of_check(check: Check, text: &str, unit: Unit) -> Typing {
        let own = check.unit();
        let unit = if unit.quantity() == own.quantity() { unit } else { own };
        let sign = if check.may_be_below_zero() { Sign::Any } else { Sign::NotNegative };
        let mut typing = Typing::of(text, unit, sign, LONGEST, |typed| doubt(check, typed));
        if typing.typed.as_ref().is_some_and(|typed| typed.unit().quantity() != own.quantity()) {
            let found = typing.typed.take().map(|typed| typed.to_string()).unwrap_or_default();
            typing.refused =
                Some(say!("{found} is no {check}. Type it in {own}.", check = check.short()));
        }
        typing
    }

    /// Reads a field of at most `most` mm.
    pub(crate) fn of(
        text: &str,
        unit: Unit,
        sign: Sign,
        most: Decimal,
        doubt: impl FnOnce(&Typed) -> Option<Doubt>,
    ) -> Typing {
        let refused = match Typed::parse(text, unit, sign) {
            Ok(typed) if typed.in_unit(Unit::Millimetre) <= most => {
                return Typing { doubt: doubt(&typed), typed: Some(typed), refused: None };
            }
            Ok(typed) => Some(say!("{typed} is over {most} mm. Measure it again.")),
            Err(_) if text.trim().is_empty() => None,
            Err(error) => Some(error.to_string()),
        };
        Typing { refused, ..Typing::default() }
    }
}
