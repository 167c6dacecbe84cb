//! Caution: a hazard, said before the act.

use leptos::prelude::*;

use super::icon::{Glyph, Icon};

/// A hazard: amber where a part or the job is at risk, red for a person.
#[component]
pub fn Caution(
    /// What was seen, in a few words.
    #[prop(into)]
    title: Signal<String>,
    /// What to do about it.
    #[prop(into)]
    words: Signal<String>,
    /// A person is at risk.
    #[prop(optional)]
    person: bool,
) -> impl IntoView {
    view! {
        <div class=if person { "caution caution--out" } else { "caution" }>
            <Icon glyph=Glyph::Warn/>
            <p>
                <b>{title}</b>
                " "
                {words}
            </p>
        </div>
    }
}
