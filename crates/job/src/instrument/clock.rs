//! The clock of a log: true time since it began, also with the screen locked.

use measure::{Decimal, Mark, Sign, Typed, Unit, show};
use words::say;

use super::{Instrument, Values};

/// How long a clock has run.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Elapsed {
    /// As a clock shows it: "07:42".
    pub clock: String,
    /// As it is typed into a log, minutes: "7.70".
    pub minutes: String,
}

/// How long a clock has run at `now` that began at `start`, milliseconds since 1970; `None` where
/// `start` is no such number.
///
/// A device whose own clock was set back shows no less than nothing.
///
/// ```
/// use job::instrument::since;
/// use measure::Mark;
/// let run = since("1000", 463_000, Mark::Point).unwrap();
/// assert_eq!((run.clock.as_str(), run.minutes.as_str()), ("07:42", "7.70"));
/// assert_eq!(since("", 0, Mark::Point), None);
/// ```
pub fn since(start: &str, now: i64, mark: Mark) -> Option<Elapsed> {
    let start: i64 = start.parse().ok()?;
    let seconds = (now.saturating_sub(start) / 1000).max(0);
    let minutes = Decimal::from(seconds) / Decimal::from(60);
    Some(Elapsed {
        clock: format!("{:02}:{:02}", seconds / 60, seconds % 60),
        minutes: show(minutes, 2, mark),
    })
}

impl Instrument {
    /// What its clock runs up to: "of 10 min"; `None` while no time is typed.
    pub fn runs_to(&self, values: &Values) -> Option<String> {
        let text = ["time", "rest"].iter().find_map(|field| values.get(*field))?.first()?;
        let time = Typed::parse(text, Unit::Minute, Sign::Positive).ok()?;
        Some(say!("of {time}"))
    }
}
