//! Notice: the app speaks about itself, never about the gearcase.

use leptos::prelude::*;

use super::icon::{Glyph, Icon};

/// The app about itself: signal, update, backup, room.
#[component]
pub fn Notice(
    /// What it is about.
    #[prop(into)]
    glyph: Signal<Glyph>,
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
    view! {
        <div class=move || if due.get() { "notice notice--due" } else { "notice" }>
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
