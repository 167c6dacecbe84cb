//! From sheet, tin and job to a case for the set-up engine.

use std::collections::{BTreeMap, BTreeSet};
use words::{say, t};

use gearing::Influence;
use gearing::advice::Prediction;
use gearing::case::{Arm, Case, CheckKind, Trial};
use measure::{Decimal, real, round};

use crate::reading::step;
use crate::stale::is_on_these_parts;
use crate::{
    Check, Field, Job, Missing, Position, Reading, Sheet, Slot, Tin, plan, sheet::listed,
    tin::MAX_SHIMS,
};

/// A case, and what its positions and checks stand for.
#[derive(Clone, Debug)]
pub(crate) struct Bridge {
    pub case: Case,
    pub positions: Vec<Position>,
    pub checks: Vec<Check>,
}

/// Why there is no case.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum Blocked {
    /// The sheet lacks fields.
    Sheet(Vec<Missing>),
    /// The packs that lie here are not written down.
    Packs(Vec<Slot>),
    /// The arm is on the propshaft and the two gears turn it differently.
    Arm,
}

/// The packs between two changes, and what was read on them.
#[derive(Clone, Debug, Default)]
pub(crate) struct Build<'a> {
    /// The packs; a place is missing while its pack is not known.
    pub packs: BTreeMap<Slot, Vec<Decimal>>,
    /// The last series of each check.
    pub readings: BTreeMap<Check, &'a Reading>,
}

/// The builds of a job, oldest first; the last is what lies in the case now.
///
/// A reading that new parts took the ground from belongs to none.
pub(crate) fn builds<'a>(job: &'a Job, sheet: &Sheet) -> Vec<Build<'a>> {
    let mut build = Build::default();
    for (slot, fit) in &job.found {
        build.packs.insert(*slot, fit.nets());
    }
    let (mut done, mut fits) = (Vec::new(), job.fits.iter().peekable());
    let counts = |reading: &&Reading| is_on_these_parts(job, sheet, reading);
    let mut readings = job.readings.iter().filter(counts).peekable();
    loop {
        let next_fit = fits.peek().map_or(usize::MAX, |fit| fit.order);
        if let Some(reading) = readings.next_if(|reading| reading.order < next_fit) {
            build.readings.insert(reading.check, reading);
        } else if let Some(fit) = fits.next() {
            if !build.readings.is_empty() {
                let packs = build.packs.clone();
                done.push(std::mem::replace(&mut build, Build { packs, ..Build::default() }));
            }
            build.packs.insert(fit.slot, fit.nets());
        } else {
            done.push(build);
            return done;
        }
    }
}

impl Bridge {
    /// The case of all builds, with those checks that are in `checks`.
    pub fn of(job: &Job, sheet: &Sheet, tin: &Tin, checks: &[Check]) -> Result<Bridge, Blocked> {
        let positions = sheet.positions();
        let is_asked = |check: &Check| {
            sheet.missing(*check).is_none() && positions.iter().any(|it| it.moves(*check))
        };
        let checks: Vec<Check> = checks.iter().copied().filter(is_asked).collect();
        let missing: Vec<Missing> = sheet
            .checks()
            .into_iter()
            .filter(|check| matches!(check, Check::Depth | Check::Lash(_)))
            .filter_map(|check| sheet.missing(check))
            .collect();
        if !missing.is_empty() || checks.is_empty() {
            return Err(Blocked::Sheet(missing));
        }
        let moves_one = |position: &Position| checks.iter().any(|check| position.moves(*check));
        let positions: Vec<Position> = positions.into_iter().filter(moves_one).collect();
        let unknown: Vec<Slot> = positions
            .iter()
            .map(|position| position.slot)
            .filter(|slot| job.pack(*slot).is_none())
            .collect();
        if !unknown.is_empty() {
            return Err(Blocked::Packs(unknown));
        }
        let arm = common_arm(sheet, &checks)?;
        let gears = sheet.gears().ok_or_else(|| Blocked::Sheet(Vec::new()))?;
        let trials: Vec<Trial> = builds(job, sheet)
            .iter()
            .filter_map(|build| trial(build, sheet, &positions, &checks, &arm))
            .collect();
        let here = |ids: &[&str]| {
            let is_here = |id: &&&str| positions.iter().any(|position| position.id == **id);
            ids.iter().filter(is_here).map(|id| (*id).to_owned()).collect()
        };
        let held = positions.iter().filter(|position| job.held.contains(&position.slot));
        let frozen = held.map(|position| position.id.to_owned()).collect();
        let case = Case {
            gears,
            positions: positions
                .iter()
                .map(|position| {
                    let (mesh_sign, setting_sign) = sheet.signs(position);
                    gearing::case::Position {
                        id: position.id.to_owned(),
                        moves: position.member(),
                        mesh_sign,
                        setting_sign,
                        family: position.family.to_owned(),
                        open_minutes: position.open_minutes,
                        after: here(position.facts.after),
                    }
                })
                .collect(),
            checks: checks
                .iter()
                .filter_map(|check| engine_check(*check, job, sheet, &positions))
                .collect(),
            arm,
            stock: tin.side(sheet.is_invented()).stock(),
            max_shims: MAX_SHIMS,
            trials,
            frozen,
        };
        Ok(Bridge { case, positions, checks })
    }

    /// The same case as it stood before the last build was read; `None` for the first build.
    pub fn before_last(&self) -> Option<Case> {
        let (_, before) = self.case.trials.split_last()?;
        if before.is_empty() {
            return None;
        }
        Some(Case { trials: before.to_vec(), ..self.case.clone() })
    }

    /// What each gauge was to read in the build that lies in the case now, before it was read.
    pub fn predictions(&self) -> BTreeMap<Check, Prediction> {
        let predicted = self
            .before_last()
            .zip(self.case.trials.last())
            .and_then(|(case, trial)| gearing::predict(&case, &trial.packs).ok())
            .unwrap_or_default();
        let named = self.checks.iter().copied().zip(predicted);
        named.filter_map(|(check, prediction)| Some((check, prediction?))).collect()
    }

    /// How each pack moves each reading.
    pub fn influences(&self) -> Vec<(Slot, Check, Influence)> {
        let named = |influence: Influence| {
            let position = self.positions.get(influence.position)?;
            Some((position.slot, *self.checks.get(influence.check)?, influence))
        };
        let influences = gearing::influences(&self.case).unwrap_or_default();
        influences.into_iter().filter_map(named).collect()
    }

    /// Where a pack stands in the case.
    pub fn place_of(&self, slot: Slot) -> Option<usize> {
        self.positions.iter().position(|position| position.slot == slot)
    }
}

/// One arm for all: readings on others are carried to it.
fn common_arm(sheet: &Sheet, checks: &[Check]) -> Result<Arm, Blocked> {
    let lashes: Vec<Check> = checks.iter().copied().filter(|check| check.has_arm()).collect();
    // Without a backlash the arm is not used; the engine wants one all the same.
    let all = || plan::checks(sheet.layout()).iter().copied().find(|check| check.has_arm());
    let first = lashes.first().copied().or_else(all);
    let arm = first.and_then(|first| sheet.arm(first)).ok_or_else(|| Blocked::Sheet(Vec::new()))?;
    let on_propshaft = arm.on != gearing::case::Shaft::Pinion;
    let ratios: BTreeSet<_> = lashes.iter().map(|check| sheet.ratio(*check)).collect();
    if on_propshaft && ratios.len() > 1 { Err(Blocked::Arm) } else { Ok(arm) }
}

fn trial(
    build: &Build,
    sheet: &Sheet,
    positions: &[Position],
    checks: &[Check],
    arm: &Arm,
) -> Option<Trial> {
    let packs: Option<Vec<_>> =
        positions.iter().map(|position| build.packs.get(&position.slot).cloned()).collect();
    let series = |check: &Check| {
        let reading = build.readings.get(check);
        reading.and_then(|reading| reading.carried(sheet, Some(arm))).unwrap_or_default()
    };
    Some(Trial { packs: packs?, readings: checks.iter().map(series).collect() })
}

fn engine_check(
    check: Check,
    job: &Job,
    sheet: &Sheet,
    positions: &[Position],
) -> Option<gearing::case::Check> {
    let band = sheet.band(check)?;
    let kind = match check {
        Check::Depth => {
            CheckKind::DepthGap { from_behind: sheet.word(Field::DepthSide) == Some("behind") }
        }
        Check::Torque => return None,
        Check::Lash(_) => CheckKind::Backlash {
            mesh: check.gear()?.to_owned(),
            band_at: Some(sheet.sheet_arm(check)?),
        },
        Check::Setting(_) => CheckKind::EndPlay {
            positions: positions
                .iter()
                .filter(|position| position.moves(check))
                .map(|position| position.id.to_owned())
                .collect(),
        },
    };
    // A step of a gauge is a rectangular spread: step/√12, as the golden jobs round it.
    let sigma =
        job.last_reading(check).and_then(|reading| step(check, &reading.values)).and_then(|step| {
            let sigma = real::from_decimal(step) / 12f64.sqrt();
            real::to_decimal(sigma, 9)
        });
    let aim = Some(band.aim()).filter(|_| !check.has_arm()).map(|aim| round(aim, 9));
    Some(gearing::case::Check {
        id: check.id().to_owned(),
        kind,
        low: band.low(),
        high: band.high(),
        aim,
        sigma,
    })
}

impl Blocked {
    /// What is in the way and what to do.
    pub fn sentence(&self) -> String {
        match self {
            Blocked::Sheet(missing) => match missing.first() {
                Some(missing) => missing.sentence.clone(),
                None => t("The unit sheet is empty. Type the limits of your manual.").to_owned(),
            },
            Blocked::Packs(slots) => {
                let tags: Vec<&str> = slots.iter().map(|slot| slot.tag()).collect();
                let packs = listed(&tags);
                match tags.len() {
                    1 => say!("Not written down: pack {packs}. Measure what lies there."),
                    _ => say!("Not written down: packs {packs}. Measure what lies there."),
                }
            }
            Blocked::Arm => {
                t("The arm is on the propshaft and the gears have different teeth. Put \
                             the arm on the driveshaft.")
                .to_owned()
            }
        }
    }
}
