//! What a shim is worth before anything is read, by the formula.

use measure::{Sign, Typed, Unit};
use words::say;

use crate::case::Bridge;
use crate::figure::with_unit;
use crate::reading::length;
use crate::sheet::listed;
use crate::{
    Check, Field, Figure, FittedShim, Job, PackFit, Sheet, Shown, Slot, Tin, Units, figure,
};

/// Change of each reading at the sheet's arm for a change of each pack, mm per mm, by the formula.
///
/// Empty while the sheet lacks what the formula needs. Without the tooth angles it is a guess.
pub fn expected_slopes(sheet: &Sheet) -> Vec<(Slot, Check, f64)> {
    let Some(job) = imagined(sheet) else { return Vec::new() };
    let bridge = Bridge::of(&job, sheet, &Tin::default(), &sheet.checks());
    let influences = bridge.map(|bridge| bridge.influences()).unwrap_or_default();
    let formula = |(slot, check, influence): (_, _, gearing::Influence)| {
        (influence.formula != 0.0).then_some((slot, check, influence.formula))
    };
    influences.into_iter().filter_map(formula).collect()
}

/// "Expected lash per mm of shim at 30.0 mm: 0.92 at B2, 0.62 at B1."; empty while it cannot be
/// said.
pub fn expected_says(sheet: &Sheet, shown: Shown) -> String {
    let Some(arm) = sheet.millimetres(Field::ArmRadius) else { return String::new() };
    let mut slots: Vec<Slot> = Vec::new();
    let mut parts = Vec::new();
    for (slot, check, slope) in expected_slopes(sheet) {
        if check.has_arm() && !slots.contains(&slot) {
            slots.push(slot);
            // A slope is a ratio: the same in mm and in.
            let slope = figure(
                length(slope.abs()),
                Figure::Reading,
                Shown { units: Units::default(), ..shown },
            );
            parts.push(say!("{slope} at {pack}", pack = slot.tag()));
        }
    }
    if parts.is_empty() {
        return String::new();
    }
    let arm = with_unit(arm, Figure::Radius, shown);
    say!(
        "Expected lash per {unit} of shim at {arm}: {slopes}.",
        unit = shown.units.length,
        slopes = listed(&parts)
    )
}

/// A job with one build, only for its slopes: any pack gives the same.
pub(crate) fn imagined(sheet: &Sheet) -> Option<Job> {
    let any = Typed::parse("0.5", Unit::Millimetre, Sign::Positive).ok()?;
    let of_slot = |slot| {
        let shims = vec![FittedShim::Measured(any.clone())];
        (slot, PackFit { slot, shims, at: 0, order: 0 })
    };
    let slots = sheet.positions().into_iter().map(|position| position.slot);
    Some(Job { found: slots.map(of_slot).collect(), ..Job::default() })
}
