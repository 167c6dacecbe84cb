//! One thing gone wrong in the first correction, and whether the next reading tells.

use gearing::advice::{Advice, Cause, CauseKind, Prediction};
use gearing::case::{Case, Trial};
use gearing::{CaseError, advise, influences};
use measure::{Decimal, real};

use crate::dice::Dice;
use crate::fault::Fault;
use crate::gearcase::Gearcase;
use crate::play::surprise;

/// Kinds of [`Fault`].
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FaultKind {
    /// [`Fault::WrongSign`]
    WrongSign,
    /// [`Fault::Mislabelled`]
    Mislabelled,
    /// [`Fault::Unseated`]
    Unseated,
    /// [`Fault::Swapped`]
    Swapped,
}

/// How one fault was met.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Met {
    /// The fault, or for a wrong sign the planned change, moves a reading by more than three
    /// standard deviations.
    pub large: bool,
    /// The next reading raised the alarm.
    pub alarmed: bool,
    /// Place of the true cause among those offered, from 0; `None` if it is not among them.
    pub rank: Option<usize>,
}

/// A first correction in which one thing went wrong, and what the readings say of it.
#[derive(Clone, Debug)]
pub struct Staged {
    /// What was advised, and what it should have given.
    pub planned: Advice,
    /// What went wrong.
    pub fault: Fault,
    /// The fault, or for a wrong sign the planned change, moves a reading by more than three
    /// standard deviations.
    pub large: bool,
    /// What is known after the build.
    pub case: Case,
    /// What is said of it.
    pub advice: Advice,
}

impl Staged {
    /// The causes offered, likeliest first; empty where the readings raised no alarm.
    pub fn causes(&self) -> &[Cause] {
        surprise(&self.advice).unwrap_or_default()
    }

    /// Place of the true cause among those offered, from 0; `None` if it is not among them.
    pub fn rank(&self) -> Option<usize> {
        self.causes().iter().position(|cause| names(&cause.kind, self.fault))
    }
}

/// Lets one thing go wrong in the first correction; `None` where nothing is corrected.
///
/// # Errors
/// Only if the simulator drew a case that makes no sense.
pub fn stage(
    gearcase: &Gearcase,
    first: &Trial,
    kind: FaultKind,
    dice: &mut Dice,
) -> Result<Option<Staged>, CaseError> {
    let case = gearcase.case(std::slice::from_ref(first));
    let planned = advise(&case)?;
    let Some(fault) = fault(kind, &planned.opens, dice) else { return Ok(None) };
    let large = large(&case, &planned, first, fault)?;
    let built = gearcase.build(&planned.packs, Some(fault), dice);
    let case = gearcase.case(&[first.clone(), built]);
    let advice = advise(&case)?;
    Ok(Some(Staged { planned, fault, large, case, advice }))
}

/// The same, and whether the next reading tells.
///
/// # Errors
/// As for [`stage`].
pub fn trip(
    gearcase: &Gearcase,
    first: &Trial,
    kind: FaultKind,
    dice: &mut Dice,
) -> Result<Option<Met>, CaseError> {
    let staged = stage(gearcase, first, kind, dice)?;
    Ok(staged.map(|staged| Met {
        large: staged.large,
        alarmed: !staged.causes().is_empty(),
        rank: staged.rank(),
    }))
}

/// Whether a fault in the advised packs moves a reading by more than three standard deviations.
fn large(case: &Case, advice: &Advice, first: &Trial, fault: Fault) -> Result<bool, CaseError> {
    let totals = |packs: &[Vec<Decimal>]| -> Vec<f64> {
        packs.iter().map(|pack| real::from_decimal(pack.iter().sum())).collect()
    };
    let mut extra = vec![0.0; advice.packs.len()];
    fault.disturb(&mut extra, &totals(&advice.packs), &totals(&first.packs));
    // A wrong sign is off by twice the change that was planned; it is the change that counts.
    let part = if matches!(fault, Fault::WrongSign { .. }) { 0.5 } else { 1.0 };
    let mut moved = vec![0.0; case.checks.len()];
    for influence in influences(case)? {
        let extra = extra.get(influence.position).copied().unwrap_or(0.0);
        if let Some(moved) = moved.get_mut(influence.check) {
            *moved += influence.slope * extra * part;
        }
    }
    let exceeds = |(moved, predicted): (&f64, &Option<Prediction>)| {
        predicted.is_some_and(|predicted| moved.abs() > 3.0 * predicted.sigma)
    };
    Ok(moved.iter().zip(&advice.predicted).any(exceeds))
}

/// A fault of this kind at one of the positions to open.
fn fault(kind: FaultKind, opens: &[usize], dice: &mut Dice) -> Option<Fault> {
    let position = dice.pick(opens)?;
    Some(match kind {
        FaultKind::WrongSign => Fault::WrongSign { position },
        FaultKind::Mislabelled => {
            Fault::Mislabelled { position, thicker: dice.pick(&[-0.10, -0.05, 0.05, 0.10])? }
        }
        FaultKind::Unseated => Fault::Unseated { position, extra: dice.between(0.02, 0.15) },
        FaultKind::Swapped => {
            let others: Vec<usize> = opens.iter().copied().filter(|&o| o != position).collect();
            let other = dice.pick(&others)?;
            Fault::Swapped { first: position.min(other), second: position.max(other) }
        }
    })
}

/// Whether a cause is this fault; a shim of another thickness than marked is told by what it does:
/// more pack, or a shim missing.
fn names(cause: &CauseKind, fault: Fault) -> bool {
    match (cause, fault) {
        (CauseKind::OtherSign { position: named }, Fault::WrongSign { position })
        | (CauseKind::NotSeated { position: named }, Fault::Unseated { position, .. })
        | (
            CauseKind::NotSeated { position: named }
            | CauseKind::ShimMissing { position: named, .. },
            Fault::Mislabelled { position, .. },
        ) => *named == position,
        (CauseKind::Swapped { first: a, second: b }, Fault::Swapped { first, second }) => {
            (*a, *b) == (first, second)
        }
        _ => false,
    }
}
