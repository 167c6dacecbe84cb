//! What the printed record is told.

use measure::{Band, Decimal, Unit};

use crate::reading::Judged;
use crate::standing::standing;
use crate::{
    ArmShaft, Check, CheckState, Field, Figure, Job, PackFit, Position, Sheet, Shown, Slot, clock,
    field, figure::with_unit, sheet::listed, stages,
};

/// What the printed record is told. Lengths are mm.
#[derive(Clone, Debug, PartialEq)]
pub struct Record {
    /// Number of the job.
    pub number: u32,
    /// The boat.
    pub boat: String,
    /// The complaint.
    pub complaint: String,
    /// The unit.
    pub unit: String,
    /// The date it was opened.
    pub opened: String,
    /// The checks.
    pub checks: Vec<RecordCheck>,
    /// The packs.
    pub packs: Vec<RecordPack>,
    /// "Backlash read at a 30.0 mm arm on the driveshaft, mean of 4 positions."; may be empty.
    pub arm_says: String,
    /// Why it is a draft, a sentence each. Empty: nothing on it is stale, out or missing.
    pub draft: Vec<String>,
    /// Stages that this version does not record, in a sentence.
    pub not_recorded: String,
    /// Remarks.
    pub notes: Vec<String>,
    /// What was done, in order: time and sentence.
    pub history: Vec<(String, String)>,
}

/// A check on the record.
#[derive(Clone, Debug, PartialEq)]
pub struct RecordCheck {
    /// Which.
    pub check: Check,
    /// As found.
    pub found: Option<Judged>,
    /// As left: the last series.
    pub left: Option<Judged>,
    /// What stands there now.
    pub state: CheckState,
    /// The band at the arm.
    pub band: Option<Band>,
    /// The band as on the sheet.
    pub sheet_band: Option<Band>,
    /// The radius the sheet's band holds at.
    pub sheet_radius: Option<Decimal>,
    /// Where the limits were read.
    pub source: Option<String>,
}

/// A pack on the record.
#[derive(Clone, Debug, PartialEq)]
pub struct RecordPack {
    /// Which.
    pub slot: Slot,
    /// Where it lies.
    pub position: Position,
    /// As found: net thicknesses; empty where not written down.
    pub found: Vec<Decimal>,
    /// Its thickness as found.
    pub found_total: Decimal,
    /// As left; empty where not written down.
    pub left: Vec<Decimal>,
    /// Its thickness as left.
    pub total: Decimal,
}

/// Works out the record.
pub fn record(job: &Job, sheet: &Sheet, shown: Shown) -> Record {
    let checks: Vec<RecordCheck> =
        sheet.checks().into_iter().map(|check| of_check(check, job, sheet, shown)).collect();
    let packs = sheet.positions().into_iter().map(|position| of_pack(position, job)).collect();
    let missing: Vec<&str> = stages(job, sheet)
        .iter()
        .filter(|stage| stage.state == crate::StageState::NotRecorded)
        .map(|stage| stage.name)
        .collect();
    Record {
        number: job.number,
        boat: job.boat.clone(),
        complaint: job.complaint.clone(),
        unit: sheet.name.clone(),
        opened: clock::date(job.opened_at, shown.utc_offset),
        arm_says: arm_says(job, sheet, shown),
        draft: draft(job, sheet, &checks),
        not_recorded: format!("Not recorded here: {}.", listed(&missing)),
        notes: sheet.turned_says().into_iter().chain(job.notes.iter().cloned()).collect(),
        history: job
            .history
            .iter()
            .map(|(at, sentence)| {
                let (date, time) =
                    (clock::date(*at, shown.utc_offset), clock::hour_minute(*at, shown.utc_offset));
                (format!("{date} {time}"), sentence.clone())
            })
            .collect(),
        checks,
        packs,
    }
}

fn of_check(check: Check, job: &Job, sheet: &Sheet, shown: Shown) -> RecordCheck {
    let (state, left) = standing(check, job, sheet, shown);
    let found = job.reading_as_found(check).and_then(|reading| reading.judged(sheet));
    RecordCheck {
        check,
        band: left.as_ref().and_then(|left| left.band).or_else(|| sheet.band_at_arm(check)),
        found,
        left,
        state,
        sheet_band: sheet.band(check),
        sheet_radius: field::band_at(check).and_then(|(radius, _)| sheet.millimetres(radius)),
        source: sheet.word(Field::Source(check)).map(str::to_owned),
    }
}

fn of_pack(position: Position, job: &Job) -> RecordPack {
    let slot = position.slot;
    let (found, left) = (job.found.get(&slot), job.pack(slot));
    RecordPack {
        slot,
        position,
        found: found.map(PackFit::nets).unwrap_or_default(),
        found_total: found.map(PackFit::total).unwrap_or_default(),
        left: left.map(PackFit::nets).unwrap_or_default(),
        total: left.map(PackFit::total).unwrap_or_default(),
    }
}

fn arm_says(job: &Job, sheet: &Sheet, shown: Shown) -> String {
    let lashes = sheet.checks().into_iter().filter(|check| check.has_arm());
    let read = lashes.into_iter().find_map(|check| job.last_reading(check));
    let Some((reading, arm)) = read.and_then(|reading| Some((reading, reading.arm.as_ref()?)))
    else {
        return String::new();
    };
    let on = reading.on.or_else(|| sheet.word(Field::ArmShaft).and_then(ArmShaft::named));
    let shaft = on.map(|on| sheet.shaft(on)).unwrap_or_default();
    format!(
        "Backlash read at a {} arm on the {shaft}, mean of {} positions.",
        with_unit(arm.in_unit(Unit::Millimetre), Figure::Radius, shown),
        reading.values.len(),
    )
}

fn draft(job: &Job, sheet: &Sheet, checks: &[RecordCheck]) -> Vec<String> {
    let mut reasons: Vec<String> = checks.iter().filter_map(reason).collect();
    if checks.is_empty() {
        reasons.push("No check has limits. Type the unit sheet.".to_owned());
    }
    let unknown: Vec<&str> = sheet
        .positions()
        .iter()
        .filter(|position| job.pack(position.slot).is_none())
        .map(|position| position.slot.tag())
        .collect();
    if !unknown.is_empty() {
        reasons.push(format!("Packs not written down: {}.", listed(&unknown)));
    }
    if job.unread > 0 {
        reasons.push(format!(
            "{} entries of a newer version are not shown. Update the app.",
            job.unread
        ));
    }
    reasons
}

fn reason(check: &RecordCheck) -> Option<String> {
    let name = check.check.name();
    match &check.state {
        CheckState::InBand => None,
        CheckState::Stale { why } => Some(format!("{name} is stale. {why}")),
        CheckState::Locked { .. } | CheckState::Open => Some(format!("{name} is not read.")),
        CheckState::NoBand => Some(format!("{name} has no limits.")),
        CheckState::NearLimit => Some(format!("{name} is near a limit.")),
        CheckState::Out => Some(format!("{name} is out.")),
        CheckState::CannotProve => Some(format!("{name} cannot be proved with this gauge.")),
        CheckState::TightSpot => Some(format!("{name} has a tight spot.")),
    }
}
