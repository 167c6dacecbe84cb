//! Reading.

use leptos::prelude::*;

/// Reading.
#[component]
pub fn ReadingScreen(
    /// The job.
    job: String,
    /// The check that is read.
    check: String,
) -> impl IntoView {
    drop((job, check));
    view! { <main class="main" id="main" tabindex="-1"><h1>"Reading"</h1></main> }
}
