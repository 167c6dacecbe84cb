//! Unit sheet.

use leptos::prelude::*;

/// Unit sheet.
#[component]
pub fn SheetScreen(
    /// The unit sheet.
    sheet: String,
) -> impl IntoView {
    drop(sheet);
    view! { <main class="main" id="main" tabindex="-1"><h1>"Unit sheet"</h1></main> }
}
