//! The word at a field: a doubt is kept and warned of, only what cannot be read is refused.

use leptos::prelude::*;

use super::icon::{Glyph, Icon};
use super::live::live;

/// One sentence at a field: what was found, what to do.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Says {
    /// It cannot be read, and is not kept.
    Refused(String),
    /// It is kept, and looks odd.
    Doubt(String),
    /// It was done.
    Told(String),
}

/// The word at a field, spoken politely when it changes; empty while there is none.
#[component]
pub fn Message(
    /// Named by the field's `aria-describedby`.
    #[prop(into)]
    id: String,
    /// What to say.
    #[prop(into)]
    says: Signal<Option<Says>>,
) -> impl IntoView {
    let word = live(move || {
        let (class, glyph, words) = match says.get() {
            Some(Says::Refused(words)) => ("msg msg--refused", Glyph::Warn, words),
            Some(Says::Doubt(words)) => ("msg msg--doubt", Glyph::Near, words),
            Some(Says::Told(words)) => ("msg msg--told", Glyph::In, words),
            None => return ().into_any(),
        };
        view! {
            <span class=class>
                <Icon glyph=glyph/>
                <span>{words}</span>
            </span>
        }
        .into_any()
    });
    view! { <p class="says" id=id aria-live="polite">{word}</p> }
}
