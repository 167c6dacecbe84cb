//! Numbers: a single one, a series, a count, the shims of a pack.

use job::procedure::{Record, Repeats};
use job::{Capture, Guided};
use leptos::prelude::*;
use measure::Unit;
use words::{say, t};

use super::record::id;
use super::working::Working;
use crate::device::now::fresh_id;
use crate::page::lead_to;
use crate::parts::{Chip, Field, Slot, Slots, live, press, words};

/// How many fields stand open where nobody knows how many values there are.
const OPEN: usize = 4;

/// The numbers of a measure, or of a torque.
pub fn series(working: Working, at: usize, record: &Record) -> AnyView {
    let fields = match record.wanted() {
        Some(1) => single(working, at, record),
        Some(count) => slots(working, at, record, count),
        None => open(working, at, record, OPEN),
    };
    let clock = matches!(record.repeats, Repeats::Minutes(_)).then(|| clock(working, record));
    view! {
        {fields}
        {clock}
    }
    .into_any()
}

/// The shims of a pack, or the word that says why there are none.
pub fn pack(working: Working, at: usize, record: &Record) -> AnyView {
    let chip = |word: &'static str| {
        let keep = Callback::new(move |()| {
            working.keep(at, Capture::None(word.to_owned()), None);
        });
        view! {
            <Chip pressed=Signal::stored(false) on_press=keep>
                {t(word)}
            </Chip>
        }
    };
    let trial = record.pack().is_some_and(|pack| pack.1 == "trial").then(|| {
        view! { <a class="btn btn--plain" href=working.guide.of.at("setup")>{t("Fit it on the set-up")}</a> }
    });
    view! {
        {open(working, at, record, 3)}
        <div class="chips">{Capture::NO_PACK.map(chip).collect_view()}</div>
        {trial}
    }
    .into_any()
}

/// Label, unit and resolution: "Volume drained, ml, to 50".
fn label(working: Working, record: &Record) -> Signal<String> {
    let record = record.clone();
    words(move || {
        let title = record.title();
        let Some(unit) = working.unit(&record) else { return title };
        match &record.step {
            Some(step) if Some(unit) == record.unit() => {
                say!("{title}, {unit}, to {}", step.text())
            }
            _ => format!("{title}, {unit}"),
        }
    })
}

/// The unit that digits without one take; followed.
fn unit(working: Working, record: &Record) -> Signal<Option<Unit>> {
    let own = record.unit();
    Signal::derive(move || Some(working.unit_like(own?)))
}

fn single(working: Working, at: usize, record: &Record) -> AnyView {
    let (value, name) = (working.line(at, 0), record.title());
    let (signed, unit) = (record.may_be_below_zero(), unit(working, record));
    let label = label(working, record);
    view! { <Field id=format!("{}-0", id(at)) label name value signed unit/> }.into_any()
}

fn slots(working: Working, at: usize, record: &Record, count: usize) -> AnyView {
    let slot = |(line, place): (usize, String)| Slot {
        id: format!("{}-{line}", id(at)),
        spoken: say!("{label} at {place}", label = record.title()),
        place,
        value: working.line(at, line),
        says: Signal::stored(None),
        unit: unit(working, record),
    };
    let slots = record.places(count).into_iter().enumerate().map(slot).collect::<Vec<_>>();
    let class = if count > OPEN { "slots8" } else { "" };
    view! {
        <p class="label">{label(working, record)}</p>
        <div class=class>
            <Slots slots/>
        </div>
    }
    .into_any()
}

/// As many as there are: some fields, and more when they are asked for.
fn open(working: Working, at: usize, record: &Record, first: usize) -> AnyView {
    let count = RwSignal::new(first.max(untrack(|| working.lines(at)).len()));
    let record = StoredValue::new(record.clone());
    let more = press(Callback::new(move |()| {
        let next = count.get_untracked();
        count.set(next + 1);
        lead_to(&format!("{}-{next}", id(at)));
    }));
    view! {
        {live(move || record.with_value(|record| slots(working, at, record, count.get())))}
        <button class="btn btn--plain" type="button" on:click=more>
            {t("One more")}
            <span class="vh">{record.with_value(|record| t(&record.label).to_owned())}</span>
        </button>
    }
    .into_any()
}

/// For a series in time: starts its clock, once.
fn clock(working: Working, record: &Record) -> AnyView {
    let Repeats::Minutes(marks) = &record.repeats else { return ().into_any() };
    let step = working.step(|step| step.id.clone());
    let (marks, label) = (marks.clone(), record.label.clone());
    let started = working.guide.look_once(|_, log, _| {
        log.clocks.iter().any(|clock| clock.step == step && clock.label == label && !clock.stopped)
    });
    if started == Some(true) {
        return ().into_any();
    }
    let start = press(Callback::new(move |()| {
        let fact = Guided::ClockStarted {
            clock: fresh_id(),
            step: step.clone(),
            label: label.clone(),
            marks: marks.clone(),
        };
        let facts = vec![(job::BookId::Job(working.guide.of.id()), fact.into())];
        working.acting.record(facts, Vec::new(), Box::new(|| ()));
    }));
    view! {
        <button class="btn btn--plain" type="button" on:click=start>
            {t("Start its clock")}
            <span class="vh">{t(&record.label).to_owned()}</span>
        </button>
    }
    .into_any()
}
