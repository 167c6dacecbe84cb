//! The one component that puts a [`Drawing`] on the screen.

use leptos::prelude::*;

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
    view! {
        <svg class="defs" width="0" height="0" aria-hidden="true" focusable="false">
            <defs>
                <pattern
                    id="hatch"
                    width="7"
                    height="7"
                    patternUnits="userSpaceOnUse"
                    patternTransform="rotate(45)"
                >
                    <path d="M0 0H7V7H0Z" fill="var(--case)"/>
                    <path d="M0 0V7" stroke="var(--case-edge)" stroke-width="1" opacity=".45"/>
                </pattern>
                <pattern
                    id="nearhatch"
                    width="6"
                    height="6"
                    patternUnits="userSpaceOnUse"
                    patternTransform="rotate(45)"
                >
                    <path d="M0 0H6V6H0Z" fill="var(--near-tint)"/>
                    <path d="M0 0V6" stroke="var(--near-hatch)" stroke-width="4"/>
                </pattern>
                <pattern id="oil" width="12" height="12" patternUnits="userSpaceOnUse">
                    <path d="M0 0H12V12H0Z" fill="var(--sheet-2)"/>
                    <path
                        d="M3 1.2a1.8 1.8 0 1 0 .01 0ZM9 7.2a1.8 1.8 0 1 0 .01 0Z"
                        fill="var(--edge)"
                    />
                </pattern>
                <pattern id="water" width="16" height="10" patternUnits="userSpaceOnUse">
                    <path d="M0 0H16V10H0Z" fill="var(--sheet)"/>
                    <path
                        d="M0 5q4-4 8 0t8 0"
                        fill="none"
                        stroke="var(--seal)"
                        stroke-width="1.6"
                    />
                </pattern>
            </defs>
        </svg>
    }
}
