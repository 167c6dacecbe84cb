//! The pad a finger signs on. Whoever has no finger on the screen types initials below it.

use job::Signature;
use leptos::ev::PointerEvent;
use leptos::prelude::*;
use pictures::signature::signature;
use wasm_bindgen::JsCast;
use web_sys::Element;
use words::t;

use super::state::Consenting;
use crate::parts::{Glyph, Icon, live, press};
use crate::pictures::Picture;

/// The pad, and the button that empties it.
pub fn pad(consenting: Consenting) -> AnyView {
    let strokes = consenting.strokes;
    let pen_down = StoredValue::new(false);
    let down = move |event: PointerEvent| {
        let Some((pad, width)) = pad_of(&event).filter(|_| event.is_primary()) else { return };
        event.prevent_default();
        // Refused, the stroke ends where the finger leaves the pad.
        pad.set_pointer_capture(event.pointer_id()).ok();
        pen_down.set_value(true);
        strokes.update(|drawn| drawn.down(event.offset_x(), event.offset_y(), width));
    };
    let moves = move |event: PointerEvent| {
        let Some((_, width)) = pad_of(&event).filter(|_| pen_down.get_value()) else { return };
        strokes.update(|drawn| drawn.to(event.offset_x(), event.offset_y(), width));
    };
    let up = move |_: PointerEvent| {
        if pen_down.get_value() {
            pen_down.set_value(false);
            consenting.hold();
        }
    };
    let again = press(Callback::new(move |()| consenting.sign_again()));
    let drawing = Signal::derive(move || strokes.with(drawn_now));
    let says = live(move || match strokes.with(|drawn| (drawn.is_empty(), drawn.is_full())) {
        (true, _) => t("Sign above the line with a finger.").into_any(),
        (_, true) => t("The pad is full. Sign again, shorter.").into_any(),
        _ => consenting.by.text().into_any(),
    });
    view! {
        <div
            class="signpad"
            on:pointerdown=down
            on:pointermove=moves
            on:pointerup=up
            on:pointercancel=up
        >
            <Picture drawing/>
            <small>{says}</small>
        </div>
        <button class="btn btn--plain" type="button" on:click=again>
            <Icon glyph=Glyph::Undo/>
            {t("Sign again")}
        </button>
    }
    .into_any()
}

fn drawn_now(drawn: &Signature) -> pictures::drawing::Drawing {
    let label = if drawn.is_empty() { String::new() } else { t("Signature, drawn.").to_owned() };
    signature(drawn.strokes(), (Signature::WIDTH, Signature::HEIGHT), label)
}

/// The pad under a finger, and its width; what lies in it catches nothing.
fn pad_of(event: &PointerEvent) -> Option<(Element, i32)> {
    let pad: Element = event.target()?.dyn_into().ok()?;
    let width = pad.client_width();
    Some((pad, width))
}
