//! Checks that no thickness whatever brings into band together.

use measure::{Decimal, real};

use crate::advice::Conflict;
use crate::case::Case;
use crate::linear::{Row, least_miss};
use crate::model::Model;
use crate::reading_model::ReadingModel;

/// Less than this is no miss, mm.
const NO_MISS: f64 = 1e-9;
/// Cost of leaving the side of zero that an end play is supposed to be on.
const FORBIDDEN: f64 = 1e4;

/// The smallest sets of checks that cannot hold together; empty if all can.
pub(crate) fn conflicts(case: &Case, model: &Model) -> Vec<Conflict> {
    let checks: Vec<usize> = (0..model.readings.len()).collect();
    if excess(case, model, &checks) < NO_MISS {
        return Vec::new();
    }
    for size in 1..=checks.len() {
        let mut found = Vec::new();
        for mask in (0_u32..1 << checks.len()).filter(|mask| mask.count_ones() as usize == size) {
            let set: Vec<usize> =
                checks.iter().copied().filter(|check| mask & (1 << check) != 0).collect();
            let excess = excess(case, model, &set);
            if excess >= NO_MISS {
                found.push(Conflict { checks: set, excess });
            }
        }
        if !found.is_empty() {
            return found;
        }
    }
    Vec::new()
}

/// The least total miss of some checks over all thicknesses.
///
/// A trapped gear moves differently with play and with preload, so each side of zero is a
/// programme of its own.
fn excess(case: &Case, model: &Model, checks: &[usize]) -> f64 {
    let trapped = checks.iter().filter(|&&check| trapped(model, check)).count();
    let sides = 0_u32..1 << trapped;
    sides.map(|sides| least_miss(&rows(case, model, checks, sides))).fold(f64::INFINITY, f64::min)
}

fn trapped(model: &Model, check: usize) -> bool {
    let reading = model.readings.get(check).and_then(Option::as_ref);
    reading.is_some_and(|reading| reading.trapped.is_some())
}

/// The readings as linear functions of the totals; `sides` has a bit for each trapped gear that is
/// preloaded.
fn rows(case: &Case, model: &Model, checks: &[usize], sides: u32) -> Vec<Row> {
    let last: Vec<f64> = model.last.iter().map(|pack| total(pack)).collect();
    let frozen: Vec<bool> =
        case.positions.iter().map(|position| case.frozen.contains(&position.id)).collect();
    // Slopes and the constant of a reading at totals of 0, frozen packs staying as they are.
    let place = |slopes: &mut Vec<f64>, level: f64| {
        let mut constant = level;
        for ((slope, last), frozen) in slopes.iter_mut().zip(&last).zip(&frozen) {
            if *frozen {
                *slope = 0.0;
            } else {
                constant -= *slope * last;
            }
        }
        constant
    };
    let mut rows = Vec::new();
    let mut gear = 0;
    for &check in checks {
        let Some((reading, band)) =
            model.readings.get(check).and_then(Option::as_ref).zip(model.bands.get(check))
        else {
            continue;
        };
        let preloaded = reading.trapped.is_some() && {
            gear += 1;
            sides & (1 << (gear - 1)) != 0
        };
        let (mut slopes, level) = linear(reading, case.positions.len(), preloaded);
        let constant = place(&mut slopes, level);
        let [low, high] = [band.low(), band.high()].map(real::from_decimal);
        rows.push(Row { slopes, constant, low, high, cost: 1.0 });
        if let Some(trapped) = &reading.trapped {
            let mut slopes = vec![0.0; case.positions.len()];
            for effect in &trapped.effects {
                add(&mut slopes, effect.position, effect.slope);
            }
            let constant = place(&mut slopes, trapped.level);
            let (low, high) =
                if preloaded { (f64::NEG_INFINITY, 0.0) } else { (0.0, f64::INFINITY) };
            rows.push(Row { slopes, constant, low, high, cost: FORBIDDEN });
        }
    }
    rows
}

/// Slopes and level of a reading on one side of zero end play.
fn linear(reading: &ReadingModel, positions: usize, preloaded: bool) -> (Vec<f64>, f64) {
    let mut slopes = vec![0.0; positions];
    let mut level = reading.level;
    for slope in &reading.slopes {
        let position = slope.formula.position;
        add(&mut slopes, position, slope.mean);
        if let Some(trapped) = reading.trapped.as_ref().filter(|t| t.behind == position) {
            // Travel is the pack's change less half of what the preload grows.
            level += slope.mean * (-trapped.level).max(0.0) / 2.0;
            if preloaded {
                level += slope.mean * trapped.level / 2.0;
                for effect in &trapped.effects {
                    add(&mut slopes, effect.position, slope.mean * effect.slope / 2.0);
                }
            }
        }
    }
    (slopes, level)
}

fn add(slopes: &mut [f64], position: usize, slope: f64) {
    if let Some(cell) = slopes.get_mut(position) {
        *cell += slope;
    }
}

fn total(pack: &[Decimal]) -> f64 {
    real::from_decimal(pack.iter().sum())
}
