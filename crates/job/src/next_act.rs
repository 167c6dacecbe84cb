//! The one next act of a job, and how far its stages are.

use words::{say, t};

use crate::standing::standing;
use crate::{
    AdviceStatus, AdviceView, Check, CheckState, CheckView, Field, Job, PackAct, SetUp, Sheet,
    Shown, Slot, sheet::listed,
};

/// The next act; [`NextAct::words`] is what the blue button says.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NextAct {
    /// Type a field that a check needs.
    TypeField(Field),
    /// Put the arm on the driveshaft, on the sheet too.
    MoveArm,
    /// Measure the pack that lies in the case and write it down.
    WritePack(Slot),
    /// Read a check.
    Read(Check),
    /// Read a check again.
    ReadAgain(Check),
    /// Look what to fit: the set-up screen knows the packs.
    SeeFit,
    /// Fit packs, then read.
    Fit {
        /// The packs that change.
        slots: Vec<Slot>,
        /// What to read next.
        read: Check,
    },
    /// Reading and prediction disagree.
    SeeCauses(Check),
    /// No pack from the tin does it.
    FillTin,
    /// No thickness does it: see which checks conflict.
    SeeConflict,
    /// Everything is in band.
    PrintRecord,
}

/// A stage of the whole job.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Stage {
    /// "Shim".
    pub name: &'static str,
    /// How far it is.
    pub state: StageState,
}

/// How far a stage is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum StageState {
    /// This version does not record it.
    NotRecorded,
    /// Work is here.
    Here,
    /// A reading is stale.
    Stale,
    /// Done.
    Done,
}

/// The next act of a job, without asking the engine what to fit.
pub fn next_act(job: &Job, sheet: &Sheet, shown: Shown) -> NextAct {
    let checks = sheet.checks();
    let missing = checks.iter().find_map(|check| sheet.missing(*check));
    if let Some(field) = missing.and_then(|missing| missing.fields.first().copied()) {
        return NextAct::TypeField(field);
    }
    let slots = sheet.positions().into_iter().map(|position| position.slot);
    if let Some(slot) = slots.into_iter().find(|slot| job.pack(*slot).is_none()) {
        return NextAct::WritePack(slot);
    }
    let mut again = None;
    let mut is_out = false;
    for check in checks {
        match standing(check, job, sheet, shown).0 {
            CheckState::Open => return NextAct::Read(check),
            CheckState::Stale { .. } => return NextAct::ReadAgain(check),
            CheckState::NearLimit | CheckState::TightSpot | CheckState::CannotProve => {
                again = again.or(Some(check));
            }
            CheckState::Out => is_out = true,
            CheckState::InBand | CheckState::Locked { .. } | CheckState::NoBand => {}
        }
    }
    match again {
        _ if is_out => NextAct::SeeFit,
        Some(check) => NextAct::ReadAgain(check),
        None => NextAct::PrintRecord,
    }
}

/// The next act on the set-up screen, the advice in hand.
pub(crate) fn from_advice(
    advice: &AdviceView,
    checks: &[CheckView],
    job: &Job,
    sheet: &Sheet,
    shown: Shown,
) -> NextAct {
    match &advice.alarm {
        Some(alarm) => NextAct::SeeCauses(alarm.check),
        None => by_status(advice, checks, (job, sheet), shown),
    }
}

/// The next act where a person goes on although reading and prediction disagree.
pub fn all_the_same(told: &SetUp, job: &Job, sheet: &Sheet, shown: Shown) -> NextAct {
    by_status(&told.advice, &told.checks, (job, sheet), shown)
}

fn by_status(
    advice: &AdviceView,
    checks: &[CheckView],
    (job, sheet): (&Job, &Sheet),
    shown: Shown,
) -> NextAct {
    match advice.status {
        AdviceStatus::Fit => fit(advice),
        AdviceStatus::StockShort => NextAct::FillTin,
        AdviceStatus::Conflict => NextAct::SeeConflict,
        AdviceStatus::ReadFirst => {
            let first = advice.read.first().copied();
            let view = checks.iter().find(|view| Some(view.check) == first);
            match (first, view.map(|view| &view.state)) {
                (Some(check), Some(CheckState::Open)) => NextAct::Read(check),
                (Some(check), _) => NextAct::ReadAgain(check),
                (None, _) => next_act(job, sheet, shown),
            }
        }
        AdviceStatus::MoveArm => NextAct::MoveArm,
        AdviceStatus::SheetIncomplete
        | AdviceStatus::PacksUnknown
        | AdviceStatus::Done
        | AdviceStatus::CannotSay => next_act(job, sheet, shown),
    }
}

fn fit(advice: &AdviceView) -> NextAct {
    let changed = advice.packs.iter().filter(|pack| pack.act == PackAct::Fit);
    let slots: Vec<Slot> = changed.map(|pack| pack.slot).collect();
    match advice.reopens.first().or(advice.read.first()) {
        Some(read) => NextAct::Fit { slots, read: *read },
        None => NextAct::SeeFit,
    }
}

/// The stages of a job: in this version only the shim set-up is recorded.
pub fn stages(job: &Job, sheet: &Sheet) -> [Stage; 6] {
    let states: Vec<CheckState> = sheet
        .checks()
        .into_iter()
        .map(|check| standing(check, job, sheet, Shown::default()).0)
        .collect();
    let shim = if states.iter().any(|state| matches!(state, CheckState::Stale { .. })) {
        StageState::Stale
    } else if !states.is_empty() && states.iter().all(|state| *state == CheckState::InBand) {
        StageState::Done
    } else {
        StageState::Here
    };
    ["Look", "Strip", "Judge", "Shim", "Close", "Prove"].map(|name| Stage {
        name: t(name),
        state: if name == "Shim" { shim } else { StageState::NotRecorded },
    })
}

impl NextAct {
    /// What the blue button says.
    pub fn words(&self) -> String {
        match self {
            NextAct::TypeField(field) => say!("Type {}", field.facts().name()),
            NextAct::MoveArm => t("Change the arm on the sheet").to_owned(),
            NextAct::WritePack(slot) => say!("Write down pack {}", slot.tag()),
            NextAct::Read(check) => say!("Read {}", check.short()),
            NextAct::ReadAgain(check) => say!("Read {} again", check.short()),
            NextAct::SeeFit => t("See what to fit").to_owned(),
            NextAct::Fit { slots, read } => {
                let tags: Vec<&str> = slots.iter().map(|slot| slot.tag()).collect();
                let (packs, check) = (listed(&tags), read.short());
                match tags.len() {
                    1 => say!("{packs} is fitted. Read {check}"),
                    _ => say!("{packs} are fitted. Read {check}"),
                }
            }
            NextAct::SeeCauses(_) => t("See causes").to_owned(),
            NextAct::FillTin => t("Put shims in the tin").to_owned(),
            NextAct::SeeConflict => t("See what conflicts").to_owned(),
            NextAct::PrintRecord => t("Print the record").to_owned(),
        }
    }
}

impl StageState {
    /// The word for it: "here".
    pub fn word(self) -> &'static str {
        match self {
            StageState::NotRecorded => t("not recorded"),
            StageState::Here => t("here"),
            StageState::Stale => t("stale"),
            StageState::Done => t("done"),
        }
    }
}
