//! What the last readings say by themselves.

use measure::{Band, Series, Uncertainty, Verdict, judge, real};

use crate::advice::Alarm;
use crate::case::{Case, Check, CheckKind};
use crate::learn::DEFAULT_GAUGE;
use crate::model::{Model, same_shims};
use crate::search::positions;

/// The last series of a check and the trial it was read in.
struct Last {
    series: Series,
    trial: usize,
}

/// Checks without a reading in any trial.
pub(crate) fn needed(case: &Case) -> Vec<usize> {
    (0..case.checks.len()).filter(|&check| last(case, check).is_none()).collect()
}

/// Whether every last mean is in its band and none is stale.
pub(crate) fn all_in_band(case: &Case, model: &Model) -> bool {
    model.bands.iter().enumerate().all(|(check, band)| {
        last(case, check).is_some_and(|last| {
            band.contains(last.series.mean()) && fresh(case, model, check, last.trial)
        })
    })
}

/// Whether the packs that change a check are still those of a trial.
fn fresh(case: &Case, model: &Model, check: usize, trial: usize) -> bool {
    let Some((then, reading)) =
        case.trials.get(trial).zip(model.readings.get(check).and_then(Option::as_ref))
    else {
        return false;
    };
    positions(reading.scope()).all(|position| {
        let packs = [&then.packs, &model.last].map(|packs| packs.get(position));
        matches!(packs, [Some(then), Some(now)] if same_shims(then, now))
    })
}

/// What to look at in the last readings that are in band.
pub(crate) fn alarms(case: &Case, model: &Model) -> Vec<Alarm> {
    let mut alarms = Vec::new();
    for (index, (check, band)) in case.checks.iter().zip(&model.bands).enumerate() {
        let Some(Last { series, .. }) = last(case, index) else { continue };
        if !band.contains(series.mean()) {
            continue;
        }
        let lash = matches!(check.kind, CheckKind::Backlash { .. });
        if lash && series.min() < band.low() {
            alarms.push(Alarm::TightSpot { check: index });
        }
        if verdict(check, &series, band) == Verdict::NearLimit {
            alarms.push(Alarm::ReadAgain { check: index });
        }
    }
    alarms
}

/// The verdict on a mean, the gauge and the repeated readings taken into account; the arm's own
/// uncertainty is not part of a case.
fn verdict(check: &Check, series: &Series, band: &Band) -> Verdict {
    let gauge = check.sigma.map_or(DEFAULT_GAUGE, real::from_decimal);
    let uncertainty = Uncertainty::default()
        .with("gauge", gauge)
        .repeatability(series.deviation().unwrap_or(0.0), series.values().len());
    judge(series.mean(), uncertainty.standard(), band).verdict
}

fn last(case: &Case, check: usize) -> Option<Last> {
    case.trials.iter().enumerate().rev().find_map(|(trial, build)| {
        let series = Series::new(build.readings.get(check)?.clone()).ok()?;
        Some(Last { series, trial })
    })
}
