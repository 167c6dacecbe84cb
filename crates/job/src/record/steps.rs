//! Steps that were left out or opened again, and the cautions of those that were done.

use super::{Look, RecordBench};
use crate::Sheet;
use crate::procedure::Change;

/// A step that was left out or opened again.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RecordLeft {
    /// The step.
    pub step: String,
    /// "Left out", "Opened again", "Not done on this unit".
    pub what: &'static str,
    /// Why.
    pub reason: String,
    /// When; empty for what holds on every job of the unit.
    pub when: String,
}

/// What is said of a step that was left out.
const LEFT_OUT: &str = "Left out";
/// What is said of a step that was opened again.
pub(crate) const OPENED_AGAIN: &str = "Opened again";

/// In the order of work, then what the shop leaves out on every job of this unit.
pub(super) fn left_out(look: &Look, sheet: &Sheet) -> Vec<RecordLeft> {
    let mut steps: Vec<_> = look.log.steps.iter().collect();
    steps.sort_by_key(|(step, _)| look.place(step));
    let mut left = Vec::new();
    for (step, own) in steps {
        let mut tell = |what, (mark, reason): &(crate::guide::Mark, String)| {
            left.push(RecordLeft {
                step: look.title(step),
                what,
                reason: reason.clone(),
                when: look.when(mark.at),
            });
        };
        // Done after all, it was not left out.
        let skipped = own.skipped.iter().filter(|(mark, _)| own.done.is_none_or(|at| at < *mark));
        skipped.for_each(|it| tell(LEFT_OUT, it));
        own.reopened.iter().for_each(|it| tell(OPENED_AGAIN, it));
    }
    let dropped = sheet.changes.0.iter().filter_map(|change| match change {
        Change::Dropped { step, reason } => Some(RecordLeft {
            step: look.title(step),
            what: "Not done on this unit",
            reason: reason.clone(),
            when: String::new(),
        }),
        Change::Added { .. } | Change::Moved { .. } => None,
    });
    left.extend(dropped.filter(|_| super::is_guided(look.job)));
    left
}

/// Cautions that stood before what was done, in the order of work, each once.
pub(super) fn cautions(look: &Look, bench: &[RecordBench]) -> Vec<String> {
    let done = |step: &&crate::procedure::Step| {
        look.log.steps.get(&step.id).is_some_and(|own| own.done.is_some())
    };
    let steps = look.plan.iter().flat_map(|plan| &plan.steps).filter(done);
    let of_steps = steps.map(|step| &step.caution);
    let mut cautions: Vec<String> = Vec::new();
    for caution in of_steps.chain(bench.iter().flat_map(|check| &check.cautions)) {
        if !caution.is_empty() && !cautions.contains(caution) {
            cautions.push(caution.clone());
        }
    }
    cautions
}
