//! What the parts of a step share: what is kept, what is half typed, and how it is written down.

use job::guide::{Kept, StepView, capture, check_of, for_set_up, takes_consent};
use job::procedure::{Record, RecordKind, Step};
use job::{BookId, Capture, Fact, Guided, Units};
use leptos::prelude::*;
use measure::Unit;
use words::{say, t};

use super::torque::Extras;
use crate::draft::{Draft, use_draft};
use crate::guide::Guide;
use crate::guide::acting::Acting;
use crate::parts::{Says, Text};
use crate::prefs::use_prefs;
use crate::storage::Photo;

/// A step that is worked on.
#[derive(Clone, Copy)]
pub struct Working {
    pub guide: Guide,
    pub acting: Acting,
    step: StoredValue<Step>,
    /// What is half typed for each record: a line for each value.
    drafts: StoredValue<Vec<Draft>>,
    /// The units of digits without one: those of the first digit typed, whatever is shown later.
    pinned: Draft,
    pub extras: Extras,
    /// A record that is captured once more.
    pub again: RwSignal<Option<usize>>,
    /// A record of which a person says why there is none.
    pub none: RwSignal<Option<usize>>,
    says: RwSignal<Option<(usize, Says)>>,
    view: Memo<Option<StepView>>,
    kept: Memo<Vec<Option<Kept>>>,
    shown: Signal<Units>,
}

/// The same where they share their signals.
impl PartialEq for Working {
    fn eq(&self, other: &Working) -> bool {
        self.again == other.again
    }
}

impl Working {
    /// A step of a job, with what was left half typed.
    pub fn on(guide: Guide, step: Step) -> Working {
        let place = format!("job/{}/step/{}", guide.of.id(), step.id);
        let drafts = step.records.iter().map(|record| use_draft(&place, &record.label)).collect();
        let (id, labels) = (step.id.clone(), step.records.clone());
        let view = Memo::new({
            let id = id.clone();
            move |_| guide.look(|_, _, course| course.step(&id).cloned()).flatten()
        });
        let kept = Memo::new(move |_| {
            let kept = guide.look(|_, log, _| {
                labels.iter().map(|record| log.capture(&id, &record.label).cloned()).collect()
            });
            kept.unwrap_or_default()
        });
        let prefs = use_prefs();
        Working {
            guide,
            acting: Acting::here(),
            step: StoredValue::new(step),
            drafts: StoredValue::new(drafts),
            pinned: use_draft(&place, "unit"),
            extras: Extras::at(&place),
            again: RwSignal::new(None),
            none: RwSignal::new(None),
            says: RwSignal::new(None),
            view,
            kept,
            shown: Signal::derive(move || prefs.units()),
        }
    }

    /// Looks at the step.
    pub fn step<T>(self, at: impl FnOnce(&Step) -> T) -> T {
        self.step.with_value(at)
    }

    /// A record of the step.
    pub fn record(self, at: usize) -> Option<Record> {
        self.step(|step| step.records.get(at).cloned())
    }

    /// How the step stands; followed.
    pub fn view<T>(self, at: impl FnOnce(&StepView) -> T) -> Option<T> {
        self.view.with(|view| view.as_ref().map(at))
    }

    /// What was captured last for a record; followed.
    pub fn kept(self, at: usize) -> Option<Kept> {
        self.kept.with(|kept| kept.get(at).cloned().flatten())
    }

    /// Whether a record is still to be captured; followed.
    pub fn lacks(self, at: usize) -> bool {
        let label = self.step(|step| step.records.get(at).map(|record| record.label.clone()));
        let lacks =
            |view: &StepView| view.to_capture.iter().any(|other| Some(other) == label.as_ref());
        self.view(lacks).unwrap_or_default()
    }

    /// What is half typed for a record, a line for each value; followed.
    pub fn lines(self, at: usize) -> Vec<String> {
        let text = self.drafts.with_value(|drafts| drafts.get(at).map(|draft| draft.text()));
        text.unwrap_or_default().split('\n').map(str::to_owned).collect()
    }

    /// Whether something is half typed for a record; followed.
    pub fn is_typed(self, at: usize) -> bool {
        self.lines(at).iter().any(|line| !line.trim().is_empty())
    }

    /// The line of a value, as a field holds it.
    pub fn line(self, at: usize, line: usize) -> Text {
        let text = move || self.lines(at).get(line).cloned().unwrap_or_default();
        let set = Callback::new(move |text: String| self.set_line(at, line, &text));
        Text::new(Signal::derive(text), set)
    }

    /// Changes the line of a value.
    pub fn set_line(self, at: usize, line: usize, text: &str) {
        let mut lines = untrack(|| self.lines(at));
        if lines.len() <= line {
            lines.resize(line + 1, String::new());
        }
        if let Some(place) = lines.get_mut(line) {
            text.clone_into(place);
        }
        self.pin();
        self.set_lines(at, &lines.join("\n"));
    }

    /// What stands beside a torque, as a field holds it.
    pub fn extra(self, draft: Draft) -> Text {
        let set = Callback::new(move |text: String| {
            self.pin();
            draft.set(&text);
        });
        Text::new(Signal::derive(move || draft.text()), set)
    }

    fn pin(self) {
        if self.pinned.text_untracked().is_empty() {
            self.pinned.set(&self.shown.get_untracked().to_string());
        }
    }

    fn set_lines(self, at: usize, text: &str) {
        let text = if text.trim().is_empty() { "" } else { text };
        self.drafts.with_value(|drafts| {
            if let Some(draft) = drafts.get(at) {
                draft.set(text);
            }
            let is_empty = |draft: &Draft| draft.text_untracked().is_empty();
            if drafts.iter().chain(&self.extras.all()).all(is_empty) {
                self.pinned.clear();
            }
        });
        self.says.try_set(None);
    }

    /// The unit that digits without one take for a record; followed.
    pub fn unit(self, record: &Record) -> Option<Unit> {
        Some(self.unit_like(record.unit()?))
    }

    /// The unit that digits without one take where `own` is one of their quantity; followed.
    pub fn unit_like(self, own: Unit) -> Unit {
        self.shown.get().named(&self.pinned.text()).of(own)
    }

    /// The word at a record; followed.
    pub fn says(self, at: usize) -> Option<Says> {
        self.says.with(|says| says.as_ref().filter(|says| says.0 == at).map(|says| says.1.clone()))
    }

    /// Says why something is not taken.
    pub fn refuse(self, at: usize, why: String) {
        self.says.set(Some((at, Says::Refused(why))));
    }

    /// Writes down what is half typed for a record.
    pub fn keep_typed(self, at: usize) {
        let Some(record) = self.record(at) else { return };
        let lines = untrack(|| self.lines(at));
        let texts: Vec<&str> = lines.iter().map(String::as_str).collect();
        if self.none.get_untracked() == Some(at) {
            return self.keep(at, Capture::None(lines.join(" ").trim().to_owned()), None);
        }
        if record.kind == RecordKind::Time {
            return super::time::start(self, at, lines.first().map_or("", String::as_str));
        }
        match capture(&record, &texts, untrack(|| self.unit(&record))) {
            Ok((Capture::Torque { values, .. }, doubt)) => {
                match self.extras.torque(values, |own| untrack(|| self.unit_like(own))) {
                    Ok(torque) => self.keep(at, torque, doubt),
                    Err(why) => self.refuse(at, why),
                }
            }
            Ok((Capture::Facing { words, .. }, doubt)) => {
                let photo =
                    untrack(|| self.kept(at)).and_then(|kept| Some(kept.value.photo()?.to_owned()));
                self.keep(at, Capture::Facing { words, photo }, doubt);
            }
            Ok((value, doubt)) => self.keep(at, value, doubt),
            Err(why) => self.refuse(at, why.to_string()),
        }
    }

    /// Writes a capture down; a doubt about it is said, and it stands.
    pub fn keep(self, at: usize, value: Capture, doubt: Option<String>) {
        self.keep_with(
            at,
            value,
            Vec::new(),
            Vec::new(),
            Box::new(move || {
                self.says.try_set(doubt.map(|doubt| (at, Says::Doubt(doubt))));
            }),
        );
    }

    /// The same with further facts and photos, in one act.
    pub fn keep_with(
        self,
        at: usize,
        value: Capture,
        more: Vec<Guided>,
        photos: Vec<Photo>,
        then: Box<dyn FnOnce()>,
    ) {
        let Some(record) = self.record(at) else { return };
        let book = || BookId::Job(self.guide.of.id());
        let step = self.step(|step| step.id.clone());
        let for_set_up = |(job, ..): (&job::Job, &_, &_), _| for_set_up(job, &record, &value);
        let fact = self.guide.of.look_once(for_set_up).flatten().unwrap_or_else(|| {
            Guided::Captured { step, label: record.label.clone(), value }.into()
        });
        let more = more.into_iter().map(|fact| (book(), Fact::from(fact)));
        let facts = [(book(), fact)].into_iter().chain(more).collect();
        let forgets: Vec<_> = self.typed(at).into_iter().map(Draft::forgets).collect();
        let done = move || {
            forgets.into_iter().for_each(|forget| forget());
            // The screen may have been left meanwhile.
            self.again.try_set(None);
            self.none.try_set(None);
            then();
        };
        self.acting.record(facts, photos, Box::new(done));
    }

    /// What is half typed for a record, and the unit where nothing else is.
    fn typed(self, at: usize) -> Vec<Draft> {
        self.drafts.with_value(|drafts| {
            let empty =
                |(other, draft): (usize, &Draft)| other == at || draft.text_untracked().is_empty();
            let pinned = drafts.iter().enumerate().all(empty).then_some(self.pinned);
            drafts.get(at).copied().into_iter().chain(pinned).chain(self.extras.all()).collect()
        })
    }

    /// Where a record is better taken than here, and what leads there.
    pub fn elsewhere(self, at: usize) -> Option<(String, String)> {
        let record = self.record(at)?;
        let of = self.guide.of;
        let freezes = self.step(|step| {
            step.records.iter().any(|other| other.pack().is_some_and(|pack| pack.1 == "frozen"))
        });
        let is_frozen = match record.kind {
            RecordKind::Pack => true,
            RecordKind::Text => record.label.contains("initials"),
            RecordKind::Time => record.label == "frozen",
            _ => false,
        };
        if freezes && is_frozen {
            return Some((of.at("freeze"), t("Freeze the packs").to_owned()));
        }
        if takes_consent(&record) {
            return Some((of.at("consent"), t("Ask for consent").to_owned()));
        }
        let check =
            self.guide.look_once(|plan, _, _| self.step(|step| check_of(plan, step, &record)));
        let check = check.flatten()?;
        Some((of.at(&format!("read/{}", check.id())), say!("Read {}", t(&record.label))))
    }
}
