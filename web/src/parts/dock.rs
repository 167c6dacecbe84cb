//! Dock: the thumb zone. Back, the one next act, jump.

use leptos::ev::MouseEvent;
use leptos::prelude::*;

use super::icon::{Glyph, Icon};

/// The thumb zone; takes [`Back`], [`Act`] and [`Jump`](super::places::Jump).
#[component]
pub fn Dock(children: Children) -> impl IntoView {
    view! {
        <nav class="dock" aria-label="Thumb dock">
            {children()}
        </nav>
    }
}

/// The way back; its word names where it goes.
#[component]
pub fn Back(
    /// Where it goes.
    #[prop(into)]
    href: Signal<String>,
    /// The name of that place.
    #[prop(into)]
    words: Signal<String>,
    /// What stands above the word.
    #[prop(default = Glyph::Back)]
    glyph: Glyph,
) -> impl IntoView {
    view! {
        <a class="btn btn--plain" href=href>
            <Icon glyph=glyph/>
            {words}
        </a>
    }
}

/// The one next act of a screen, named by its words. With `href` a link, otherwise a button.
#[component]
pub fn Act(
    /// The very next act; while it waits, what it waits for.
    #[prop(into)]
    words: Signal<String>,
    /// It cannot be done yet.
    #[prop(optional, into)]
    waits: Signal<bool>,
    /// It is being done and takes over 300 ms.
    #[prop(optional, into)]
    busy: Signal<bool>,
    /// Where it leads.
    #[prop(optional, into)]
    href: Option<Signal<String>>,
    /// What it does.
    #[prop(optional)]
    on_press: Option<Callback<()>>,
    /// What a press does while it waits, such as showing what is missing.
    #[prop(optional)]
    on_waiting: Option<Callback<()>>,
    /// What stands before the words.
    #[prop(optional)]
    glyph: Option<Glyph>,
) -> impl IntoView {
    let press = move |event: MouseEvent| {
        let does = if waits.get_untracked() { on_waiting } else { on_press };
        if waits.get_untracked() || busy.get_untracked() {
            event.prevent_default();
        }
        if let Some(does) = does.filter(|_| !busy.get_untracked()) {
            does.run(());
        }
    };
    let class = move || if busy.get() { "btn btn--main btn--busy" } else { "btn btn--main" };
    let disabled = move || waits.get().then_some("true");
    let is_busy = move || busy.get().then_some("true");
    let inside = view! {
        {glyph.map(|glyph| view! { <Icon glyph=glyph/> })}
        {words}
    };
    match href {
        Some(href) => view! {
            <a class=class href=href aria-disabled=disabled aria-busy=is_busy on:click=press>
                {inside}
            </a>
        }
        .into_any(),
        None => view! {
            <button class=class type="button" aria-disabled=disabled aria-busy=is_busy on:click=press>
                {inside}
            </button>
        }
        .into_any(),
    }
}
