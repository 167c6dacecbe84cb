//! Settings.

use leptos::prelude::*;

/// Settings.
#[component]
pub fn SettingsScreen() -> impl IntoView {
    view! { <main class="main" id="main" tabindex="-1"><h1>"Settings"</h1></main> }
}
