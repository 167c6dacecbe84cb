//! Tick: something seen, counted, packed or agreed.

use leptos::prelude::*;

use super::titled::titled;

/// A tick; the whole row is the target.
#[component]
pub fn Tick(
    /// What is ticked.
    #[prop(into)]
    title: Signal<String>,
    /// More about it, in the quiet ink.
    #[prop(optional, into)]
    note: Option<Signal<String>>,
    /// Whether it is.
    #[prop(into)]
    ticked: Signal<bool>,
    /// Turns it.
    on_turn: Callback<bool>,
    /// What stands at its end.
    #[prop(optional)]
    children: Option<Children>,
) -> impl IntoView {
    view! {
        <label class="tick">
            <input
                type="checkbox"
                prop:checked=ticked
                on:change:target=move |event| on_turn.run(event.target().checked())
            />
            <span>{titled(title, note)}</span>
            {children.map(|it| it())}
        </label>
    }
}
