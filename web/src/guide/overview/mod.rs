//! The guided job: its stages and steps, what waits, what was counted, and what comes next.

mod act;
mod clocks;
mod counted;
mod scope;
mod stages;
mod why;

use leptos::prelude::*;
use words::t;

use super::frame::{Frame, lacking};
use super::open::Lacks;
use super::{Guide, Here};
use crate::parts::live;
use scope::Choosing;
pub use stages::{mark, sentence};

/// The job.
pub fn screen(guide: Guide) -> AnyView {
    let choosing = Choosing::of(guide);
    let lacks = Memo::new(move |_| guide.lacks());
    let act = move || act::next(choosing);
    view! {
        <Frame guide here=Here::Job back=("/".to_owned(), t("Bench")) act>
            {live(move || match lacks.get() {
                None => whole(choosing),
                Some(Lacks::Scope) => scope::first(choosing),
                Some(lacks) => lacking(guide, lacks),
            })}
        </Frame>
    }
    .into_any()
}

fn whole(choosing: Choosing) -> AnyView {
    let guide = choosing.guide;
    view! {
        <div class="cols">
            <section class="col">
                {live(move || stages::here(guide))}
                {live(move || stages::others(guide))}
            </section>
            <section class="col">
                {clocks::sheet(guide)}
                {live(move || counted::sheet(guide))}
                {live(move || why::sheet(guide))}
                {scope::change(choosing)}
            </section>
        </div>
    }
    .into_any()
}
