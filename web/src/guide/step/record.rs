//! What a step captures: each record with what was kept, or with what takes it.

use job::guide::Kept;
use job::procedure::{Record, RecordKind};
use job::{Capture, apart, instrument};
use js_sys::encode_uri_component;
use leptos::prelude::*;
use words::{say, t};

use super::working::Working;
use super::{choice, number, photo, sign, time, torque};
use crate::parts::{Chip, Message, Shot, Sign, State, TextField, live, press};

/// The sheet of captures.
pub fn sheet(working: Working) -> AnyView {
    let ready = Memo::new(move |_| working.view(|view| view.ready).unwrap_or_default());
    let captures = live(move || {
        let ready = ready.get();
        let records = working.step(|step| step.records.len());
        (0..records).map(|at| capture(working, at, ready)).collect_view().into_any()
    });
    view! {
        <div class="sheet">
            <h2>{t("Record")}</h2>
            <div>{captures}</div>
            {not_there(working)}
            {working.acting.says()}
        </div>
    }
    .into_any()
}

/// Where the instrument of a record opens, with its name.
fn instrument_of(working: Working, record: &Record) -> Option<(String, &'static str)> {
    let instrument = instrument::of_record(record)?;
    let path = working.step(|step| {
        let place = instrument::place_for(step, record).map(encode_uri_component);
        let place = place.map(|place| format!("/{}", String::from(place))).unwrap_or_default();
        format!("check/{}/{}{place}", instrument.kind, step.id)
    });
    Some((working.guide.of.at(&path), instrument.title()))
}

/// The way to the instrument that a record is read with.
fn reckoned(working: Working, record: &Record) -> Option<impl IntoView> {
    let (href, title) = instrument_of(working, record)?;
    Some(view! {
        <a class="btn btn--plain" href=href>
            {say!("{title}, reckoned")}
            <span class="vh">{t(&record.label).to_owned()}</span>
        </a>
    })
}

/// The id of a record in the page.
pub fn id(at: usize) -> String {
    format!("rec-{at}")
}

fn capture(working: Working, at: usize, ready: bool) -> AnyView {
    let Some(record) = working.record(at) else { return ().into_any() };
    let lacks = Memo::new(move |_| working.lacks(at));
    let open = Memo::new(move |_| lacks.get() || working.again.get() == Some(at));
    let kept = Memo::new(move |_| working.kept(at));
    let record = StoredValue::new(record);
    let shown = live(move || {
        let row =
            kept.get().map(|kept| record.with_value(|it| row(working, at, it, &kept, lacks.get())));
        row.into_any()
    });
    let takes = live(move || match (ready, open.get()) {
        (_, false) => ().into_any(),
        (true, true) => record.with_value(|record| takes(working, at, record)),
        (false, true) => record.with_value(locked),
    });
    let says = Signal::derive(move || working.says(at));
    view! {
        <div class="capture" id=id(at)>
            {shown}
            {takes}
            <Message id=format!("{}-says", id(at)) says/>
        </div>
    }
    .into_any()
}

/// On a locked step: what will be captured.
fn locked(record: &Record) -> AnyView {
    view! {
        <div class="row">
            <p>
                <b>{record.title()}</b>
            </p>
            <State sign=Sign::Lock words=t("Locked")/>
        </div>
    }
    .into_any()
}

/// What takes a record.
fn takes(working: Working, at: usize, record: &Record) -> AnyView {
    if working.none.get() == Some(at) {
        return none(working, at, record);
    }
    if let Some((href, words)) = working.elsewhere(at) {
        return elsewhere(record, href, words);
    }
    let fields = match record.kind {
        RecordKind::Measure => number::series(working, at, record),
        RecordKind::Pack => number::pack(working, at, record),
        RecordKind::Torque => torque::torque(working, at, record),
        RecordKind::Choice => choice::choice(working, at, record),
        RecordKind::Sign => sign::sign(working, at, record),
        RecordKind::Photo => photo::photo(working, at, record),
        RecordKind::Orientation => photo::facing(working, at, record),
        RecordKind::Text => {
            let value = working.line(at, 0);
            view! { <TextField id=format!("{}-0", id(at)) label=record.title() value/> }.into_any()
        }
        RecordKind::Time => time::time(working, at, record),
    };
    view! {
        {fields}
        {reckoned(working, record)}
    }
    .into_any()
}

/// For what is not there on this unit: a word in place of the capture.
fn not_there(working: Working) -> AnyView {
    let missing = Memo::new(move |_| {
        let records = working.step(|step| step.records.len());
        let may_lack = |at: &usize| {
            let takes = working.record(*at).is_some_and(|record| may_lack(record.kind));
            takes && working.lacks(*at) && working.view(|view| view.ready) == Some(true)
        };
        (0..records).filter(may_lack).collect::<Vec<_>>()
    });
    let chip = move |at: usize| {
        let label = working.record(at).map(|record| record.title()).unwrap_or_default();
        let say = Callback::new(move |()| {
            working.none.set(Some(at));
            crate::page::lead_to(&format!("{}-none", id(at)));
        });
        view! {
            <Chip pressed=Signal::derive(move || working.none.get() == Some(at)) on_press=say>
                {label}
            </Chip>
        }
    };
    live(move || {
        let missing = missing.get();
        if missing.is_empty() {
            return ().into_any();
        }
        view! {
            <details class="fold">
                <summary>{t("One of these is not there")}</summary>
                <p>{t("Choose which, and say why there is nothing to capture.")}</p>
                <div class="chips">{missing.into_iter().map(chip).collect_view()}</div>
            </details>
        }
        .into_any()
    })
}

/// A choice and a sign always have an answer.
fn may_lack(kind: RecordKind) -> bool {
    !matches!(kind, RecordKind::Choice | RecordKind::Sign)
}

/// Why there is nothing to capture.
fn none(working: Working, at: usize, record: &Record) -> AnyView {
    let label = say!("{}: why there is none", record.title());
    let back = press(Callback::new(move |()| working.none.set(None)));
    let value = working.line(at, 0);
    view! {
        <TextField id=format!("{}-none", id(at)) label value placeholder=t("no such part on this unit")/>
        <button class="btn btn--plain" type="button" on:click=back>
            {t("Back to the capture")}
        </button>
    }
    .into_any()
}

fn elsewhere(record: &Record, href: String, words: String) -> AnyView {
    view! {
        <div class="row">
            <p>
                <b>{record.title()}</b>
            </p>
            <a class="btn" href=href>
                {words}
            </a>
        </div>
    }
    .into_any()
}

/// What was kept, and the way to take it again.
fn row(working: Working, at: usize, record: &Record, kept: &Kept, lost: bool) -> AnyView {
    let moment = untrack(|| working.guide.moment());
    let time = apart(kept.mark.at, moment.now, moment.utc_offset);
    let checked = kept.check.is_some().then(|| checked(working, record)).flatten();
    let (said, time) = match checked {
        Some(said) => (Some(said), say!("from the bench check {time}")),
        None => (None, time),
    };
    let said = said.unwrap_or_else(|| match &kept.value {
        Capture::Time(at) => apart(*at, moment.now, moment.utc_offset),
        Capture::Torque { .. } => torque::said(&kept.value),
        Capture::Photo(_) => t("kept").to_owned(),
        value => value.words(),
    });
    let shot = kept.value.photo().map(|photo| {
        view! { <Shot photo=photo.to_owned() name=t(&record.label).to_owned() wide=true/> }
    });
    let take = if record.kind == RecordKind::Photo { t("Take it again") } else { t("Again") };
    let again = press(Callback::new(move |()| working.again.set(Some(at))));
    let opens = instrument_of(working, record).filter(|_| kept.check.is_some());
    let end = match (lost, opens) {
        (true, _) => view! { <State sign=Sign::Stale words=t("Stale")/> }.into_any(),
        (false, Some((href, _))) => view! {
            <a class="btn btn--plain" href=href>
                {t("Open")}
                <span class="vh">{t(&record.label).to_owned()}</span>
            </a>
        }
        .into_any(),
        (false, None) => view! {
            <button class="btn btn--plain" type="button" on:click=again>
                {take}
                <span class="vh">{t(&record.label).to_owned()}</span>
            </button>
        }
        .into_any(),
    };
    view! {
        <div class="row">
            <p>
                <span class="dim">{record.title()}</span>
                <br/>
                <b>{said}</b>
                <span class="dim">{format!(" · {time}")}</span>
            </p>
            {end}
            {shot}
        </div>
    }
    .into_any()
}

/// What the bench checks of a record said.
fn checked(working: Working, record: &Record) -> Option<String> {
    let of = working.guide.of;
    let said = |(job, ..): (&job::Job, &_, &_), shown| {
        working.step(|step| instrument::said(&job.guide, step, record, shown))
    };
    of.look_once(said).flatten()
}
