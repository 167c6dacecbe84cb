//! New job.

use leptos::prelude::*;

/// New job.
#[component]
pub fn NewJobScreen() -> impl IntoView {
    view! { <main class="main" id="main" tabindex="-1"><h1>"New job"</h1></main> }
}
