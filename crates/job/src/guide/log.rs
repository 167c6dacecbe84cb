//! What was done of the guided job: the guided facts of a job's book, folded.

use std::collections::BTreeMap;

use measure::Decimal;

use super::consent::{Consent, Refused};
use crate::guided::{Capture, PartVerdict, Readied};
use crate::procedure::{RecordKind, Scope};
use crate::{Entry, Fact, FittedShim, Guided};

/// What was done so far. Total: a fact about a step no plan has is kept and does no harm.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct GuideLog {
    /// The procedure the job follows: layout and revision.
    pub procedure: Option<(String, u32)>,
    /// The scope agreed last.
    pub scope: Option<Scope>,
    /// When it was.
    pub(crate) scoped: Option<Mark>,
    /// What happened to each step.
    pub steps: BTreeMap<String, StepLog>,
    /// What was captured last, by step and label.
    pub captures: BTreeMap<(String, String), Kept>,
    /// The clocks, in the order started.
    pub clocks: Vec<Clock>,
    /// The parts that came off, by number.
    pub bagged: BTreeMap<u32, Bagged>,
    /// The verdict on each part.
    pub judged: BTreeMap<String, Judged>,
    /// Every consent, in order.
    pub consents: Vec<Consent>,
    /// Every no, in order.
    pub refused: Vec<Refused>,
    /// What was done last about each tool: how, and from where.
    pub tools: BTreeMap<String, (Readied, String)>,
    /// The bench checks kept last.
    pub checks: BTreeMap<CheckKey, BenchCheck>,
    /// When and where each entry that counts was written.
    pub(crate) stamps: Vec<(Mark, String)>,
    /// Each change of a pack: its slot as the step data names it.
    pub(crate) pack_changes: Vec<(String, Mark)>,
    /// The step touched last.
    pub(crate) last_step: Option<(String, Mark)>,
    packs: Vec<PackSeen>,
}

/// What bench checks are told apart by: of two with the same key the later one counts.
#[derive(Clone, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub struct CheckKey {
    /// The step it was done in; empty for none.
    pub step: String,
    /// Where it was done; may be empty.
    pub place: String,
    /// Its kind.
    pub kind: String,
    /// The stage of a test that has several; else empty.
    pub stage: String,
}

/// A pack's sum as it was written down.
#[derive(Clone, Debug, PartialEq, Eq)]
struct PackSeen {
    position: String,
    total: Decimal,
    mark: Mark,
    /// The capture it stands in, where a later one of the same label corrects it.
    corrects: Option<(String, String)>,
}

/// A place in the order of the job's entries, and a time.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub struct Mark {
    /// The place.
    pub order: usize,
    /// Milliseconds since 1970.
    pub at: i64,
}

/// What happened to a step.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct StepLog {
    /// Done last.
    pub done: Option<Mark>,
    /// Left out last, and why.
    pub skipped: Option<(Mark, String)>,
    /// Opened again last, and why; a failed gate too.
    pub reopened: Option<(Mark, String)>,
    /// Its gate was judged passed last, and by whom.
    pub passed: Option<(Mark, String)>,
}

/// A value captured.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Kept {
    /// Id of its entry.
    pub entry: String,
    /// What.
    pub value: Capture,
    /// When.
    pub mark: Mark,
    /// The bench check it was read with; `None`: captured on its own.
    pub check: Option<String>,
}

/// A bench check as it was kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BenchCheck {
    /// Id of its entry.
    pub entry: String,
    /// Each field as typed.
    pub values: BTreeMap<String, Vec<String>>,
    /// When.
    pub mark: Mark,
}

/// A wait.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Clock {
    /// Its id.
    pub id: String,
    /// The step it was started in.
    pub step: String,
    /// What waits: "cooling from".
    pub label: String,
    /// Minutes after the start; the last is the end.
    pub marks: Vec<u32>,
    /// When it was started.
    pub started: Mark,
    /// The device that started it.
    pub device: String,
    /// It was ended by hand.
    pub stopped: bool,
}

/// A part that came off.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Bagged {
    /// The part's place in the unit: `pinion-nut`.
    pub part: String,
    /// The step it came off in.
    pub step: String,
    /// Bag or tray place.
    pub place: String,
    /// Which way it faced.
    pub facing: String,
    /// Where its photo is kept.
    pub photo: Option<String>,
    /// When it was fitted for good.
    pub fitted: Option<Mark>,
}

/// A verdict on a part.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Judged {
    /// The verdict.
    pub verdict: PartVerdict,
    /// The signs that were ticked.
    pub signs: Vec<String>,
    /// Why.
    pub reason: String,
    /// Where its photo is kept.
    pub photo: Option<String>,
    /// When.
    pub mark: Mark,
}

impl GuideLog {
    /// Takes the next entry of the job's book in.
    pub(crate) fn take(&mut self, entry: &Entry, order: usize) {
        let mark = Mark { order, at: entry.at };
        self.stamps.push((mark, entry.device.clone()));
        match &entry.fact {
            Fact::PackFitted { slot, shims, as_found } => {
                let total = shims.iter().map(FittedShim::net).sum();
                // Found once: a later one corrects it. Fitted anew each time.
                let corrects = as_found.then(|| (String::new(), slot.tag().to_owned()));
                self.pack_is(slot.tag(), total, *as_found, mark, corrects);
            }
            Fact::Guided(fact) => self.guided(fact, entry, mark),
            _ => {}
        }
    }

    /// What was captured for a label of a step.
    pub fn capture(&self, step: &str, label: &str) -> Option<&Kept> {
        self.captures.get(&(step.to_owned(), label.to_owned()))
    }

    /// The bench check of a kind that was kept last.
    pub fn last_check(&self, kind: &str) -> Option<&BenchCheck> {
        let of_kind = self.checks.iter().filter(|(key, _)| key.kind == kind);
        of_kind.map(|(_, check)| check).max_by_key(|check| check.mark)
    }

    /// The same for a step, or for none where the step is empty; with its place. `at`: only of there.
    pub fn check_of_step(
        &self,
        step: &str,
        kind: &str,
        at: Option<&str>,
    ) -> Option<(&str, &BenchCheck)> {
        let of_step = self.checks.iter().filter(|(key, _)| {
            key.step == step && key.kind == kind && at.is_none_or(|at| at == key.place)
        });
        let last = of_step.max_by_key(|(_, check)| check.mark)?;
        Some((&last.0.place, last.1))
    }

    /// The number for the next part that comes off.
    pub fn next_number(&self) -> u32 {
        self.bagged.last_key_value().map_or(1, |(number, _)| number.saturating_add(1))
    }

    fn guided(&mut self, fact: &Guided, entry: &Entry, mark: Mark) {
        if let Some(step) = touched(fact) {
            self.last_step = Some((step.to_owned(), mark));
        }
        match fact {
            Guided::ProcedurePinned { layout, revision } => {
                self.procedure = Some((layout.clone(), *revision));
            }
            Guided::ScopeChosen { scope, .. } => {
                self.scope = Some(*scope);
                self.scoped = Some(mark);
            }
            Guided::StepDone { step } => self.step(step).done = Some(mark),
            Guided::StepSkipped { step, reason } => {
                self.step(step).skipped = Some((mark, reason.clone()));
            }
            Guided::StepReopened { step, reason }
            | Guided::GateJudged { step, passed: false, reason, .. } => {
                self.step(step).reopened = Some((mark, reason.clone()));
            }
            Guided::GateJudged { step, by, .. } => {
                self.step(step).passed = Some((mark, by.clone()));
            }
            Guided::Captured { step, label, value } => {
                self.pack(step, label, value, mark);
                let (id, value) = (entry.id.clone(), value.clone());
                let kept = Kept { entry: id, value, mark, check: None };
                self.captures.insert((step.clone(), label.clone()), kept);
            }
            Guided::ClockStarted { clock, step, label, marks } => self.clocks.push(Clock {
                id: clock.clone(),
                step: step.clone(),
                label: label.clone(),
                marks: marks.clone(),
                started: mark,
                device: entry.device.clone(),
                stopped: false,
            }),
            Guided::ClockStopped { clock, .. } => {
                for running in self.clocks.iter_mut().filter(|other| other.id == *clock) {
                    running.stopped = true;
                }
            }
            Guided::PartBagged { number, part, step, place, facing, photo } => {
                let bagged = Bagged {
                    part: part.clone(),
                    step: step.clone(),
                    place: place.clone(),
                    facing: facing.clone(),
                    photo: photo.clone(),
                    fitted: None,
                };
                self.bagged.insert(*number, bagged);
            }
            Guided::PartFitted { number } => {
                if let Some(bagged) = self.bagged.get_mut(number) {
                    bagged.fitted = Some(mark);
                }
            }
            Guided::PartJudged { part, verdict, signs, reason, photo } => {
                let judged = Judged {
                    verdict: *verdict,
                    signs: signs.clone(),
                    reason: reason.clone(),
                    photo: photo.clone(),
                    mark,
                };
                self.judged.insert(part.clone(), judged);
            }
            Guided::ConsentGiven { by, what, limit } => self.consents.push(Consent {
                by: by.clone(),
                what: what.clone(),
                limit: limit.clone(),
                mark,
                signed: None,
            }),
            Guided::ConsentSigned(agreement) => self.consents.push(Consent {
                by: agreement.by.clone(),
                what: agreement.work.join(", "),
                limit: agreement.limit.clone(),
                mark,
                signed: Some(agreement.clone()),
            }),
            Guided::ConsentRefused { by, how, work, reason, initials, .. } => {
                self.refused.push(Refused {
                    by: by.clone(),
                    how: *how,
                    work: work.clone(),
                    reason: reason.clone(),
                    initials: initials.clone(),
                    mark,
                });
            }
            Guided::ToolReadied { tool, how, from } => {
                self.tools.insert(tool.clone(), (*how, from.clone()));
            }
            Guided::BenchChecked { step, place, kind, values } => {
                let stage = values.get("stage").and_then(|texts| texts.first());
                let key = CheckKey {
                    step: step.clone(),
                    place: place.clone(),
                    kind: kind.clone(),
                    stage: stage.cloned().unwrap_or_default(),
                };
                let (entry, values) = (entry.id.clone(), values.clone());
                self.checks.insert(key, BenchCheck { entry, values, mark });
            }
            Guided::StepAdded { .. }
            | Guided::StepDropped { .. }
            | Guided::StepMoved { .. }
            | Guided::ToolKept { .. }
            | Guided::ToolNamed { .. }
            | Guided::ToolCorrected { .. }
            | Guided::ToolGone { .. } => {}
        }
    }

    fn step(&mut self, id: &str) -> &mut StepLog {
        self.steps.entry(id.to_owned()).or_default()
    }

    fn pack(&mut self, step: &str, label: &str, value: &Capture, mark: Mark) {
        let Some(total) = value.pack_total() else { return };
        let Some((position, state)) = super::packs::label(RecordKind::Pack, label) else { return };
        // Every trial is a build of its own; any other pack is written down once, or corrected.
        let corrects = (state != "trial").then(|| (step.to_owned(), label.to_owned()));
        self.pack_is(position, total, state == "as found", mark, corrects);
    }

    /// A pack whose sum is not the one written down before has changed.
    fn pack_is(
        &mut self,
        position: &str,
        total: Decimal,
        as_found: bool,
        mark: Mark,
        corrects: Option<(String, String)>,
    ) {
        self.packs.retain(|seen| corrects.is_none() || seen.corrects != corrects);
        let position = position.to_owned();
        let seen = PackSeen { position, total, mark, corrects };
        // What was found was there from the start, however late it was written down.
        let at = if as_found { 0 } else { self.packs.len() };
        self.packs.insert(at, seen);
        let mut last: BTreeMap<&str, Decimal> = BTreeMap::new();
        self.pack_changes.clear();
        for seen in &self.packs {
            let before = last.insert(&seen.position, seen.total);
            if before.is_some_and(|before| before != seen.total) {
                self.pack_changes.push((seen.position.clone(), seen.mark));
            }
        }
    }
}

/// The step a fact is about.
fn touched(fact: &Guided) -> Option<&str> {
    match fact {
        Guided::StepDone { step }
        | Guided::StepSkipped { step, .. }
        | Guided::StepReopened { step, .. }
        | Guided::GateJudged { step, .. }
        | Guided::Captured { step, .. }
        | Guided::ClockStarted { step, .. }
        | Guided::PartBagged { step, .. } => Some(step),
        _ => None,
    }
}
