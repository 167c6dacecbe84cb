//! The address, and how it changes.
//!
//! A router of its own: the usual package adds some 40 KB to the first visit, and this does all
//! the app needs: links, the browser’s back and forward, and going on from code.

use leptos::ev::{MouseEvent, click, popstate};
use leptos::prelude::*;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{Element, HtmlAnchorElement};

use crate::page;
pub use crate::screen::Screen;

/// The address of the page, in context of every screen.
#[derive(Clone, Copy)]
pub struct Address {
    path: RwSignal<String>,
}

impl Address {
    /// Follows the page's address: links of the app, back and forward.
    pub fn follow() -> Address {
        let address = Address { path: RwSignal::new(path_now()) };
        let back = window_event_listener(popstate, move |_| address.path.set(path_now()));
        let link = window_event_listener(click, move |event| {
            if let Some(to) = target_of_link(&event) {
                event.prevent_default();
                address.go(&to);
            }
        });
        on_cleanup(move || {
            back.remove();
            link.remove();
        });
        address
    }

    /// The path, followed.
    pub fn path(self) -> String {
        self.path.get()
    }

    /// Goes to a path of the app, and where it ends in `#field` on to that place; the browser's
    /// back comes back here.
    pub fn go(self, to: &str) {
        let (path, place) = to.split_once('#').unwrap_or((to, ""));
        let is_here = path == self.path.get_untracked();
        if is_here && place.is_empty() {
            return;
        }
        if let Ok(history) = window().history() {
            // Refused, the screen changes all the same.
            history.push_state_with_url(&JsValue::NULL, "", Some(to)).ok();
        }
        if !is_here {
            self.path.set(path.to_owned());
            window().scroll_to_with_x_and_y(0.0, 0.0);
        }
        if !place.is_empty() {
            page::lead_to(place);
        }
    }
}

/// The address from context.
pub fn use_address() -> Address {
    expect_context()
}

fn path_now() -> String {
    window().location().pathname().unwrap_or_default()
}

/// Where a plain press on a link of the app leads, with the place on that screen. What is meant for
/// the browser stays with it: another tab, a file, another site.
fn target_of_link(event: &MouseEvent) -> Option<String> {
    let for_browser = event.ctrl_key() || event.meta_key() || event.shift_key() || event.alt_key();
    if event.default_prevented() || for_browser || event.button() != 0 {
        return None;
    }
    let pressed: Element = event.target()?.dyn_into().ok()?;
    let link: HtmlAnchorElement = pressed.closest("a[href]").ok()??.dyn_into().ok()?;
    let is_own = link.origin() == window().location().origin().ok()?;
    let is_screen = link.target().is_empty() && !link.has_attribute("download");
    (is_own && is_screen).then(|| link.pathname() + &link.hash())
}
