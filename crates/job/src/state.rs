//! What stands at a check.

use std::fmt;
use words::t;

use measure::Verdict;

/// What stands at a check; `Display` is the word on the screen.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum CheckState {
    /// The sheet lacks fields: they stand in [`crate::CheckView::missing`].
    NoBand,
    /// Its turn has not come.
    Locked {
        /// What opens it: "Opens when reverse is in band."
        opens: String,
    },
    /// Not read.
    Open,
    /// Proven inside.
    InBand,
    /// Too near a limit.
    NearLimit,
    /// Proven outside.
    Out,
    /// The band is narrower than this gauge can resolve.
    CannotProve,
    /// The mean may be in band, the smallest backlash of the series is below it: runout or a cocked
    /// race.
    TightSpot,
    /// Lost its ground.
    Stale {
        /// Cause and cure: "Read 10:05. B1 changed 10:22, so read it again."
        why: String,
    },
}

impl From<Verdict> for CheckState {
    fn from(verdict: Verdict) -> Self {
        match verdict {
            Verdict::InBand => CheckState::InBand,
            Verdict::NearLimit => CheckState::NearLimit,
            Verdict::Out => CheckState::Out,
            Verdict::CannotProve => CheckState::CannotProve,
        }
    }
}

impl fmt::Display for CheckState {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            CheckState::NoBand => t("No limits"),
            CheckState::Locked { .. } => t("Locked"),
            CheckState::Open => t("Open"),
            CheckState::InBand => t("In band"),
            CheckState::NearLimit => t("Near limit"),
            CheckState::Out => t("Out"),
            CheckState::CannotProve => t("Too coarse"),
            CheckState::TightSpot => t("Tight spot"),
            CheckState::Stale { .. } => t("Stale"),
        })
    }
}
