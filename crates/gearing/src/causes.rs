//! Why readings may differ from what was predicted, ranked by how well each explains all of them.

use std::f64::consts::{LN_2, TAU};

use measure::{Decimal, Series, normal, real};

use crate::advice::{Alarm, Cause, CauseKind, Prediction};
use crate::case::{Case, Check, CheckKind, Trial};
use crate::case_error::CaseError;
use crate::model::{Model, loose_high};
use crate::reading_model::ReadingModel;
use crate::search::positions;

/// Readings this many standard deviations off are no chance.
const SURPRISE: f64 = 3.0;
/// Factors of unit and decimal slips: written over true.
const SLIPS: [f64; 6] = [25.4, 1.0 / 25.4, 10.0, 0.1, 2.54, 1.0 / 2.54];
/// What dirt or a race that is not seated adds to a pack, mm: 0.02 to 0.15.
const DIRT: std::ops::RangeInclusive<u32> = 2..=15;

/// How far from an end play a reading may be off and still be about it: a part of that end play.
const ABOUT: f64 = 0.2;

/// Alarms if the last trial's readings are not what the trials before it predicted.
pub(crate) fn surprise(case: &Case) -> Result<Vec<Alarm>, CaseError> {
    let Some((last, before)) = case.trials.split_last().filter(|(_, before)| !before.is_empty())
    else {
        return Ok(Vec::new());
    };
    let scene = Scene::of(case, Model::from_trials(case, before)?, last);
    let predicted = scene.model.predict_change(&scene.change, scene.changed);
    let off: Vec<Option<f64>> = predicted
        .iter()
        .zip(&scene.seen)
        .map(|(prediction, seen)| {
            let (prediction, seen) = ((*prediction)?, (*seen)?);
            let off = (seen.value - prediction.mean) / prediction.sigma;
            Some(if seen.bottomed { off.min(0.0) } else { off })
        })
        .collect();
    if !off.iter().flatten().any(|off| off.abs() > SURPRISE) {
        return Ok(Vec::new());
    }
    let mut alarms = scene.not_loaded(case, &predicted);
    alarms.insert(0, Alarm::Surprise { off, causes: scene.causes(case, last) });
    Ok(alarms)
}

/// A build as it was planned, and what was read in it.
struct Scene {
    model: Model,
    /// Planned changes of the packs, mm.
    change: Vec<f64>,
    /// Positions whose pack was to change.
    changed: u16,
    /// What was read.
    seen: Vec<Option<Seen>>,
}

/// The mean of one check's last readings.
#[derive(Clone, Copy)]
struct Seen {
    /// Mean, mm.
    value: f64,
    /// Free movement that reads none: the parts touch, and would be anywhere below.
    bottomed: bool,
}

impl Scene {
    fn of(case: &Case, model: Model, last: &Trial) -> Scene {
        let (change, changed) = model.change(&last.packs);
        let mean = |(series, check): (&Vec<Decimal>, &Check)| {
            let mean = Series::new(series.clone()).ok()?.mean();
            let free = loose_high(&check.kind) && check.high > Decimal::ZERO;
            let bottomed = free && mean <= Decimal::ZERO;
            Some(Seen { value: real::from_decimal(mean), bottomed })
        };
        let seen = last.readings.iter().zip(&case.checks).map(mean).collect();
        Scene { model, change, changed, seen }
    }

    /// All causes tried, likeliest first.
    fn causes(&self, case: &Case, last: &Trial) -> Vec<Cause> {
        let mut tried: Vec<(CauseKind, f64)> = Vec::new();
        let planned = &self.change;
        let mut other_packs = |kind: CauseKind, change: &[f64]| {
            tried.push((kind, self.likelihood(change, &[])));
        };
        other_packs(CauseKind::AsPlanned, planned);
        for position in positions(self.changed) {
            let own = planned.get(position).copied().unwrap_or(0.0);
            other_packs(CauseKind::OtherSign { position }, &with(planned, position, -own));
            other_packs(CauseKind::NotChanged { position }, &with(planned, position, 0.0));
            for thickness in distinct(last.packs.get(position)) {
                let short = own - real::from_decimal(thickness);
                let kind = CauseKind::ShimMissing { position, thickness };
                other_packs(kind, &with(planned, position, short));
            }
            for other in positions(self.changed).filter(|&other| other > position) {
                let kind = CauseKind::Swapped { first: position, second: other };
                other_packs(kind, &self.swapped(last, position, other));
            }
        }
        for position in 0..case.positions.len() {
            let own = planned.get(position).copied().unwrap_or(0.0);
            let with_dirt: Vec<f64> = DIRT
                .map(|dirt| with(planned, position, own + f64::from(dirt) / 100.0))
                .map(|change| self.likelihood(&change, &[]))
                .collect();
            tried.push((CauseKind::NotSeated { position }, log_mean(&with_dirt)));
        }
        for check in 0..case.checks.len() {
            for factor in SLIPS {
                let likelihood = self.likelihood(planned, &[(check, factor)]);
                tried.push((CauseKind::Slip { check, factor }, likelihood));
            }
        }
        for inverse in [false, true] {
            let factors = other_shaft(case, inverse);
            if let Some(&(_, factor)) = factors.first() {
                let likelihood = self.likelihood(planned, &factors);
                tried.push((CauseKind::OtherShaft { factor }, likelihood));
            }
        }
        ranked(tried)
    }

    /// Readings that are off by about what an end play lets their member move. Model R1 does not
    /// weigh this cause against the others, so it stands beside them.
    fn not_loaded(&self, case: &Case, predicted: &[Option<Prediction>]) -> Vec<Alarm> {
        let plays = case.checks.iter().enumerate().filter_map(|(play, check)| {
            let seen = self.seen.get(play).copied().flatten().map(|seen| seen.value);
            let read = matches!(check.kind, CheckKind::EndPlay { .. });
            Some((play, seen.filter(|seen| read && *seen > 0.0)?))
        });
        let mut alarms = Vec::new();
        for (play, end_play) in plays {
            for (check, (prediction, seen)) in predicted.iter().zip(&self.seen).enumerate() {
                let Some((prediction, seen)) = prediction.zip(*seen) else { continue };
                let off = (seen.value - prediction.mean).abs();
                let fits = positions(self.shared(check, play)).any(|position| {
                    let moves = end_play * self.slope(check, position).abs();
                    (off - moves).abs() <= 2.0 * prediction.sigma + ABOUT * moves
                });
                if check != play && off > SURPRISE * prediction.sigma && fits {
                    alarms.push(Alarm::NotLoaded { check, play });
                }
            }
        }
        alarms
    }

    /// Positions that change both of two checks.
    fn shared(&self, check: usize, other: usize) -> u16 {
        let scope = |check: usize| {
            let reading = self.model.readings.get(check).and_then(Option::as_ref);
            reading.map_or(0, ReadingModel::scope)
        };
        scope(check) & scope(other)
    }

    fn slope(&self, check: usize, position: usize) -> f64 {
        let reading = self.model.readings.get(check).and_then(Option::as_ref);
        reading.map_or(0.0, |reading| reading.slope_at(&self.change, position))
    }

    /// Changes with the packs of two positions fitted the other way round.
    fn swapped(&self, last: &Trial, first: usize, second: usize) -> Vec<f64> {
        let total = |packs: &[Vec<Decimal>], position: usize| -> Decimal {
            packs.get(position).map_or(Decimal::ZERO, |pack| pack.iter().sum())
        };
        let of = |position: usize, other: usize| {
            real::from_decimal(total(&last.packs, other) - total(&self.model.last, position))
        };
        let change = with(&self.change, first, of(first, second));
        with(&change, second, of(second, first))
    }

    /// Logarithm of the likelihood of the readings; some of them written as a factor times the true
    /// value.
    fn likelihood(&self, change: &[f64], factors: &[(usize, f64)]) -> f64 {
        let predicted = self.model.predict_change(change, self.changed);
        let each = predicted.iter().zip(&self.seen).enumerate();
        let likelihoods = each.filter_map(|(check, (prediction, seen))| {
            let (prediction, seen) = ((*prediction)?, (*seen)?);
            let factor = factors.iter().find(|(of, _)| *of == check).map_or(1.0, |(_, f)| *f);
            let off = (seen.value / factor - prediction.mean) / prediction.sigma;
            if seen.bottomed {
                return Some(log_below(off));
            }
            Some(-off * off / 2.0 - (prediction.sigma * TAU.sqrt() * factor).ln())
        });
        likelihoods.sum()
    }
}

/// The factor on each backlash reading if the arm is on the other shaft than stated.
fn other_shaft(case: &Case, inverse: bool) -> Vec<(usize, f64)> {
    let ratio = |mesh: &str| {
        let gear = case.gears.driven.iter().find(|gear| gear.id == mesh)?;
        Some(f64::from(gear.teeth) / f64::from(case.gears.pinion_teeth))
    };
    let factor = |(check, kind): (usize, &CheckKind)| match kind {
        CheckKind::Backlash { mesh, .. } => {
            let ratio = ratio(mesh)?;
            Some((check, if inverse { 1.0 / ratio } else { ratio }))
        }
        _ => None,
    };
    case.checks.iter().map(|check| &check.kind).enumerate().filter_map(factor).collect()
}

/// Likeliest first, each with its share; a wrong sign comes first where no other cause is more than
/// twice as likely.
fn ranked(tried: Vec<(CauseKind, f64)>) -> Vec<Cause> {
    let top = tried.iter().map(|(_, log)| *log).fold(f64::NEG_INFINITY, f64::max);
    let sum: f64 = tried.iter().map(|(_, log)| (log - top).exp()).sum();
    let mut causes: Vec<Cause> = tried
        .into_iter()
        .map(|(kind, log_likelihood)| {
            let share = (log_likelihood - top).exp() / sum;
            Cause { kind, log_likelihood, share }
        })
        .collect();
    causes.sort_by(|a, b| b.log_likelihood.total_cmp(&a.log_likelihood));
    let sign = |cause: &Cause| {
        let as_likely = cause.log_likelihood >= top - LN_2;
        as_likely && matches!(cause.kind, CauseKind::OtherSign { .. })
    };
    // A shim left out can look like a wrong sign; the sign is the worse of the two to overlook.
    if let Some(sign) = causes.iter().position(sign) {
        causes.get_mut(..=sign).unwrap_or_default().rotate_right(1);
    }
    causes
}

/// Logarithm of the mean of likelihoods given by their logarithms.
fn log_mean(logs: &[f64]) -> f64 {
    let top = logs.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let sum: f64 = logs.iter().map(|log| (log - top).exp()).sum();
    top + (sum / logs.len() as f64).ln()
}

/// Logarithm of the probability that a standard normal value is at or below `z`.
fn log_below(z: f64) -> f64 {
    // Farther out the probability is too small to be held, and its first term is enough.
    if z > -37.0 { normal::cdf(z).ln() } else { -z * z / 2.0 - (-z * TAU.sqrt()).ln() }
}

/// Changes with another one at a position.
fn with(change: &[f64], position: usize, value: f64) -> Vec<f64> {
    let mut change = change.to_vec();
    if let Some(cell) = change.get_mut(position) {
        *cell = value;
    }
    change
}

/// The different thicknesses of a pack.
fn distinct(pack: Option<&Vec<Decimal>>) -> Vec<Decimal> {
    let mut sizes = pack.cloned().unwrap_or_default();
    sizes.sort();
    sizes.dedup();
    sizes
}
