//! Bench: where one stopped, every job of this device, and what else is here.

mod also;
mod cards;
mod carry_on;
mod practice;

use job::date;
use leptos::prelude::*;
use words::{say, t};

use super::frame::{Undo, last_act};
use super::shop::places;
use crate::address::Screen;
use crate::bench::{Bench, use_bench};
use crate::code::{Piece, use_code};
use crate::device::now::{now, utc_offset_minutes};
use crate::page;
use crate::parts::{Act, Back, Dock, Glyph, Icon, Jump, Place, Plate, UndoLast, live};
pub use carry_on::next;
pub use practice::{Asked, Invented, Practice};

/// The bench.
#[component]
pub fn BenchScreen() -> impl IntoView {
    let today = date(now(), utc_offset_minutes(now()));
    let words = say!("Bench · {today}");
    page::title(Signal::stored(t("Bench").to_owned()));
    view! {
        <Plate title=t("Shimwright") subtitle=words/>
        <main class="main" id="main" tabindex="-1">
            <h1 class="vh">{t("Bench")}</h1>
            <div class="cols">
                <section class="col">
                    <carry_on::CarryOn/>
                    <also::Saved/>
                </section>
                <section class="col">
                    <div class="h">
                        <h2>{t("On the bench")}</h2>
                        <a class="btn" href="/new-job">
                            <Icon glyph=Glyph::Plus/>
                            {t("New job")}
                        </a>
                    </div>
                    <cards::Cards/>
                    <also::AlsoHere/>
                </section>
            </div>
            <Undo/>
        </main>
        <Dock>
            <Back href="/tin" words=t("Tin") glyph=Glyph::Ring/>
            <Next/>
            <JumpAround/>
        </Dock>
    }
}

/// The next act of the job that was open last; without a job, a new one.
#[component]
fn Next() -> impl IntoView {
    let (bench, code) = (use_bench(), use_code());
    live(move || {
        let job = bench.current_job().and_then(|job| bench.job(&job.id).get());
        if let Some(job) = job.as_ref().filter(|job| job.guide.scope.is_some())
            && let Some(build) = code.built(Piece::Guide)
        {
            return build(Screen::Next { job: job.id.clone() });
        }
        let next = job.and_then(|job| carry_on::next(bench, &job));
        let (words, href) =
            next.unwrap_or_else(|| (t("New job").to_owned(), "/new-job".to_owned()));
        view! { <Act words href=Signal::stored(href)/> }.into_any()
    })
}

#[component]
fn JumpAround() -> impl IntoView {
    let bench = use_bench();
    let (last, on_turn) = last_act();
    view! {
        <Jump places=Signal::derive(move || places_here(bench))>
            <UndoLast last on_turn/>
        </Jump>
    }
}

fn places_here(bench: Bench) -> Vec<Place> {
    let place = |place: Place| Place { here: place.href == "/", ..place };
    places(bench, None, None).into_iter().map(place).collect()
}
