//! Bench.

use leptos::prelude::*;

/// Bench.
#[component]
pub fn BenchScreen() -> impl IntoView {
    view! { <main class="main" id="main" tabindex="-1"><h1>"Bench"</h1></main> }
}
