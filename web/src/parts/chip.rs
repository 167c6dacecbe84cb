//! Chip: tick one or more short words.

use leptos::prelude::*;

/// A short word that is on or off.
#[component]
pub fn Chip(
    /// Whether it is on.
    #[prop(into)]
    pressed: Signal<bool>,
    /// Turns it.
    on_press: Callback<()>,
    /// Whether it is locked.
    #[prop(optional, into)]
    disabled: Signal<bool>,
    children: Children,
) -> impl IntoView {
    view! {
        <button
            class="chip"
            type="button"
            aria-pressed=move || pressed.get().to_string()
            disabled=disabled
            on:click=move |_| on_press.run(())
        >
            {children()}
        </button>
    }
}
