//! The blue button of a step: the very next act on it, then the next step.

use job::guide::GateView;
use job::procedure::RecordKind;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::HtmlElement;
use words::{say, t};

use super::record::id;
use super::working::Working;
use super::{done, time};
use crate::address::use_address;
use crate::page::lead_to;
use crate::parts::{Act, live, whether, words};

/// What the button does.
#[derive(Clone, Debug, PartialEq, Eq)]
enum Next {
    /// Keeps what is half typed.
    Keep(usize),
    /// Leads to a record.
    Lead(usize),
    /// Opens the camera.
    Photo(usize),
    /// Notes this moment.
    Now(usize),
    /// Leads to a place on the screen.
    Show(&'static str),
    /// Closes the step.
    Close,
    /// Leads to another screen.
    Go(String),
}

/// The button.
pub fn next(working: Working) -> AnyView {
    let address = use_address();
    let next = Memo::new(move |_| what(working));
    let press = Callback::new(move |()| match next.get_untracked().1 {
        Next::Keep(at) => working.keep_typed(at),
        Next::Lead(at) => lead_to(&id(at)),
        Next::Photo(at) => take(at),
        Next::Now(at) => time::note(working, at),
        Next::Show(place) => lead_to(place),
        Next::Close => done::finish(working, address),
        Next::Go(_) => {}
    });
    let href = Memo::new(move |_| match next.get().1 {
        Next::Go(href) => Some(href),
        _ => None,
    });
    let busy = whether(move || working.acting.busy.get());
    let said = words(move || next.get().0);
    live(move || match href.get() {
        Some(href) => view! { <Act words=said href=Signal::stored(href)/> }.into_any(),
        None => view! { <Act words=said busy on_press=press/> }.into_any(),
    })
}

fn what(working: Working) -> (String, Next) {
    let told = working.view(|view| {
        let settled = view.is_settled();
        (view.ready, settled, view.gate.clone())
    });
    let Some((ready, settled, gate)) = told else {
        return (t("Job").to_owned(), Next::Go(working.guide.of.at_job()));
    };
    let records = working.step(|step| step.records.len());
    if !ready {
        return onward(working);
    }
    if let Some(at) = (0..records).find(|at| working.is_typed(*at)) {
        let label = working.record(at).map(|record| t(&record.label).to_owned());
        let label = label.unwrap_or_default();
        return (say!("Keep {label}"), Next::Keep(at));
    }
    if settled {
        return onward(working);
    }
    match (0..records).find(|at| working.lacks(*at)) {
        Some(at) => to_capture(working, at),
        None => close(gate.as_ref()),
    }
}

fn to_capture(working: Working, at: usize) -> (String, Next) {
    let Some(record) = working.record(at) else { return (String::new(), Next::Lead(at)) };
    if let Some((href, words)) = working.elsewhere(at) {
        return (words, Next::Go(href));
    }
    let (kind, label) = (record.kind, t(&record.label));
    match kind {
        RecordKind::Photo => (say!("Photo: {label}"), Next::Photo(at)),
        RecordKind::Time if !time::begins_wait(working, &record) => {
            (say!("Now: {label}"), Next::Now(at))
        }
        RecordKind::Time => (say!("Start: {label}"), Next::Lead(at)),
        RecordKind::Choice => (say!("Choose: {label}"), Next::Lead(at)),
        RecordKind::Sign => (say!("Look: {label} thicker"), Next::Lead(at)),
        RecordKind::Measure if record.is_count() => (say!("Count: {label}"), Next::Lead(at)),
        RecordKind::Measure | RecordKind::Pack | RecordKind::Torque => {
            (say!("Type {label}"), Next::Lead(at))
        }
        RecordKind::Orientation => (say!("Say how: {label}"), Next::Lead(at)),
        RecordKind::Text => (say!("Write: {label}"), Next::Lead(at)),
    }
}

/// Everything is captured.
fn close(gate: Option<&GateView>) -> (String, Next) {
    match gate {
        Some(gate) if !gate.missing.is_empty() => {
            (t("Gate shut: see why").to_owned(), Next::Show("gate"))
        }
        Some(gate) if !gate.passed => (t("Judge the gate").to_owned(), Next::Show("gate-by")),
        _ => (t("Close this step").to_owned(), Next::Close),
    }
}

/// The step is settled: on to the next.
fn onward(working: Working) -> (String, Next) {
    let next = working.guide.look(|_, _, course| {
        let next = course.next.and_then(|next| course.steps.get(next))?;
        Some((say!("Next: {}", next.act()), Next::Go(working.guide.at_step(&next.id))))
    });
    let job = || (t("Job").to_owned(), Next::Go(working.guide.of.at_job()));
    next.flatten().unwrap_or_else(job)
}

fn take(at: usize) {
    let field = document().get_element_by_id(&format!("{}-photo", id(at)));
    let field: Option<HtmlElement> = field.and_then(|field| field.dyn_into().ok());
    if let Some(field) = field {
        lead_to(&id(at));
        field.click();
    }
}
