//! Limits and the decision rule.

use std::fmt;
use words::{say, t};

use crate::{Decimal, normal, real};

/// A closed interval of allowed values with the value aimed at; low is always below high.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Band {
    low: Decimal,
    high: Decimal,
    aim: Decimal,
}

/// Why a band was refused.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum BandError {
    /// Low is above high.
    LowAboveHigh {
        /// As typed.
        low: Decimal,
        /// As typed.
        high: Decimal,
    },
    /// Low and high are the same number.
    NoWidth {
        /// As typed, twice.
        limit: Decimal,
    },
    /// The aim is not in the band.
    AimOutside {
        /// As typed.
        aim: Decimal,
        /// The band's low limit.
        low: Decimal,
        /// The band's high limit.
        high: Decimal,
    },
}

/// What a reading proves.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Verdict {
    /// Proven inside.
    InBand,
    /// Too near a limit: read again.
    NearLimit,
    /// Proven outside.
    Out,
    /// The band is narrower than this gauge can resolve.
    CannotProve,
}

/// A verdict and how it was reached.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Judgement {
    /// The verdict.
    pub verdict: Verdict,
    /// Probability that the true value is in the band.
    pub probability: f64,
}

/// Conformance probability from which a reading is proven (ISO 14253-1:2017 default, from memory).
const PROVEN: f64 = 0.95;

/// The standard normal value with 95 % below it.
const ONE_SIDED_95: f64 = 1.644_853_626_951_472_7;

impl Band {
    /// A band; the aim is the middle.
    ///
    /// # Errors
    /// [`BandError`] unless low is below high.
    pub fn new(low: Decimal, high: Decimal) -> Result<Band, BandError> {
        if low > high {
            return Err(BandError::LowAboveHigh { low, high });
        }
        if low == high {
            return Err(BandError::NoWidth { limit: low });
        }
        // Halved first: the sum of two very large limits could not be held.
        Ok(Band { low, high, aim: low / Decimal::TWO + high / Decimal::TWO })
    }

    /// The same with another aim inside it.
    ///
    /// # Errors
    /// [`BandError::AimOutside`] if the aim is below low or above high.
    pub fn with_aim(self, aim: Decimal) -> Result<Band, BandError> {
        if self.contains(aim) {
            Ok(Band { aim, ..self })
        } else {
            Err(BandError::AimOutside { aim, low: self.low, high: self.high })
        }
    }

    /// Low limit.
    pub fn low(&self) -> Decimal {
        self.low
    }

    /// High limit.
    pub fn high(&self) -> Decimal {
        self.high
    }

    /// Aim.
    pub fn aim(&self) -> Decimal {
        self.aim
    }

    /// Whether a value lies in the band, its limits included.
    pub fn contains(&self, value: Decimal) -> bool {
        self.low <= value && value <= self.high
    }
}

/// How far inside a limit a reading must lie to prove one side of the band: 1.645 u.
///
/// This is the width to draw as "near the limit". A band that is narrow against u needs more room,
/// since both limits count there; [`judge`] takes both into account.
pub fn near_width(u: f64) -> f64 {
    ONE_SIDED_95 * u
}

/// Judges a mean `y` with standard uncertainty `u` against a band.
///
/// With p = Φ((high − y)/u) − Φ((low − y)/u), the probability that the true value is in the band
/// (JCGM 106:2012, 7.4): in band from 95 % up, out from 5 % down, near the limit between.
///
/// Where even a reading in the middle of the band would stay below 95 %, that is
/// 2Φ((high − low)/2u) − 1 < 0.95, no reading can prove the band. What such a gauge can still prove
/// is *out*: when 95 % lies beyond one limit.
///
/// A `u` that is not a number, or is negative, proves nothing.
///
/// ```
/// use measure::{Band, Decimal, Verdict, judge};
/// // Lash band 0.20–0.35 mm, u = 0.012 mm.
/// let band = Band::new(Decimal::new(20, 2), Decimal::new(35, 2)).unwrap();
/// let judged = judge(Decimal::new(330, 3), 0.012, &band);
/// assert_eq!(judged.verdict, Verdict::InBand);
/// assert!((judged.probability - 0.952210).abs() < 1e-6);
/// assert_eq!(judge(Decimal::new(331, 3), 0.012, &band).verdict, Verdict::NearLimit);
/// assert_eq!(judge(Decimal::new(331, 3), 0.05, &band).verdict, Verdict::CannotProve);
/// ```
pub fn judge(y: Decimal, u: f64, band: &Band) -> Judgement {
    if u.is_nan() || u < 0.0 {
        return Judgement { verdict: Verdict::CannotProve, probability: 0.0 };
    }
    if u == 0.0 {
        return if band.contains(y) {
            Judgement { verdict: Verdict::InBand, probability: 1.0 }
        } else {
            Judgement { verdict: Verdict::Out, probability: 0.0 }
        };
    }
    let y = real::from_decimal(y);
    let low = (real::from_decimal(band.low) - y) / u;
    let high = (real::from_decimal(band.high) - y) / u;
    let probability = normal::interval(low, high);
    let half_width = (high - low) / 2.0;
    let verdict = if normal::interval(-half_width, half_width) < PROVEN {
        let beyond_a_limit = low >= ONE_SIDED_95 || high <= -ONE_SIDED_95;
        if beyond_a_limit { Verdict::Out } else { Verdict::CannotProve }
    } else if probability >= PROVEN {
        Verdict::InBand
    } else if probability <= 1.0 - PROVEN {
        Verdict::Out
    } else {
        Verdict::NearLimit
    };
    Judgement { verdict, probability }
}

impl fmt::Display for Verdict {
    /// The word on the screen.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Verdict::InBand => t("In band"),
            Verdict::NearLimit => t("Near limit"),
            Verdict::Out => t("Out"),
            Verdict::CannotProve => t("This gauge cannot prove it"),
        })
    }
}

impl fmt::Display for BandError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            BandError::LowAboveHigh { low, high } => f.write_str(&say!(
                "Low {low} is above high {high}. Read the page again, or swap them."
            )),
            BandError::NoWidth { limit } => f.write_str(&say!(
                "Low and high are both {limit}. Type the two limits of the band."
            )),
            BandError::AimOutside { aim, low, high } => f.write_str(&say!(
                "Aim {aim} is outside {low} to {high}. Type one inside the band."
            )),
        }
    }
}

impl std::error::Error for BandError {}

#[cfg(test)]
mod tests {
    use super::*;

    fn hundredths(n: i64) -> Decimal {
        Decimal::new(n, 2)
    }

    fn band() -> Band {
        Band::new(hundredths(20), hundredths(35)).unwrap()
    }

    #[test]
    fn the_aim_is_the_middle_unless_told() {
        assert_eq!(band().aim(), Decimal::new(275, 3));
        assert_eq!(band().with_aim(hundredths(20)).unwrap().aim(), hundredths(20));
    }

    #[test]
    fn refusals_say_what_to_do() {
        let refusal =
            |low, high| Band::new(hundredths(low), hundredths(high)).unwrap_err().to_string();
        assert_eq!(
            refusal(35, 20),
            "Low 0.35 is above high 0.20. Read the page again, or swap them."
        );
        assert_eq!(refusal(20, 20), "Low and high are both 0.20. Type the two limits of the band.");
        let outside = band().with_aim(hundredths(36)).unwrap_err().to_string();
        assert_eq!(outside, "Aim 0.36 is outside 0.20 to 0.35. Type one inside the band.");
    }

    #[test]
    fn without_uncertainty_the_limits_are_in_the_band() {
        for (y, verdict) in
            [(19, Verdict::Out), (20, Verdict::InBand), (35, Verdict::InBand), (36, Verdict::Out)]
        {
            assert_eq!(judge(hundredths(y), 0.0, &band()).verdict, verdict, "{y}");
        }
    }

    #[test]
    fn both_sides_of_a_limit() {
        let verdict = |y| judge(hundredths(y), 0.01, &band()).verdict;
        assert_eq!(verdict(18), Verdict::Out);
        assert_eq!(verdict(19), Verdict::NearLimit);
        assert_eq!(verdict(21), Verdict::NearLimit);
        assert_eq!(verdict(22), Verdict::InBand);
        assert_eq!(verdict(33), Verdict::InBand);
        assert_eq!(verdict(34), Verdict::NearLimit);
        assert_eq!(verdict(36), Verdict::NearLimit);
        assert_eq!(verdict(37), Verdict::Out);
    }

    #[test]
    fn a_coarse_gauge_proves_only_what_is_far_out() {
        let verdict = |y, u| judge(hundredths(y), u, &band()).verdict;
        // The middle itself stays below 95 % from u = 0.075/1.96 = 0.0383 mm on.
        assert_eq!(judge(band().aim(), 0.0382, &band()).verdict, Verdict::InBand);
        assert_eq!(judge(band().aim(), 0.0383, &band()).verdict, Verdict::CannotProve);
        assert_eq!(verdict(40, 0.05), Verdict::CannotProve);
        assert_eq!(verdict(44, 0.05), Verdict::Out);
        assert_eq!(verdict(10, 0.05), Verdict::Out);
        // So coarse that the probability is below 5 % even in the middle: still not out.
        assert_eq!(verdict(27, 100.0), Verdict::CannotProve);
    }

    #[test]
    fn an_uncertainty_that_is_no_number_proves_nothing() {
        for u in [f64::NAN, -0.01, f64::INFINITY] {
            let judged = judge(hundredths(27), u, &band());
            assert_eq!(judged, Judgement { verdict: Verdict::CannotProve, probability: 0.0 });
        }
    }

    #[test]
    fn the_widest_band_there_is() {
        let widest = Band::new(Decimal::MIN, Decimal::MAX).unwrap();
        assert_eq!(widest.aim(), Decimal::ZERO);
        assert_eq!(judge(Decimal::MAX, 1.0, &widest).verdict, Verdict::NearLimit);
    }
}
