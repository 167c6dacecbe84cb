//! Right shims, first time.

use leptos::prelude::*;

/// Right shims, first time.
#[component]
pub fn FirstScreen() -> impl IntoView {
    view! { <main class="main" id="main" tabindex="-1"><h1>"Right shims, first time"</h1></main> }
}
