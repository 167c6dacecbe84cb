//! What the reading screen is told while a series is being typed.

use measure::{Decimal, Series, Typed, Unit};
use words::{say, t};

use crate::case::Bridge;
use crate::predicted::{at_arm, disagrees, predicted};
use crate::reading::{Judged, judged, step};
use crate::stale::stale;
use crate::standing::{asked, standing};
use crate::{
    ArmShaft, Check, CheckState, Fact, Field, FieldRefusal, Job, Missing, Predicted, Sheet, Shown,
    Tin, Typing, type_in::length,
};

/// What the reading screen is told. Lengths are mm.
#[derive(Clone, Debug, PartialEq)]
pub struct Preview {
    /// The places of the series with what stands there.
    pub stops: Vec<Stop>,
    /// The arm's radius, for a backlash.
    pub arm: Option<Typed>,
    /// The shaft it is on.
    pub on: Option<ArmShaft>,
    /// Why the arm that was typed is not taken.
    pub arm_refused: Option<FieldRefusal>,
    /// What was read so far, judged; the verdict is shown from the first reading on.
    pub judged: Option<Judged>,
    /// The band at this arm, also before the first reading.
    pub band: Option<measure::Band>,
    /// "Band 0.20–0.35 at 22.0 mm from your sheet, shown at your arm."; empty without a band.
    pub band_says: String,
    /// What was predicted. `None` until the series is full, so that it cannot lead the eye.
    pub predicted: Option<Predicted>,
    /// How to read it: what to hold, what is free, how to turn.
    pub how: String,
    /// What the sheet lacks for a verdict; readings are kept all the same.
    pub missing: Option<Missing>,
    /// A reading that stands apart from its series, in a sentence; every reading is kept.
    pub apart: Option<String>,
    /// The next act.
    pub dock: Dock,
    /// What to record when the blue button is pressed; `None` while the series is not full.
    pub fact: Option<Fact>,
}

/// How to come to a preload, which no gauge reads (common practice, no source).
const PRELOAD: &str = "No gauge reads a preload. Read the play with a looser pack and fit the tighter \
                       one after it: the preload is worked out, the rolling torque proves it.";

/// A place of the series.
#[derive(Clone, Debug, PartialEq)]
pub struct Stop {
    /// "90°".
    pub label: &'static str,
    /// What stands there.
    pub typing: Typing,
}

/// What the blue button of the reading screen says.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Dock {
    /// A place is empty.
    ReadFirst {
        /// Its place in the series, from 0.
        stop: usize,
        /// "90°".
        label: &'static str,
    },
    /// What was typed at a place is not taken.
    TypeAgain {
        /// Its place in the series, from 0.
        stop: usize,
        /// "90°".
        label: &'static str,
    },
    /// The arm's radius is missing.
    TypeArm,
    /// Keep the readings.
    Keep {
        /// How many.
        readings: usize,
    },
    /// Keep them, and read the series once more.
    NearReadAgain,
    /// Keep them; the packs must be changed.
    KeepAndSee,
    /// Keep them; they are not what was predicted.
    Disagrees,
}

/// Works out what the reading screen shows.
///
/// `texts` are the places of the series as typed, in order; digits without a unit take `unit`.
/// `arm` is the arm's radius as typed on this screen, or `None` for the sheet's.
pub fn preview(
    (job, sheet, tin): (&Job, &Sheet, &Tin),
    check: Check,
    texts: &[&str],
    unit: Unit,
    arm: Option<&str>,
    shown: Shown,
) -> Preview {
    let stops: Vec<Stop> = (check.stops().iter().zip(texts.iter().chain(std::iter::repeat(&""))))
        .map(|(stop, text)| Stop { label: t(stop), typing: Typing::of_check(check, text, unit) })
        .collect();
    let typed: Vec<Typed> = stops.iter().filter_map(|stop| stop.typing.typed.clone()).collect();
    let (arm, arm_refused) = chosen_arm(check, sheet, arm, unit);
    let on = sheet.word(Field::ArmShaft).and_then(ArmShaft::named).filter(|_| check.has_arm());
    let judged = judged(sheet, check, &typed, arm.as_ref().zip(on));
    let is_full = typed.len() == check.stops().len();
    let at = arm.as_ref().zip(on).and_then(|(radius, on)| {
        crate::sheet_arm::arm(check, radius.in_unit(Unit::Millimetre), on)
    });
    let prediction = Bridge::of(job, sheet, tin, &asked(job, sheet))
        .ok()
        .filter(|_| is_full)
        .and_then(|bridge| bridge.predictions().remove(&check))
        .map(|prediction| at_arm(prediction, sheet.lever(check, at.as_ref())));
    let band = match &at {
        Some(at) => sheet.band_at(check, at),
        None => sheet.band(check).filter(|_| !check.has_arm()),
    };
    let is_off = prediction
        .as_ref()
        .zip(judged.as_ref())
        .is_some_and(|(prediction, judged)| disagrees(prediction, judged.mean));
    let has_arm = !check.has_arm() || (arm.is_some() && on.is_some());
    let dock = dock(&stops, has_arm, judged.as_ref(), is_off, was_near(job, sheet, check, shown));
    let fact = (is_full && has_arm).then(|| Fact::ReadingTaken {
        check,
        values: typed,
        arm: arm.clone().filter(|_| check.has_arm()),
        on,
    });
    Preview {
        predicted: prediction.map(|prediction| predicted(check, &prediction, band, shown)),
        band_says: band_says(check, sheet, band.is_some(), shown),
        how: if sheet.is_preload(check) {
            t(PRELOAD).to_owned()
        } else {
            check.how(on.unwrap_or(ArmShaft::Driveshaft))
        },
        missing: sheet.missing(check),
        apart: apart(check, &stops),
        stops,
        arm,
        on,
        arm_refused,
        judged,
        band,
        dock,
        fact,
    }
}

/// Which reading stands apart from its series; a hint, no judgement, and never a deletion.
fn apart(check: Check, stops: &[Stop]) -> Option<String> {
    let read: Vec<(&'static str, &Typed)> =
        stops.iter().filter_map(|stop| Some((stop.label, stop.typing.typed.as_ref()?))).collect();
    let values: Vec<Typed> = read.iter().map(|(_, typed)| (*typed).clone()).collect();
    let lengths = values.iter().map(|typed| typed.in_unit(check.unit())).collect();
    let hint = measure::outlier::hint(&Series::new(lengths).ok()?, step(check, &values)?)?;
    let (label, _) = read.get(hint.index)?;
    let readings = hint.readings;
    Some(say!("{label} stands apart, though {readings} readings show little. Read it again."))
}

fn chosen_arm(
    check: Check,
    sheet: &Sheet,
    text: Option<&str>,
    unit: Unit,
) -> (Option<Typed>, Option<FieldRefusal>) {
    if !check.has_arm() {
        return (None, None);
    }
    match text.map(|text| length("arm radius", text, unit)) {
        Some(Ok(typed)) => (Some(typed), None),
        Some(Err(refused)) => (None, Some(refused)),
        None => (sheet.number(Field::ArmRadius).cloned(), None),
    }
}

/// Whether the last series on these packs was near a limit already.
fn was_near(job: &Job, sheet: &Sheet, check: Check, shown: Shown) -> bool {
    let fresh = job.last_reading(check).is_some_and(|reading| stale(job, sheet, reading).is_none());
    fresh && standing(check, job, sheet, shown).0 == CheckState::NearLimit
}

fn dock(
    stops: &[Stop],
    has_arm: bool,
    judged: Option<&Judged>,
    is_off: bool,
    was_near: bool,
) -> Dock {
    let at = |wanted: fn(&Stop) -> bool| {
        stops.iter().enumerate().find(|(_, stop)| wanted(stop)).map(|(at, stop)| (at, stop.label))
    };
    if let Some((stop, label)) = at(|stop| stop.typing.refused.is_some()) {
        return Dock::TypeAgain { stop, label };
    }
    if let Some((stop, label)) = at(|stop| stop.typing.typed.is_none()) {
        return Dock::ReadFirst { stop, label };
    }
    if !has_arm {
        return Dock::TypeArm;
    }
    if is_off {
        return Dock::Disagrees;
    }
    match judged.map(|judged| &judged.state) {
        Some(CheckState::NearLimit) if !was_near => Dock::NearReadAgain,
        Some(CheckState::NearLimit | CheckState::Out | CheckState::TightSpot) => Dock::KeepAndSee,
        _ => Dock::Keep { readings: stops.len() },
    }
}

fn band_says(check: Check, sheet: &Sheet, has_band: bool, shown: Shown) -> String {
    use crate::figure::{Figure, figure, with_unit};
    let Some(band) = sheet.band(check).filter(|_| has_band) else { return String::new() };
    let limit = |value: Decimal| figure(value, check.figure(), shown);
    let (low, high) = (limit(band.low()), limit(band.high()));
    let radius = crate::field::band_at(check).and_then(|(radius, _)| sheet.millimetres(radius));
    match radius {
        Some(radius) => {
            let radius = with_unit(radius, Figure::Radius, shown);
            say!("Band {low}–{high} at {radius} from your sheet, shown at your arm.")
        }
        None => say!("Band {low}–{high} from your sheet."),
    }
}

impl Dock {
    /// The words on the button.
    pub fn words(&self) -> String {
        match self {
            Dock::ReadFirst { label, .. } => say!("Read {label} first"),
            Dock::TypeAgain { label, .. } => say!("Type {label} again"),
            Dock::TypeArm => t("Type the arm radius first").to_owned(),
            Dock::Keep { readings } => say!("Keep these {readings} readings"),
            Dock::NearReadAgain => t("Near limit: read again").to_owned(),
            Dock::KeepAndSee => t("Keep and see what to fit").to_owned(),
            Dock::Disagrees => t("Disagrees: see causes").to_owned(),
        }
    }

    /// Whether pressing it records the readings.
    pub fn records(&self) -> bool {
        !matches!(self, Dock::ReadFirst { .. } | Dock::TypeAgain { .. } | Dock::TypeArm)
    }
}
