//! Settings: what is kept and how safely, units, screen, words.

mod about;
mod backup;
mod kept_safe;
mod ways;

use leptos::prelude::*;
use wasm_bindgen_futures::spawn_local;

use crate::bench::use_bench;
use crate::page;
use crate::parts::{Act, Back, Dock, Glyph, Plate};

/// Settings and backup.
#[component]
pub fn SettingsScreen() -> impl IntoView {
    let bench = use_bench();
    let outcome = RwSignal::new(backup::Outcome::None);
    let back_up = Callback::new(move |()| {
        spawn_local(async move {
            let made = bench.export_everything().await;
            // The screen may have been left meanwhile; the file is there all the same.
            outcome.try_set(Some(made));
        });
    });
    page::title(Signal::stored("Settings".to_owned()));
    view! {
        <Plate title="Settings" subtitle="This device"/>
        <main class="main" id="main" tabindex="-1">
            <h1 class="vh">"Settings"</h1>
            <div class="cols">
                <section class="col">
                    <backup::Backup outcome=outcome.into()/>
                    <kept_safe::KeptSafe/>
                    <ways::Units/>
                </section>
                <section class="col">
                    <ways::Screen/>
                    <about::About/>
                </section>
            </div>
        </main>
        <Dock>
            <Back href="/" words="Bench"/>
            <Act words="Back up now" glyph=Glyph::Save on_press=back_up/>
        </Dock>
    }
}
