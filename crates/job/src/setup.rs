//! What the set-up screen is told.

use std::collections::BTreeMap;

use gearing::advice::Prediction;
use measure::{Band, Decimal, real};

use crate::case::{Blocked, Bridge, builds};
use crate::reading::{Judged, length};
use crate::stale::{stale, why};
use crate::{
    AdviceView, Check, CheckState, Field, Job, Missing, NextAct, PackAct, Position, Sheet, Shown,
    Slot, Tin, TrialsView, advice, field, figure::Figure, figure::figure, next_act, sheet::listed,
    trials,
};

/// What the set-up screen is told. Lengths are mm.
#[derive(Clone, Debug, PartialEq)]
pub struct SetUp {
    /// The checks the unit has, in the order of work.
    pub checks: Vec<CheckView>,
    /// What to do with the packs.
    pub advice: AdviceView,
    /// The trials at each pack that has one.
    pub trials: Vec<TrialsView>,
    /// The gate at the end of the set-up.
    pub gate: Gate,
    /// What a person should know before trusting the advice, a sentence each.
    pub cautions: Vec<String>,
    /// The next act.
    pub next: NextAct,
}

/// A check as it stands.
#[derive(Clone, Debug, PartialEq)]
pub struct CheckView {
    /// Which.
    pub check: Check,
    /// The pack it sets, with its position.
    pub position: Option<&'static Position>,
    /// What stands there.
    pub state: CheckState,
    /// What the sheet lacks for it.
    pub missing: Option<Missing>,
    /// The limits as on the sheet.
    pub sheet_band: Option<Band>,
    /// The radius they hold at, for a backlash.
    pub sheet_radius: Option<Decimal>,
    /// Where they were read: "own manual, p. 118".
    pub source: Option<String>,
    /// The limits at the arm it was last read on, or at the sheet's arm.
    pub band: Option<Band>,
    /// That arm's radius.
    pub arm: Option<Decimal>,
    /// The last series, also where it is stale.
    pub judged: Option<Judged>,
    /// When it was read.
    pub read_at: Option<i64>,
    /// What was predicted for the build that is in the case now.
    pub predicted: Option<Predicted>,
    /// Whether the reading is more than three standard deviations from what was predicted.
    pub disagrees: bool,
    /// Mean as found.
    pub found: Option<Decimal>,
    /// A sentence under the check; empty where there is nothing to say.
    pub says: String,
}

/// What a gauge will read.
#[derive(Clone, Debug, PartialEq)]
pub struct Predicted {
    /// Of what.
    pub check: Check,
    /// Expected reading.
    pub mean: Decimal,
    /// What stands after "±": twice the standard deviation.
    pub expanded: Decimal,
    /// The band at the arm.
    pub band: Option<Band>,
    /// Distance from the nearest limit; below zero outside.
    pub margin: Option<Decimal>,
    /// "Margin 0.10 to the nearest limit, 3 times the ±."
    pub says: String,
}

/// The gate that guards what comes after the set-up.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Gate {
    /// Every check is in band on the packs that are in the case now.
    pub is_open: bool,
    /// A check is stale.
    pub is_stale: bool,
    /// Checks in band.
    pub in_band: usize,
    /// Checks the unit has.
    pub checks: usize,
    /// What is still missing.
    pub sentence: String,
}

/// Works out what the set-up screen shows.
pub fn setup(job: &Job, sheet: &Sheet, tin: &Tin, shown: Shown) -> SetUp {
    let asked = asked(job, sheet);
    let bridge = Bridge::of(job, sheet, tin, &asked);
    let predictions = bridge.as_ref().map(Bridge::predictions).unwrap_or_default();
    let mut checks: Vec<CheckView> = sheet
        .checks()
        .into_iter()
        .map(|check| check_view(check, job, sheet, &predictions, shown))
        .collect();
    let advice = advice::view(job, sheet, tin, &bridge, &checks, shown);
    for view in &mut checks {
        view.says = says(view, &advice, shown);
    }
    let trials = match &bridge {
        Ok(bridge) => trials::views(sheet, bridge, &advice),
        Err(_) => Vec::new(),
    };
    let gate = gate(&checks);
    let cautions = cautions(sheet, &bridge);
    let next = next_act::from_advice(&advice, &checks, job, sheet, shown);
    SetUp { checks, advice, trials, gate, cautions, next }
}

/// The checks that the engine is asked about: a locked one that nobody has read is left out.
pub(crate) fn asked(job: &Job, sheet: &Sheet) -> Vec<Check> {
    let is_asked =
        |check: &Check| job.last_reading(*check).is_some() || !is_locked(*check, job, sheet);
    sheet.checks().into_iter().filter(is_asked).collect()
}

fn is_locked(check: Check, job: &Job, sheet: &Sheet) -> bool {
    check == Check::EndPlay
        && sheet.checks().contains(&Check::Reverse)
        && standing(Check::Reverse, job, sheet, Shown::default()).0 != CheckState::InBand
}

/// The state of a check and its last series.
pub(crate) fn standing(
    check: Check,
    job: &Job,
    sheet: &Sheet,
    shown: Shown,
) -> (CheckState, Option<Judged>) {
    let Some(reading) = job.last_reading(check) else {
        let state = if sheet.missing(check).is_some() {
            CheckState::NoBand
        } else if is_locked(check, job, sheet) {
            CheckState::Locked { opens: "Opens when reverse is in band.".to_owned() }
        } else {
            CheckState::Open
        };
        return (state, None);
    };
    let judged = reading.judged(sheet);
    let state = match (stale(job, sheet, reading), &judged) {
        (Some(change), _) => CheckState::Stale { why: why(reading, change, shown) },
        (None, Some(judged)) => judged.state.clone(),
        (None, None) => CheckState::Open,
    };
    (state, judged)
}

fn check_view(
    check: Check,
    job: &Job,
    sheet: &Sheet,
    predictions: &BTreeMap<Check, Prediction>,
    shown: Shown,
) -> CheckView {
    let (state, judged) = standing(check, job, sheet, shown);
    let reading = job.last_reading(check);
    let sheet_arm = sheet.arm(check).map(|arm| arm.radius);
    let arm = reading
        .and_then(|reading| reading.arm.as_ref())
        .map(|arm| arm.in_unit(measure::Unit::Millimetre))
        .or(sheet_arm)
        .filter(|_| check.has_arm());
    let band = judged.as_ref().and_then(|judged| judged.band).or_else(|| sheet.band_at_arm(check));
    let is_open = matches!(state, CheckState::Open | CheckState::Stale { .. });
    let of_this_build = builds(job).last().is_some_and(|build| build.readings.contains_key(&check));
    let lever = sheet.lever(check, reading.and_then(|reading| reading.arm()).as_ref());
    let prediction = predictions
        .get(&check)
        .filter(|_| is_open || of_this_build)
        .map(|prediction| at_arm(*prediction, lever));
    let disagrees = prediction
        .as_ref()
        .zip(judged.as_ref())
        .is_some_and(|(prediction, judged)| !is_open && disagrees(prediction, judged.mean));
    CheckView {
        check,
        position: Slot::ALL
            .into_iter()
            .find(|slot| slot.check() == check)
            .and_then(|slot| sheet.position(slot)),
        missing: sheet.missing(check),
        sheet_band: sheet.band(check),
        sheet_radius: field::band_at(check).and_then(|(radius, _)| sheet.millimetres(radius)),
        source: sheet.word(field::source(check)).map(str::to_owned),
        band,
        arm,
        read_at: reading.map(|reading| reading.at),
        predicted: prediction.map(|prediction| predicted(check, &prediction, band, shown)),
        disagrees,
        found: job
            .reading_as_found(check)
            .and_then(|reading| reading.judged(sheet))
            .map(|judged| judged.mean),
        says: String::new(),
        state,
        judged,
    }
}

/// A prediction for another arm.
pub(crate) fn at_arm(prediction: Prediction, lever: Decimal) -> Prediction {
    let lever = real::from_decimal(lever);
    Prediction {
        mean: prediction.mean * lever,
        sigma: prediction.sigma * lever,
        probability: prediction.probability,
    }
}

/// Whether a mean is more than three standard deviations from what was predicted.
pub(crate) fn disagrees(prediction: &Prediction, mean: Decimal) -> bool {
    (real::from_decimal(mean) - prediction.mean).abs() > 3.0 * prediction.sigma
}

pub(crate) fn predicted(
    check: Check,
    prediction: &Prediction,
    band: Option<Band>,
    shown: Shown,
) -> Predicted {
    let (mean, expanded) = (length(prediction.mean), length(2.0 * prediction.sigma));
    let margin = band.map(|band| (mean - band.low()).min(band.high() - mean));
    let says = margin.map_or_else(String::new, |margin| margin_says(margin, expanded, shown));
    Predicted { check, mean, expanded, band, margin, says }
}

fn margin_says(margin: Decimal, expanded: Decimal, shown: Shown) -> String {
    let amount = figure(margin.abs(), Figure::Reading, shown);
    if margin < Decimal::ZERO {
        return format!("{amount} outside the nearest limit.");
    }
    match margin.checked_div(expanded) {
        Some(times) if times >= Decimal::ONE => {
            let times = measure::show(times.trunc(), 0, shown.mark);
            let times = if times == "1" { "once".to_owned() } else { format!("{times} times") };
            format!("Margin {amount} to the nearest limit, {times} the ±.")
        }
        _ => format!("Margin {amount} to the nearest limit, less than the ±."),
    }
}

fn says(view: &CheckView, advice: &AdviceView, shown: Shown) -> String {
    if let Some(missing) = &view.missing {
        return missing.sentence.clone();
    }
    let change = view.position.and_then(|position| {
        let pack = advice.packs.iter().find(|pack| pack.slot == position.slot)?;
        (pack.act == PackAct::Fit).then(|| pack.total - pack.now)
    });
    let off = change.map(|change| {
        let way = if change > Decimal::ZERO { "short" } else { "too thick" };
        format!("the pack is {way} by {}", figure(change.abs(), Figure::Reading, shown))
    });
    match (&view.state, off) {
        (CheckState::Stale { why }, _) => why.clone(),
        (CheckState::Locked { opens }, _) => opens.clone(),
        (CheckState::NearLimit, Some(off)) => format!("Reading again will not help: {off}."),
        (CheckState::NearLimit, None) => "Too near the limit to be sure: read again.".to_owned(),
        (CheckState::Out, Some(off)) => {
            let mut letters = off.chars();
            let first = letters.next().map(|letter| letter.to_ascii_uppercase());
            format!("{}{}.", first.map(String::from).unwrap_or_default(), letters.as_str())
        }
        (CheckState::TightSpot, _) => {
            "The tightest place is below the band: look for runout or a cocked race.".to_owned()
        }
        (CheckState::CannotProve, _) => {
            "The band is narrower than this gauge can tell. Use a finer gauge.".to_owned()
        }
        _ => String::new(),
    }
}

fn gate(checks: &[CheckView]) -> Gate {
    let in_band = checks.iter().filter(|view| view.state == CheckState::InBand).count();
    let is_stale = checks.iter().any(|view| matches!(view.state, CheckState::Stale { .. }));
    let is_open = !checks.is_empty() && in_band == checks.len();
    let names: Vec<&str> = checks.iter().map(|view| view.check.short()).collect();
    let mut names = listed(&names);
    if let Some(first) = names.get_mut(..1) {
        first.make_ascii_uppercase();
    }
    let sentence = if is_open {
        format!("{names} all in band in one assembly.")
    } else {
        format!("{names} all in band in one assembly. {in_band} of {} now.", checks.len())
    };
    Gate { is_open, is_stale, in_band, checks: checks.len(), sentence }
}

fn cautions(sheet: &Sheet, bridge: &Result<Bridge, Blocked>) -> Vec<String> {
    let mut cautions = Vec::new();
    let unseen: Vec<&str> = sheet
        .positions()
        .into_iter()
        .filter(|position| !sheet.is_confirmed(position))
        .map(|position| position.id)
        .collect();
    if !unseen.is_empty() {
        cautions.push(format!(
            "Nobody has said which way {} {}. See it on the unit sheet.",
            listed(&unseen),
            if unseen.len() == 1 { "pushes" } else { "push" },
        ));
    }
    let angles = [Field::PressureAngle, Field::SpiralAngle];
    if bridge.is_ok() && angles.iter().any(|field| sheet.number(*field).is_none()) {
        cautions.push(
            "Tooth angles are not on the sheet, so lash per shim is a guess until two trials."
                .to_owned(),
        );
    }
    cautions
}
