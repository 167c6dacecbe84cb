//! The only door between exact decimals and floating point.

use std::str::FromStr;

use crate::{Decimal, round};

/// The nearest floating-point number.
pub fn from_decimal(decimal: Decimal) -> f64 {
    // Going through the digits gives the nearest number; arithmetic on parts could miss by one bit.
    decimal.to_string().parse().unwrap_or(f64::NAN)
}

/// The shortest decimal that names `real`, rounded to `places` half away from zero.
///
/// `None` if `real` is not finite or has more than 28 digits before the mark.
///
/// ```
/// use measure::{Decimal, real};
/// assert_eq!(real::to_decimal(0.145, 2), Some(Decimal::new(15, 2)));
/// assert_eq!(real::to_decimal(f64::NAN, 2), None);
/// ```
pub fn to_decimal(real: f64, places: u32) -> Option<Decimal> {
    // `Display` of a float is its shortest name, without an exponent.
    let exact = Decimal::from_str(&real.to_string()).ok()?;
    Some(round(exact, places))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_decimal_becomes_the_nearest_float() {
        assert_eq!(from_decimal(Decimal::new(3, 1)), 0.3);
        assert_eq!(from_decimal(Decimal::new(-10_000_001, 8)), -0.100_000_01);
        assert_eq!(from_decimal(Decimal::MAX), 79_228_162_514_264_337_593_543_950_335.0);
    }

    #[test]
    fn a_float_becomes_the_decimal_it_is_shown_as() {
        assert_eq!(to_decimal(0.1 + 0.2, 6), Some(Decimal::new(300_000, 6)));
        assert_eq!(to_decimal(-2.5, 0), Some(Decimal::from(-3)));
        assert_eq!(to_decimal(1e-300, 6), Some(Decimal::ZERO));
        assert_eq!(to_decimal(5e-324, 28), Some(Decimal::ZERO));
    }

    #[test]
    fn what_a_decimal_cannot_hold_is_none() {
        for real in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, 1e29, -1e300] {
            assert_eq!(to_decimal(real, 2), None, "{real}");
        }
    }
}
