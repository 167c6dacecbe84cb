//! The one place that rounds and formats numbers.

use rust_decimal::RoundingStrategy;

use crate::{Amount, Decimal};

/// The decimal mark shown.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Mark {
    /// 0.38
    #[default]
    Point,
    /// 0,38
    Comma,
}

/// Rounds half away from zero, the way a mechanic does: 0.0125 to three places is 0.013.
///
/// ```
/// use measure::{Decimal, round};
/// assert_eq!(round(Decimal::new(-125, 4), 3), Decimal::new(-13, 3));
/// ```
pub fn round(value: Decimal, places: u32) -> Decimal {
    value.round_dp_with_strategy(places, RoundingStrategy::MidpointAwayFromZero)
}

/// Shows `value` with exactly `places` decimals, at most 28. Zero never carries a minus.
///
/// ```
/// use measure::{Decimal, Mark, show};
/// assert_eq!(show(Decimal::new(375, 3), 2, Mark::Comma), "0,38");
/// assert_eq!(show(Decimal::new(-1, 3), 2, Mark::Point), "0.00");
/// ```
pub fn show(value: Decimal, places: u32, mark: Mark) -> String {
    let places = places.min(Decimal::MAX_SCALE);
    let rounded = round(value, places);
    let positive = if rounded.is_zero() { Decimal::ZERO } else { rounded };
    let text = format!("{positive:.*}", places as usize);
    match mark {
        Mark::Point => text,
        Mark::Comma => text.replace('.', ","),
    }
}

/// Shows an amount with its unit: "0.38 mm".
pub fn show_amount(amount: Amount, places: u32, mark: Mark) -> String {
    format!("{} {}", show(amount.value, places, mark), amount.unit)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Unit;

    #[test]
    fn halves_go_away_from_zero() {
        let rounded = |mantissa| round(Decimal::new(mantissa, 3), 2);
        assert_eq!(rounded(125), Decimal::new(13, 2));
        assert_eq!(rounded(-125), Decimal::new(-13, 2));
        assert_eq!(rounded(124), Decimal::new(12, 2));
        assert_eq!(rounded(-124), Decimal::new(-12, 2));
    }

    #[test]
    fn places_are_kept_even_when_they_are_zeros() {
        assert_eq!(show(Decimal::new(3, 1), 3, Mark::Point), "0.300");
        assert_eq!(show(Decimal::from(25), 0, Mark::Point), "25");
        assert_eq!(show(Decimal::new(-4996, 4), 2, Mark::Comma), "-0,50");
        assert_eq!(show(Decimal::MAX, 2, Mark::Point), "79228162514264337593543950335.00");
        assert_eq!(show(Decimal::ONE, 99, Mark::Point).len(), "1.".len() + 28);
    }

    #[test]
    fn an_amount_carries_its_unit() {
        let lash = Amount { value: Decimal::new(3825, 4), unit: Unit::Millimetre };
        assert_eq!(show_amount(lash, 2, Mark::Point), "0.38 mm");
        assert_eq!(show_amount(lash, 3, Mark::Comma), "0,383 mm");
    }
}
