//! A number as a person typed it.

use std::fmt;
use words::say;

use serde::{Deserialize, Deserializer, Serialize, Serializer};

use crate::entry_error::{EntryError, shorten};
use crate::grammar::{self, Entry};
use crate::{Amount, Decimal, Unit};

/// Which signs a field accepts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sign {
    /// Above zero only.
    Positive,
    /// Zero or above.
    NotNegative,
    /// Any.
    Any,
}

/// A number as it was typed. Serialised as `{"typed":"0,019","unit":"in"}`.
///
/// ```
/// use measure::{Decimal, Sign, Typed, Unit};
/// let lash = Typed::parse("0,019 in\n", Unit::Millimetre, Sign::Positive).unwrap();
/// assert_eq!(lash.text(), "0,019");
/// assert_eq!(lash.to_string(), "0,019 in");
/// assert_eq!(lash.in_unit(Unit::Millimetre), Decimal::new(4826, 4));
///
/// let refused = Typed::parse("0.3.8", Unit::Millimetre, Sign::Positive).unwrap_err();
/// assert_eq!(refused.to_string(), "Two decimal marks in 0.3.8. Type one.");
/// ```
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Typed {
    text: String,
    value: Decimal,
    unit: Unit,
}

impl Typed {
    /// Reads `text` by the grammar; digits without a unit take `unit`.
    ///
    /// # Errors
    /// [`EntryError`], whose `Display` is the sentence to show at the field.
    pub fn parse(text: &str, unit: Unit, sign: Sign) -> Result<Typed, EntryError> {
        let Entry { text, value, unit } = grammar::read(text, unit, sign)?;
        Ok(Typed { text, value, unit })
    }

    /// The digits as typed, with their sign and mark; blanks and unit left out.
    pub fn text(&self) -> &str {
        &self.text
    }

    /// The unit it was typed in, or the field's where none was typed.
    pub fn unit(&self) -> Unit {
        self.unit
    }

    /// Value in the unit it was typed in.
    pub fn amount(&self) -> Amount {
        Amount { value: self.value, unit: self.unit }
    }

    /// Value in another unit of the same quantity.
    ///
    /// The quantity is checked at entry by [`Typed::parse`]; whoever reads a `Typed` from a file
    /// checks its [`Unit::quantity`] there. Asked for a unit of another quantity, this returns the
    /// number unconverted; [`Amount::to`] tells.
    pub fn in_unit(&self, unit: Unit) -> Decimal {
        self.amount().to(unit).map_or(self.value, |amount| amount.value)
    }

    /// One step of the last digit typed, in the unit typed: the resolution of a reading.
    pub fn step(&self) -> Amount {
        Amount { value: Decimal::new(1, self.value.scale()), unit: self.unit }
    }
}

impl fmt::Display for Typed {
    /// The digits as typed and the unit: `0,019 in`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} {}", self.text, self.unit)
    }
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Written<Text> {
    typed: Text,
    unit: Unit,
}

impl Serialize for Typed {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        Written { typed: self.text(), unit: self.unit }.serialize(serializer)
    }
}

impl<'de> Deserialize<'de> for Typed {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Typed, D::Error> {
        let Written { typed, unit } = Written::<String>::deserialize(deserializer)?;
        let read = Typed::parse(&typed, unit, Sign::Any).map_err(serde::de::Error::custom)?;
        if read.unit != unit {
            let (typed, unit) = (shorten(&typed), unit.symbol());
            return Err(serde::de::Error::custom(say!(
                "{typed} is written down as {unit}. Keep one unit."
            )));
        }
        Ok(read)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_file_keeps_what_was_typed() {
        let lash = Typed::parse("0,019 in", Unit::Millimetre, Sign::Positive).unwrap();
        let written = r#"{"typed":"0,019","unit":"in"}"#;
        assert_eq!(serde_json::to_string(&lash).unwrap(), written);
        assert_eq!(serde_json::from_str::<Typed>(written).unwrap(), lash);
    }

    #[test]
    fn the_file_is_held_to_the_grammar() {
        let refusals = [
            (r#"{"typed":"0.3.8","unit":"mm"}"#, "Two decimal marks in 0.3.8. Type one."),
            (r#"{"typed":"1e3","unit":"mm"}"#, "Power of ten in 1e3."),
            (r#"{"typed":"0.3 mm","unit":"in"}"#, "0.3 mm is written down as in. Keep one unit."),
            (r#"{"typed":"0.3","unit":"furlong"}"#, "furlong is not a unit."),
            (r#"{"typed":0.3,"unit":"mm"}"#, "invalid type"),
        ];
        for (written, sentence) in refusals {
            let refusal = serde_json::from_str::<Typed>(written).unwrap_err().to_string();
            assert!(refusal.starts_with(sentence), "{refusal}");
        }
    }

    #[test]
    fn the_step_is_the_last_digit_in_the_unit_typed() {
        let step = |text| Typed::parse(text, Unit::Millimetre, Sign::Any).unwrap().step();
        assert_eq!(step("0.380"), Amount { value: Decimal::new(1, 3), unit: Unit::Millimetre });
        assert_eq!(step("0,0150 in"), Amount { value: Decimal::new(1, 4), unit: Unit::Inch });
        assert_eq!(step("5."), Amount { value: Decimal::ONE, unit: Unit::Millimetre });
    }
}
