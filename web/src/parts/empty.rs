//! Empty: nothing there yet, and the next act.

use leptos::prelude::*;

/// Nothing there yet; the children offer the next act.
#[component]
pub fn Empty(
    /// What there is none of.
    #[prop(into)]
    title: Signal<String>,
    /// What to do first.
    #[prop(into)]
    words: Signal<String>,
    /// The next act.
    #[prop(optional)]
    children: Option<Children>,
) -> impl IntoView {
    view! {
        <div class="empty">
            <p>
                <b>{title}</b>
                " "
                {words}
            </p>
            {children.map(|it| it())}
        </div>
    }
}
