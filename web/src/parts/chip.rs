//! Chip: tick one or more short words.

use leptos::prelude::*;

use super::live::{press, words};

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
            aria-pressed=words(move || pressed.get().to_string())
            disabled=disabled
            on:click=press(on_press)
        >
            {children()}
        </button>
    }
}
