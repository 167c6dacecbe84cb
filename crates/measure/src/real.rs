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
