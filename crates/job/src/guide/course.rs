//! Where every step stands, and which comes next.

use words::say;

use super::gate::{self, GateView};
use super::log::{GuideLog, Mark};
use super::{clocks, packs};
use crate::clock;
use crate::procedure::{Phase, Plan, RecordKind, Step};

/// When and where it is looked at.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Moment {
    /// Now, milliseconds since 1970.
    pub now: i64,
    /// Minutes ahead of UTC.
    pub utc_offset: i32,
    /// The device looked at.
    pub device: String,
}

/// What the set-up says of a check, where it was read there.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Told {
    /// The check as the step data names it: "forward backlash".
    pub check: String,
    /// It is in its band.
    pub in_band: bool,
    /// What stands there: "Out".
    pub words: String,
}

/// Where every step of a plan stands.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Course {
    /// The steps in the order shown.
    pub steps: Vec<StepView>,
    /// The step proposed next, by its place; `None`: all is done.
    pub next: Option<usize>,
    /// How many are done or left out.
    pub settled: usize,
}

/// A step as it stands.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct StepView {
    /// Its id.
    pub id: String,
    /// Its number on the screen, from 1.
    pub number: usize,
    /// The act.
    pub title: String,
    /// The phase.
    pub phase: Phase,
    /// How it stands.
    pub state: StepState,
    /// It can be done now: everything it needs is settled.
    pub ready: bool,
    /// Labels that are not captured, or whose ground was lost.
    pub to_capture: Vec<String>,
    /// How many are captured.
    pub captured: usize,
    /// Its gate.
    pub gate: Option<GateView>,
    /// What to wait for first: "Case cools until 14:40. Read nothing before."
    pub waits: Vec<String>,
    /// A step of the shop's own.
    pub own: bool,
}

/// How a step stands.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum StepState {
    /// It can be done.
    Open,
    /// Something must be done first.
    Locked {
        /// What, in words.
        opens: String,
    },
    /// Done.
    Done {
        /// When.
        at: i64,
    },
    /// Left out.
    Skipped {
        /// Why.
        reason: String,
        /// When.
        at: i64,
    },
    /// It was done, and its ground is gone or it was opened again.
    Stale {
        /// Cause and cure.
        why: String,
    },
}

impl Course {
    /// Works out where every step stands.
    pub fn of(plan: &Plan, log: &GuideLog, told: &[Told], moment: &Moment) -> Course {
        let running = clocks::clocks(log, moment);
        let mut steps: Vec<StepView> = Vec::with_capacity(plan.steps.len());
        for (at, step) in plan.steps.iter().enumerate() {
            let blocker = step.needs.iter().find_map(|need| {
                let earlier = steps.iter().find(|view| view.id == *need)?;
                (!earlier.is_settled()).then_some(earlier)
            });
            let state = match settled(plan, log, at, step, moment) {
                Some(state) => state,
                None => match blocker {
                    Some(blocker) => StepState::Locked { opens: opens(blocker) },
                    None => StepState::Open,
                },
            };
            let ready = blocker.is_none();
            let to_capture = to_capture(plan, log, step);
            steps.push(StepView {
                id: step.id.clone(),
                number: at + 1,
                title: step.title.clone(),
                phase: step.phase,
                state,
                ready,
                captured: step.records.len() - to_capture.len(),
                to_capture,
                gate: gate::view(plan, log, step, told),
                waits: running
                    .iter()
                    .filter_map(|clock| clocks::holds(plan, clock, at, moment))
                    .collect(),
                own: step.own,
            });
        }
        let next = steps.iter().position(|view| view.ready && !view.is_settled());
        let settled = steps.iter().filter(|view| view.is_settled()).count();
        Course { steps, next, settled }
    }

    /// How much of the labour is done, per cent; what was left out counts as done.
    pub fn percent(&self, plan: &Plan) -> u32 {
        let steps = plan.steps.iter().zip(&self.steps);
        let done = steps.filter(|(_, view)| view.is_settled());
        done.map(|(step, _)| step.minutes).sum::<u32>() * 100 / plan.minutes().max(1)
    }

    /// A step by its id.
    pub fn step(&self, id: &str) -> Option<&StepView> {
        self.steps.iter().find(|view| view.id == id)
    }

    /// What can be done while clocks run: open steps that wait for none of them.
    pub fn meanwhile(&self) -> impl Iterator<Item = &StepView> {
        self.steps.iter().filter(|view| view.ready && !view.is_settled() && view.waits.is_empty())
    }
}

impl StepView {
    /// The act within a sentence, without what follows its first comma or colon: "read forward
    /// backlash".
    pub fn act(&self) -> String {
        let clause = self.title.split([',', ':', ';']).next().unwrap_or_default();
        let mut letters = clause.chars();
        let first = letters.next().map(|first| first.to_lowercase().collect::<String>());
        first.unwrap_or_default() + letters.as_str()
    }

    /// Done or left out, and still standing.
    pub fn is_settled(&self) -> bool {
        matches!(self.state, StepState::Done { .. } | StepState::Skipped { .. })
    }

    /// Done, and still standing.
    pub fn is_done(&self) -> bool {
        matches!(self.state, StepState::Done { .. })
    }

    /// Its gate, while that is shut.
    pub fn keeps_shut(&self) -> Option<&GateView> {
        self.gate.as_ref().filter(|gate| !gate.passed)
    }
}

fn opens(blocker: &StepView) -> String {
    match blocker.state {
        StepState::Stale { .. } => say!("Opens when “{step}” is done again.", step = blocker.title),
        _ => say!("Opens when “{step}” is done.", step = blocker.title),
    }
}

/// How a step that was done or left out stands now; `None`: it never was.
fn settled(
    plan: &Plan,
    log: &GuideLog,
    at: usize,
    step: &Step,
    moment: &Moment,
) -> Option<StepState> {
    let own = log.steps.get(&step.id)?;
    let skipped = own.skipped.as_ref().map(|(mark, _)| *mark);
    let ended = own.done.max(skipped)?;
    if let Some((mark, reason)) = own.reopened.as_ref().filter(|(mark, _)| *mark > ended) {
        let time = clock::hour_minute(mark.at, moment.utc_offset);
        return Some(StepState::Stale { why: say!("Opened again {time}: {reason}.") });
    }
    if let Some(why) = lost_ground(plan, log, at, step, ended, moment) {
        return Some(StepState::Stale { why });
    }
    match &own.skipped {
        Some((mark, reason)) if *mark == ended => {
            Some(StepState::Skipped { reason: reason.clone(), at: mark.at })
        }
        _ => Some(StepState::Done { at: ended.at }),
    }
}

/// Why what was done at `ended` no longer stands.
fn lost_ground(
    plan: &Plan,
    log: &GuideLog,
    at: usize,
    step: &Step,
    ended: Mark,
    moment: &Moment,
) -> Option<String> {
    let time = |mark: Mark| clock::apart(mark.at, ended.at, moment.utc_offset);
    for (first, earlier) in plan.steps.iter().enumerate().take(at) {
        let reopened = log.steps.get(&earlier.id).and_then(|other| other.reopened.as_ref());
        let Some((mark, _)) = reopened.filter(|(mark, _)| *mark > ended) else { continue };
        if plan.comes_before(first, at) {
            let (title, time) = (&earlier.title, time(*mark));
            return Some(say!("“{title}” was opened again {time}, so do this again after it."));
        }
    }
    for (label, taken) in readings(log, step) {
        if let Some((pack, mark)) = packs::changed_under(plan, log, label, taken) {
            let (taken, changed) = (time(taken), time(*mark));
            return Some(say!("Read {taken}. {pack} changed {changed}, so read it again."));
        }
    }
    let (pack, mark) = packs::seat_changed(plan, log, step, ended)?;
    Some(say!("{pack} changed {}, so seat it again.", time(*mark)))
}

/// The readings of a step from the set-up on, with when they were taken.
fn readings<'a>(log: &'a GuideLog, step: &'a Step) -> impl Iterator<Item = (&'a str, Mark)> {
    let counts = step.phase >= Phase::SetUp;
    step.records
        .iter()
        .filter(move |record| counts && record.kind == RecordKind::Measure)
        .filter_map(|record| {
            Some((record.label.as_str(), log.capture(&step.id, &record.label)?.mark))
        })
}

fn to_capture(plan: &Plan, log: &GuideLog, step: &Step) -> Vec<String> {
    let reopened = log.steps.get(&step.id).and_then(|own| own.reopened.as_ref());
    step.records
        .iter()
        .filter(|record| match log.capture(&step.id, &record.label) {
            None => true,
            Some(kept) => {
                let again = reopened.is_some_and(|(mark, _)| *mark > kept.mark);
                let reading = record.kind == RecordKind::Measure && step.phase >= Phase::SetUp;
                again
                    || (reading
                        && packs::changed_under(plan, log, &record.label, kept.mark).is_some())
            }
        })
        .map(|record| record.label.clone())
        .collect()
}
