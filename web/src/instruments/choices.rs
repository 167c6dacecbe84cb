//! Fields that are chosen, by a word or by a picture.

use job::instrument::{Asked, card};
use leptos::prelude::*;
use measure::Unit;

use super::form::id;
use super::working::Working;
use crate::parts::{Message, Pick, Seg, live, whether};
use crate::pictures::Picture;

/// What there is to choose from.
#[derive(Default)]
pub struct Choice<'a> {
    /// As it is typed into the field.
    pub words: &'a [&'static str],
    /// Shown after each word; may be empty.
    pub unit: &'static str,
    /// The units that the words name: while none is chosen, the one this person reads is.
    pub units: &'static [Unit],
}

/// One of some words, under its label.
pub fn one(working: Working, at: usize, asked: &'static Asked, choice: &Choice) -> AnyView {
    view! {
        <p class="label">{asked.label()}</p>
        {picks(working, at, asked, choice)}
        <Message id=format!("{}-says", id(asked)) says=working.says(asked)/>
    }
    .into_any()
}

/// The words alone, with what stands under each.
pub fn picks(working: Working, at: usize, asked: &'static Asked, choice: &Choice) -> AnyView {
    let (unit, units) = (choice.unit, choice.units);
    let value = working.text(at, 0);
    let words = StoredValue::new(choice.words.to_vec());
    let chosen = Signal::derive(move || {
        let text = value.get();
        let chosen = words.with_value(|it| it.iter().position(|word| *word == text));
        chosen.or_else(|| working.usual(units))
    });
    let on_choose = Callback::new(move |place: usize| {
        let word = words.with_value(|it| it.get(place).copied().unwrap_or_default());
        working.set(at, 0, word.to_owned());
    });
    let notes = Memo::new(move |_| working.notes(asked));
    live(move || {
        let mut notes = notes.get().into_iter();
        let pick = |word: &&str| Pick {
            words: format!("{}{unit}", asked.word(word)),
            note: notes.next().unwrap_or_default(),
            ..Pick::default()
        };
        let picks: Vec<Pick> = words.with_value(|it| it.iter().map(pick).collect());
        view! { <Seg id=id(asked) label=asked.label() picks chosen on_choose/> }.into_any()
    })
}

/// Pictures to choose by.
pub fn cards(
    working: Working,
    at: usize,
    asked: &'static Asked,
    options: &'static [&'static str],
) -> AnyView {
    let value = working.text(at, 0);
    let card = |option: &'static str| {
        let chosen = whether(move || value.get() == option);
        let picture = card(option).map(|drawing| {
            view! { <Picture drawing=Signal::stored(drawing)/> }
        });
        view! {
            <label class="card">
                <input
                    type="radio"
                    name=id(asked)
                    prop:checked=chosen
                    on:change=move |_| working.set(at, 0, option.to_owned())
                />
                {picture}
                <b>{asked.word(option)}</b>
            </label>
        }
    };
    view! {
        <p class="label">{asked.label()}</p>
        <div class="cards" role="radiogroup" aria-label=asked.label()>
            {options.iter().copied().map(card).collect_view()}
        </div>
        <Message id=format!("{}-says", id(asked)) says=working.says(asked)/>
    }
    .into_any()
}
