//! What stands at a check.

use words::t;

use crate::preload::worked_out;
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
            CheckState::Locked { opens: opens(check).to_owned() }
        } else {
            CheckState::Open
        };
        return (state, None);
    };
    if let Some(judged) = worked_out(job, sheet, reading) {
        return (judged.state.clone(), Some(judged));
    }
    let judged = reading.judged(sheet);
    let state = match (stale(job, sheet, reading), &judged) {
        (Some(change), _) => CheckState::Stale { why: why(reading, &change, shown) },
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

fn opens(check: Check) -> &'static str {
    match check {
        Check::Torque => t("Opens when every other check is in band."),
        _ => t("Opens when reverse is in band."),
    }
}

fn is_locked(check: Check, job: &Job, sheet: &Sheet) -> bool {
    let is_in =
        |check: Check| standing(check, job, sheet, Shown::default()).0 == CheckState::InBand;
    if check == Check::Torque {
        let others = sheet.checks().into_iter().filter(|other| *other != Check::Torque);
        return !others.into_iter().all(is_in);
    }
    check == Check::END_PLAY && sheet.checks().contains(&Check::REVERSE) && !is_in(Check::REVERSE)
}
