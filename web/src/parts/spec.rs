//! Spec: one value of the unit sheet, with its limits, unit, radius and source.

use leptos::prelude::*;
use words::say;

use super::live::{live, press, words as following};
use super::state::{Sign, State};

/// A value of the unit sheet; the children are its fields and what is said about them.
#[component]
pub fn Spec(
    /// Its id in the page, so that the dock can lead to it.
    #[prop(into)]
    id: String,
    /// What the value is.
    #[prop(into)]
    title: Signal<String>,
    /// Typed, to check, empty.
    #[prop(into)]
    sign: Signal<Sign>,
    /// The word for that.
    #[prop(into)]
    words: Signal<String>,
    children: Children,
) -> impl IntoView {
    let state = live(move || view! { <State sign=sign.get() words=words.get()/> }.into_any());
    view! {
        <div class="spec" id=id role="group" aria-label=title>
            <div class="h">
                <h3>{title}</h3>
                {state}
            </div>
            {children()}
        </div>
    }
}

/// Two [`Field`](super::Field)s abreast and, unless `alone`, a [`UnitButton`] for both.
/// The words of the fields stand under them at full width.
#[component]
pub fn Pair(
    /// No unit button follows.
    #[prop(optional)]
    alone: bool,
    children: Children,
) -> impl IntoView {
    view! { <div class=if alone { "pair pair--2" } else { "pair" }>{children()}</div> }
}

/// The unit that fields are typed in; a press takes the next one.
#[component]
pub fn UnitButton(
    /// What it is the unit of.
    #[prop(into)]
    of: Signal<String>,
    /// The unit now.
    #[prop(into)]
    unit: Signal<String>,
    /// Takes the next unit.
    on_press: Callback<()>,
) -> impl IntoView {
    let spoken = following(move || say!("{}: unit of {}. Press for another", unit.get(), of.get()));
    view! {
        <button
            class="btn btn--plain"
            type="button"
            aria-label=spoken
            on:click=press(on_press)
        >
            {unit}
        </button>
    }
}
