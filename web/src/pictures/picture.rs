//! The one component that puts a [`Drawing`] on the screen.

use leptos::prelude::*;

use pictures::svg::HATCHES;

use super::drawing::{Drawing, Mark, Shape, number, view_box};

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
        >
            {move || drawing.with(|it| it.marks.iter().map(mark).collect::<Vec<_>>())}
        </svg>
    }
}

fn mark(mark: &Mark) -> AnyView {
    match &mark.shape {
        Shape::Text((x, y), anchor, words) => view! {
            <text class=mark.ink x=number(*x) y=number(*y) text-anchor=anchor.name()>
                {words.clone()}
            </text>
        }
        .into_any(),
        _ => view! { <path class=mark.ink d=mark.path()/> }.into_any(),
    }
}

/// The hatches the pictures are filled with; stands once, at the root of the page.
#[component]
pub fn PictureDefs() -> impl IntoView {
    view! { <div class="defs" inner_html=HATCHES></div> }
}
