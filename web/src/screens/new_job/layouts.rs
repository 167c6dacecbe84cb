//! The five layouts to choose from.

use leptos::prelude::*;

use crate::parts::PictureCard;
use crate::pictures::Picture;
use crate::pictures::layouts::Layout;

/// A layout, its name and how to tell it from the others.
type Card = (Layout, &'static str, &'static str);

/// The one this version can set up.
const BUILT: Card =
    (Layout::B, "Forward and reverse", "One pinion, two gears, sliding dog. Packs B1 to B4.");

/// The others, shown so that nobody takes theirs for the one above.
const LATER: [Card; 4] = [
    (
        Layout::A,
        "Single driven gear",
        "Shift is upstream. Threaded ring. Packs A1 to A3. Cannot be chosen yet.",
    ),
    (
        Layout::C,
        "Twin propshafts",
        "One pinion, two gears, shaft in shaft. Packs C1 to C5. Cannot be chosen yet.",
    ),
    (
        Layout::D,
        "Upper unit, cone clutch",
        "Input from the left, two gears on a vertical shaft. Packs D1 to D4. Cannot be chosen yet.",
    ),
    (
        Layout::E,
        "Single, both shafts preloaded",
        "Taper pairs on pinion and gear. Packs E1 to E4. Cannot be chosen yet.",
    ),
];

/// The layouts as cards.
#[component]
pub fn Layouts() -> impl IntoView {
    let cards = [card(BUILT, false)].into_iter().chain(LATER.map(|later| card(later, true)));
    view! { <div class="list2">{cards.collect::<Vec<_>>()}</div> }
}

fn card((layout, title, words): Card, shut: bool) -> AnyView {
    // There is one to choose, so choosing it changes nothing.
    let keep = Callback::new(|()| ());
    view! {
        <PictureCard title words chosen=Signal::stored(!shut) shut on_choose=keep>
            <Picture drawing=layout.draw("") class="sk"/>
        </PictureCard>
    }
    .into_any()
}
