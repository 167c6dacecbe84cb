//! Shim tin.

use leptos::prelude::*;

/// Shim tin.
#[component]
pub fn TinScreen() -> impl IntoView {
    view! { <main class="main" id="main" tabindex="-1"><h1>"Shim tin"</h1></main> }
}
