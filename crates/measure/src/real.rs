//! The only door between exact decimals and floating point.
use crate::Decimal;

/// Decimal to float.
pub fn from_decimal(_d: Decimal) -> f64 { todo!() }
/// Float to decimal, rounded to `places`; `None` if not finite or too large.
pub fn to_decimal(_x: f64, _places: u32) -> Option<Decimal> { todo!() }
