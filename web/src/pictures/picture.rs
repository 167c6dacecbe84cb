//! The one component that puts a [`Drawing`] on the screen.

use leptos::prelude::*;

use pictures::svg::{HATCHES, marks};

use super::drawing::{Drawing, number, view_box};

/// A drawing on the screen; the sentence is what a screen reader says for all of it.
#[component]
pub fn Picture(
    /// What to draw; drawn anew when it changes.
    #[prop(into)]
    drawing: Signal<Drawing>,
    /// Classes of the frame.
    #[prop(optional)]
    class: Option<&'static str>,
) -> impl IntoView {
    let label = move || drawing.with(|it| (!it.label.is_empty()).then(|| it.label.clone()));
    view! {
        <svg
            class=class
            viewBox=move || drawing.with(|it| view_box(it.view))
            width=move || drawing.with(|it| it.width.map(number))
            role=move || label().map(|_| "img")
            aria-hidden=move || label().is_none().then_some("true")
            aria-label=label
            // As text: a section has some sixty marks, and one by one they take four times as long.
            inner_html=move || drawing.with(marks)
        >
        </svg>
    }
}

/// The hatches the pictures are filled with; stands once, at the root of the page.
#[component]
pub fn PictureDefs() -> impl IntoView {
    view! { <div class="defs" inner_html=HATCHES></div> }
}
