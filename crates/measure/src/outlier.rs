//! A hint that a reading may be a slip; never a deletion.
//!
//! Grubbs' test, two-sided at 5 %: the reading farthest from the mean, in standard deviations,
//! against the distance that chance alone exceeds once in twenty series
//! (NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.17.1; ISO 5725-2, from memory).

use std::f64::consts::{FRAC_2_PI, FRAC_PI_2};
use std::fmt;
use words::say;

use crate::{Decimal, Series, real};

/// A reading that stands apart from its series.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hint {
    /// Which reading, counted from 0.
    pub index: usize,
    /// How many readings there are.
    pub readings: usize,
    /// Its distance from the mean in standard deviations.
    pub distance: f64,
    /// The distance that chance alone exceeds in 5 % of series.
    pub critical: f64,
}

/// How often chance alone may raise the hint.
const RISK: f64 = 0.05;

/// Up to so many readings the test says little, and the hint says so.
const FEW: usize = 5;

/// The reading that stands apart from its series, if one does; the series stays as it is.
///
/// `step` is the gauge's last digit, in the series' unit. Its rounding, step²/12, is added to the
/// scatter: without it, one digit more after three equal readings would already stand apart. Zero
/// gives Grubbs' test as published.
///
/// `None` below three readings, and where all are equal.
///
/// ```
/// use measure::{Decimal, Series, outlier};
/// let step = Decimal::new(1, 2);
/// let lash = |last| Series::new([38, 39, 38, 38, 39, last].map(|n| Decimal::new(n, 2)).to_vec()).unwrap();
/// assert!(outlier::hint(&lash(40), step).is_none());
/// let hint = outlier::hint(&lash(48), step).unwrap();
/// assert_eq!(hint.to_string(), "Reading 6 stands apart from the other 5. Read it again; both are kept.");
/// ```
pub fn hint(series: &Series, step: Decimal) -> Option<Hint> {
    let readings = series.values().len();
    let mean = series.mean();
    let scatter = series.deviation()?.hypot(real::from_decimal(step) / 12f64.sqrt());
    let apart = series.values().iter().map(|value| (value - mean).abs()).enumerate();
    let (index, farthest) = apart.reduce(|far, next| if next.1 > far.1 { next } else { far })?;
    let distance = real::from_decimal(farthest) / scatter;
    let critical = critical(readings, RISK)?;
    (distance > critical).then_some(Hint { index, readings, distance, critical })
}

/// The two-sided critical distance of Grubbs' test for `n` readings; `None` below three.
///
/// G = (n − 1)/√n · √(t²/(n − 2 + t²)), with t exceeded by chance `risk`/2n at n − 2 degrees of
/// freedom. The one-sided value at a risk is the two-sided one at twice that risk.
///
/// ```
/// use measure::outlier;
/// // The handbook's 2.032 for 8 readings is one-sided 5 %; two-sided it is 2.127.
/// assert!((outlier::critical(8, 0.10).unwrap() - 2.0317).abs() < 5e-5);
/// assert!((outlier::critical(8, 0.05).unwrap() - 2.1266).abs() < 5e-5);
/// ```
pub fn critical(n: usize, risk: f64) -> Option<f64> {
    if n < 3 {
        return None;
    }
    // With t = √(n − 2) tan θ the root is sin θ, so only the angle is sought: by halving.
    let wanted = 1.0 - risk / n as f64;
    let (mut low, mut high) = (0.0, FRAC_PI_2);
    for _ in 0..60 {
        let middle = (low + high) / 2.0;
        if student(middle, n - 2) < wanted {
            low = middle;
        } else {
            high = middle;
        }
    }
    let count = n as f64;
    Some((count - 1.0) / count.sqrt() * low.sin())
}

/// Probability that Student's t lies within ±√freedom·tan θ
/// (Abramowitz and Stegun, Handbook of Mathematical Functions, 26.7.3 and 26.7.4).
fn student(theta: f64, freedom: usize) -> f64 {
    let (sine, cosine) = theta.sin_cos();
    let odd = freedom % 2 == 1;
    // Powers of the cosine, odd or even as the degrees of freedom, up to freedom − 2.
    let mut term = if odd { cosine } else { 1.0 };
    let mut sum = 0.0;
    for power in ((freedom % 2)..freedom.saturating_sub(1)).step_by(2) {
        sum += term;
        let power = power as f64;
        term *= (power + 1.0) / (power + 2.0) * cosine * cosine;
    }
    if odd { FRAC_2_PI * (theta + sine * sum) } else { sine * sum }
}

impl fmt::Display for Hint {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (which, others) = (self.index + 1, self.readings - 1);
        if self.readings <= FEW {
            let n = self.readings;
            f.write_str(&say!("Reading {which} stands apart, but {n} readings show little. Read it again; both are kept."
            ))
        } else {
            f.write_str(&say!("Reading {which} stands apart from the other {others}. Read it again; both are kept."
            ))
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn hint_at(readings: &[i64], step: Decimal) -> Option<Hint> {
        let values = readings.iter().map(|reading| Decimal::new(*reading, 2)).collect();
        hint(&Series::new(values).unwrap(), step)
    }

    #[test]
    fn one_step_of_the_gauge_is_no_slip() {
        let step = Decimal::new(1, 2);
        assert_eq!(hint_at(&[38, 38, 38, 39], step), None);
        assert_eq!(hint_at(&[38, 38, 38, 38, 38, 39], step), None);
        assert!(hint_at(&[38, 38, 38, 39], Decimal::ZERO).is_some());
    }

    #[test]
    fn few_readings_say_little() {
        let hint = hint_at(&[38, 38, 38, 58], Decimal::new(1, 2)).unwrap();
        assert_eq!(hint.index, 3);
        let sentence =
            "Reading 4 stands apart, but 4 readings show little. Read it again; both are kept.";
        assert_eq!(hint.to_string(), sentence);
    }

    #[test]
    fn no_hint_without_scatter_or_with_two_readings() {
        assert_eq!(hint_at(&[38], Decimal::ZERO), None);
        assert_eq!(hint_at(&[38, 99], Decimal::ZERO), None);
        assert_eq!(hint_at(&[38, 38, 38, 38], Decimal::ZERO), None);
    }

    #[test]
    fn the_first_and_the_lowest_are_seen_too() {
        assert_eq!(hint_at(&[3, 38, 39, 38, 37, 38], Decimal::new(1, 2)).unwrap().index, 0);
    }
}
