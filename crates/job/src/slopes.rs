//! What a shim is worth before anything is read, by the formula.

use std::collections::BTreeMap;

use measure::{Sign, Typed, Unit};

use crate::case::Bridge;
use crate::trials::slope;
use crate::{Check, FittedShim, Job, PackFit, Reading, Sheet, Slot, Tin};

/// Change of each reading at the sheet's arm for a change of each pack, mm per mm, by the formula.
///
/// Empty while the sheet lacks what the formula needs. Without the tooth angles it is a guess.
pub fn expected_slopes(sheet: &Sheet) -> Vec<(Slot, Check, f64)> {
    let checks = sheet.checks();
    let Some(job) = imagined(sheet, &checks) else { return Vec::new() };
    let Ok(bridge) = Bridge::of(&job, sheet, &Tin::default(), &checks) else { return Vec::new() };
    let mut slopes = Vec::new();
    for (place, position) in bridge.positions.iter().enumerate() {
        for (row, check) in bridge.checks.iter().enumerate() {
            let slope = slope(&bridge.case, place, row).unwrap_or_default();
            if position.rereads.contains(check) && slope != 0.0 {
                slopes.push((position.slot, *check, slope));
            }
        }
    }
    slopes
}

/// A job with one build, only for its slopes: any pack and any reading give the same.
fn imagined(sheet: &Sheet, checks: &[Check]) -> Option<Job> {
    let any = Typed::parse("0.5", Unit::Millimetre, Sign::Positive).ok()?;
    let slots = sheet.positions().into_iter().map(|position| position.slot);
    let found: BTreeMap<Slot, PackFit> = slots
        .map(|slot| {
            let shims = vec![FittedShim::Measured(any.clone())];
            (slot, PackFit { slot, shims, at: 0, order: 0 })
        })
        .collect();
    let arm = sheet.number(crate::Field::ArmRadius).cloned();
    let on = sheet.word(crate::Field::ArmShaft).and_then(crate::ArmShaft::named);
    let readings = checks
        .iter()
        .map(|check| Reading {
            entry: String::new(),
            check: *check,
            values: vec![any.clone()],
            arm: arm.clone(),
            on,
            at: 0,
            order: 1,
        })
        .collect();
    Some(Job { found, readings, ..Job::default() })
}
