//! What the bench is told about a job.

use words::{say, t};

use crate::standing::standing;
use crate::{CheckState, Job, NextAct, Sheet, Shown, Stage, day_number, next_act, stages};

/// A job on the bench.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BenchCard {
    /// Id of the job.
    pub job: String,
    /// Its number.
    pub number: u32,
    /// The boat.
    pub boat: String,
    /// The unit.
    pub unit: String,
    /// Which day of the job it is, from 1.
    pub day: i64,
    /// When the last entry was written.
    pub last_at: i64,
    /// The stages.
    pub stages: [Stage; 6],
    /// Where it stands: "Shim, 1 of 3 in band".
    pub line: String,
    /// What is wrong: "1 reading stale"; may be empty.
    pub trouble: String,
    /// The next act.
    pub next: NextAct,
}

/// Works out the card of a job; `now` is milliseconds since 1970.
pub fn bench_card(job: &Job, sheet: &Sheet, now: i64, shown: Shown) -> BenchCard {
    let states: Vec<CheckState> =
        sheet.checks().into_iter().map(|check| standing(check, job, sheet, shown).0).collect();
    let count =
        |wanted: fn(&CheckState) -> bool| states.iter().filter(|state| wanted(state)).count();
    let in_band = count(|state| *state == CheckState::InBand);
    let stale = count(|state| matches!(state, CheckState::Stale { .. }));
    BenchCard {
        job: job.id.clone(),
        number: job.number,
        boat: job.boat.clone(),
        unit: sheet.name.clone(),
        day: day_number(job.opened_at, now, shown.utc_offset),
        last_at: job.last_at,
        stages: stages(job, sheet),
        line: say!("Shim, {in_band} of {} in band", states.len()),
        trouble: match stale {
            0 => String::new(),
            1 => t("1 reading stale").to_owned(),
            stale => say!("{stale} readings stale"),
        },
        next: next_act(job, sheet, shown),
    }
}

/// The number for a new job: one more than the highest so far.
pub fn next_number(taken: impl IntoIterator<Item = u32>) -> u32 {
    let highest = taken.into_iter().max();
    highest.unwrap_or_default().saturating_add(1)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_new_job_takes_the_number_after_the_highest() {
        assert_eq!(next_number([]), 1);
        assert_eq!(next_number([26, 3]), 27);
    }
}
