//! Record.

use leptos::prelude::*;

/// Record.
#[component]
pub fn RecordScreen(
    /// The job.
    job: String,
) -> impl IntoView {
    drop(job);
    view! { <main class="main" id="main" tabindex="-1"><h1>"Record"</h1></main> }
}
