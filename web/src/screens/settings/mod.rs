//! Settings: what is kept and how safely, units, screen, words.

mod about;
mod kept_safe;
mod ways;

use leptos::prelude::*;

use crate::parts::{Back, Dock, Plate};

/// Settings and backup.
#[component]
pub fn SettingsScreen() -> impl IntoView {
    view! {
        <Plate title="Settings" subtitle="This device"/>
        <main class="main" id="main" tabindex="-1">
            <h1 class="vh">"Settings"</h1>
            <div class="cols">
                <section class="col">
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
        </Dock>
    }
}
