//! Exact quantities as a mechanic writes them; readings, statistics, uncertainty, verdicts.
//!
//! What is typed is kept: [`Typed`] holds the digits and the unit as they were entered, and the
//! exact value they mean. Everything that is stored, summed or compared with a limit is a
//! [`Decimal`]; floating point appears only inside formulae, through [`real`].
//!
//! This crate knows nothing of gears, jobs, screens, files or clocks.

pub use rust_decimal::Decimal;

mod amount;
mod entry_error;
mod grammar;
pub mod normal;
pub mod outlier;
pub mod real;
mod series;
mod show;
mod typed;
mod uncertainty;
mod unit;
mod unit_typed;
mod verdict;

pub use amount::Amount;
pub use entry_error::EntryError;
pub use series::{Series, SeriesError};
pub use show::{Mark, round, show, show_amount};
pub use typed::{Sign, Typed};
pub use uncertainty::Uncertainty;
pub use unit::{Quantity, Unit};
pub use unit_typed::{unit_typed, with_unit};
pub use verdict::{Band, BandError, Judgement, Verdict, judge, near_width};
