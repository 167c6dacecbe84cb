//! A series of readings of the same thing.

use std::fmt;
use words::{say, t};

use crate::{Decimal, real};

/// Readings in one unit, in the order taken: one or more, never fewer.
#[derive(Clone, Debug, PartialEq)]
pub struct Series {
    values: Vec<Decimal>,
}

/// Why there is no series.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum SeriesError {
    /// No readings.
    Empty,
    /// A reading too large to add up exactly.
    TooLarge {
        /// The reading.
        value: Decimal,
    },
}

/// The largest reading that is added up: ten to the fifteenth.
const LARGEST: Decimal = Decimal::from_parts(2_764_472_320, 232_830, 0, false, 0);

impl Series {
    /// A series of one reading or more.
    ///
    /// # Errors
    /// [`SeriesError::Empty`] without readings, [`SeriesError::TooLarge`] above 10¹⁵.
    pub fn new(values: Vec<Decimal>) -> Result<Series, SeriesError> {
        if values.is_empty() {
            return Err(SeriesError::Empty);
        }
        match values.iter().find(|value| value.abs() > LARGEST) {
            Some(value) => Err(SeriesError::TooLarge { value: *value }),
            None => Ok(Series { values }),
        }
    }

    /// The readings.
    pub fn values(&self) -> &[Decimal] {
        &self.values
    }

    /// Arithmetic mean: an exact sum and one division, rounded in its 28th digit.
    ///
    /// ```
    /// use measure::{Decimal, Series};
    /// let lash = Series::new([37, 38, 39, 39].map(|n| Decimal::new(n, 2)).to_vec()).unwrap();
    /// assert_eq!(lash.mean(), Decimal::new(3825, 4));
    /// ```
    pub fn mean(&self) -> Decimal {
        self.values.iter().sum::<Decimal>() / Decimal::from(self.values.len())
    }

    /// Smallest.
    pub fn min(&self) -> Decimal {
        self.values.iter().copied().reduce(Decimal::min).unwrap_or_default()
    }

    /// Largest.
    pub fn max(&self) -> Decimal {
        self.values.iter().copied().reduce(Decimal::max).unwrap_or_default()
    }

    /// Largest less smallest.
    pub fn spread(&self) -> Decimal {
        self.max() - self.min()
    }

    /// Standard deviation of the readings, s = √(Σ(x − mean)²/(n − 1)); `None` below two readings.
    ///
    /// The differences are taken in exact decimals, so a small scatter on a large number keeps its
    /// digits (JCGM 100:2008, 4.2.2).
    ///
    /// ```
    /// use measure::{Decimal, Series};
    /// let depth = Series::new([10_000_001, 10_000_003, 10_000_002].map(Decimal::from).to_vec()).unwrap();
    /// assert_eq!(depth.deviation(), Some(1.0));
    /// ```
    pub fn deviation(&self) -> Option<f64> {
        if self.values.len() < 2 {
            return None;
        }
        let mean = self.mean();
        let squares: f64 =
            self.values.iter().map(|value| real::from_decimal(value - mean).powi(2)).sum();
        Some((squares / (self.values.len() - 1) as f64).sqrt())
    }
}

impl fmt::Display for SeriesError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            SeriesError::Empty => f.write_str(t("No reading yet. Take one first.")),
            SeriesError::TooLarge { value } => f.write_str(&say!(
                "{value} has more than 15 digits before the mark. Read the gauge again."
            )),
        }
    }
}

impl std::error::Error for SeriesError {}

#[cfg(test)]
mod tests {
    use super::*;

    fn series(readings: &[i64]) -> Series {
        Series::new(readings.iter().map(|reading| Decimal::new(*reading, 2)).collect()).unwrap()
    }

    #[test]
    fn one_reading_has_no_deviation() {
        let one = series(&[38]);
        assert_eq!((one.mean(), one.min(), one.max()), (one.min(), one.max(), Decimal::new(38, 2)));
        assert_eq!((one.spread(), one.deviation()), (Decimal::ZERO, None));
    }

    #[test]
    fn readings_keep_their_order_and_may_be_negative() {
        let play = series(&[-2, 5, -7, 0]);
        assert_eq!(play.values()[2], Decimal::new(-7, 2));
        assert_eq!((play.min(), play.max()), (Decimal::new(-7, 2), Decimal::new(5, 2)));
        assert_eq!((play.spread(), play.mean()), (Decimal::new(12, 2), Decimal::new(-1, 2)));
        // √((1 + 36 + 36 + 1)/3) hundredths, by hand.
        assert!((play.deviation().unwrap() - 0.049_665_548_085_837_8).abs() < 1e-15);
    }

    #[test]
    fn equal_readings_have_no_scatter() {
        assert_eq!(series(&[33, 33, 33]).deviation(), Some(0.0));
    }

    #[test]
    fn refusals_say_what_to_do() {
        let refusal = Series::new(vec![]).unwrap_err();
        assert_eq!(refusal.to_string(), "No reading yet. Take one first.");
        assert!(Series::new(vec![LARGEST]).is_ok());
        assert_eq!(LARGEST, Decimal::from(1_000_000_000_000_000i64));
        let refusal = Series::new(vec![Decimal::MAX]).unwrap_err().to_string();
        assert!(
            refusal.ends_with("has more than 15 digits before the mark. Read the gauge again.")
        );
    }
}
