//! What the app tells the page it runs in; `boot.js` and the style sheet read it.

use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::{Element, HtmlElement};

use crate::prefs::{Prefs, Theme};

const NAME: &str = "Shimwright";

/// Takes the place of the static shell, and says so to `boot.js` and to whoever measures.
pub(crate) fn ready() {
    if let Some(shell) = document().get_element_by_id("shell") {
        shell.remove();
    }
    set("data-ready", Some(""));
    if let Some(performance) = window().performance() {
        // A mark that is not made is missed by a measurement only.
        performance.mark("app-ready").ok();
    }
}

/// Puts the focus on the screen's work where it went with the screen before, so that the keyboard
/// and the spoken page go on from there.
pub(crate) fn focus_if_lost() {
    let is_lost = document().active_element().is_none_or(|at| at.tag_name() == "BODY");
    let main = document().get_element_by_id("main").and_then(|main| main.dyn_into().ok());
    if let Some(main) = main.filter(|_: &HtmlElement| is_lost) {
        main.focus().ok();
    }
}

/// Puts the focus on the element of that id, once it stands; inside a group that takes none itself
/// on its first control.
pub(crate) fn lead_to(id: &str) {
    let id = id.to_owned();
    request_animation_frame(move || {
        let Some(found) = document().get_element_by_id(&id) else { return };
        let within = || found.query_selector("input:checked, input, button").ok().flatten();
        let inside = if found.has_attribute("tabindex") { None } else { within() };
        take_focus(inside.unwrap_or(found));
    });
}

/// Puts the focus on the part of that id as a whole, from its top.
pub(crate) fn show(id: &str) {
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

/// Sets an attribute of the page, or takes it away.
pub(crate) fn set(name: &str, value: Option<&str>) {
    let Some(page) = document().document_element() else { return };
    // The names are ours and fit to be attribute names, so neither is ever refused.
    match value {
        Some(value) => page.set_attribute(name, value).ok(),
        None => page.remove_attribute(name).ok(),
    };
}

/// Names the page after the screen the caller stands on.
pub(crate) fn title(screen: Signal<String>) {
    name(Signal::derive(move || Some(format!("{} · {NAME}", screen.get()))));
}

/// Names the page while the caller is on the screen: a printed file takes that name.
pub(crate) fn name(name: Signal<Option<String>>) {
    Effect::new(move |_| document().set_title(name.get().as_deref().unwrap_or(NAME)));
    on_cleanup(|| document().set_title(NAME));
}

/// Keeps the page in the colours the person likes.
pub(crate) fn follow_theme(prefs: Prefs) {
    Effect::new(move |_| {
        set(
            "data-theme",
            match prefs.theme() {
                Theme::Auto => None,
                Theme::Sun => Some("sun"),
                Theme::Shed => Some("shed"),
            },
        );
    });
}
