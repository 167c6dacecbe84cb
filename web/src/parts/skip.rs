//! The first stop of the Tab key.

use leptos::ev::MouseEvent;
use leptos::prelude::*;
use leptos::wasm_bindgen::JsCast;
use leptos::web_sys::HtmlElement;
use words::t;

/// Skips to `<main id="main" tabindex="-1">`; stands once, at the top of the page.
#[component]
pub fn Skip() -> impl IntoView {
    // The router would take the click for a change of place and leave the focus where it is.
    let skip = |event: MouseEvent| {
        event.prevent_default();
        let main = document().get_element_by_id("main").and_then(|it| it.dyn_into().ok());
        main.map(|main: HtmlElement| main.focus().ok());
    };
    view! { <a class="skip" href="#main" on:click=skip>{t("Skip to the work")}</a> }
}
