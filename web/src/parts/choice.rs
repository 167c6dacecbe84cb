//! Choice: one full-width answer of several. A door is no answer: it leads on.

use leptos::prelude::*;

use super::icon::{Glyph, Icon};
use super::titled::titled;

/// A full-width answer; those with one `group` exclude each other.
#[component]
pub fn Choice(
    /// The question it answers, as a name of the page.
    #[prop(into)]
    group: String,
    /// The answer.
    #[prop(into)]
    title: Signal<String>,
    /// What it means.
    #[prop(optional, into)]
    note: Option<Signal<String>>,
    /// Whether it is the one chosen.
    #[prop(into)]
    chosen: Signal<bool>,
    /// Chooses it.
    on_choose: Callback<()>,
) -> impl IntoView {
    view! {
        <label class="choice">
            <input
                type="radio"
                name=group
                prop:checked=chosen
                on:change=move |_| on_choose.run(())
            />
            <span>{titled(title, note)}</span>
        </label>
    }
}

/// A full-width way on.
#[component]
pub fn Door(
    /// What it shows.
    glyph: Glyph,
    /// What it starts.
    #[prop(into)]
    title: Signal<String>,
    /// What waits behind it.
    #[prop(optional, into)]
    note: Option<Signal<String>>,
    /// Where it leads.
    #[prop(into)]
    href: Signal<String>,
) -> impl IntoView {
    view! {
        <a class="choice choice--go" href=href>
            <Icon glyph=glyph/>
            <span>{titled(title, note)}</span>
            <Icon glyph=Glyph::Go/>
        </a>
    }
}
