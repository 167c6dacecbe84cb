//! Jump and rail: the same list of places, above the dock or at the side.

use leptos::ev::KeyboardEvent;
use leptos::prelude::*;
use leptos::wasm_bindgen::JsCast;
use leptos::web_sys::Element;
use words::t;

use super::icon::{Glyph, Icon};
use super::live::live;

/// A place one can go to.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Place {
    /// Its name.
    pub words: String,
    /// What matters there now, in two or three words; may be empty.
    pub note: String,
    /// Where it is.
    pub href: String,
    /// Whether this is where one is.
    pub here: bool,
}

impl Place {
    fn link(self) -> AnyView {
        view! {
            <a href=self.href aria-current=self.here.then_some("page")>
                {self.words}
                <small>{self.note}</small>
            </a>
        }
        .into_any()
    }
}

fn links(places: Signal<Vec<Place>>) -> AnyView {
    live(move || places.get().into_iter().map(Place::link).collect_view().into_any())
}

/// The places at the side, from 1100 px.
#[component]
pub fn Rail(
    /// In the order of the job.
    #[prop(into)]
    places: Signal<Vec<Place>>,
) -> impl IntoView {
    view! {
        <nav class="rail navlist" aria-label=t("Job")>
            {links(places)}
        </nav>
    }
}

/// The places above the dock, on phone and tablet; `children` may add
/// [`UndoLast`](super::UndoLast).
#[component]
pub fn Jump(
    /// In the order of the job.
    #[prop(into)]
    places: Signal<Vec<Place>>,
    /// What stands under the places.
    #[prop(optional)]
    children: Option<Children>,
) -> impl IntoView {
    let close = |event: KeyboardEvent| {
        let list = event.current_target().and_then(|it| it.dyn_into::<Element>().ok());
        if let Some(list) = list.filter(|_| event.key() == "Escape") {
            list.remove_attribute("open").ok();
        }
    };
    view! {
        <details class="jump" on:keydown=close>
            <summary class="btn btn--plain">
                <Icon glyph=Glyph::Jump/>
                {t("Jump")}
            </summary>
            <div class="jump__menu">
                <div class="navlist navlist--2">{links(places)}</div>
                {children.map(|it| it())}
            </div>
        </details>
    }
}
