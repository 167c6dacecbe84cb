//! Picture card: choose by looking.

use leptos::prelude::*;

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
    #[prop(optional, into)]
    shut: Signal<bool>,
    /// Chooses it.
    on_choose: Callback<()>,
    /// Its [`State`](super::State), where it has one.
    #[prop(optional, into)]
    state: ViewFn,
    children: Children,
) -> impl IntoView {
    let choose = move |_| {
        if !shut.get_untracked() {
            on_choose.run(());
        }
    };
    view! {
        <button
            class="pick"
            type="button"
            aria-pressed=move || chosen.get().to_string()
            aria-disabled=move || shut.get().then_some("true")
            on:click=choose
        >
            {children()}
            <span>
                <b class="pick__t">{title}</b>
                <span class="pick__w">{words}</span>
                {move || state.run()}
            </span>
        </button>
    }
}
