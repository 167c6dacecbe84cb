//! What this crate computes, checked against sources outside the project.
//! Each check names its source; where a figure is from memory or common practice it says so.

// The helpers are test code too, though clippy cannot see it.
#![allow(clippy::unwrap_used)]

mod as568;
mod drag;
mod fit;
mod hostile;
mod leak;
mod observed;
mod oring;
mod press;
mod runout;
mod setting;
mod torque;
mod worked;

use measure::{Amount, Decimal, Unit};
use workshop::{Figure, Reading};

/// The exact decimal written in `text`.
fn exact(text: &str) -> Decimal {
    Decimal::from_str_exact(text).unwrap()
}

/// An amount from its digits.
fn amount(text: &str, unit: Unit) -> Amount {
    Amount { value: exact(text), unit }
}

/// A reading without doubt.
fn sure(text: &str, unit: Unit) -> Reading {
    Reading { amount: amount(text, unit), standard: 0.0 }
}

/// Asserts that a figure is within `tolerance` of `expected`.
#[track_caller]
fn assert_figure(figure: &Figure, expected: f64, tolerance: f64) {
    assert_close(measure::real::from_decimal(figure.value), expected, tolerance);
}

/// Asserts that `found` is within `tolerance` of `expected`.
#[track_caller]
fn assert_close(found: f64, expected: f64, tolerance: f64) {
    assert!(
        (found - expected).abs() <= tolerance,
        "{found} is not within {tolerance} of {expected}"
    );
}

/// Asserts the sentence of a refusal.
#[track_caller]
fn refused<T: std::fmt::Debug>(answer: Result<T, workshop::Refusal>, sentence: &str) {
    assert_eq!(answer.unwrap_err().to_string(), sentence);
}
