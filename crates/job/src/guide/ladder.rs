//! The ladder: every part that comes off gets the next number, and goes back in reverse.

use super::finish::GuideRefusal;
use super::log::GuideLog;
use crate::Guided;
use crate::guided::{capitalised, spaced};
use crate::procedure::{Act, Plan};

/// The parts in the order they came off, then those still to come.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Ladder {
    /// Coming out.
    pub rungs: Vec<Rung>,
    /// Places in `rungs` in the order of assembly: the last off goes on first.
    pub going_back: Vec<usize>,
    /// The number the next part gets.
    pub next_number: u32,
    /// How many are out or fitted again.
    pub out: usize,
    /// How many are fitted again.
    pub fitted: usize,
    /// What a rung lacks: "4 pinion: no photo."
    pub missing: Vec<String>,
}

/// A part on the ladder.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Rung {
    /// Its number; `None` while it has not come off.
    pub number: Option<u32>,
    /// Its id: `pinion-nut`.
    pub part: String,
    /// Its name: "Pinion nut".
    pub name: String,
    /// The step it comes off in.
    pub step: String,
    /// The step it goes back in for good; `None`: an own part.
    pub back_in: Option<String>,
    /// Bag or tray place; empty while it has not come off.
    pub place: String,
    /// Which way it faced.
    pub facing: String,
    /// Where its photo is kept.
    pub photo: Option<String>,
    /// How it stands.
    pub state: RungState,
    /// It is never used again: a new one goes on.
    pub one_use: bool,
}

/// How a part stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RungState {
    /// In the unit as found.
    ToCome,
    /// Out, in its place.
    Out,
    /// Fitted for good.
    Fitted,
}

/// Works out the ladder of a plan.
pub fn ladder(plan: &Plan, log: &GuideLog) -> Ladder {
    let rejected = |part: &str| {
        plan.steps.iter().any(|step| step.parts_of(Act::Reject).any(|other| other == part))
    };
    let back_in = |part: &str| {
        let fits = |step: &&crate::procedure::Step| step.parts_of(Act::On).any(|on| on == part);
        plan.steps.iter().find(fits).map(|step| step.id.clone())
    };
    let mut rungs: Vec<Rung> = log
        .bagged
        .iter()
        .map(|(number, bagged)| Rung {
            number: Some(*number),
            part: bagged.part.clone(),
            name: capitalised(&spaced(&bagged.part)),
            step: bagged.step.clone(),
            back_in: back_in(&bagged.part),
            place: bagged.place.clone(),
            facing: bagged.facing.clone(),
            photo: bagged.photo.clone(),
            state: if bagged.fitted.is_some() { RungState::Fitted } else { RungState::Out },
            one_use: rejected(&bagged.part),
        })
        .collect();
    let out = rungs.len();
    for (step, part) in plan.parts_off() {
        if !log.bagged.values().any(|bagged| bagged.part == part) {
            rungs.push(Rung {
                number: None,
                part: part.to_owned(),
                name: capitalised(&spaced(part)),
                step: step.id.clone(),
                back_in: back_in(part),
                place: String::new(),
                facing: String::new(),
                photo: None,
                state: RungState::ToCome,
                one_use: rejected(part),
            });
        }
    }
    let lacks = |rung: &Rung| {
        let number = rung.number?;
        let what = if rung.photo.is_none() { "no photo" } else { return None };
        Some(format!("{number} {}: {what}.", rung.name.to_lowercase()))
    };
    Ladder {
        going_back: (0..out).rev().collect(),
        next_number: log.next_number(),
        out,
        fitted: rungs.iter().filter(|rung| rung.state == RungState::Fitted).count(),
        missing: rungs.iter().filter_map(lacks).collect(),
        rungs,
    }
}

/// The fact that a part came off, with the next number.
///
/// # Errors
/// [`GuideRefusal::Bagged`] where it is on the ladder already.
pub fn bag(
    log: &GuideLog,
    step: &str,
    part: &str,
    place: &str,
    facing: &str,
    photo: Option<String>,
) -> Result<Guided, GuideRefusal> {
    if let Some((number, _)) = log.bagged.iter().find(|(_, bagged)| bagged.part == part) {
        return Err(GuideRefusal::Bagged { part: capitalised(&spaced(part)), number: *number });
    }
    Ok(Guided::PartBagged {
        number: log.next_number(),
        part: part.to_owned(),
        step: step.to_owned(),
        place: place.to_owned(),
        facing: facing.to_owned(),
        photo,
    })
}
