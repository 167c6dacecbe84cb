//! Pad: the app's own keys, the same place every time, whatever the device's keyboard does.

use leptos::prelude::*;

use super::icon::{Glyph, Icon};
use super::keys::{Key, Keys, put_down};
use super::typing::mark_word;

/// The keys. A keyboard user types digits, so the Tab key passes them by.
#[component]
pub fn Pad() -> impl IntoView {
    let keys = Keys::here();
    let digit = move |digit: &'static str, class: &'static str| {
        view! {
            <button class=class type="button" tabindex="-1" on:click=move |_| keys.press(Key::Digit(digit))>
                {digit}
            </button>
        }
    };
    let word = move |key: Key, class: &'static str, label: &'static str, inside: AnyView| {
        view! {
            <button class=class type="button" tabindex="-1" aria-label=label on:click=move |_| keys.press(key)>
                {inside}
            </button>
        }
    };
    let row = move |digits: [&'static str; 3]| digits.map(|it| digit(it, "key")).collect_view();
    let signed = Memo::new(move |_| keys.open().with(|it| it.as_ref().is_some_and(|it| it.signed)));
    let zero = move || digit("0", if signed.get() { "key" } else { "key key--wide" });
    let minus = move || signed.get().then(|| word(Key::Minus, "key", "minus", "−".into_any()));
    let mark = move || mark_word(keys.mark.get());
    let keys_in_order = move || {
        view! {
            {row(["7", "8", "9"])}
            {word(Key::Delete, "key key--word", "Delete last digit", view! { <Icon glyph=Glyph::Delete/> }.into_any())}
            {row(["4", "5", "6"])}
            {word(Key::Clear, "key key--word", "Clear", "Clear".into_any())}
            {row(["1", "2", "3"])}
            {word(Key::Next, "key key--next", "Next", view! { "Next" <Icon glyph=Glyph::Go/> }.into_any())}
            {zero}
            {minus}
            {word(Key::Mark, "key", "decimal mark", mark.into_any())}
        }
    };
    view! {
        <Show when=move || keys.own.get()>
            // The press must not take the focus from the field it types in.
            <div class="pad" role="group" aria-label="Number pad" on:mousedown=|event| event.prevent_default()>
                {keys_in_order()}
            </div>
        </Show>
    }
}

/// The pad for single fields: above the dock while one is open, and says which.
#[component]
pub fn DockedPad() -> impl IntoView {
    let keys = Keys::here();
    let name = move || keys.open().get().map(|it| it.name);
    let shown = Memo::new(move |_| keys.own.get() && keys.open().with(Option::is_some));
    view! {
        <Show when=move || shown.get()>
            <div class="padbox" on:mousedown=|event| event.prevent_default()>
                <p>
                    <span>{name}</span>
                    <button class="btn btn--plain" type="button" tabindex="-1" on:click=|_| put_down()>
                        "Done"
                    </button>
                </p>
                <Pad/>
            </div>
        </Show>
    }
}
