//! A check as the set-up screen shows it.

use std::collections::BTreeMap;
use words::{say, t};

use gearing::advice::Prediction;
use measure::{Band, Decimal, Unit};

use crate::case::builds;
use crate::guided::capitalised;
use crate::predicted::{at_arm, disagrees, predicted};
use crate::standing::standing;
use crate::{
    AdviceView, Check, CheckState, Field, Figure, Job, Judged, Missing, PackAct, Position,
    Predicted, Sheet, Shown, field, figure,
};

/// A check as it stands.
#[derive(Clone, Debug, PartialEq)]
pub struct CheckView {
    /// Which.
    pub check: Check,
    /// The pack it sets, with its position.
    pub position: Option<Position>,
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

pub(crate) fn check_view(
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
        .map(|arm| arm.in_unit(Unit::Millimetre))
        .or(sheet_arm)
        .filter(|_| check.has_arm());
    let band = judged.as_ref().and_then(|judged| judged.band).or_else(|| sheet.band_at_arm(check));
    let is_open = matches!(state, CheckState::Open | CheckState::Stale { .. });
    let of_this_build =
        builds(job, sheet).last().is_some_and(|build| build.readings.contains_key(&check));
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
        position: sheet.slot_of(check).and_then(|slot| sheet.position(slot)),
        missing: sheet.missing(check),
        sheet_band: sheet.band(check),
        sheet_radius: field::band_at(check).and_then(|(radius, _)| sheet.millimetres(radius)),
        source: sheet.word(Field::Source(check)).map(str::to_owned),
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

pub(crate) fn says(view: &CheckView, advice: &AdviceView, shown: Shown) -> String {
    if let Some(missing) = &view.missing {
        return missing.sentence.clone();
    }
    let change = view.position.and_then(|position| {
        let pack = advice.packs.iter().find(|pack| pack.slot == position.slot)?;
        (pack.act == PackAct::Fit).then(|| pack.total - pack.now)
    });
    let off = change.map(|change| {
        let by = figure(change.abs(), Figure::Reading, shown);
        match change > Decimal::ZERO {
            true => say!("the pack is short by {by}"),
            false => say!("the pack is too thick by {by}"),
        }
    });
    if view.judged.as_ref().is_some_and(|judged| judged.worked_out) {
        return t("Worked out from the play read before. Rolling torque proves it.").to_owned();
    }
    match (&view.state, off) {
        (CheckState::Stale { why }, _) => why.clone(),
        (CheckState::Locked { opens }, _) => opens.clone(),
        (CheckState::NearLimit, Some(off)) => say!("Reading again will not help: {off}."),
        (CheckState::NearLimit, None) => t("Too near the limit to be sure: read again.").to_owned(),
        (CheckState::Out, Some(off)) => format!("{}.", capitalised(&off)),
        (CheckState::TightSpot, _) => {
            t("The tightest place is below the band: look for runout or a cocked race.").to_owned()
        }
        (CheckState::CannotProve, _) => {
            t("The band is narrower than this gauge can tell. Use a finer gauge.").to_owned()
        }
        _ => String::new(),
    }
}
