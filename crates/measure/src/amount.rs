//! A value in a unit, converted exactly where the factor is exact.
use crate::{Decimal, Unit};

/// A value and its unit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Amount { /// The number.
    pub value: Decimal, /// What it counts.
    pub unit: Unit }

impl Amount {
    /// The same amount in another unit of the same quantity; `None` where the quantities differ.
    pub fn to(self, _unit: Unit) -> Option<Amount> { todo!() }
}
