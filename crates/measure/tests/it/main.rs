//! What this crate computes, checked against sources outside the project.
//! Each check names its source; where a figure is from memory it says so.

// The helpers are test code too, though clippy cannot see it.
#![allow(clippy::unwrap_used)]

mod decision;
mod nist;
mod normal;
mod outliers;
mod properties;
mod units;
mod worked_job;

use measure::{Decimal, Series};

/// The exact decimal written in `text`.
fn exact(text: &str) -> Decimal {
    Decimal::from_str_exact(text).unwrap()
}

/// The series of the numbers in `text`, parted by blanks or lines.
fn series(text: &str) -> Series {
    Series::new(text.split_whitespace().map(exact).collect()).unwrap()
}

/// Asserts that `found` is within `tolerance` of `expected`.
#[track_caller]
fn assert_close(found: f64, expected: f64, tolerance: f64) {
    assert!(
        (found - expected).abs() <= tolerance,
        "{found} is not within {tolerance} of {expected}"
    );
}
