//! What the app tells the page it runs in; `boot.js` and the style sheet read it.

use leptos::prelude::*;

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

/// Sets an attribute of the page, or takes it away.
pub(crate) fn set(name: &str, value: Option<&str>) {
    let Some(page) = document().document_element() else { return };
    // The names are ours and fit to be attribute names, so neither is ever refused.
    match value {
        Some(value) => page.set_attribute(name, value).ok(),
        None => page.remove_attribute(name).ok(),
    };
}
