//! The checks and packs on the record: as found, and as left.

use measure::{Band, Decimal, Unit};
use words::say;

use crate::figure::with_unit;
use crate::reading::Judged;
use crate::standing::standing;
use crate::{
    ArmShaft, Check, CheckState, Field, Figure, Job, PackFit, Position, Sheet, Shown, Slot, field,
};

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

pub(super) fn of_check(check: Check, job: &Job, sheet: &Sheet, shown: Shown) -> RecordCheck {
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

pub(super) fn of_pack(position: Position, job: &Job) -> RecordPack {
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

pub(super) fn arm_says(job: &Job, sheet: &Sheet, shown: Shown) -> String {
    let lashes = sheet.checks().into_iter().filter(|check| check.has_arm());
    let read = lashes.into_iter().find_map(|check| job.last_reading(check));
    let Some((reading, arm)) = read.and_then(|reading| Some((reading, reading.arm.as_ref()?)))
    else {
        return String::new();
    };
    let on = reading.on.or_else(|| sheet.word(Field::ArmShaft).and_then(ArmShaft::named));
    let shaft = on.map(|on| sheet.shaft(on)).unwrap_or_default();
    say!(
        "Backlash read at a {radius} arm on the {shaft}, mean of {count} positions.",
        radius = with_unit(arm.in_unit(Unit::Millimetre), Figure::Radius, shown),
        count = reading.values.len()
    )
}
