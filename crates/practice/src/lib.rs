//! Lessons: invented gearcases with hidden faults, virtual gauges, decisions, and the reason why.
//!
//! A lesson is a seed; the same seed gives the same [`Round`]s. Each round is a first correction in
//! which one thing went wrong. The learner sees the readings beside what was predicted, decides, and
//! is [told](Round::told) why: the clue, what the fault does, and what each way costs.
//!
//! ```
//! let round = practice::round(7, 0, None).unwrap();
//! assert!(round.told(round.right, &|mm| mm.round_dp(2).to_string()).is_right);
//! ```

mod decision;
mod round;
mod told;

pub use decision::Decision;
pub use round::{Pack, Round, Seen, round};
pub use told::{Mark, Reason, Told};

pub use simulator::FaultKind;

/// Rounds of a lesson.
pub const ROUNDS: usize = 3;

/// The faults that are hidden, with what a person calls them.
pub const FAULTS: [(FaultKind, &str); 3] = [
    (FaultKind::Unseated, "Race off its seat"),
    (FaultKind::Swapped, "Packs swapped"),
    (FaultKind::WrongSign, "Pushes the other way"),
];

#[cfg(test)]
mod tests;
