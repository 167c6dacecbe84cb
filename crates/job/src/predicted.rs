//! What a gauge will read, for the screen.

use gearing::advice::Prediction;
use measure::{Band, Decimal, real};
use words::say;

use crate::reading::length;
use crate::{Check, Figure, Shown, figure};

/// What a gauge will read.
#[derive(Clone, Debug, PartialEq)]
pub struct Predicted {
    /// Of what.
    pub check: Check,
    /// Expected reading.
    pub mean: Decimal,
    /// What stands after "±": twice the standard deviation.
    pub expanded: Decimal,
    /// The band at the arm.
    pub band: Option<Band>,
    /// Distance from the nearest limit; below zero outside.
    pub margin: Option<Decimal>,
    /// Probability that it lies in the band.
    pub probability: f64,
    /// "Margin 0.10 to the nearest limit, 3 times the ±."
    pub says: String,
}

/// A prediction for another arm.
pub(crate) fn at_arm(prediction: Prediction, lever: Decimal) -> Prediction {
    let lever = real::from_decimal(lever);
    Prediction {
        mean: prediction.mean * lever,
        sigma: prediction.sigma * lever,
        probability: prediction.probability,
    }
}

/// Whether a mean is more than three standard deviations from what was predicted.
pub(crate) fn disagrees(prediction: &Prediction, mean: Decimal) -> bool {
    (real::from_decimal(mean) - prediction.mean).abs() > 3.0 * prediction.sigma
}

pub(crate) fn predicted(
    check: Check,
    prediction: &Prediction,
    band: Option<Band>,
    shown: Shown,
) -> Predicted {
    let (mean, expanded) = (length(prediction.mean), length(2.0 * prediction.sigma));
    let margin = band.map(|band| (mean - band.low()).min(band.high() - mean));
    let says = margin.map_or_else(String::new, |margin| margin_says(margin, expanded, shown));
    Predicted { check, mean, expanded, band, margin, probability: prediction.probability, says }
}

fn margin_says(margin: Decimal, expanded: Decimal, shown: Shown) -> String {
    let amount = figure(margin.abs(), Figure::Reading, shown);
    if margin < Decimal::ZERO {
        return say!("{amount} outside the nearest limit.");
    }
    match margin.checked_div(expanded) {
        Some(times) if times >= Decimal::ONE => {
            let times = measure::show(times.trunc(), 0, shown.mark);
            match times.as_str() {
                "1" => say!("Margin {amount} to the nearest limit, once the ±."),
                _ => say!("Margin {amount} to the nearest limit, {times} times the ±."),
            }
        }
        _ => say!("Margin {amount} to the nearest limit, less than the ±."),
    }
}
