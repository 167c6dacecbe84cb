//! The unit in what is typed: which it names, and the same digits in another.

use crate::Unit;
use crate::grammar::Parts;

/// The unit that an entry names; `None` where it stands alone or names none that is known.
///
/// ```
/// use measure::{Unit, unit_typed};
/// assert_eq!(unit_typed("0,012 in"), Some(Unit::Inch));
/// assert_eq!(unit_typed("0.30"), None);
/// ```
pub fn unit_typed(text: &str) -> Option<Unit> {
    Unit::parse(Parts::split(text.trim()).rest)
}

/// The digits of an entry with `unit` behind them: what they mean changes, they do not. `None`
/// where more is typed than one number, such as the sum of a pack.
///
/// ```
/// use measure::{Unit, with_unit};
/// assert_eq!(with_unit("0,012 mm", Unit::Inch).as_deref(), Some("0,012 in"));
/// assert_eq!(with_unit("0.50 + 0.10", Unit::Inch), None);
/// ```
pub fn with_unit(text: &str, unit: Unit) -> Option<String> {
    let parts = Parts::split(text.trim());
    let rest = parts.rest.trim();
    let is_number = rest.is_empty() || Unit::parse(rest).is_some();
    is_number.then(|| format!("{}{} {unit}", parts.sign, parts.number))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Sign, Typed};

    #[test]
    fn the_digits_stay_as_typed_whatever_unit_stood_behind_them() {
        let changed = [
            ("0.38", Unit::Inch, "0.38 in"),
            (" −0,05\" ", Unit::Millimetre, "−0,05 mm"),
            ("14.7 lbf/in2", Unit::Kilopascal, "14.7 kPa"),
            ("3.2 in-lb", Unit::PoundForceFoot, "3.2 lbf·ft"),
            ("5. F", Unit::Celsius, "5. °C"),
            // Chosen before a digit is typed.
            ("", Unit::Inch, " in"),
            (" in", Unit::Millimetre, " mm"),
        ];
        for (text, unit, expected) in changed {
            assert_eq!(with_unit(text, unit).as_deref(), Some(expected), "{text}");
            assert_eq!(unit_typed(expected), Some(unit), "{expected}");
        }
        for text in ["0.4 + 0.05", "1/32", "0.38 mn", "0.20-0.35", "abc"] {
            assert_eq!(with_unit(text, Unit::Inch), None, "{text}");
        }
    }

    #[test]
    fn every_unit_is_read_again_behind_any_digits() {
        for unit in [Unit::Inch, Unit::PoundForceInch, Unit::PoundPerSquareInch, Unit::Fahrenheit] {
            let text = with_unit("12,5", unit).unwrap();
            let typed =
                Typed::parse(&text, Unit::all_of(unit.quantity()).next().unwrap(), Sign::Any);
            assert_eq!(typed.unwrap().unit(), unit, "{text}");
        }
    }
}
