//! The ladder: every part that comes off gets the next number, and goes back in reverse.

use words::say;

use super::counts::{CountState, CountView};
use super::facing::NOT_SURE;
use super::finish::GuideRefusal;
use super::log::{Bagged, GuideLog};
use crate::Guided;
use crate::guided::{Capture, FITTED, capitalised, spaced};
use crate::procedure::{Act, Phase, Plan, Record, Step};

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
    /// Its number, or the one it gets if all before it come off as planned.
    pub shown: u32,
    /// Its id: `pinion-nut`; of a pack `B1-pack`; of an own part what the person called it.
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
    /// It comes off while the unit is stripped, not later in its set-up.
    pub strips: bool,
    /// It is a pack of shims: its position, as on its tag.
    pub pack: Option<String>,
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

/// Works out the ladder of a plan. A pack is on it once it was written down as found.
pub fn ladder(plan: &Plan, log: &GuideLog) -> Ladder {
    let next_number = log.next_number();
    let mut rungs: Vec<Rung> =
        log.bagged.iter().map(|(number, bagged)| out(plan, *number, bagged)).collect();
    let out = rungs.len();
    for step in &plan.steps {
        let packs = packs_found(log, step);
        for part in step.parts_of(Act::Off).map(str::to_owned).chain(packs) {
            if !rungs.iter().any(|rung| rung.part == part) {
                let more = u32::try_from(rungs.len().saturating_sub(out)).unwrap_or(u32::MAX);
                rungs.push(rung(plan, part, step.id.clone(), next_number.saturating_add(more)));
            }
        }
    }
    let lacks = |rung: &Rung| {
        let number = rung.number.filter(|_| rung.photo.is_none())?;
        Some(say!("{number} {part}: no photo.", part = rung.name.to_lowercase()))
    };
    Ladder {
        going_back: (0..out).rev().collect(),
        next_number,
        out,
        fitted: rungs.iter().filter(|rung| rung.state == RungState::Fitted).count(),
        missing: rungs.iter().filter_map(lacks).collect(),
        rungs,
    }
}

fn out(plan: &Plan, number: u32, bagged: &Bagged) -> Rung {
    Rung {
        number: Some(number),
        place: bagged.place.clone(),
        facing: bagged.facing.clone(),
        photo: bagged.photo.clone(),
        state: if bagged.fitted.is_some() { RungState::Fitted } else { RungState::Out },
        ..rung(plan, bagged.part.clone(), bagged.step.clone(), number)
    }
}

fn rung(plan: &Plan, part: String, step: String, shown: u32) -> Rung {
    let packs = || plan.steps.iter().flat_map(|step| step.records.iter().filter_map(Record::pack));
    let is_pack = |tag: &&str| packs().any(|(position, _)| position == *tag);
    let pack = part.strip_suffix("-pack").filter(is_pack).map(str::to_owned);
    let does = |step: &&Step, act| step.parts_of(act).any(|other| other == part);
    let find = |act| plan.steps.iter().find(|step| does(step, act));
    let fits_pack = |step: &&Step| {
        let mut packs = step.records.iter().filter_map(Record::pack);
        packs.any(|(position, state)| Some(position) == pack.as_deref() && state == "fitted")
    };
    let back_in = match &pack {
        Some(_) => plan.steps.iter().find(fits_pack),
        None => find(Act::On),
    };
    let phase = plan.step(&step).map(|step| step.phase);
    // What a person called it stays as it is.
    let is_id = pack.is_some() || find(Act::Off).is_some();
    Rung {
        number: None,
        shown,
        name: capitalised(&if is_id { spaced(&part) } else { part.clone() }),
        step,
        back_in: back_in.map(|step| step.id.clone()),
        place: String::new(),
        facing: String::new(),
        photo: None,
        state: RungState::ToCome,
        one_use: find(Act::Reject).is_some(),
        strips: phase.is_some_and(|phase| phase <= Phase::Teardown),
        pack,
        part,
    }
}

/// The packs that were found in a step, as parts.
fn packs_found(log: &GuideLog, step: &Step) -> impl Iterator<Item = String> {
    let found = step.records.iter().filter(|record| {
        let kept = log.capture(&step.id, &record.label);
        kept.is_some_and(|kept| matches!(kept.value, Capture::Pack(_)))
    });
    found.filter_map(|record| {
        let (position, _) = record.pack().filter(|(_, state)| *state == "as found")?;
        Some(format!("{position}-pack"))
    })
}

/// Where a part lies, as it is shown: the app's own bags in the language of the app.
pub fn placed(place: &str) -> String {
    match place.strip_prefix(BAG) {
        Some(number) => say!("bag {number}"),
        None => place.to_owned(),
    }
}

/// How the app's own bags are written down, before their number.
const BAG: &str = "bag ";

impl Rung {
    /// What a photo of it is written down under once it is back in.
    pub fn fitted_label(&self) -> String {
        let is_own = self.name == capitalised(&self.part);
        let part = if is_own { self.part.clone() } else { self.part.replace('-', " ") };
        format!("{}{FITTED}", part.to_lowercase())
    }

    /// Which way it faced, where somebody saw it.
    pub fn faced(&self) -> Option<&str> {
        Some(self.facing.as_str()).filter(|faced| !faced.is_empty() && *faced != NOT_SURE)
    }
}

impl Ladder {
    /// Something came off, and nothing that comes off while stripping is left in the unit.
    pub fn is_stripped(&self) -> bool {
        let is_in = |rung: &Rung| rung.strips && rung.state == RungState::ToCome;
        self.out > 0 && !self.rungs.iter().any(is_in)
    }

    /// The rung that comes off next.
    pub fn next_off(&self) -> Option<usize> {
        self.rungs.iter().position(|rung| rung.state == RungState::ToCome)
    }

    /// The rung that goes back next.
    pub fn next_on(&self) -> Option<usize> {
        let is_out = |at: &usize| self.rungs.get(*at).is_some_and(|it| it.state == RungState::Out);
        self.going_back.iter().copied().find(is_out)
    }

    /// Where a part may go, the likeliest first: a pack to its own tag, what comes off in the same
    /// step into the same bag, anything else into the next.
    pub fn places(&self, rung: &Rung) -> Vec<String> {
        if let Some(tag) = &rung.pack {
            return vec![tag.clone()];
        }
        let bag = |rung: &Rung| rung.place.strip_prefix(BAG)?.parse::<u32>().ok();
        let highest = self.rungs.iter().filter_map(bag).max();
        let last = self.rungs.iter().rev().find_map(|rung| Some((bag(rung)?, &rung.step)));
        let fresh = format!("{BAG}{}", highest.unwrap_or_default().saturating_add(1));
        match last {
            Some((number, step)) if *step == rung.step => vec![format!("{BAG}{number}"), fresh],
            Some((number, _)) => vec![fresh, format!("{BAG}{number}")],
            None => vec![fresh],
        }
    }

    /// What keeps "strip complete" shut: one sentence each.
    pub fn to_strip(&self, counts: &[CountView]) -> Vec<String> {
        let is_in = |rung: &&Rung| rung.strips && rung.state == RungState::ToCome;
        let still = self.rungs.iter().filter(is_in);
        let still = still.map(|rung| say!("{part}: still in the unit.", part = rung.name));
        let counts = counts.iter().filter(|count| count.state == CountState::NotCounted);
        let counts = counts.map(|count| say!("{what}: not counted.", what = count.title()));
        self.missing.iter().cloned().chain(still).chain(counts).collect()
    }

    /// What keeps "closed" shut: one sentence each.
    pub fn to_close(&self, counts: &[CountView]) -> Vec<String> {
        let out = self.rungs.iter().filter(|rung| rung.state == RungState::Out);
        let out = out.map(|rung| {
            say!("{number} {part}: not in.", number = rung.shown, part = rung.name.to_lowercase())
        });
        let counts = counts.iter().filter_map(|count| match count.state {
            CountState::Differ => Some(count.says.clone()),
            CountState::ToFit => Some(say!("{what}: not counted in.", what = count.title())),
            CountState::Agree | CountState::NotCounted => None,
        });
        out.chain(counts).collect()
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
    let part = part.trim();
    let same = |bagged: &Bagged| bagged.part.to_lowercase() == part.to_lowercase();
    if let Some((number, _)) = log.bagged.iter().find(|(_, bagged)| same(bagged)) {
        return Err(GuideRefusal::Bagged { part: capitalised(&spaced(part)), number: *number });
    }
    Ok(Guided::PartBagged {
        number: log.next_number(),
        part: part.to_owned(),
        step: step.to_owned(),
        place: place.trim().to_owned(),
        facing: facing.trim().to_owned(),
        photo,
    })
}

/// The fact that puts right where a part that is out lies and how it faced; its number stays, and
/// so does its photo where there is no new one. `None`: it is not out.
pub fn put_right(rung: &Rung, place: &str, facing: &str, photo: Option<String>) -> Option<Guided> {
    let number = rung.number.filter(|_| rung.state == RungState::Out)?;
    Some(Guided::PartBagged {
        number,
        part: rung.part.clone(),
        step: rung.step.clone(),
        place: place.trim().to_owned(),
        facing: facing.trim().to_owned(),
        photo: photo.or_else(|| rung.photo.clone()),
    })
}
