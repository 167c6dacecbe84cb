//! The lesson on this device: which one, how far, what was decided and why.
//!
//! It lies in the device's small storage and in no book: nothing of it can reach a real job.

use practice::{FAULTS, ROUNDS, Round, round};

use crate::device::now::fresh_id;
use crate::scratch;

const KEY: &str = "practice";

/// What was decided in a round, and the learner's own reason.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Decided {
    /// The place among the decisions offered.
    pub decision: usize,
    /// The reason; may be empty.
    pub because: String,
}

/// A lesson that was begun.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Lesson {
    seed: u64,
    /// The fault that the instructor chose; none for one of each.
    wanted: Option<usize>,
    /// The round that is open, from 0.
    pub at: usize,
    /// What was decided in each round so far.
    pub decided: Vec<Decided>,
}

impl Lesson {
    /// A new one: no other lesson is like it.
    pub fn begin(wanted: Option<usize>) -> Lesson {
        let digits = fresh_id().replace('-', "");
        let seed = digits.get(..12).and_then(|digits| u64::from_str_radix(digits, 16).ok());
        Lesson { seed: seed.unwrap_or_default(), wanted, at: 0, decided: Vec::new() }
    }

    /// The one that was left, if any.
    pub fn left() -> Option<Lesson> {
        Lesson::read(&scratch::read(KEY)?)
    }

    fn read(text: &str) -> Option<Lesson> {
        let mut lines = text.lines();
        let mut numbers = lines.next()?.split(' ').map(str::parse::<u64>);
        let (seed, wanted, at) =
            (numbers.next()?.ok()?, numbers.next()?.ok()?, numbers.next()?.ok()?);
        let decided = lines.filter_map(|line| {
            let (decision, because) = line.split_once(' ')?;
            Some(Decided { decision: decision.parse().ok()?, because: because.to_owned() })
        });
        let wanted = usize::try_from(wanted).ok()?.checked_sub(1);
        Some(Lesson { seed, wanted, at: usize::try_from(at).ok()?, decided: decided.collect() })
    }

    fn text(&self) -> String {
        let wanted = self.wanted.map_or(0, |at| at + 1);
        let mut text = format!("{} {wanted} {}\n", self.seed, self.at);
        for Decided { decision, because } in &self.decided {
            text.push_str(&format!("{decision} {}\n", because.replace(['\n', '\r'], " ")));
        }
        text
    }

    /// Keeps it for the next visit.
    pub fn keep(&self) {
        scratch::write(KEY, &self.text());
    }

    /// A round; none after the last.
    pub fn round(&self, at: usize) -> Option<Round> {
        // With one kind chosen every round has it, each another unit.
        let kind = self.wanted.and_then(|at| FAULTS.get(at)).map(|it| it.0);
        round(self.seed, at, kind)
    }

    /// Every round was gone through.
    pub fn is_over(&self) -> bool {
        self.at >= ROUNDS
    }
}

#[cfg(test)]
mod tests {
    use wasm_bindgen_test::wasm_bindgen_test as test;

    use super::*;

    #[test]
    fn a_lesson_is_read_back() {
        let lesson = Lesson {
            seed: 77,
            wanted: Some(1),
            at: 1,
            decided: vec![Decided { decision: 2, because: "0.24 is under 0.27".to_owned() }],
        };
        assert_eq!(Lesson::read(&lesson.text()), Some(lesson));
        assert_eq!(Lesson::read("x"), None);
    }
}
