//! A wait that has ended while the screen is open: said, and felt where the device can.

use leptos::prelude::*;

use super::Guide;
use crate::parts::{live, words};

/// Long, short, long: milliseconds of buzz and pause.
const BUZZ: [u32; 5] = [400, 150, 150, 150, 400];

/// Says what ended, at once; a phone shakes too.
#[component]
pub fn Ended(guide: Guide) -> impl IntoView {
    let done = Memo::new(move |_| {
        let clocks = guide.clocks();
        let done = clocks.views.iter().filter(|view| view.done);
        done.map(|view| view.says.clone()).collect::<Vec<_>>()
    });
    Effect::new(move |before: Option<usize>| {
        let now = done.with(Vec::len);
        if before.is_some_and(|before| now > before) {
            shake();
        }
        now
    });
    let said = words(move || done.get().join(" "));
    let bar = live(move || view! { <span class="vh">{said}</span> }.into_any());
    view! { <div role="alert">{bar}</div> }
}

fn shake() {
    let pattern: js_sys::Array = BUZZ.iter().map(|it| wasm_bindgen::JsValue::from(*it)).collect();
    window().navigator().vibrate_with_pattern(&pattern);
}
