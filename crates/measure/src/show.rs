//! The one place that rounds and formats numbers.
use crate::Decimal;

/// The decimal mark shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Mark { /// 0.38
    Point, /// 0,38
    Comma }

/// Rounds half away from zero, the way a mechanic does.
pub fn round(_value: Decimal, _places: u32) -> Decimal { todo!() }

/// Shows `value` with exactly `places` decimals.
pub fn show(_value: Decimal, _places: u32, _mark: Mark) -> String { todo!() }
