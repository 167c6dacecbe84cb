//! From trials to levels and slopes: Bayesian linear regression with the formula as the prior.
//!
//! The unknowns are one level for each check, at the packs of the last trial and with nothing known
//! beforehand, and every slope the formula does not give exactly. Each trial gives one row for each
//! check that was read.

use measure::{Decimal, Series, real};

use crate::case::{Case, Check, CheckKind, Trial};
use crate::effect::{Effect, effects, trap};
use crate::reading_model::{ReadingModel, Slope, Trapped};
use crate::solve::Square;

/// Scatter of backlash from seating the parts again, mm (common practice, no source).
const LASH_RESEAT: f64 = 0.010;
/// The same for depth and end play, mm.
const OTHER_RESEAT: f64 = 0.005;
/// Scatter of repeated backlash readings while none was repeated, mm.
const LASH_REPEAT: f64 = 0.008;
/// The same for depth and end play, mm.
const OTHER_REPEAT: f64 = 0.005;
/// Standard uncertainty of a gauge with 0.01 mm steps: step/√12.
pub(crate) const DEFAULT_GAUGE: f64 = 0.01 / 3.464_101_615_137_754_6;

/// What the trials teach about each check; `None` for a check that was never read.
///
/// `None` as a whole only if the arithmetic breaks down, which sound cases do not.
pub(crate) fn learn(case: &Case, trials: &[Trial]) -> Option<Vec<Option<ReadingModel>>> {
    let changes = changes(trials);
    let mut models = Vec::with_capacity(case.checks.len());
    for (index, check) in case.checks.iter().enumerate() {
        models.push(unlearned(case, trials, &changes, index, check));
    }
    let layout = Layout::of(&models);
    let mut information = layout.prior_information(&models)?;
    let mut vector = information.times(&layout.prior_mean(&models));
    for (index, model) in models.iter().enumerate() {
        let Some((model, start)) = model.as_ref().zip(layout.start(index)) else { continue };
        let noise = Noise::of(&case.checks, trials, index);
        for (series, change) in series(trials, index).zip(&changes) {
            let Some(series) = series else { continue };
            let row = model.row(change);
            let value = real::from_decimal(series.mean()) - model.exact_part(change);
            let weight = 1.0 / noise.variance(series.values().len());
            for (i, x) in row.iter().enumerate() {
                if let Some(cell) = vector.get_mut(start + i) {
                    *cell += x * value * weight;
                }
                for (j, other) in row.iter().enumerate() {
                    information.add(start + i, start + j, x * other * weight);
                }
            }
        }
    }
    let covariance = information.inverse()?;
    let mean = covariance.times(&vector);
    for (index, model) in models.iter_mut().enumerate() {
        if let Some((model, start)) = model.as_mut().zip(layout.start(index)) {
            model.learned(mean.get(start..)?, &covariance, start);
        }
    }
    Some(models)
}

/// Pack totals of each trial less those of the last one, mm.
fn changes(trials: &[Trial]) -> Vec<Vec<f64>> {
    let totals = |trial: &Trial| -> Vec<Decimal> {
        trial.packs.iter().map(|pack| pack.iter().sum()).collect()
    };
    let last = trials.last().map(totals).unwrap_or_default();
    let change = |trial: &Trial| {
        totals(trial).iter().zip(&last).map(|(t, last)| real::from_decimal(t - last)).collect()
    };
    trials.iter().map(change).collect()
}

/// The series of one check in each trial; `None` where it was not read.
fn series(trials: &[Trial], check: usize) -> impl Iterator<Item = Option<Series>> {
    trials
        .iter()
        .map(move |trial| Series::new(trial.readings.get(check).cloned().unwrap_or_default()).ok())
}

/// A check's model before learning; `None` if it was never read.
fn unlearned(
    case: &Case,
    trials: &[Trial],
    changes: &[Vec<f64>],
    index: usize,
    check: &Check,
) -> Option<ReadingModel> {
    let last_count = series(trials, index).flatten().last()?.values().len();
    let noise = Noise::of(&case.checks, trials, index);
    // No gauge reads a preload: what it will be is uncertain by the seating alone.
    let next = if check.high <= Decimal::ZERO {
        noise.reseat * noise.reseat
    } else {
        noise.variance(last_count)
    };
    let trapped = trap(case, &check.kind).and_then(|trap| {
        let setting = case.checks.get(trap.setting)?;
        let effects = effects(case, &setting.kind);
        let level = exact_level(case, trials, changes, trap.setting, &effects)?;
        Some(Trapped {
            behind: trap.behind,
            face: trap.face,
            level,
            effects,
            setting: trap.setting,
        })
    });
    let slopes = effects(case, &check.kind).into_iter().map(Slope::from).collect();
    Some(ReadingModel::new(slopes, trapped, next))
}

/// The level of a check whose slopes are all exact: the weighted mean of its readings.
fn exact_level(
    case: &Case,
    trials: &[Trial],
    changes: &[Vec<f64>],
    index: usize,
    effects: &[Effect],
) -> Option<f64> {
    let noise = Noise::of(&case.checks, trials, index);
    let (mut sum, mut weights) = (0.0, 0.0);
    for (series, change) in series(trials, index).zip(changes) {
        let Some(series) = series else { continue };
        let moved: f64 = effects
            .iter()
            .map(|effect| effect.slope * change.get(effect.position).copied().unwrap_or(0.0))
            .sum();
        let weight = 1.0 / noise.variance(series.values().len());
        sum += weight * (real::from_decimal(series.mean()) - moved);
        weights += weight;
    }
    (weights > 0.0).then(|| sum / weights)
}

/// The scatter of one check's readings.
struct Noise {
    reseat: f64,
    gauge: f64,
    /// Pooled standard deviation of repeated readings.
    repeat: f64,
}

impl Noise {
    fn of(checks: &[Check], trials: &[Trial], index: usize) -> Noise {
        let check = checks.get(index);
        let lash = check.is_some_and(|check| matches!(check.kind, CheckKind::Backlash { .. }));
        let (mut squares, mut freedom) = (0.0, 0.0);
        for series in series(trials, index).flatten() {
            if let Some(deviation) = series.deviation() {
                let degrees = (series.values().len() - 1) as f64;
                squares += degrees * deviation * deviation;
                freedom += degrees;
            }
        }
        let unrepeated = if lash { LASH_REPEAT } else { OTHER_REPEAT };
        Noise {
            reseat: if lash { LASH_RESEAT } else { OTHER_RESEAT },
            gauge: check.and_then(|check| check.sigma).map_or(DEFAULT_GAUGE, real::from_decimal),
            repeat: if freedom > 0.0 { (squares / freedom).sqrt() } else { unrepeated },
        }
    }

    /// Variance of the mean of `count` readings in one build.
    fn variance(&self, count: usize) -> f64 {
        self.reseat * self.reseat
            + self.gauge * self.gauge
            + self.repeat * self.repeat / count.max(1) as f64
    }
}

/// Where each check's unknowns stand among all: its level, then its inexact slopes.
struct Layout {
    starts: Vec<Option<usize>>,
    size: usize,
}

impl Layout {
    fn of(models: &[Option<ReadingModel>]) -> Layout {
        let mut size = 0;
        let place = |model: &Option<ReadingModel>| {
            let start = size;
            size += model.as_ref()?.unknowns();
            Some(start)
        };
        Layout { starts: models.iter().map(place).collect(), size }
    }

    fn start(&self, check: usize) -> Option<usize> {
        self.starts.get(check).copied().flatten()
    }

    /// Each inexact slope with its place.
    fn inexact<'a>(
        &'a self,
        models: &'a [Option<ReadingModel>],
    ) -> impl Iterator<Item = (usize, &'a Effect)> {
        models.iter().zip(&self.starts).flat_map(|(model, start)| {
            let effects = model.iter().flat_map(ReadingModel::inexact);
            effects.enumerate().map(move |(k, effect)| (start.unwrap_or(0) + 1 + k, effect))
        })
    }

    fn prior_mean(&self, models: &[Option<ReadingModel>]) -> Vec<f64> {
        let mut mean = vec![0.0; self.size];
        for (place, effect) in self.inexact(models) {
            if let Some(cell) = mean.get_mut(place) {
                *cell = effect.slope;
            }
        }
        mean
    }

    /// The inverse of the prior covariance of the slopes; nothing for the levels.
    fn prior_information(&self, models: &[Option<ReadingModel>]) -> Option<Square> {
        let inexact: Vec<(usize, &Effect)> = self.inexact(models).collect();
        let mut covariance = Square::zeros(inexact.len());
        for (i, (_, effect)) in inexact.iter().enumerate() {
            covariance.add(i, i, effect.own_spread * effect.own_spread);
            for (j, (_, other)) in inexact.iter().enumerate() {
                covariance.add(i, j, effect.common_spread * other.common_spread);
            }
        }
        let inverse = covariance.inverse()?;
        let mut information = Square::zeros(self.size);
        for (i, (row, _)) in inexact.iter().enumerate() {
            for (j, (column, _)) in inexact.iter().enumerate() {
                information.add(*row, *column, inverse.get(i, j));
            }
        }
        Some(information)
    }
}
