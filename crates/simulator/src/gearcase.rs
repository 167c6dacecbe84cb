//! A virtual gearcase: what is known of it, and the truth that only the gauges show.
//!
//! The truth follows what is known of real ones, never what makes a figure pass:
//!
//! | what | how it is drawn | from |
//! |---|---|---|
//! | slope of a backlash | the formula, off by 5 % for a gear position and 10 % for a pinion position (standard deviations, each slope on its own) | mesh model: ±5 % and ±15 % at worst |
//! | tan α_n / cos β, where the sheet has no angles | evenly from 0.36 to 0.57 | 20°, straight, to 25°, 35° |
//! | slope of depth and end play | exact | |
//! | seating again | 0.010 mm in backlash, 0.005 mm in others, once for each build | common practice, no source |
//! | one reading | 0.008 mm in backlash, 0.005 mm in others, rounded to 0.01 mm; four backlash readings, three of others | common practice, no source |
//! | a shim | 0.0015 mm off what was measured, and all of them together 0.0005 mm: the micrometer's zero | common practice, no source |
//!
//! Arm radius and indicator angle are the same in every build and left out.

use gearing::bevel;
use gearing::case::{Case, Check, CheckKind, Member, Position, Trial};
use gearing::layout::Layout;
use measure::{Decimal, real};

use crate::dice::Dice;
use crate::fault::Fault;
use crate::sheet::{Geometry, Sheet, put};
use crate::unit::places;

/// Relative standard deviation of the true slope of a gear position.
const GEAR_SPREAD: f64 = 0.05;
/// The same of a pinion position.
const PINION_SPREAD: f64 = 0.10;
/// What tan α_n / cos β can be where the angles are not known.
const TANGENTS: [f64; 2] = [0.36, 0.57];
/// Standard deviation of one shim's measurement, mm.
const SHIM_SPREAD: f64 = 0.0015;
/// Standard deviation of the micrometer's zero, mm.
const ZERO_SPREAD: f64 = 0.0005;
/// Least backlash or end play a first build starts with, mm.
const LEAST_START: f64 = 0.03;

/// A virtual gearcase.
#[derive(Clone, Debug)]
pub struct Gearcase {
    /// What is known before the first build; the packs it comes with are not in the tin.
    pub known: Case,
    /// The packs it comes with.
    pub found: Vec<Vec<Decimal>>,
    /// Readings with the packs as found, mm.
    levels: Vec<f64>,
    /// True slopes of each check for each position.
    slopes: Vec<Vec<f64>>,
    /// The gear that lies between two packs: its check, the position behind it, the end play.
    trapped: Option<Trapped>,
    /// How thick each shim is beyond what was measured, mm.
    shims: Vec<(String, Decimal, f64)>,
}

/// A gear held between two packs.
#[derive(Clone, Copy, Debug)]
struct Trapped {
    lash: usize,
    behind: usize,
    play: usize,
}

impl Gearcase {
    /// Draws a gearcase of a layout.
    pub fn draw(layout: &Layout, geometry: Geometry, dice: &mut Dice) -> Gearcase {
        let Sheet { case, found, starts } = Sheet::draw(layout, places(layout), geometry, dice);
        let angles = case.gears.normal_pressure_angle.zip(case.gears.spiral_angle);
        let tangent = match angles.map(|(a, b)| (real::from_decimal(a), real::from_decimal(b))) {
            Some((normal, spiral)) => bevel::tangent(normal, spiral),
            None => dice.between(TANGENTS[0], TANGENTS[1]),
        };
        let slopes =
            (0..case.checks.len()).map(|check| slopes(&case, check, tangent, dice)).collect();
        let level = |(check, off): (&Check, &f64)| {
            let level = check.aim.map_or(0.0, real::from_decimal) + off;
            if matches!(check.kind, CheckKind::DepthGap { .. }) {
                level
            } else {
                level.max(LEAST_START)
            }
        };
        let levels = case.checks.iter().zip(&starts).map(level).collect();
        let zero = dice.normal(ZERO_SPREAD);
        let mut shims = Vec::new();
        let mut measure = |family: &str, thickness: Decimal| {
            shims.push((family.to_owned(), thickness, zero + dice.normal(SHIM_SPREAD)));
        };
        for (position, pack) in case.positions.iter().zip(&found) {
            pack.iter().for_each(|shim| measure(&position.family, *shim));
        }
        for line in &case.stock {
            measure(&line.family, line.thickness);
        }
        let trapped = trapped(&case);
        Gearcase { known: case, found, levels, slopes, trapped, shims }
    }

    /// What is known after some dry builds: every shim that is not in the last one's packs is in the
    /// tin.
    pub fn case(&self, trials: &[Trial]) -> Case {
        let mut case = Case { trials: trials.to_vec(), ..self.known.clone() };
        let Some(last) = trials.last() else { return case };
        for ((position, found), pack) in case.positions.iter().zip(&self.found).zip(&last.packs) {
            found.iter().for_each(|shim| put(&mut case.stock, &position.family, *shim, 1));
            pack.iter().for_each(|shim| put(&mut case.stock, &position.family, *shim, -1));
        }
        case
    }

    /// Builds it dry with these packs and reads every gauge.
    pub fn build(&self, packs: &[Vec<Decimal>], fault: Option<Fault>, dice: &mut Dice) -> Trial {
        let [totals, found] = [packs, &self.found].map(|packs| self.totals(packs));
        let mut change: Vec<f64> =
            totals.iter().zip(&found).map(|(now, then)| now - then).collect();
        if let Some(fault) = fault {
            fault.disturb(&mut change, &totals, &found);
        }
        let read = |(index, check): (usize, &Check)| {
            let (seat, scatter, count) = match check.kind {
                CheckKind::Backlash { .. } => (0.010, 0.008, 4),
                _ => (0.005, 0.005, 3),
            };
            let value = self.truth(index, &change) + dice.normal(seat);
            // A gauge that measures free movement shows none where there is none.
            let least = match check.kind {
                CheckKind::DepthGap { .. } => f64::NEG_INFINITY,
                _ => 0.0,
            };
            let mut once = || real::to_decimal((value + dice.normal(scatter)).max(least), 2);
            (0..count).filter_map(|_| once()).collect()
        };
        let readings = self.known.checks.iter().enumerate().map(read).collect();
        Trial { packs: packs.to_vec(), readings }
    }

    /// What a check truly is after these changes of the packs as found, mm.
    fn truth(&self, check: usize, change: &[f64]) -> f64 {
        let level = self.levels.get(check).copied().unwrap_or(0.0);
        let slopes = self.slopes.get(check).map_or(&[][..], Vec::as_slice);
        let moved: f64 = slopes.iter().zip(change).map(|(slope, change)| slope * change).sum();
        let shared = self.trapped.filter(|trapped| trapped.lash == check).map_or(0.0, |trapped| {
            // Under preload each side takes half of it: the gear comes back by that much.
            let half = (-self.truth(trapped.play, change)).max(0.0) / 2.0;
            -half * slopes.get(trapped.behind).copied().unwrap_or(0.0)
        });
        level + moved + shared
    }

    /// How thick the packs truly are, mm.
    fn totals(&self, packs: &[Vec<Decimal>]) -> Vec<f64> {
        let pack = |(position, pack): (&Position, &Vec<Decimal>)| {
            let shim = |shim: &Decimal| {
                let same = |(family, thickness, _): &&(String, Decimal, f64)| {
                    *family == position.family && thickness == shim
                };
                real::from_decimal(*shim) + self.shims.iter().find(same).map_or(0.0, |shim| shim.2)
            };
            pack.iter().map(shim).sum()
        };
        self.known.positions.iter().zip(packs).map(pack).collect()
    }
}

/// The true slope of a check for each position.
fn slopes(case: &Case, check: usize, tangent: f64, dice: &mut Dice) -> Vec<f64> {
    let Some(check) = case.checks.get(check) else { return Vec::new() };
    let trap = trapped(case);
    // The arm is on the pinion shaft.
    let [arm, radius] = [case.arm.radius, case.gears.pinion_pitch_radius].map(real::from_decimal);
    let lever = arm / radius;
    let slope = |position: &Position| {
        let (mesh, setting) = (f64::from(position.mesh_sign), f64::from(position.setting_sign));
        match (&check.kind, &position.moves) {
            (CheckKind::DepthGap { .. }, Member::Pinion) => -mesh,
            (CheckKind::EndPlay { positions }, _) if positions.contains(&position.id) => -setting,
            (CheckKind::Backlash { mesh: id, .. }, moves) => {
                let angles = pitch_angles(case, id);
                let (angle, spread) = match moves {
                    Member::Pinion => (angles.pinion, PINION_SPREAD),
                    Member::Driven(gear) if gear == id => (angles.gear, GEAR_SPREAD),
                    _ => return 0.0,
                };
                // While there is play the gear lies on the race behind it.
                if trap.is_some() && mesh < 0.0 && *moves != Member::Pinion {
                    return 0.0;
                }
                let slope = -mesh * bevel::lash_per_mm(tangent, angle) * lever;
                slope * (1.0 + dice.normal(spread))
            }
            _ => 0.0,
        }
    };
    case.positions.iter().map(slope).collect()
}

fn pitch_angles(case: &Case, mesh: &str) -> bevel::PitchAngles {
    bevel::pitch_angles(case.gears.pinion_teeth, teeth(case, mesh), 90.0)
}

fn teeth(case: &Case, id: &str) -> u32 {
    case.gears.driven.iter().find(|gear| gear.id == id).map_or(1, |gear| gear.teeth)
}

/// The gear with a pack behind it and one on its face side, both of which set the same end play.
fn trapped(case: &Case) -> Option<Trapped> {
    let on = |sign: i8| {
        case.positions.iter().position(|position| {
            position.setting_sign == 1
                && position.mesh_sign == sign
                && matches!(position.moves, Member::Driven(_))
        })
    };
    let (behind, _face) = on(1).zip(on(-1))?;
    let of =
        |wanted: fn(&CheckKind) -> bool| case.checks.iter().position(|check| wanted(&check.kind));
    Some(Trapped {
        lash: of(|kind| matches!(kind, CheckKind::Backlash { .. }))?,
        behind,
        play: of(|kind| matches!(kind, CheckKind::EndPlay { .. }))?,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The spreads of the mesh model against the closed formula: standard deviations of 5 % for a
    /// gear shim and 10 % for a pinion shim, as `tests/golden/README.md` R1.5 has them.
    #[test]
    fn true_slopes_lie_about_the_formula() {
        let layout = Layout::find("b").unwrap();
        let (mut pinion, mut gear) = (Vec::new(), Vec::new());
        for stream in 0..2000 {
            let gearcase = Gearcase::draw(layout, Geometry::Known, &mut Dice::new(3, stream));
            let first = gearcase.build(&gearcase.found, None, &mut Dice::new(4, stream));
            for influence in gearing::influences(&gearcase.case(&[first])).unwrap() {
                let truth = gearcase.slopes[influence.check][influence.position];
                let off = truth / influence.formula - 1.0;
                match (influence.check, influence.position) {
                    (0, _) => assert_eq!(off, 0.0),
                    (_, 0) => pinion.push(off),
                    _ => gear.push(off),
                }
            }
        }
        for (off, sigma) in [(pinion, PINION_SPREAD), (gear, GEAR_SPREAD)] {
            let of = off.len() as f64;
            let mean = off.iter().sum::<f64>() / of;
            let deviation = (off.iter().map(|off| off * off).sum::<f64>() / of).sqrt();
            assert_eq!(of, 4000.0);
            assert!(mean.abs() < 0.1 * sigma && (deviation / sigma - 1.0).abs() < 0.06);
        }
    }
}
