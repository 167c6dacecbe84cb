//! Component states.

use leptos::prelude::*;

/// Component states.
#[component]
pub fn StatesScreen() -> impl IntoView {
    view! { <main class="main" id="main" tabindex="-1"><h1>"Component states"</h1></main> }
}
