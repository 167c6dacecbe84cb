//! An instrument without a job: it reckons and keeps nothing.

use job::instrument::instrument;
use leptos::prelude::*;
use words::t;

use super::working::Working;
use super::{form, no_such, stages};
use crate::page;
use crate::parts::{Back, Dock, Glyph, Notice, Plate, live, words};
use crate::screens::frame::UnitSwitch;

/// The screen.
pub fn screen(kind: &str) -> AnyView {
    let found = instrument(kind);
    let title = found.map_or(t("Bench check"), |it| it.title());
    page::title(words(move || title.to_owned()));
    let working = found.map(|instrument| Working::on(None, instrument, None, None));
    let shown = working.map(form::whole);
    // Nothing is kept here, but a sequence is ticked off.
    let is_ticked = Memo::new(move |_| working.is_some_and(|it| stages::now(it).is_some()));
    let act = live(move || match working.filter(|_| is_ticked.get()) {
        Some(working) => form::act(working),
        None => ().into_any(),
    });
    view! {
        <Plate title=t("Shimwright") subtitle=t("Bench check, no job")>
            <UnitSwitch/>
        </Plate>
        <main class="main" id="main" tabindex="-1">
            <Notice
                glyph=Glyph::Open
                title=t("Nothing is kept here.")
                words=t("This check belongs to no job. Open it from a job to keep it.")
            />
            {shown.unwrap_or_else(no_such)}
        </main>
        <Dock>
            <Back href="/" words=t("Bench")/>
            {act}
        </Dock>
    }
    .into_any()
}
