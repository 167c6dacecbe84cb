//! Undo: the last entry, always one tap from gone.

use std::time::Duration;
use words::{say, t};

use leptos::prelude::*;

use super::icon::{Glyph, Icon};
use super::live::{live, press};

/// How the last entry stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Standing {
    /// It is being stored.
    Saving,
    /// It is stored.
    Kept,
    /// It was taken back, and can be put back.
    TakenBack,
}

/// The last entry, in words.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LastEntry {
    /// Tells it from every other entry.
    pub id: String,
    /// What it was, such as "6 h: no entry".
    pub words: String,
    /// Whether the words name the owner.
    pub names_owner: bool,
    /// How it stands.
    pub standing: Standing,
}

/// How long the bar stays before "Undo last" in the list of places takes over.
const FRESH: Duration = Duration::from_secs(8);

/// Says what was entered last and takes it back; gone after eight seconds.
#[component]
pub fn UndoBar(
    /// The last entry of this visit, if any.
    #[prop(into)]
    last: Signal<Option<LastEntry>>,
    /// Takes the entry back, or puts it back.
    on_turn: Callback<()>,
) -> impl IntoView {
    let old = RwSignal::new(None);
    Effect::new(move |_| {
        let last = last.get();
        // A timer outlives its screen; by then there may be nothing to tell.
        set_timeout(move || drop(old.try_set(last)), FRESH);
    });
    let fresh = move || last.get().filter(|last| old.with(|old| old.as_ref() != Some(last)));
    let bar = live(move || fresh().map(|it| view! { <Bar last=it on_turn=on_turn/> }).into_any());
    view! { <div role="status">{bar}</div> }
}

#[component]
fn Bar(last: LastEntry, on_turn: Callback<()>) -> impl IntoView {
    let glyph = match last.standing {
        Standing::Saving => Glyph::Clock,
        Standing::Kept => Glyph::In,
        Standing::TakenBack => Glyph::Undo,
    };
    let saving = last.standing == Standing::Saving;
    let back = last.standing == Standing::TakenBack;
    view! {
        <div class="undo">
            <Icon glyph=glyph/>
            <span>{last.words}</span>
            <button type="button" disabled=saving on:click=press(on_turn)>
                {(!back).then(|| view! { <Icon glyph=Glyph::Undo/> })}
                {if back { t("Put back") } else { t("Undo") }}
            </button>
        </div>
    }
}

/// The same under the list of places, for as long as there is something to take back.
#[component]
pub fn UndoLast(
    /// The last entry, if any.
    #[prop(into)]
    last: Signal<Option<LastEntry>>,
    /// Takes it back, or puts it back.
    on_turn: Callback<()>,
) -> impl IntoView {
    let words = |last: LastEntry| match last.standing {
        Standing::TakenBack => say!("Put back: {}", last.words),
        Standing::Saving | Standing::Kept => say!("Undo last: {}", last.words),
    };
    let button = move |last| {
        view! {
            <button class="btn btn--plain" type="button" on:click=press(on_turn)>
                <Icon glyph=Glyph::Undo/>
                {words(last)}
            </button>
        }
    };
    live(move || last.get().filter(|it| it.standing != Standing::Saving).map(button).into_any())
}
