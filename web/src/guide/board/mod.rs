//! The guided job at a glance: its card on the bench, its lane on the shop's board.

mod card;
mod lanes;

use job::guide::{Lane, StageView, Stands, lane};
use words::say;

use super::Guide;
use crate::parts::{Sign, strip};
pub use card::{card, next};
pub use lanes::screen;

/// A job at a glance; `None` until its steps are there and its scope is chosen. Followed.
fn at_a_glance(guide: Guide) -> Option<Lane> {
    let clocks = guide.clocks();
    guide.look(|plan, log, course| lane(plan, log, course, &clocks.views))
}

fn sign(stands: &Stands) -> Sign {
    match stands {
        Stands::Stale(_) => Sign::Stale,
        Stands::Waits(_) => Sign::Lock,
        Stands::Open => Sign::Open,
        Stands::Done => Sign::In,
    }
}

/// The strip of a job, and the same in words.
fn marks(stages: &[StageView]) -> (Vec<strip::Stage>, String) {
    let marks: Vec<_> = stages.iter().map(super::overview::mark).collect();
    let said: Vec<String> = stages
        .iter()
        .zip(&marks)
        .map(|(stage, mark)| format!("{} {}", stage.name, mark.1))
        .collect();
    (marks.into_iter().map(|mark| mark.0).collect(), say!("Stages: {}", said.join(", ")))
}
