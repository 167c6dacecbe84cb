//! One round: a correction that did not come out as planned.

use gearing::advice::Prediction;
use gearing::case::{Check, CheckKind};
use gearing::layout::Layout;
use measure::{Decimal, real};
use simulator::{Dice, Fault, FaultKind, Gearcase, Geometry, Staged, stage};
use words::t;

use crate::decision::Decision;
use crate::{FAULTS, ROUNDS};

/// Gearcases drawn before a round is given up; about one in three will do.
const DRAWS: u64 = 200;
/// Decisions offered besides the right one and taking the readings for what they seem.
const OTHERS: usize = 2;

/// A check as the virtual gauge shows it. Lengths are mm.
#[derive(Clone, Debug, PartialEq)]
pub struct Seen {
    /// "Forward backlash".
    pub name: String,
    /// The readings, a quarter or a third of a turn apart.
    pub readings: Vec<Decimal>,
    /// Their mean.
    pub mean: Decimal,
    /// The band.
    pub band: (Decimal, Decimal),
    /// The mean of the first build.
    pub before: Decimal,
    /// What was predicted, and twice its standard deviation.
    pub predicted: (Decimal, Decimal),
    /// Further than three standard deviations from that.
    pub is_off: bool,
    /// Standard deviations from it.
    pub(crate) off: f64,
}

/// A pack that was fitted.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Pack {
    /// Where.
    pub position: String,
    /// Its thickness, mm.
    pub total: Decimal,
    /// It is another one than in the first build.
    pub is_changed: bool,
}

/// One round of a lesson.
#[derive(Clone, Debug)]
pub struct Round {
    /// What is hidden.
    pub kind: FaultKind,
    /// The checks.
    pub checks: Vec<Seen>,
    /// The check that is farthest off.
    pub farthest: usize,
    /// The packs.
    pub packs: Vec<Pack>,
    /// What can be done next.
    pub decisions: Vec<Decision>,
    /// Which of them finds the fault.
    pub right: usize,
    /// Labour to come at the pack again, minutes.
    pub minutes: u32,
    pub(crate) fault: Fault,
}

/// A round of the lesson with this seed, from 0; the same every time. `wanted`: an instructor chose
/// the fault.
///
/// Only faults that the readings can tell are drawn: large enough, and the first cause named.
/// `None` after the last round.
pub fn round(seed: u64, round: usize, wanted: Option<FaultKind>) -> Option<Round> {
    if round >= ROUNDS {
        return None;
    }
    let kind = wanted
        .or_else(|| FAULTS.get((round + (seed % 3) as usize) % FAULTS.len()).map(|it| it.0))?;
    let layout = Layout::find("b")?;
    (0..DRAWS).find_map(|draw| {
        let mut dice = Dice::new(seed, round as u64 * DRAWS + draw);
        let gearcase = Gearcase::draw(layout, Geometry::Known, &mut dice);
        let first = gearcase.build(&gearcase.found, None, &mut dice);
        let staged = stage(&gearcase, &first, kind, &mut dice).ok()??;
        (staged.large && staged.rank() == Some(0)).then(|| of(&staged, kind, &mut dice))?
    })
}

fn of(staged: &Staged, kind: FaultKind, dice: &mut Dice) -> Option<Round> {
    let case = &staged.case;
    let [first, last] = case.trials.as_slice() else { return None };
    let checks: Vec<Seen> = case
        .checks
        .iter()
        .enumerate()
        .map(|(at, check)| {
            let readings =
                |trial: &gearing::case::Trial| trial.readings.get(at).cloned().unwrap_or_default();
            seen(
                check,
                &readings(first),
                readings(last),
                staged.planned.predicted.get(at).copied().flatten()?,
            )
        })
        .collect::<Option<_>>()?;
    let far = |at: &usize| checks.get(*at).map_or(0.0, |seen: &Seen| seen.off.abs());
    let farthest = (0..checks.len()).max_by(|a, b| far(a).total_cmp(&far(b)))?;
    let position = |at: usize| case.positions.get(at).map(|it| it.id.clone()).unwrap_or_default();
    let name = |at: usize| checks.get(at).map(|it| it.name.clone()).unwrap_or_default();
    let looks = staged.causes().iter();
    let mut looks =
        looks.filter_map(|cause| Decision::look(&cause.kind, cause.share, &position, &name));
    let right = looks.next()?;
    let all_in_band = checks.iter().all(|seen| (seen.band.0..=seen.band.1).contains(&seen.mean));
    let mut decisions = vec![Decision::as_they_seem(all_in_band)];
    for look in looks {
        // Several causes can ask for the same look, such as shims of two thicknesses.
        let is_new = look.title != right.title && decisions.iter().all(|it| it.title != look.title);
        if decisions.len() <= OTHERS && is_new {
            decisions.push(look);
        }
    }
    // Anywhere among them.
    let places: Vec<usize> = (0..=decisions.len()).collect();
    let place = dice.pick(&places)?;
    decisions.insert(place, right);
    let packs = case.positions.iter().zip(first.packs.iter().zip(&last.packs)).map(
        |(position, (before, now))| Pack {
            position: position.id.clone(),
            total: now.iter().sum(),
            is_changed: before != now,
        },
    );
    let of_fault = match staged.fault {
        Fault::WrongSign { position }
        | Fault::Mislabelled { position, .. }
        | Fault::Unseated { position, .. } => [position; 2],
        Fault::Swapped { first, second } => [first, second],
    };
    let minutes =
        of_fault.iter().filter_map(|at| Some(case.positions.get(*at)?.open_minutes)).max()?;
    Some(Round {
        kind,
        packs: packs.collect(),
        checks,
        farthest,
        decisions,
        right: place,
        minutes,
        fault: staged.fault,
    })
}

fn seen(
    check: &Check,
    before: &[Decimal],
    readings: Vec<Decimal>,
    predicted: Prediction,
) -> Option<Seen> {
    let mean = |readings: &[Decimal]| {
        (!readings.is_empty())
            .then(|| readings.iter().sum::<Decimal>() / Decimal::from(readings.len()))
    };
    let (before, now) = (mean(before)?, mean(&readings)?);
    let off = (real::from_decimal(now) - predicted.mean) / predicted.sigma;
    Some(Seen {
        name: name(&check.kind),
        readings,
        mean: now,
        band: (check.low, check.high),
        before,
        predicted: (
            real::to_decimal(predicted.mean, 6)?,
            real::to_decimal(2.0 * predicted.sigma, 6)?,
        ),
        is_off: off.abs() > 3.0,
        off,
    })
}

fn name(kind: &CheckKind) -> String {
    match kind {
        CheckKind::DepthGap { .. } => t("Pinion depth gap").to_owned(),
        CheckKind::Backlash { mesh, .. } => match mesh.as_str() {
            "forward" => t("Forward backlash").to_owned(),
            "reverse" => t("Reverse backlash").to_owned(),
            _ => t("Backlash").to_owned(),
        },
        CheckKind::EndPlay { .. } => t("End play").to_owned(),
    }
}
