//! Alarm: reading and prediction disagree; it replaces the advice.

use leptos::prelude::*;

use super::icon::{Glyph, Icon};

/// Spoken at once; the children say what to leave alone and what to check first.
#[component]
pub fn Alarm(
    /// What was seen.
    #[prop(into)]
    title: Signal<String>,
    children: Children,
) -> impl IntoView {
    view! {
        <div class="alarm" role="alert">
            <header>
                <Icon glyph=Glyph::Warn/>
                {title}
            </header>
            <div class="alarm__body">{children()}</div>
        </div>
    }
}
