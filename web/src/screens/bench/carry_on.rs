//! Carry on: the job that was open last, where it stopped, and its next act.

use std::sync::Arc;
use words::{say, t};

use job::{Check, Job, NextAct, Sheet, ago, next_act};
use leptos::prelude::*;

use crate::bench::{Bench, use_bench};
use crate::device::now::use_now;
use crate::parts::{Empty, live};
use crate::pictures::Picture;
use crate::pictures::drawing::Drawing;
use crate::pictures::section::{Section, View};
use crate::place;
use crate::shown::use_shown;

/// The job that was open last; without one, what a bench is for.
#[component]
pub fn CarryOn() -> impl IntoView {
    let bench = use_bench();
    live(move || match bench.current_job().and_then(|job| bench.job(&job.id).get()) {
        Some(job) => view! { <Stopped job/> }.into_any(),
        None => view! {
            <div class="sheet">
                <Empty
                    title=t("No job on the bench.")
                    words=t("Choose the layout, type the limits from your manual, name the boat.")
                />
            </div>
        }
        .into_any(),
    })
}

#[component]
fn Stopped(job: Arc<Job>) -> impl IntoView {
    let (bench, now, shown) = (use_bench(), use_now(), use_shown());
    let sheet = bench.sheet(&job.sheet);
    let last_at = place::carry_on().map_or(job.last_at, |last| last.at);
    let when = Signal::derive(move || say!("stopped {}", ago(last_at, now.get())));
    let id = job.id.clone();
    let told = job.history.last().map(|(_, sentence)| sentence.clone());
    let drawing = Signal::derive(move || {
        let draw = |sheet: &Sheet| drawing(sheet, &next_act(&job, sheet, shown.get()));
        sheet.with(|sheet| sheet.as_deref().map(draw)).unwrap_or_default()
    });
    let title = bench.job(&id).with(|job| job.as_ref().map(|job| job.boat.clone()));
    view! {
        <div class="sheet">
            <div class="h">
                <h2>{t("Carry on")}</h2>
                <small class="nowrap">{when}</small>
            </div>
            <Picture drawing class="sk"/>
            <p class="long">
                <b>{title}</b>
                {stopped_at(&id).map(|at| format!(" · {at}"))}
            </p>
            <p class="long">{told}</p>
        </div>
    }
}

/// What the dock says of a job, and where that is done.
pub fn next(bench: Bench, job: &Job) -> Option<(String, String)> {
    let shown = use_shown();
    let sheet = bench.sheet(&job.sheet).get()?;
    let act = next_act(job, &sheet, shown.get());
    let screen = match &act {
        NextAct::TypeField(field) => {
            return Some((act.words(), format!("/sheet/{}#{}", sheet.id, field.facts().id)));
        }
        NextAct::Read(check) | NextAct::ReadAgain(check) => format!("read/{}", check.id()),
        NextAct::PrintRecord => "record".to_owned(),
        _ => "setup".to_owned(),
    };
    Some((act.words(), format!("/job/{}/{screen}", job.id)))
}

/// The gears, with the pack ringed that the next act is about.
fn drawing(sheet: &Sheet, act: &NextAct) -> Drawing {
    let slot = match act {
        NextAct::WritePack(slot) => Some(*slot),
        NextAct::Read(check) | NextAct::ReadAgain(check) => sheet.slot_of(*check),
        _ => None,
    };
    let section = Section::of(sheet.positions().iter().map(|position| position.id));
    let section = Section { view: View::Low, ..section };
    match slot.and_then(|slot| sheet.position(slot)) {
        Some(position) => section.choosing(position.id).draw(),
        None => section.draw(),
    }
}

/// Which screen of that job was open last: "reading forward lash".
fn stopped_at(job: &str) -> Option<String> {
    let path = place::carry_on()?.path;
    let screen = path.strip_prefix("/job/")?.strip_prefix(job)?.strip_prefix('/')?;
    match screen.split_once('/').unwrap_or((screen, "")) {
        ("setup", _) => Some(t("set-up").to_owned()),
        ("record", _) => Some(t("record").to_owned()),
        ("read", check) => Some(say!("reading {}", Check::named(check)?.short())),
        _ => None,
    }
}
