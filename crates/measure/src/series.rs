//! A series of readings of the same thing.
use crate::Decimal;

/// Readings in one unit, in the order taken.
#[derive(Clone, Debug, PartialEq)]
pub struct Series { values: Vec<Decimal> }

/// Why there is no series.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum SeriesError { /// No readings.
    Empty }

impl Series {
    /// A series of one reading or more.
    pub fn new(_values: Vec<Decimal>) -> Result<Series, SeriesError> { todo!() }
    /// The readings.
    pub fn values(&self) -> &[Decimal] { &self.values }
    /// Arithmetic mean.
    pub fn mean(&self) -> Decimal { todo!() }
    /// Smallest.
    pub fn min(&self) -> Decimal { todo!() }
    /// Largest.
    pub fn max(&self) -> Decimal { todo!() }
    /// Largest less smallest.
    pub fn spread(&self) -> Decimal { todo!() }
    /// Standard deviation with n − 1; `None` below two readings.
    pub fn deviation(&self) -> Option<f64> { todo!() }
}
