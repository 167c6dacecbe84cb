//! A length as it stands in a field while it is typed.

use measure::{Sign, Typed, Unit};

use crate::Doubt;

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

impl Typing {
    /// Reads a field. Digits without a unit take `unit`.
    pub(crate) fn of(
        text: &str,
        unit: Unit,
        sign: Sign,
        doubt: impl FnOnce(&Typed) -> Option<Doubt>,
    ) -> Typing {
        match Typed::parse(text, unit, sign) {
            Ok(typed) => Typing { doubt: doubt(&typed), typed: Some(typed), refused: None },
            Err(_) if text.trim().is_empty() => Typing::default(),
            Err(error) => Typing { refused: Some(error.to_string()), ..Typing::default() },
        }
    }
}
