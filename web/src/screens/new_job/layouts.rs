//! The five layouts to choose from.

use leptos::prelude::*;
use words::t;

use super::Form;
use crate::bench::use_bench;
use crate::parts::PictureCard;
use crate::pictures::Picture;
use crate::pictures::layouts::Layout;

/// A layout: its letter, its sketch, its name and how to tell it from the others.
type Card = (&'static str, Layout, &'static str, &'static str);

/// The most usual one first.
const CARDS: [Card; 5] = [
    ("b", Layout::B, "Forward and reverse", "One pinion, two gears, sliding dog. Packs B1 to B4."),
    ("a", Layout::A, "Single driven gear", "Shift is upstream. Threaded ring. Packs A1 to A3."),
    ("c", Layout::C, "Twin propshafts", "One pinion, two gears, shaft in shaft. Packs C1 to C5."),
    (
        "d",
        Layout::D,
        "Upper unit, cone clutch",
        "Input from the left, two gears on a vertical shaft. Packs D1 to D5.",
    ),
    (
        "e",
        Layout::E,
        "Single, both shafts preloaded",
        "Taper pairs on pinion and gear. Packs E1 to E4.",
    ),
];

/// The name of a layout as its card has it.
pub fn name(letter: &str) -> &'static str {
    let card = CARDS.iter().find(|(own, ..)| *own == letter);
    card.map_or(t("Another layout"), |(_, _, name, _)| t(name))
}

/// The layouts as cards.
#[component]
pub fn Layouts(form: Form) -> impl IntoView {
    let cards: Vec<AnyView> = CARDS.into_iter().map(|it| card(form, it)).collect();
    view! { <div class="list2">{cards}</div> }
}

fn card(form: Form, (letter, layout, title, words): Card) -> AnyView {
    let (bench, title, words) = (use_bench(), t(title), t(words));
    let chosen = Signal::derive(move || form.layout_chosen(bench) == letter);
    let choose = Callback::new(move |()| form.choose_layout(bench, letter));
    view! {
        <PictureCard title words chosen on_choose=choose>
            <Picture drawing=layout.draw("") class="sk"/>
        </PictureCard>
    }
    .into_any()
}
