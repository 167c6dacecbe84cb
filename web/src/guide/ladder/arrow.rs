//! Which way a part faced: an arrow with its words. Left is the nose.

use job::guide::{Way, faced};
use leptos::prelude::*;

const TO_NOSE: &str = "M4 11l10-7v4h16v6H14v4Z";
const AFT: &str = "M42 11L32 4v4H16v6h16v4Z";
const UP: &str = "M23 1l8 9h-5v10h-6V10h-5Z";
const DOWN: &str = "M23 21l8-9h-5V2h-6v10h-5Z";
/// Words that name none of the four ways: a ring.
const ROUND: &str = "M23 4a7 7 0 1 0 .1 0ZM23 7a4 4 0 1 1-.1 0Z";

/// The arrow of words such as "oil grooves aft", and the words.
pub fn face(facing: &str) -> AnyView {
    if facing.is_empty() {
        return ().into_any();
    }
    let path = match Way::of(facing) {
        Some(Way::Nose) => TO_NOSE,
        Some(Way::Aft) => AFT,
        Some(Way::Up) => UP,
        Some(Way::Down) => DOWN,
        None => ROUND,
    };
    view! {
        <span class="face">
            <svg viewBox="0 0 46 22" aria-hidden="true">
                <path class="f-arrow" d=path></path>
            </svg>
            {faced(facing)}
        </span>
    }
    .into_any()
}
