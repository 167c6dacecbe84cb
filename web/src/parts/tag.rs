//! Tag: a position, cut and holed like the bag tag on the bench.

use leptos::prelude::*;

/// A position such as B2; brass, because it names a pack.
#[component]
pub fn Tag(
    /// The position.
    #[prop(into)]
    words: Signal<String>,
    /// Larger, at the head of a screen.
    #[prop(optional)]
    big: bool,
) -> impl IntoView {
    view! { <span class=if big { "tag tag--big" } else { "tag" }>{words}</span> }
}
