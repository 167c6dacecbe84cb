//! A name and, below it in the quiet ink, more about it.

use leptos::prelude::*;

/// A name and what is said about it.
pub(super) fn titled(title: Signal<String>, note: Option<Signal<String>>) -> AnyView {
    let note = note.map(|note| {
        view! {
            <br/>
            <span class="dim">{note}</span>
        }
    });
    view! {
        <b>{title}</b>
        {note}
    }
    .into_any()
}
