//! Wait: only where something takes over 300 ms. It stands still; the words tell.

use leptos::prelude::*;

/// Something that takes a while.
#[component]
pub fn Wait(
    /// What is being done, with a count where there is one.
    #[prop(into)]
    title: Signal<String>,
    /// Whether one can work on, or how long it takes.
    #[prop(into)]
    words: Signal<String>,
    /// How far it is, in per cent, where that is known.
    #[prop(optional, into)]
    percent: Option<u8>,
) -> impl IntoView {
    let class = if percent.is_some() { "wait" } else { "wait wait--open" };
    view! {
        <div class=class role="status">
            <b>{title}</b>
            <div class="wait__bar" style:--p=percent.unwrap_or(0).to_string()></div>
            <p class="dim">{words}</p>
        </div>
    }
}
