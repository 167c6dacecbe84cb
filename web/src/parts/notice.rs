//! Notice: the app speaks about itself, never about the gearcase.

use leptos::prelude::*;

use super::icon::{Glyph, Icon};
use super::live::words as following;

/// The app about itself: signal, update, backup, room.
#[component]
pub fn Notice(
    /// What it is about.
    glyph: Glyph,
    /// The news, in a few words.
    #[prop(into)]
    title: Signal<String>,
    /// What it means.
    #[prop(into)]
    words: Signal<String>,
    /// Something should be done about it.
    #[prop(optional, into)]
    due: Signal<bool>,
    /// Buttons, if any.
    #[prop(optional)]
    children: Option<Children>,
) -> impl IntoView {
    let class = following(move || {
        let class = if due.get() { "notice notice--due" } else { "notice" };
        class.to_owned()
    });
    view! {
        <div class=class>
            <Icon glyph=glyph/>
            <p>
                <b>{title}</b>
                " "
                {words}
            </p>
            {children.map(|it| it())}
        </div>
    }
}
