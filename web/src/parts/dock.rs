//! Dock: the thumb zone. Back, the one next act, jump.

use leptos::ev::MouseEvent;
use leptos::prelude::*;
use words::t;

use super::icon::{Glyph, Icon};
use super::live::{mark, words as following};

/// The thumb zone; takes [`Back`], [`Act`] and [`Jump`](super::places::Jump).
#[component]
pub fn Dock(children: Children) -> impl IntoView {
    view! {
        <nav class="dock" aria-label=t("Thumb dock")>
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
        let (waits, busy) = (waits.get_untracked(), busy.get_untracked());
        if waits || busy {
            event.prevent_default();
        }
        let does = if waits { on_waiting } else { on_press };
        if let Some(does) = does.filter(|_| !busy) {
            does.run(());
        }
    };
    let class = following(move || {
        let class = if busy.get() { "btn btn--main btn--busy" } else { "btn btn--main" };
        class.to_owned()
    });
    let disabled = mark(move || waits.get());
    let is_busy = mark(move || busy.get());
    let icon = glyph.map(|glyph| view! { <Icon glyph=glyph/> });
    match href {
        Some(href) => view! {
            <a class=class href=href aria-disabled=disabled aria-busy=is_busy on:click=press>
                {icon}
                {words}
            </a>
        }
        .into_any(),
        None => view! {
            <button class=class type="button" aria-disabled=disabled aria-busy=is_busy on:click=press>
                {icon}
                {words}
            </button>
        }
        .into_any(),
    }
}
