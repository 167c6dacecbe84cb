//! Jump and rail: the same list of places, above the dock or at the side.

use leptos::ev::KeyboardEvent;
use leptos::html::Details;
use leptos::prelude::*;

use super::icon::{Glyph, Icon};

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

#[component]
fn Places(places: Signal<Vec<Place>>) -> impl IntoView {
    let place = |place: Place| {
        view! {
            <a href=place.href aria-current=place.here.then_some("page")>
                {place.words}
                <small>{place.note}</small>
            </a>
        }
    };
    move || places.get().into_iter().map(place).collect_view()
}

/// The places at the side, from 1100 px.
#[component]
pub fn Rail(
    /// In the order of the job.
    #[prop(into)]
    places: Signal<Vec<Place>>,
) -> impl IntoView {
    view! {
        <nav class="rail navlist" aria-label="Job">
            <Places places=places/>
        </nav>
    }
}

/// The places above the dock, on phone and tablet; `children` may add "Undo last".
#[component]
pub fn Jump(
    /// In the order of the job.
    #[prop(into)]
    places: Signal<Vec<Place>>,
    /// What stands under the places.
    #[prop(optional)]
    children: Option<Children>,
) -> impl IntoView {
    let details = NodeRef::<Details>::new();
    let close = move |event: KeyboardEvent| {
        if event.key() == "Escape" {
            details.get().map(|it| it.remove_attribute("open").ok());
        }
    };
    view! {
        <details class="jump" node_ref=details on:keydown=close>
            <summary class="btn btn--plain">
                <Icon glyph=Glyph::Jump/>
                "Jump"
            </summary>
            <div class="jump__menu">
                <div class="navlist navlist--2">
                    <Places places=places/>
                </div>
                {children.map(|it| it())}
            </div>
        </details>
    }
}
