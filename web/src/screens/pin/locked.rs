//! What stands in place of a screen that the PIN guards.

use leptos::prelude::*;

use super::Giving;
use crate::page;
use crate::parts::{Act, Back, Dock, DockedPad, Glyph, Notice, Plate};

/// Behind the PIN; `job`: the job it is of.
pub fn locked(job: Option<String>) -> AnyView {
    let giving = Giving::here();
    let (href, place) = match job {
        Some(job) => (format!("/job/{job}"), "Job"),
        None => ("/".to_owned(), "Bench"),
    };
    let give = Callback::new(move |()| giving.give());
    page::title(Signal::stored("Shop PIN".to_owned()));
    view! {
        <Plate title="Shimwright" subtitle="Behind the shop’s PIN"/>
        <main class="main" id="main" tabindex="-1">
            <div class="sheet">
                <h1>"Give the shop’s PIN"</h1>
                <Notice
                    glyph=Glyph::Lock
                    title="Data goes out here, or the owner is named."
                    words="It stays open until nothing was touched for 3 minutes. Work at the bench needs no PIN."
                />
                {giving.field()}
                <p class="small">
                    "Forgotten? " <a href="/settings#forgotten">"How to go on"</a>
                </p>
            </div>
        </main>
        <DockedPad/>
        <Dock>
            <Back href words=place/>
            <Act words="Open" busy=giving.busy glyph=Glyph::Lock on_press=give/>
        </Dock>
    }
    .into_any()
}
