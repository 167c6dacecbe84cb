//! A wait that has ended while the screen is open: said, and felt or heard where the device can.

use leptos::prelude::*;

use super::Guide;

/// Says what ended.
#[component]
pub fn Ended(guide: Guide) -> impl IntoView {
    let _ = guide;
}
