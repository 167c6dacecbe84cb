//! A unit sheet: the limits from the user's own manual, teeth, arm, and where the packs lie.

mod cell;
mod gears;
mod leak;
mod limits;
mod packs;
mod typing;

use std::sync::Arc;
use words::{say, t};

use job::{Field, Sheet, ToDo};
use leptos::ev::{FocusEvent, KeyboardEvent};
use leptos::prelude::*;
use leptos::wasm_bindgen::JsCast;
use leptos::web_sys::{Event, HtmlElement};

use super::frame::Here;
use super::new_job;
use super::shop::{NoSuchSheet, ShopScreen};
use crate::bench::use_bench;
use crate::draft::use_draft;
use crate::page::lead_to;
use crate::parts::{Act, Glyph, Icon, Row, live};
use typing::Typing;

/// Unit sheet.
#[component]
pub fn SheetScreen(
    /// The unit sheet.
    sheet: String,
) -> impl IntoView {
    let id = sheet.clone();
    let folded = use_bench().sheet(&id);
    let is_there = Memo::new(move |_| folded.with(Option::is_some));
    live(move || match is_there.get() {
        true => view! { <Open id=id.clone()/> }.into_any(),
        false => view! { <NoSuchSheet/> }.into_any(),
    })
}

/// A sheet that is there.
#[component]
fn Open(id: String) -> impl IntoView {
    let typing = Typing::of(&id);
    let ways = Ways::from(&id);
    let send = Signal::stored(format!("/sheet/{id}/send"));
    let subtitle = Signal::derive(move || typing.look(|sheet| subtitle(sheet)));
    let name = Signal::derive(move || typing.look(|sheet| sheet.name.clone()));
    let act = view! { <Next typing on=ways.on/> }.into_any();
    // A field is saved on leaving it; Enter in a number leads on and so leaves it.
    let leave = move |event: FocusEvent| {
        if let Some(field) = field_of(&event) {
            typing.save(field);
        }
    };
    let on_key = move |event: KeyboardEvent| {
        if let Some(field) = field_of(&event).filter(|_| event.key() == "Enter") {
            typing.save(field);
        }
    };
    let hash = window().location().hash().unwrap_or_default();
    if let Some(field) = hash.strip_prefix('#') {
        lead_to(field);
    }
    let limits = Memo::new(move |_| typing.look(|sheet| sheet.limits()));
    let checks = live(move || {
        let checks = limits.get().into_iter().map(|check| limits::limits(typing, check));
        checks.collect_view().into_any()
    });
    view! {
        <ShopScreen title=t("Unit sheet") subtitle here=Here::Sheet sheet=id back=ways.back act>
            <div class="head">
                <h1>{name}</h1>
                <p>{t("Type the limits from your own manual. The app ships none.")}</p>
            </div>
            <div class="cols" on:focusout=leave on:keydown=on_key>
                <section class="col">
                    <div class="sheet">
                        <h2>{t("Set-up limits")}</h2>
                        {checks}
                    </div>
                    <gears::Gears typing/>
                    <gears::YourArm typing/>
                </section>
                <section class="col">
                    <packs::Packs typing/>
                    <leak::LeakStages typing/>
                    <Row title=t("Send this sheet") note=t("As a code or a file.") href=send>
                        <Icon glyph=Glyph::Go/>
                    </Row>
                </section>
            </div>
        </ShopScreen>
    }
}

/// The field that an event comes from.
fn field_of(event: &Event) -> Option<Field> {
    let input: HtmlElement = event.target()?.dyn_into().ok()?;
    Field::named(&input.id())
}

fn subtitle(sheet: &Sheet) -> String {
    let (typed, all) = sheet.typed();
    let to_do = sheet.to_do();
    let doubts = to_do.iter().filter(|it| matches!(it, ToDo::Check(_))).count();
    match (doubts, to_do.len()) {
        (0, 0) => say!("{typed} of {all} typed · complete"),
        (0, left) => say!("{typed} typed · {left} to do"),
        (doubts, _) => say!("{typed} typed · {doubts} to check"),
    }
}

/// The ways from this sheet.
struct Ways {
    back: (String, &'static str),
    on: (String, &'static str),
}

impl Ways {
    /// To the half-filled new job that chose it, to the job that stands on it, or to the bench.
    fn from(id: &str) -> Ways {
        let job = untrack(|| use_bench().current_job()).filter(|job| job.sheet == id);
        if use_draft(new_job::PLACE, "sheet").text_untracked() == id {
            let href = "/new-job".to_owned();
            Ways { back: (href.clone(), t("New job")), on: (href, t("Back to the new job")) }
        } else if let Some(job) = job {
            let href = format!("/job/{}/setup", job.id);
            Ways { back: (href.clone(), t("Set-up")), on: (href, t("Go to set-up")) }
        } else {
            Ways {
                back: ("/".to_owned(), t("Bench")),
                on: ("/new-job".to_owned(), t("Start a job")),
            }
        }
    }
}

/// Leads to what is left to do; when nothing is, on from the sheet.
#[component]
fn Next(typing: Typing, on: (String, &'static str)) -> impl IntoView {
    let next = Memo::new(move |_| typing.look(|sheet: &Arc<Sheet>| sheet.next_to_do()));
    live(move || match next.get() {
        Some(to_do) => {
            let lead = Callback::new(move |()| lead_to(&place_of(to_do)));
            view! { <Act words=words_of(to_do) on_press=lead/> }.into_any()
        }
        None => view! { <Act words=on.1.to_owned() href=on.0.clone()/> }.into_any(),
    })
}

fn words_of(to_do: ToDo) -> String {
    match to_do {
        ToDo::Check(_) => t("Go to the one to check").to_owned(),
        ToDo::Type(_) | ToDo::Place(_) | ToDo::Sign(_) => to_do.words(),
    }
}

fn place_of(to_do: ToDo) -> String {
    match to_do {
        ToDo::Check(field) | ToDo::Type(field) => field.facts().id.to_owned(),
        ToDo::Place(slot) => packs::place_id(slot),
        ToDo::Sign(slot) => packs::way_id(slot),
    }
}
