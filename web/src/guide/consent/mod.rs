//! Consent: work, limit and stop rules, agreed before the strip-down and again where the inspection
//! changes the price.

mod agrees;
mod asks;
mod pad;
mod stands;
mod state;

use leptos::prelude::*;
use words::t;

use super::checkpoint::checkpoint;
use super::{Guide, GuideScreen, Here};
use crate::parts::live;
pub use stands::row;
use state::Consenting;

/// The consent.
pub fn screen(guide: Guide) -> AnyView {
    let consenting = Consenting::of(guide);
    let act = move || live(move || agrees::act(consenting));
    let open = Memo::new(move |_| consenting.is_open());
    view! {
        <GuideScreen guide here=Here::Consent back=(guide.of.at_job(), t("Job")) act>
            {live(move || if open.get() { asking(consenting) } else { stands::sheet(consenting) })}
        </GuideScreen>
    }
    .into_any()
}

fn asking(consenting: Consenting) -> AnyView {
    view! {
        <div class="cols">
            <section class="col">
                {live(move || asks::head(consenting))}
                {live(move || asks::changes(consenting))}
                {asks::work(consenting)}
                {asks::excluded(consenting)}
            </section>
            <section class="col">
                {asks::stops(consenting)}
                {agrees::sheet(consenting)}
                {live(move || gate(consenting))}
            </section>
        </div>
    }
    .into_any()
}

fn gate(consenting: Consenting) -> AnyView {
    let mut missing: Vec<String> = consenting.lacks().iter().map(ToString::to_string).collect();
    if missing.is_empty() {
        missing.push(t("Keep it to open.").to_owned());
    }
    let words = t("Work, limit, stop rules, a name and a time.");
    checkpoint(t("Gate: consent."), words, &missing)
}
