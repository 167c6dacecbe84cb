//! Why a case cannot be answered.

use std::fmt;

use measure::Decimal;

/// A field of the case that does not make sense.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CaseError {
    /// Where: `positions[2].moves`.
    pub path: String,
    /// What was found there and what was expected.
    pub fault: Fault,
}

/// What is wrong with a field.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Fault {
    /// An id that another item of the same list has.
    Twice {
        /// The id.
        id: String,
    },
    /// An id of nothing in the case.
    Unknown {
        /// As found.
        id: String,
        /// What it may be.
        known: Vec<String>,
    },
    /// A sign other than −1, 0 and 1.
    Sign {
        /// As found.
        found: i8,
    },
    /// A number that must be above zero.
    NotAboveZero {
        /// As found.
        found: Decimal,
    },
    /// A number that must not be below zero.
    BelowZero {
        /// As found.
        found: Decimal,
    },
    /// A number outside what is possible.
    OutOfRange {
        /// As found.
        found: Decimal,
        /// The least possible.
        least: Decimal,
        /// The most possible.
        most: Decimal,
    },
    /// A thickness in finer steps than shims are measured.
    TooFine {
        /// As found.
        found: Decimal,
        /// Decimals allowed.
        places: u32,
    },
    /// A list too long or too short.
    Count {
        /// Items found.
        found: usize,
        /// The fewest possible.
        least: usize,
        /// The most possible.
        most: usize,
        /// What is counted: `packs`.
        what: &'static str,
    },
    /// A low limit above its high limit.
    LowAboveHigh {
        /// Low limit.
        low: Decimal,
        /// High limit.
        high: Decimal,
    },
    /// A band without width.
    NoWidth {
        /// Both limits.
        limit: Decimal,
    },
    /// An aim outside its band.
    AimOutside {
        /// As found.
        aim: Decimal,
        /// Low limit.
        low: Decimal,
        /// High limit.
        high: Decimal,
    },
    /// A check that no position changes.
    Unmoved,
    /// Thicknesses in such fine steps that their totals are too many to search.
    TooManyTotals,
    /// More combinations of packs than can be searched.
    TooManyPacks,
    /// Trials with numbers too far apart to calculate with.
    Unlearnable,
}

impl CaseError {
    /// A fault at a path.
    pub fn new(path: impl Into<String>, fault: Fault) -> CaseError {
        CaseError { path: path.into(), fault }
    }
}

impl fmt::Display for CaseError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}: {}", self.path, self.fault)
    }
}

impl std::error::Error for CaseError {}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Fault::Twice { id } => {
                write!(f, "found {id:?} twice, expected each id once; rename one")
            }
            Fault::Unknown { id, known } if known.is_empty() => {
                write!(f, "found {id:?}, but there is nothing it could name; leave it out")
            }
            Fault::Unknown { id, known } => {
                write!(f, "found {id:?}, expected one of {}", known.join(", "))
            }
            Fault::Sign { found } => write!(f, "found {found}, expected -1, 0 or 1"),
            Fault::NotAboveZero { found } => {
                write!(f, "found {found}, expected a number above 0")
            }
            Fault::BelowZero { found } => {
                write!(f, "found {found}, expected 0 or more")
            }
            Fault::OutOfRange { found, least, most } => {
                write!(f, "found {found}, expected a number from {least} to {most}")
            }
            Fault::TooFine { found, places } => {
                write!(f, "found {found}, expected at most {places} decimals; round it")
            }
            Fault::Count { found, least, most, what } if least == most => {
                write!(f, "found {found} {what}, expected {most}")
            }
            Fault::Count { found, least, most, what } => {
                write!(f, "found {found} {what}, expected from {least} to {most}")
            }
            Fault::LowAboveHigh { low, high } => {
                write!(f, "found the low limit {low} above the high limit {high}; swap them")
            }
            Fault::NoWidth { limit } => {
                write!(f, "found {limit} as both limits, expected a low and a high one")
            }
            Fault::AimOutside { aim, low, high } => {
                write!(f, "found the aim {aim}, expected it from {low} to {high}")
            }
            Fault::Unmoved => write!(
                f,
                "no position changes this reading, expected one that does; add it or leave the \
                 check out"
            ),
            Fault::TooManyTotals => write!(
                f,
                "found thicknesses that make too many different totals to search, expected them \
                 in steps of 0.0005 or more; round them"
            ),
            Fault::TooManyPacks => write!(
                f,
                "found more combinations of packs than there is time to search, expected \
                 fewer; freeze a position or leave thicknesses out"
            ),
            Fault::Unlearnable => write!(
                f,
                "found numbers too far apart to calculate with, expected readings and thicknesses \
                 of one gearcase; look for a slip of the unit"
            ),
        }
    }
}
