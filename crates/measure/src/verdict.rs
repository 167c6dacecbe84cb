//! Limits and the decision rule.
use crate::Decimal;

/// A closed interval of allowed values with the value aimed at.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Band { low: Decimal, high: Decimal, aim: Decimal }

/// Why a band was refused.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum BandError { /// Low is above high.
    LowAboveHigh { /// as typed
        low: Decimal, /// as typed
        high: Decimal } }

/// What a reading proves.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Verdict { /// Proven inside.
    InBand, /// Too near a limit: read again.
    NearLimit, /// Proven outside.
    Out, /// The band is narrower than this gauge can resolve.
    CannotProve }

/// A verdict and how it was reached.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Judgement { /// The verdict.
    pub verdict: Verdict, /// Probability that the true value is in the band.
    pub probability: f64 }

impl Band {
    /// A band; the aim is the middle.
    pub fn new(_low: Decimal, _high: Decimal) -> Result<Band, BandError> { todo!() }
    /// The same with another aim inside it.
    pub fn with_aim(self, _aim: Decimal) -> Result<Band, BandError> { todo!() }
    /// Low limit.
    pub fn low(&self) -> Decimal { self.low }
    /// High limit.
    pub fn high(&self) -> Decimal { self.high }
    /// Aim.
    pub fn aim(&self) -> Decimal { self.aim }
}

/// Judges a mean `y` with standard uncertainty `u` against a band (model R1.2).
pub fn judge(_y: Decimal, _u: f64, _band: &Band) -> Judgement { todo!() }
