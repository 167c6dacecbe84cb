//! Set-up.

use leptos::prelude::*;

/// Set-up.
#[component]
pub fn SetupScreen(
    /// The job.
    job: String,
) -> impl IntoView {
    drop(job);
    view! { <main class="main" id="main" tabindex="-1"><h1>"Set-up"</h1></main> }
}
