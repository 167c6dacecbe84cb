//! Leads the person to a part of the screen.

use leptos::prelude::*;
use leptos::wasm_bindgen::JsCast;
use leptos::web_sys::{Element, HtmlElement};

/// Puts the focus on the element of that id, once it stands; inside a group on its first control.
pub fn lead_to(id: &str) {
    let id = id.to_owned();
    request_animation_frame(move || {
        let Some(found) = document().get_element_by_id(&id) else { return };
        let inside = found.query_selector("input:checked, input, button").ok().flatten();
        take_focus(inside.unwrap_or(found));
    });
}

/// Puts the focus on the part of that id as a whole, from its top.
pub fn show(id: &str) {
    if let Some(found) = document().get_element_by_id(id) {
        take_focus(found);
    }
}

fn take_focus(element: Element) {
    // An element that is no HTML element takes no focus, and none of ours is.
    if let Ok(element) = element.dyn_into::<HtmlElement>() {
        element.focus().ok();
        element.scroll_into_view();
    }
}
