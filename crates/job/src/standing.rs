//! What stands at a check.

use crate::stale::{stale, why};
use crate::{Check, CheckState, Job, Judged, Sheet, Shown};

/// The state of a check and its last series.
pub(crate) fn standing(
    check: Check,
    job: &Job,
    sheet: &Sheet,
    shown: Shown,
) -> (CheckState, Option<Judged>) {
    let Some(reading) = job.last_reading(check) else {
        let state = if sheet.missing(check).is_some() {
            CheckState::NoBand
        } else if is_locked(check, job, sheet) {
            CheckState::Locked { opens: "Opens when reverse is in band.".to_owned() }
        } else {
            CheckState::Open
        };
        return (state, None);
    };
    let judged = reading.judged(sheet);
    let state = match (stale(job, sheet, reading), &judged) {
        (Some(change), _) => CheckState::Stale { why: why(reading, change, shown) },
        (None, Some(judged)) => judged.state.clone(),
        (None, None) => CheckState::Open,
    };
    (state, judged)
}

/// The checks that the engine is asked about: a locked one that nobody has read is left out.
pub(crate) fn asked(job: &Job, sheet: &Sheet) -> Vec<Check> {
    let is_asked =
        |check: &Check| job.last_reading(*check).is_some() || !is_locked(*check, job, sheet);
    sheet.checks().into_iter().filter(is_asked).collect()
}

fn is_locked(check: Check, job: &Job, sheet: &Sheet) -> bool {
    check == Check::END_PLAY
        && sheet.checks().contains(&Check::REVERSE)
        && standing(Check::REVERSE, job, sheet, Shown::default()).0 != CheckState::InBand
}
