//! Which pack change took the ground from a reading.

use crate::{Job, PackFit, Reading, Sheet, Shown, clock};

/// The first pack change after the reading that moves what was read.
pub(crate) fn stale<'a>(job: &'a Job, sheet: &Sheet, reading: &Reading) -> Option<&'a PackFit> {
    job.fits.iter().filter(|fit| fit.order > reading.order).find(|fit| {
        let position = sheet.position(fit.slot);
        position.is_some_and(|position| position.rereads(reading.check))
    })
}

/// Cause and cure: "Read 10:05. B1 changed 10:22, so read it again."
pub(crate) fn why(reading: &Reading, change: &PackFit, shown: Shown) -> String {
    let offset = shown.utc_offset;
    format!(
        "Read {}. {} changed {}, so read it again.",
        clock::apart(reading.at, change.at, offset),
        change.slot.tag(),
        clock::hour_minute(change.at, offset),
    )
}
