//! What the set-up screen is told.

use words::{say, t};

use crate::case::{Blocked, Bridge};
use crate::check_view::{check_view, says};
use crate::guided::capitalised;
use crate::standing::asked;
use crate::{
    AdviceView, CheckState, CheckView, Field, FirstGuess, Job, NextAct, Sheet, Shown, Tin,
    TrialsView, advice, first_guess::first_guesses, next_act, sheet::listed, trials,
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
    /// How thick to begin with after new parts, where a pack waits for it: shown before the advice.
    pub first_guesses: Vec<FirstGuess>,
    /// The gate at the end of the set-up.
    pub gate: Gate,
    /// What a person should know before trusting the advice, a sentence each.
    pub cautions: Vec<String>,
    /// The next act.
    pub next: NextAct,
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
    let tin = &tin.side(sheet.is_invented());
    let advice = advice::view(job, sheet, tin, &bridge, &checks, shown);
    for view in &mut checks {
        view.says = says(view, &advice, shown);
    }
    let trials = match &bridge {
        Ok(bridge) => trials::views(sheet, bridge, &advice, shown.mark),
        Err(_) => Vec::new(),
    };
    let gate = gate(&checks);
    let cautions = cautions(sheet, &bridge);
    let next = next_act::from_advice(&advice, &checks, job, sheet, shown);
    let first_guesses = first_guesses(job, sheet, tin, shown);
    SetUp { checks, advice, trials, first_guesses, gate, cautions, next }
}

fn gate(checks: &[CheckView]) -> Gate {
    let in_band = checks.iter().filter(|view| view.state == CheckState::InBand).count();
    let is_stale = checks.iter().any(|view| matches!(view.state, CheckState::Stale { .. }));
    let is_open = !checks.is_empty() && in_band == checks.len();
    let names: Vec<&str> = checks.iter().map(|view| view.check.short()).collect();
    let names = capitalised(&listed(&names));
    let sentence = if is_open {
        say!("{names} all in band in one assembly.")
    } else {
        say!("{names} all in band in one assembly. {in_band} of {all} now.", all = checks.len())
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
        let packs = listed(&unseen);
        cautions.push(match unseen.len() {
            1 => say!("Nobody has said which way {packs} pushes. See it on the unit sheet."),
            _ => say!("Nobody has said which way {packs} push. See it on the unit sheet."),
        });
    }
    cautions.extend(sheet.turned_says());
    let angles = [Field::PressureAngle, Field::SpiralAngle];
    if bridge.is_ok() && angles.iter().any(|field| sheet.number(*field).is_none()) {
        cautions.push(
            t("Tooth angles are not on the sheet, so lash per shim is a guess until two trials.")
                .to_owned(),
        );
    }
    cautions
}
