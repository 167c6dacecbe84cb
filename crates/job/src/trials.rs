//! The trials at each pack, for the picture and its sentence.

use gearing::Influence;
use measure::{Band, Decimal, Mark};
use words::{say, t};

use crate::case::Bridge;
use crate::reading::length;
use crate::{AdviceView, Check, PackAct, Sheet, Slot};

/// The trials at one pack. Lengths are mm.
#[derive(Clone, Debug, PartialEq)]
pub struct TrialsView {
    /// The pack.
    pub slot: Slot,
    /// The check it sets.
    pub check: Check,
    /// The band at the arm.
    pub band: Option<Band>,
    /// The builds in which the check was read, oldest first.
    pub points: Vec<TrialPoint>,
    /// Learnt change of the reading for a change of the pack, mm per mm, through the last build.
    pub slope: f64,
    /// Pack, reading and ± of the next build.
    pub next: Option<(Decimal, Decimal, Decimal)>,
    /// "From 1 to 2: 0.99 mm lash per mm of shim. Expected 0.92. Sign agrees."
    pub says: String,
}

/// A build.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct TrialPoint {
    /// Thickness of the pack.
    pub pack: Decimal,
    /// Mean of the readings, at the arm.
    pub reading: Decimal,
}

/// Changes under this say nothing about a slope, mm.
const TOO_LITTLE: Decimal = Decimal::from_parts(2, 0, 0, false, 2);

pub(crate) fn views(
    sheet: &Sheet,
    bridge: &Bridge,
    advice: &AdviceView,
    mark: Mark,
) -> Vec<TrialsView> {
    let of_position = |position: &crate::Position| view(position.slot, sheet, bridge, advice, mark);
    bridge.positions.iter().filter_map(of_position).collect()
}

fn view(
    slot: Slot,
    sheet: &Sheet,
    bridge: &Bridge,
    advice: &AdviceView,
    mark: Mark,
) -> Option<TrialsView> {
    let check = slot.check()?;
    let (place, row) =
        (bridge.place_of(slot)?, bridge.checks.iter().position(|other| *other == check)?);
    let builds: Vec<(TrialPoint, &[Vec<Decimal>])> = bridge
        .case
        .trials
        .iter()
        .filter_map(|trial| {
            let series = trial.readings.get(row).filter(|series| !series.is_empty())?;
            let reading = series.iter().sum::<Decimal>() / Decimal::from(series.len());
            let pack = trial.packs.get(place)?.iter().sum();
            Some((TrialPoint { pack, reading }, trial.packs.as_slice()))
        })
        .collect();
    if builds.is_empty() {
        return None;
    }
    let next = advice
        .packs
        .iter()
        .find(|pack| pack.slot == slot && pack.act == PackAct::Fit)
        .zip(advice.predicted.iter().find(|predicted| predicted.check == check))
        .map(|(pack, predicted)| (pack.total, predicted.mean, predicted.expanded));
    let influence = bridge
        .influences()
        .into_iter()
        .find(|(other, of, _)| *other == slot && *of == check)
        .map(|(.., influence)| influence)?;
    let says = says(&builds, (place, row), bridge, &influence, mark);
    Some(TrialsView {
        slot,
        check,
        band: sheet.band_at_arm(check),
        points: builds.iter().map(|(point, _)| *point).collect(),
        slope: influence.slope,
        next,
        says,
    })
}

/// What the last two builds say, where only this pack was changed between them.
fn says(
    builds: &[(TrialPoint, &[Vec<Decimal>])],
    (place, row): (usize, usize),
    bridge: &Bridge,
    influence: &Influence,
    mark: Mark,
) -> String {
    let two = |value: Decimal| measure::show(value, 2, mark);
    let [.., (before, old), (after, new)] = builds else {
        return t("One trial yet.").to_owned();
    };
    let moved_otherwise = old
        .iter()
        .zip(*new)
        .enumerate()
        .any(|(other, (old, new))| other != place && old != new && touches(bridge, other, row));
    let change = after.pack - before.pack;
    if moved_otherwise || change.abs() < TOO_LITTLE {
        return t("The last two trials say nothing about this pack alone.").to_owned();
    }
    let seen = (after.reading - before.reading) / change;
    let number = builds.len();
    let seen_words = two(seen.abs());
    let what = bridge.checks.get(row).map_or("", |check| word(*check));
    let told = say!(
        "From {before} to {number}: {seen_words} mm {what} per mm of shim.",
        before = number - 1
    );
    let expected = length(influence.formula);
    let agrees = expected.is_sign_negative() == seen.is_sign_negative();
    let sign = if agrees { t("Sign agrees.") } else { t("The sign disagrees.") };
    say!("{told} Expected {}. {sign}", two(expected.abs()))
}

fn touches(bridge: &Bridge, place: usize, row: usize) -> bool {
    let (position, check) = (bridge.positions.get(place), bridge.checks.get(row));
    position.zip(check).is_some_and(|(position, check)| position.moves(*check))
}

fn word(check: Check) -> &'static str {
    match check {
        Check::Depth => t("depth gap"),
        Check::Lash(_) => t("lash"),
        Check::Setting(_) => t("end play"),
        Check::Torque => t("torque"),
    }
}
