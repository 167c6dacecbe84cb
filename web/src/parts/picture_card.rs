//! Picture card: choose by looking.

use leptos::prelude::*;
use words::t;

use super::live::{live, words as following};
use super::state::{Sign, State};

/// A picture with its name, to choose by; the children are the picture.
#[component]
pub fn PictureCard(
    /// What the picture shows.
    #[prop(into)]
    title: Signal<String>,
    /// How to tell it from the others, or why it cannot be chosen yet.
    #[prop(into)]
    words: Signal<String>,
    /// Whether it is the one chosen.
    #[prop(into)]
    chosen: Signal<bool>,
    /// Whether it cannot be chosen yet; `words` say why.
    #[prop(optional)]
    shut: bool,
    /// Chooses it.
    on_choose: Callback<()>,
    children: Children,
) -> impl IntoView {
    let choose = move |_| {
        if !shut {
            on_choose.run(());
        }
    };
    let state = live(move || match (shut, chosen.get()) {
        (true, _) => view! { <State sign=Sign::Lock words=t("Not yet")/> }.into_any(),
        (false, true) => view! { <State sign=Sign::Open words=t("Chosen")/> }.into_any(),
        (false, false) => ().into_any(),
    });
    view! {
        <button
            class="pick"
            type="button"
            aria-pressed=following(move || chosen.get().to_string())
            aria-disabled=shut.then_some("true")
            on:click=choose
        >
            {children()}
            <span>
                <b class="pick__t">{title}</b>
                <span class="pick__w">{words}</span>
                {state}
            </span>
        </button>
    }
}
