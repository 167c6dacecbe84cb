//! What an instrument's parts share: what is half typed, what it says, and how it is kept.

use job::instrument::{Answer, Asked, At, Instrument, NoAnswer, Takes, Values};
use job::{BookId, Guided, Shown};
use leptos::prelude::*;
use measure::{Mark, Unit};
use wasm_bindgen_futures::spawn_local;

use super::texts::typed;
use crate::bench::{Bench, use_bench};
use crate::draft::{Draft, use_draft};
use crate::parts::Says;
use crate::screens::frame::OpenJob;
use crate::shown::use_shown;

/// The field that says what the check was done on, in the drafts.
const PLACE: &str = "place";
/// The clock of a log, in the drafts.
const CLOCK: &str = "clock";
/// The unit of the lengths typed, in the drafts; no field is called so.
const UNIT: &str = "lengths in";

/// An instrument at work.
#[derive(Clone, Copy)]
pub struct Working {
    /// The job it is kept in, if any.
    pub of: Option<OpenJob>,
    pub instrument: &'static Instrument,
    bench: Bench,
    pub(super) step: StoredValue<String>,
    pub(super) drafts: StoredValue<Vec<Draft>>,
    /// What is typed into each field.
    pub(super) values: Memo<Values>,
    /// The unit of digits without one: that of the first digit typed, whatever is shown later.
    pub(super) unit: Draft,
    /// When the clock of its log began, milliseconds since 1970; empty where it does not run.
    pub clock: Draft,
    /// What it was done on, where a person says so.
    pub(super) place: Draft,
    /// The record it was opened from, which is then its place.
    pub(super) record: StoredValue<Option<String>>,
    pub answer: Memo<Result<Answer, NoAnswer>>,
    pub busy: RwSignal<bool>,
    /// Why the last act was not written down.
    pub refused: RwSignal<Option<String>>,
    pub(super) shown: Memo<Shown>,
}

/// What an instrument says now.
#[derive(Clone, PartialEq)]
pub struct Now {
    pub answer: Answer,
    /// To what was kept, not to what is typed.
    pub kept: bool,
}

impl Working {
    /// The instrument, with what was left half typed, or else what was kept last.
    pub fn on(
        of: Option<OpenJob>,
        instrument: &'static Instrument,
        step: Option<String>,
        record: Option<String>,
    ) -> Working {
        let step = step.unwrap_or_default();
        let at = of.map(|of| of.id()).unwrap_or_default();
        let own = record.as_ref().map(|record| format!("/{record}")).unwrap_or_default();
        let place = format!("job/{at}/check/{}/{step}{own}", instrument.kind);
        let drafts: Vec<Draft> =
            instrument.fields.iter().map(|asked| use_draft(&place, asked.id)).collect();
        let drafts = StoredValue::new(drafts);
        let (unit, now) = (use_draft(&place, UNIT), use_shown());
        let shown =
            Memo::new(move |_| Shown { units: now.get().units.named(&unit.text()), ..now.get() });
        let values = Memo::new(move |_| typed(instrument, drafts));
        let answer =
            Memo::new(move |_| values.with(|values| instrument.answer(values, shown.get())));
        Working {
            of,
            instrument,
            bench: use_bench(),
            step: StoredValue::new(step),
            drafts,
            values,
            unit,
            clock: use_draft(&place, CLOCK),
            place: use_draft(&place, PLACE),
            record: StoredValue::new(record),
            answer,
            busy: RwSignal::new(false),
            refused: RwSignal::new(None),
            shown,
        }
    }

    /// The word at a field; followed.
    pub fn says(self, asked: &'static Asked) -> Signal<Option<Says>> {
        let refused = move || {
            self.answer.with(|answer| {
                let refused = answer.as_ref().err()?.refused.iter();
                let at = refused.into_iter().find(|refused| refused.field == asked.id)?;
                Some(Says::Refused(at.says.clone()))
            })
        };
        Signal::derive(move || refused().or_else(|| self.otherwise(asked).map(Says::Doubt)))
    }

    /// What its clock runs up to; followed.
    pub fn runs_to(self) -> Option<String> {
        self.values.with(|values| self.instrument.runs_to(values))
    }

    /// The decimal mark.
    pub fn mark(self) -> Mark {
        self.shown.get().mark
    }

    /// The unit a number there is in; followed.
    pub fn unit_of(self, asked: &'static Asked) -> Option<Unit> {
        self.values.with(|values| self.instrument.unit_of(asked, values, self.shown.get()))
    }

    /// Whether a field is asked for now; followed.
    pub fn asks(self, asked: &'static Asked) -> bool {
        self.values.with(|values| self.instrument.asks(asked, values))
    }

    /// The place of a field that takes these, and the field.
    pub fn field_that(self, takes: fn(Takes) -> bool) -> Option<(usize, &'static Asked)> {
        self.instrument.fields.iter().enumerate().find(|(_, asked)| takes(asked.takes))
    }

    /// How many lines of a log are begun in any of its fields; followed.
    pub fn filled(self, places: &'static [&'static str]) -> usize {
        let of_log = self.instrument.fields.iter().enumerate().filter(|(_, asked)| {
            matches!(asked.takes, Takes::Numbers(.., own) | Takes::Times(own) if own == places)
        });
        let begun = |(at, _)| {
            self.lines(at).iter().rposition(|text| !text.is_empty()).map_or(0, |last| last + 1)
        };
        of_log.map(begun).max().unwrap_or_default()
    }

    /// What stands under each choice of a field; followed.
    pub fn notes(self, asked: &'static Asked) -> Vec<String> {
        let (values, shown) = (self.values.get(), self.shown.get());
        let step = self.step.get_value();
        let of_job = self.of.and_then(|of| {
            of.look(|(job, sheet, _), _| {
                let at = At { sheet, log: &job.guide, step: &step };
                self.instrument.notes(asked, &values, shown, Some(at))
            })
        });
        of_job.unwrap_or_else(|| self.instrument.notes(asked, &values, shown, None))
    }

    /// The place of the unit that this person reads among some; none among none. Followed.
    pub fn usual(self, units: &[Unit]) -> Option<usize> {
        let own = |unit: &Unit| self.shown.get().units.of(*unit) == *unit;
        units.iter().position(own).or((!units.is_empty()).then_some(0))
    }

    /// Writes down what was typed.
    pub fn keep(self) {
        let values = self.values.get_untracked();
        let (Some(of), Ok(values)) =
            (self.of, self.instrument.kept(&values, self.shown.get_untracked()))
        else {
            return;
        };
        if self.busy.get_untracked() {
            return;
        }
        let fact = Guided::BenchChecked {
            step: self.step.get_value(),
            place: untrack(|| self.place().get()).trim().to_owned(),
            kind: self.instrument.kind.to_owned(),
            values,
        };
        let forgets: Vec<_> = self.drafts.with_value(|drafts| {
            let all = drafts.iter().chain([&self.unit, &self.place, &self.clock]);
            all.map(|draft| draft.forgets()).collect()
        });
        self.busy.set(true);
        spawn_local(async move {
            let outcome = self.bench.record(vec![(BookId::Job(of.id()), fact.into())]).await;
            self.busy.try_set(false);
            if outcome.is_ok() {
                forgets.into_iter().for_each(|forget| forget());
            }
            self.refused.try_set(outcome.err().map(|why| why.to_string()));
        });
    }

    /// What was kept last here, with its place; followed.
    fn last(self) -> Option<(String, Values)> {
        let (step, record) = (self.step.get_value(), self.record.get_value());
        let last = self.of?.look(|(job, ..), _| {
            let last = job.guide.check_of_step(&step, self.instrument.kind, record.as_deref());
            last.map(|(place, check)| (place.to_owned(), check.values.clone()))
        });
        last.flatten()
    }

    /// What an answer means on the unit of the job; followed.
    pub fn of_unit(self, answer: &Answer) -> Vec<String> {
        let said = self.of.and_then(|of| {
            of.look(|(job, sheet, _), shown| self.instrument.of_unit(answer, job, sheet, shown))
        });
        said.unwrap_or_default()
    }

    /// Puts what was kept last into the fields, to be kept as a new check; the old one stays.
    pub fn open_again(self) {
        let Some((place, values)) = untrack(|| self.last()) else { return };
        self.drafts.with_value(|drafts| {
            for (asked, draft) in self.instrument.fields.iter().zip(drafts) {
                let texts = values.get(asked.id).map(|texts| texts.join("\n"));
                draft.set(&texts.unwrap_or_default());
            }
        });
        self.place.set(&place);
    }

    /// What it says to what is typed, or, while nothing is, to what was kept last; followed.
    pub fn says_now(self) -> Result<Now, NoAnswer> {
        match self.answer.get() {
            Ok(answer) => Ok(Now { answer, kept: false }),
            Err(lacks) if self.is_typed() => Err(lacks),
            Err(lacks) => {
                let kept =
                    self.last().and_then(|it| self.instrument.answer(&it.1, self.shown.get()).ok());
                kept.map(|answer| Now { answer, kept: true }).ok_or(lacks)
            }
        }
    }

    /// Whether anything is half typed; followed.
    pub fn is_typed(self) -> bool {
        self.drafts.with_value(|drafts| drafts.iter().any(|draft| !draft.text().is_empty()))
    }
}
