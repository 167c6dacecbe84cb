//! What the set-up engine answers.

use measure::Decimal;

use crate::case::StockLine;

/// The answer to a case. Positions and checks are named by their place in the case.
#[derive(Clone, Debug, PartialEq)]
pub struct Advice {
    /// What kind of answer this is.
    pub status: Status,
    /// The packs to fit, a list of net thicknesses for each position, thin shims inside.
    ///
    /// The packs of the last trial where nothing is to be changed or nothing can be said.
    pub packs: Vec<Vec<Decimal>>,
    /// Positions whose pack changes.
    pub opens: Vec<usize>,
    /// Labour to change them, minutes.
    pub minutes: u32,
    /// What each gauge will read with these packs, a value for each check; `None` while the check
    /// has never been read.
    pub predicted: Vec<Option<Prediction>>,
    /// Probability that every check reads in its band at the next build.
    pub probability: f64,
    /// What to look at.
    pub alarms: Vec<Alarm>,
    /// Shims to buy or borrow, the fewest that do.
    pub buy: Vec<StockLine>,
    /// The smallest sets of checks that no thickness whatever brings into band together.
    pub conflicts: Vec<Conflict>,
    /// Checks that have no reading yet.
    pub need: Vec<usize>,
}

/// The kind of answer, asked in this order.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Status {
    /// A check has no reading in any trial.
    NeedReading,
    /// Every last reading is in its band.
    Done,
    /// No thicknesses whatever bring every check into band.
    Conflict,
    /// No pack from the tin does.
    StockShort,
    /// Here are the packs.
    Fit,
}

/// What a gauge will read at the next build.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Prediction {
    /// Expected reading, mm at the arm used.
    pub mean: f64,
    /// Its standard deviation, the scatter of the reading itself inside, mm.
    pub sigma: f64,
    /// Probability that it lies in the band.
    pub probability: f64,
}

/// Packs with what they would give.
#[derive(Clone, Debug, PartialEq)]
pub struct Choice {
    /// A pack for each position, thin shims inside.
    pub packs: Vec<Vec<Decimal>>,
    /// Positions whose pack differs from the last trial's.
    pub opens: Vec<usize>,
    /// Labour to change them, minutes.
    pub minutes: u32,
    /// Shims in all packs together.
    pub shims: usize,
    /// What each gauge will read; `None` while the check has never been read.
    pub predicted: Vec<Option<Prediction>>,
    /// Probability that every check that has been read lands in its band.
    pub probability: f64,
}

/// Checks that cannot hold together.
#[derive(Clone, Debug, PartialEq)]
pub struct Conflict {
    /// The checks.
    pub checks: Vec<usize>,
    /// The least total amount by which their readings must miss their bands, mm.
    pub excess: f64,
}

/// Something to look at before going on.
#[derive(Clone, Debug, PartialEq)]
pub enum Alarm {
    /// In band, but too near the limit to be sure: read again.
    ReadAgain {
        /// The check.
        check: usize,
    },
    /// The smallest backlash of the series is below the band: runout or a cocked race.
    TightSpot {
        /// The check.
        check: usize,
    },
    /// The last readings are more than three standard deviations from what was predicted.
    Surprise {
        /// How far each check's reading lies from its prediction, in standard deviations; `None`
        /// where it was not predicted or not read.
        off: Vec<Option<f64>>,
        /// What would explain the readings, likeliest first.
        causes: Vec<Cause>,
    },
    /// A reading is off by about what an end play lets its member move: perhaps it was not loaded
    /// the running way.
    NotLoaded {
        /// The check.
        check: usize,
        /// The check of the end play.
        play: usize,
    },
    /// The best packs are more likely than not to miss: read again first, or find other sizes.
    Doubtful,
}

/// A possible cause of readings that were not predicted.
#[derive(Clone, Debug, PartialEq)]
pub struct Cause {
    /// What may have happened.
    pub kind: CauseKind,
    /// Natural logarithm of the likelihood of the readings under it.
    pub log_likelihood: f64,
    /// Its share among all causes tried, all taken as equally likely beforehand.
    pub share: f64,
}

/// What may have happened.
#[derive(Clone, Debug, PartialEq)]
pub enum CauseKind {
    /// Nothing: chance.
    AsPlanned,
    /// A thicker pack moves the member the other way than stated.
    OtherSign {
        /// The position.
        position: usize,
    },
    /// The packs of two positions were swapped.
    Swapped {
        /// One position.
        first: usize,
        /// The other.
        second: usize,
    },
    /// The pack was not changed.
    NotChanged {
        /// The position.
        position: usize,
    },
    /// A shim of the new pack is not in: left out, or stuck to the old race.
    ShimMissing {
        /// The position.
        position: usize,
        /// The shim, mm.
        thickness: Decimal,
    },
    /// A race not seated, or dirt: acts as 0.02 to 0.15 mm of extra pack.
    NotSeated {
        /// The position.
        position: usize,
    },
    /// A unit or decimal slip: the written value is this many times the true one.
    Slip {
        /// The check.
        check: usize,
        /// Written over true.
        factor: f64,
    },
    /// The arm is on the other shaft than stated: all backlash readings scaled.
    OtherShaft {
        /// Written over true.
        factor: f64,
    },
}
