//! What goes into a formula: a quantity and how well it is known.

use measure::{Amount, Decimal, Quantity, Typed, Unit, real};

use crate::{Given, Refusal};

/// The largest number that is reckoned with, ten to the fifteenth: sums of such stay exact.
const LARGEST: Decimal = Decimal::from_parts(2_764_472_320, 232_830, 0, false, 0);

/// A measured or stated quantity with its standard uncertainty.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reading {
    /// The number and its unit.
    pub amount: Amount,
    /// Standard uncertainty, one sigma, in the same unit; a difference where the unit has a zero
    /// point. 0 for a number that is exact by definition.
    pub standard: f64,
}

impl Reading {
    /// A number without doubt: a target, a nominal size.
    pub fn exact(value: Decimal, unit: Unit) -> Reading {
        Reading { amount: Amount { value, unit }, standard: 0.0 }
    }

    /// A number as typed: half of its last digit either way, step/√12 (JCGM 100:2008, F.2.2.1).
    ///
    /// ```
    /// use measure::{Sign, Typed, Unit};
    /// use workshop::Reading;
    /// let gap = Typed::parse("0.38", Unit::Millimetre, Sign::Positive).unwrap();
    /// assert!((Reading::typed(&gap).standard - 0.01 / 12f64.sqrt()).abs() < 1e-15);
    /// ```
    pub fn typed(typed: &Typed) -> Reading {
        let step = real::from_decimal(typed.step().value);
        Reading { amount: typed.amount(), standard: step / 12f64.sqrt() }
    }

    /// The same with another standard uncertainty, in its own unit.
    #[must_use]
    pub fn within(self, standard: f64) -> Reading {
        Reading { standard, ..self }
    }

    /// In the unit the formulae use, by name.
    pub(crate) fn given(&self, name: &'static str, unit: Unit) -> Result<Given, Refusal> {
        let Amount { value, unit: from } = self.amount;
        if from.quantity() != unit.quantity() {
            return Err(Refusal::Quantity { what: name, found: from, takes: unit.quantity() });
        }
        if !self.standard.is_finite() || self.standard < 0.0 {
            return Err(Refusal::Doubt { what: name });
        }
        let too_large = Refusal::TooLarge { what: name };
        let converted = self.amount.to(unit).map(|amount| amount.value);
        let converted = converted.filter(|value| value.abs() <= LARGEST).ok_or(too_large)?;
        let given = Given {
            name,
            value: converted,
            unit: unit.symbol(),
            standard: self.standard * scale(from, unit),
        };
        if unit.quantity() == Quantity::Temperature && given.kelvin_below_zero(unit) {
            return Err(Refusal::BelowAbsoluteZero {
                what: name,
                found: Amount { value, unit: from },
            });
        }
        Ok(given)
    }

    /// As [`Reading::given`], refusing zero and less.
    pub(crate) fn above_zero(&self, name: &'static str, unit: Unit) -> Result<Given, Refusal> {
        let given = self.given(name, unit)?;
        if given.value > Decimal::ZERO {
            Ok(given)
        } else {
            Err(Refusal::NotAboveZero { what: name, found: self.amount })
        }
    }

    /// As [`Reading::given`], refusing less than zero.
    pub(crate) fn not_negative(&self, name: &'static str, unit: Unit) -> Result<Given, Refusal> {
        let given = self.given(name, unit)?;
        if given.value >= Decimal::ZERO {
            Ok(given)
        } else {
            Err(Refusal::BelowZero { what: name, found: self.amount })
        }
    }
}

/// How many of `into` one step of `from` is; the zero points do not count.
fn scale(from: Unit, into: Unit) -> f64 {
    let at = |value| {
        Amount { value, unit: from }
            .to(into)
            .map_or(f64::NAN, |amount| real::from_decimal(amount.value))
    };
    at(Decimal::ONE) - at(Decimal::ZERO)
}

impl Given {
    /// Whether a temperature lies below absolute zero.
    fn kelvin_below_zero(&self, unit: Unit) -> bool {
        Amount { value: self.value, unit }
            .to(Unit::Kelvin)
            .is_none_or(|kelvin| kelvin.value < Decimal::ZERO)
    }
}
