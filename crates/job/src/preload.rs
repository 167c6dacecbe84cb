//! A preload is worked out: no gauge reads it.

use measure::Decimal;

use crate::stale::{after, is_on_these_parts};
use crate::{CheckState, Job, Judged, PackFit, Reading, Sheet};

/// The setting on the packs that are in now, from the play that was read before they were changed.
///
/// Exact: a pack grown by 1 mm takes 1 mm of play away, or gives it (model of the set-up, R1.4). It
/// is judged on its mean alone, because the rolling torque proves it. `None` where the limits are
/// those of an end play, or where a pack was changed whose effect is no formula.
pub(crate) fn worked_out(job: &Job, sheet: &Sheet, reading: &Reading) -> Option<Judged> {
    let judged = reading.judged(sheet).filter(|_| sheet.is_preload(reading.check))?;
    let is_known = is_on_these_parts(job, sheet, reading);
    if !is_known || after(job, sheet, reading).any(|fit| !moves(sheet, fit, reading)) {
        return None;
    }
    let mut change = Decimal::ZERO;
    for position in sheet.positions().iter().filter(|position| position.moves(reading.check)) {
        let then = job.pack_before(position.slot, reading.order)?.total();
        let now = job.pack(position.slot)?.total();
        let (_, setting_sign) = sheet.signs(position);
        change -= Decimal::from(setting_sign) * (now - then);
    }
    let mean = judged.mean + change;
    let state = match &judged.band {
        Some(band) if band.contains(mean) => CheckState::InBand,
        Some(_) => CheckState::Out,
        None => CheckState::NoBand,
    };
    let readings = judged.readings.iter().map(|reading| reading + change).collect();
    Some(Judged { mean, readings, state, worked_out: !change.is_zero(), ..judged })
}

fn moves(sheet: &Sheet, fit: &PackFit, reading: &Reading) -> bool {
    sheet.position(fit.slot).is_some_and(|position| position.moves(reading.check))
}
