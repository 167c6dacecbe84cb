//! Gate: a checkpoint after the work it guards.

use leptos::prelude::*;

/// How the bar of a gate stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Bar {
    /// Down: something is still missing.
    Shut,
    /// Up.
    Open,
    /// Broken: it was open, and lost its ground.
    Stale,
}

/// Posts and a bar; the words say what is still missing, a [`State`](super::State) may follow.
#[component]
pub fn Gate(
    /// How its bar stands.
    bar: Bar,
    /// A word such as "Shut."
    #[prop(into)]
    title: Signal<String>,
    /// What is missing, or who opened it.
    #[prop(into)]
    words: Signal<String>,
    /// Its state.
    #[prop(optional)]
    children: Option<Children>,
) -> impl IntoView {
    let (class, posts, lies) = match bar {
        Bar::Shut => ("gate gate--shut", "M5 34V8M41 34V8", "M5 15H41M5 24H41"),
        Bar::Open => ("gate gate--open", "M5 34V8M41 34V20", "M5 24L34 3"),
        Bar::Stale => ("gate gate--stale", "M5 34V8M41 34V8", "M5 19H17L21 13M41 19H30L25 26"),
    };
    view! {
        <div class=class>
            <svg viewBox="0 0 46 36" aria-hidden="true">
                <path class="gate__post" d=posts></path>
                <path class="gate__bar" d=lies></path>
            </svg>
            <p>
                <b>{title}</b>
                " "
                {words}
            </p>
            {children.map(|it| it())}
        </div>
    }
}
