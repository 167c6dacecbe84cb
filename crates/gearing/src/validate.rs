//! Refuses a case that makes no sense, so that nothing after it has to.

use std::collections::{BTreeMap, BTreeSet};

use measure::{Band, BandError, Decimal};

use crate::case::{Arm, Case, Check, CheckKind, Gears, Member, Position, Shaft};
use crate::case_error::{CaseError, Fault};
use crate::effect::touches;

/// More positions than any layout has.
const POSITIONS: usize = 12;
/// More checks than any layout has.
const CHECKS: usize = 16;
/// More driven gears than any layout has.
const DRIVEN: usize = 8;
/// More dry builds than anyone makes.
const TRIALS: usize = 200;
/// More readings than anyone takes in one series.
const READINGS: usize = 1000;
/// More shims than any pack holds.
pub(crate) const SHIMS: usize = 8;
/// More sizes than any tin holds for one place.
const SIZES: usize = 200;
/// More lines than any tin needs.
const STOCK_LINES: usize = 4000;
/// Finest step of a thickness: 0.00001 mm.
const THICKNESS_PLACES: u32 = 5;
/// Thickest shim or spacer, mm.
const THICKEST: Decimal = Decimal::from_parts(50, 0, 0, false, 0);
/// Farthest reading, limit or radius, mm.
const FARTHEST: Decimal = Decimal::from_parts(1000, 0, 0, false, 0);

/// Checks a whole case.
///
/// # Errors
/// The first field that makes no sense, with its path.
pub fn validate(case: &Case) -> Result<(), CaseError> {
    gears(&case.gears)?;
    arm("arm", &case.arm, &case.gears)?;
    count("positions", case.positions.len(), 1, POSITIONS, "positions")?;
    distinct("positions", ".id", case.positions.iter().map(|position| position.id.as_str()))?;
    for (index, position) in case.positions.iter().enumerate() {
        self::position(&format!("positions[{index}]"), position, case)?;
    }
    count("checks", case.checks.len(), 1, CHECKS, "checks")?;
    distinct("checks", ".id", case.checks.iter().map(|check| check.id.as_str()))?;
    for (index, check) in case.checks.iter().enumerate() {
        self::check(&format!("checks[{index}]"), check, case)?;
    }
    for (index, id) in case.frozen.iter().enumerate() {
        position_id(&format!("frozen[{index}]"), id, case)?;
    }
    count("max_shims_in_pack", case.max_shims, 1, SHIMS, "shims")?;
    stock(case)?;
    trials(case)
}

fn gears(gears: &Gears) -> Result<(), CaseError> {
    teeth("gears.pinion_teeth", gears.pinion_teeth)?;
    let radius = gears.pinion_pitch_radius;
    above_zero("gears.pinion_pitch_radius", radius)?;
    range("gears.pinion_pitch_radius", radius, Decimal::new(1, 1), FARTHEST)?;
    count("gears.driven", gears.driven.len(), 1, DRIVEN, "driven gears")?;
    distinct("gears.driven", ".id", gears.driven.iter().map(|gear| gear.id.as_str()))?;
    for (index, gear) in gears.driven.iter().enumerate() {
        teeth(&format!("gears.driven[{index}].teeth"), gear.teeth)?;
    }
    if let Some(angle) = gears.normal_pressure_angle {
        range("gears.normal_pressure_angle", angle, Decimal::from(5), Decimal::from(45))?;
    }
    if let Some(angle) = gears.spiral_angle {
        range("gears.spiral_angle", angle, Decimal::ZERO, Decimal::from(60))?;
    }
    range("gears.shaft_angle", gears.shaft_angle, Decimal::from(10), Decimal::from(170))
}

fn teeth(path: &str, teeth: u32) -> Result<(), CaseError> {
    range(path, Decimal::from(teeth), Decimal::from(3), Decimal::from(500))
}

fn arm(path: &str, arm: &Arm, gears: &Gears) -> Result<(), CaseError> {
    let radius = format!("{path}.radius");
    above_zero(&radius, arm.radius)?;
    range(&radius, arm.radius, Decimal::new(1, 1), FARTHEST)?;
    match &arm.on {
        Shaft::Pinion => Ok(()),
        Shaft::Driven(id) => driven(&format!("{path}.on"), id, gears),
    }
}

fn driven(path: &str, id: &str, gears: &Gears) -> Result<(), CaseError> {
    let known = gears.driven.iter().map(|gear| gear.id.as_str());
    one_of(path, id, known)
}

fn position_id(path: &str, id: &str, case: &Case) -> Result<(), CaseError> {
    one_of(path, id, case.positions.iter().map(|position| position.id.as_str()))
}

fn position(path: &str, position: &Position, case: &Case) -> Result<(), CaseError> {
    sign(&format!("{path}.mesh_sign"), position.mesh_sign)?;
    sign(&format!("{path}.setting_sign"), position.setting_sign)?;
    match &position.moves {
        Member::Driven(id) => driven(&format!("{path}.moves"), id, &case.gears)?,
        Member::Other(name) if position.mesh_sign != 0 => {
            let gears = case.gears.driven.iter().map(|gear| gear.id.clone());
            let known = std::iter::once("pinion".to_owned()).chain(gears).collect();
            let fault = Fault::Unknown { id: name.clone(), known };
            return Err(CaseError::new(format!("{path}.moves"), fault));
        }
        Member::Pinion | Member::Other(_) => {}
    }
    let minutes = Decimal::from(position.open_minutes);
    range(&format!("{path}.open_minutes"), minutes, Decimal::ZERO, Decimal::from(100_000))?;
    for (index, id) in position.after.iter().enumerate() {
        position_id(&format!("{path}.after[{index}]"), id, case)?;
    }
    Ok(())
}

fn check(path: &str, check: &Check, case: &Case) -> Result<(), CaseError> {
    band(path, check)?;
    match &check.kind {
        CheckKind::DepthGap { .. } => {}
        CheckKind::Backlash { mesh, band_at } => {
            driven(&format!("{path}.mesh"), mesh, &case.gears)?;
            if let Some(band_at) = band_at {
                arm(&format!("{path}.band"), band_at, &case.gears)?;
            }
            not_below_zero(&format!("{path}.low"), check.low)?;
        }
        CheckKind::EndPlay { positions } => {
            distinct(&format!("{path}.positions"), "", positions.iter().map(String::as_str))?;
            for (index, id) in positions.iter().enumerate() {
                position_id(&format!("{path}.positions[{index}]"), id, case)?;
            }
        }
    }
    if let Some(sigma) = check.sigma {
        let path = format!("{path}.sigma");
        not_below_zero(&path, sigma)?;
        range(&path, sigma, Decimal::ZERO, FARTHEST)?;
    }
    if case.positions.iter().any(|position| touches(position, &check.kind)) {
        Ok(())
    } else {
        Err(CaseError::new(path, Fault::Unmoved))
    }
}

fn band(path: &str, check: &Check) -> Result<(), CaseError> {
    range(&format!("{path}.low"), check.low, -FARTHEST, FARTHEST)?;
    range(&format!("{path}.high"), check.high, -FARTHEST, FARTHEST)?;
    let band = Band::new(check.low, check.high)
        .and_then(|band| check.aim.map_or(Ok(band), |aim| band.with_aim(aim)));
    let (field, fault) = match band {
        Ok(_) => return Ok(()),
        Err(BandError::LowAboveHigh { low, high }) => ("low", Fault::LowAboveHigh { low, high }),
        Err(BandError::NoWidth { limit }) => ("low", Fault::NoWidth { limit }),
        Err(BandError::AimOutside { aim, low, high }) => {
            ("aim", Fault::AimOutside { aim, low, high })
        }
    };
    Err(CaseError::new(format!("{path}.{field}"), fault))
}

fn stock(case: &Case) -> Result<(), CaseError> {
    count("stock", case.stock.len(), 0, STOCK_LINES, "lines")?;
    for (index, line) in case.stock.iter().enumerate() {
        thickness(&format!("stock[{index}].thickness"), line.thickness)?;
    }
    let mut sizes: BTreeMap<&str, BTreeSet<Decimal>> = BTreeMap::new();
    for line in &case.stock {
        sizes.entry(&line.family).or_default().insert(line.thickness);
    }
    for sizes in sizes.values() {
        count("stock", sizes.len(), 0, SIZES, "thicknesses in one family")?;
    }
    Ok(())
}

fn trials(case: &Case) -> Result<(), CaseError> {
    count("trials", case.trials.len(), 1, TRIALS, "trials")?;
    for (index, trial) in case.trials.iter().enumerate() {
        let path = format!("trials[{index}]");
        let positions = case.positions.len();
        count(&format!("{path}.packs"), trial.packs.len(), positions, positions, "packs")?;
        for (pack, position) in trial.packs.iter().zip(&case.positions) {
            let path = format!("{path}.packs.{}", position.id);
            count(&path, pack.len(), 0, SIZES, "shims")?;
            shims(&path, pack.iter().copied())?;
        }
        let checks = case.checks.len();
        count(&format!("{path}.readings"), trial.readings.len(), checks, checks, "series")?;
        for (series, check) in trial.readings.iter().zip(&case.checks) {
            let path = format!("{path}.readings.{}", check.id);
            count(&path, series.len(), 0, READINGS, "readings")?;
            for (reading, &value) in series.iter().enumerate() {
                range(&format!("{path}[{reading}]"), value, -FARTHEST, FARTHEST)?;
            }
        }
    }
    Ok(())
}

/// Checks the packs of a what-if, one for each position.
pub(crate) fn packs(case: &Case, packs: &[Vec<Decimal>]) -> Result<(), CaseError> {
    count("packs", packs.len(), case.positions.len(), case.positions.len(), "packs")?;
    for (pack, position) in packs.iter().zip(&case.positions) {
        let path = format!("packs.{}", position.id);
        count(&path, pack.len(), 0, SIZES, "shims")?;
        shims(&path, pack.iter().copied())?;
    }
    Ok(())
}

/// Checks thicknesses.
pub(crate) fn shims(
    path: &str,
    thicknesses: impl Iterator<Item = Decimal>,
) -> Result<(), CaseError> {
    for (index, found) in thicknesses.enumerate() {
        thickness(&format!("{path}[{index}]"), found)?;
    }
    Ok(())
}

fn thickness(path: &str, found: Decimal) -> Result<(), CaseError> {
    above_zero(path, found)?;
    range(path, found, Decimal::ZERO, THICKEST)?;
    if found.normalize().scale() > THICKNESS_PLACES {
        let fault = Fault::TooFine { found, places: THICKNESS_PLACES };
        return Err(CaseError::new(path, fault));
    }
    Ok(())
}

fn sign(path: &str, found: i8) -> Result<(), CaseError> {
    if (-1..=1).contains(&found) {
        Ok(())
    } else {
        Err(CaseError::new(path, Fault::Sign { found }))
    }
}

fn above_zero(path: &str, found: Decimal) -> Result<(), CaseError> {
    if found > Decimal::ZERO {
        Ok(())
    } else {
        Err(CaseError::new(path, Fault::NotAboveZero { found }))
    }
}

fn not_below_zero(path: &str, found: Decimal) -> Result<(), CaseError> {
    if found >= Decimal::ZERO {
        Ok(())
    } else {
        Err(CaseError::new(path, Fault::BelowZero { found }))
    }
}

fn range(path: &str, found: Decimal, least: Decimal, most: Decimal) -> Result<(), CaseError> {
    if (least..=most).contains(&found) {
        Ok(())
    } else {
        Err(CaseError::new(path, Fault::OutOfRange { found, least, most }))
    }
}

fn count(
    path: &str,
    found: usize,
    least: usize,
    most: usize,
    what: &'static str,
) -> Result<(), CaseError> {
    if (least..=most).contains(&found) {
        Ok(())
    } else {
        Err(CaseError::new(path, Fault::Count { found, least, most, what }))
    }
}

/// Checks that no id stands twice; `field` is the part of an item's path that holds its id.
fn distinct<'a>(
    path: &str,
    field: &str,
    ids: impl Iterator<Item = &'a str>,
) -> Result<(), CaseError> {
    let mut seen = BTreeSet::new();
    for (index, id) in ids.enumerate() {
        if !seen.insert(id) {
            let fault = Fault::Twice { id: id.to_owned() };
            return Err(CaseError::new(format!("{path}[{index}]{field}"), fault));
        }
    }
    Ok(())
}

fn one_of<'a>(
    path: &str,
    id: &str,
    known: impl Iterator<Item = &'a str> + Clone,
) -> Result<(), CaseError> {
    if known.clone().any(|other| other == id) {
        return Ok(());
    }
    let known = known.map(str::to_owned).collect();
    Err(CaseError::new(path, Fault::Unknown { id: id.to_owned(), known }))
}
