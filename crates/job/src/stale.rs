//! What took the ground from a reading: a pack that was changed, or new parts.

use words::say;

use crate::{Job, PackFit, Reading, Sheet, Shown, Slot, clock};

/// What took the ground from a reading.
pub(crate) struct Lost {
    slot: Slot,
    at: i64,
    parts: bool,
}

/// What first took the ground from the reading after it was taken.
pub(crate) fn stale(job: &Job, sheet: &Sheet, reading: &Reading) -> Option<Lost> {
    let fit = after(job, sheet, reading).next();
    let fit = fit.map(|fit| (fit.order, Lost { slot: fit.slot, at: fit.at, parts: false }));
    let parts = job
        .parts
        .iter()
        .find(|parts| parts.order > reading.order && rereads(sheet, parts.slot, reading));
    let parts = parts.map(|it| (it.order, Lost { slot: it.slot, at: it.at, parts: true }));
    fit.into_iter().chain(parts).min_by_key(|(order, _)| *order).map(|(_, lost)| lost)
}

/// The pack changes after the reading that take its ground.
pub(crate) fn after<'a>(
    job: &'a Job,
    sheet: &'a Sheet,
    reading: &'a Reading,
) -> impl Iterator<Item = &'a PackFit> {
    let later = job.fits.iter().filter(move |fit| fit.order > reading.order);
    later.filter(move |fit| rereads(sheet, fit.slot, reading))
}

/// Whether a reading was taken on the parts that are in now: only then it teaches the engine.
pub(crate) fn is_on_these_parts(job: &Job, sheet: &Sheet, reading: &Reading) -> bool {
    let later = job.parts.iter().filter(|parts| parts.order > reading.order);
    !later.into_iter().any(|parts| rereads(sheet, parts.slot, reading))
}

fn rereads(sheet: &Sheet, slot: Slot, reading: &Reading) -> bool {
    sheet.position(slot).is_some_and(|position| position.rereads(reading.check))
}

/// Cause and cure: "Read 10:05. B1 changed 10:22, so read it again."
pub(crate) fn why(reading: &Reading, lost: &Lost, shown: Shown) -> String {
    let offset = shown.utc_offset;
    let (read, pack) = (clock::apart(reading.at, lost.at, offset), lost.slot.tag());
    let changed = clock::hour_minute(lost.at, offset);
    match lost.parts {
        true => say!("Read {read}. Parts at {pack} changed {changed}, so read it again."),
        false => say!("Read {read}. {pack} changed {changed}, so read it again."),
    }
}
