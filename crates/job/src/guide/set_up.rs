//! The bridge to the set-up: what was fitted and read there need not be typed again on a step.

use measure::{Mark as Point, Sign, Typed, Unit, show};

use super::course::Told;
use super::log::{GuideLog, Kept, Mark};
use super::packs::reads;
use crate::guided::Capture;
use crate::procedure::{Phase, Plan, Record, RecordKind, Step};
use crate::standing::standing;
use crate::{
    Check, CheckState, Fact, FittedShim, Job, PackFit, Reading, Sheet, Shown, Slot, instrument,
};

/// What was done of the guided job, with what the set-up and the bench checks know in the records
/// that ask for it.
///
/// The later of the two counts: a value captured on the step, or one from there.
pub fn filled(job: &Job, plan: &Plan) -> GuideLog {
    let mut log = job.guide.clone();
    for step in &plan.steps {
        for record in &step.records {
            let known = match check_of(plan, step, record) {
                // The set-up reckons with it: only its own readings count.
                Some(_) => known(job, plan, step, record),
                None => known(job, plan, step, record)
                    .or_else(|| instrument::given(&job.guide, step, record)),
            };
            let Some(kept) = known else { continue };
            let key = (step.id.clone(), record.label.clone());
            if log.captures.get(&key).is_none_or(|own| own.mark < kept.mark) {
                log.captures.insert(key, kept);
            }
        }
    }
    log
}

/// What the set-up says of each check that was read there.
pub fn told(job: &Job, sheet: &Sheet, shown: Shown) -> Vec<Told> {
    let mut told = Vec::new();
    for check in sheet.checks() {
        let state = standing(check, job, sheet, shown).0;
        if job.last_reading(check).is_none() || state == CheckState::NoBand {
            continue;
        }
        told.extend(check.words().iter().map(|word| Told {
            check: (*word).to_owned(),
            in_band: state == CheckState::InBand,
            words: state.to_string(),
        }));
    }
    told
}

/// The check a record of a set-up step reads: the set-up's own pad takes it better.
pub fn check_of(plan: &Plan, step: &Step, record: &Record) -> Option<Check> {
    let found = record.label.ends_with("as found");
    let here = step.phase == Phase::SetUp || found;
    let label = record.label.strip_suffix(" as found").unwrap_or(&record.label);
    let layout = gearing::layout::Layout::find(&plan.layout)?;
    let checks = crate::plan::checks(layout).iter().copied();
    let measures = here && record.kind == RecordKind::Measure;
    checks.into_iter().find(|check| {
        measures
            && record.unit().map(Unit::quantity) == Some(check.unit().quantity())
            && check.words().iter().any(|word| reads(label, word))
    })
}

/// The fact to record in place of the capture, where the set-up must know it too: a pack as found,
/// or one of a trial that is not what lies in the unit already.
pub fn for_set_up(job: &Job, record: &Record, value: &Capture) -> Option<Fact> {
    let Capture::Pack(shims) = value else { return None };
    let (position, state) = record.pack()?;
    let as_found = state == "as found";
    let slot = Slot::named(position)?;
    let lies = job.pack(slot).map(|fit| fit.shims.iter().map(FittedShim::net).sum());
    if !as_found && (state != "trial" || lies == value.pack_total()) {
        return None;
    }
    let shims = shims.iter().cloned().map(FittedShim::Measured).collect();
    Some(Fact::PackFitted { slot, shims, as_found })
}

fn known(job: &Job, plan: &Plan, step: &Step, record: &Record) -> Option<Kept> {
    if let Some((position, state)) = record.pack() {
        let slot = Slot::named(position)?;
        return match state {
            "as found" => pack(job.found.get(&slot)?),
            "trial" => pack(job.fits.iter().rev().find(|fit| fit.slot == slot)?),
            _ => None,
        };
    }
    if record.label.starts_with("arm radius") {
        let checks = step.records.iter().filter_map(|other| check_of(plan, step, other));
        let read = checks.filter_map(|check| job.last_reading(check));
        let last = read.max_by_key(|reading| reading.order)?;
        return Some(kept(last, vec![last.arm.clone()?]));
    }
    let check = check_of(plan, step, record)?;
    let reading = match record.label.ends_with("as found") {
        true => job.reading_as_found(check)?,
        false => job.last_reading(check)?,
    };
    Some(kept(reading, reading.values.clone()))
}

fn kept(reading: &Reading, values: Vec<Typed>) -> Kept {
    let mark = Mark { order: reading.order, at: reading.at };
    Kept { entry: reading.entry.clone(), value: Capture::Readings(values), mark, check: None }
}

fn pack(fit: &PackFit) -> Option<Kept> {
    let mark = Mark { order: fit.order, at: fit.at };
    Some(Kept { entry: String::new(), value: shims(fit)?, mark, check: None })
}

/// The shims of a pack that was fitted, as a capture.
pub(super) fn shims(fit: &PackFit) -> Option<Capture> {
    let shim = |shim: &FittedShim| match shim {
        FittedShim::Measured(typed) => Some(typed.clone()),
        FittedShim::FromTin { net, .. } => {
            Typed::parse(&show(*net, 3, Point::Point), Unit::Millimetre, Sign::Any).ok()
        }
    };
    fit.shims.iter().map(shim).collect::<Option<Vec<_>>>().map(Capture::Pack)
}
