//! The unit in what is typed: which it names, and the same digits in another.

use crate::Unit;
use crate::grammar::Parts;

/// The unit that an entry, or every number of a sum that names one, names; `None` where none is
/// named that is known, or more than one.
///
/// ```
/// use measure::{Unit, unit_typed};
/// assert_eq!(unit_typed("0,012 in"), Some(Unit::Inch));
/// assert_eq!(unit_typed("0.020 + 0.010 in"), Some(Unit::Inch));
/// assert_eq!(unit_typed("0.30"), None);
/// ```
pub fn unit_typed(text: &str) -> Option<Unit> {
    let mut named = text.split('+').filter_map(|part| Unit::parse(Parts::split(part.trim()).rest));
    let first = named.next()?;
    named.all(|other| other == first).then_some(first)
}

/// The digits of an entry with `unit` behind them, in a sum behind each number: what they mean
/// changes, they do not. `None` where something else is typed.
///
/// ```
/// use measure::{Unit, with_unit};
/// assert_eq!(with_unit("0,012 mm", Unit::Inch).as_deref(), Some("0,012 in"));
/// assert_eq!(with_unit("0.50 + 0.10", Unit::Inch).as_deref(), Some("0.50 in + 0.10 in"));
/// ```
pub fn with_unit(text: &str, unit: Unit) -> Option<String> {
    if let Some(one) = one_with_unit(text, unit) {
        return Some(one);
    }
    // The number that comes next may not be typed yet.
    let part = |part: &str| match part.trim() {
        "" => Some(String::new()),
        part => one_with_unit(part, unit),
    };
    let parts: Option<Vec<String>> = text.split('+').map(part).collect();
    parts.map(|parts| parts.join(" + "))
}

fn one_with_unit(text: &str, unit: Unit) -> Option<String> {
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
        for text in ["1/32", "0.38 mn", "0.20-0.35", "abc", "0.4 + abc"] {
            assert_eq!(with_unit(text, Unit::Inch), None, "{text}");
        }
    }

    #[test]
    fn every_number_of_a_sum_takes_the_unit() {
        for (text, expected) in [
            ("0.4+0,05", "0.4 in + 0,05 in"),
            ("0.4 mm + 0.05", "0.4 in + 0.05 in"),
            ("0.4 + ", "0.4 in + "),
            // One number with its sign is no sum.
            ("+0.05", "+0.05 in"),
        ] {
            assert_eq!(with_unit(text, Unit::Inch).as_deref(), Some(expected), "{text}");
            assert_eq!(unit_typed(expected), Some(Unit::Inch), "{expected}");
        }
        assert_eq!(unit_typed("0.4 mm + 0.05 in"), None, "two are named");
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
