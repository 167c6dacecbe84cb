//! Row: a step, a check or a place, with its state.

use leptos::prelude::*;

use super::titled::titled;

/// A row of a list; with `href` the whole row is the target.
#[component]
pub fn Row(
    /// What it is.
    #[prop(into)]
    title: Signal<String>,
    /// More about it, in the quiet ink.
    #[prop(optional, into)]
    note: Option<Signal<String>>,
    /// Where it leads.
    #[prop(optional, into)]
    href: Option<Signal<String>>,
    /// What stands at its end, such as a [`State`](super::State).
    #[prop(optional)]
    children: Option<Children>,
) -> impl IntoView {
    let inside = view! {
        <p>
            {titled(title, note)}
        </p>
        {children.map(|it| it())}
    };
    match href {
        Some(href) => view! { <a class="row" href=href>{inside}</a> }.into_any(),
        None => view! { <div class="row">{inside}</div> }.into_any(),
    }
}
