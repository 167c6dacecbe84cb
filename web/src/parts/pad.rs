//! Pad: the app's own keys, the same place every time, whatever the device's keyboard does.

use leptos::prelude::*;
use measure::Unit;
use words::t;

use super::icon::{Glyph, Icon};
use super::keys::{Key, Keys, put_down};
use super::live::{live, press};
use super::typing::mark_word;
use super::unit_keys::{UnitKeys, choices, turn_unit};

/// One key. A keyboard user types digits, so the Tab key passes it by.
fn key(keys: Keys, key: Key, class: &'static str, spoken: &'static str, shows: AnyView) -> AnyView {
    let on_press = press(Callback::new(move |()| keys.press(key)));
    view! {
        <button class=class type="button" tabindex="-1" aria-label=spoken on:click=on_press>
            {shows}
        </button>
    }
    .into_any()
}

/// The keys; nothing where the device's own keyboard is preferred.
#[component]
pub fn Pad(
    /// The unit that digits without one take, where one of the keys turns the unit because no row
    /// of units stands above them.
    #[prop(optional)]
    unit: Option<Signal<Unit>>,
) -> impl IntoView {
    let keys = Keys::here();
    live(move || match (keys.own.get(), unit) {
        (true, unit) => pad(keys, unit),
        (false, Some(_)) => view! { <UnitKeys/> }.into_any(),
        (false, None) => ().into_any(),
    })
}

fn pad(keys: Keys, unit: Option<Signal<Unit>>) -> AnyView {
    let digit = move |digit, class| key(keys, Key::Digit(digit), class, digit, digit.into_any());
    let row = move |digits: [&'static str; 3]| {
        digits.map(|it| digit(it, "key")).into_iter().collect_view()
    };
    let delete = view! { <Icon glyph=Glyph::Delete/> }.into_any();
    let next = view! {
        {t("Next")}
        <Icon glyph=Glyph::Go/>
    }
    .into_any();
    let signed = Memo::new(move |_| keys.open().with(|it| it.as_ref().is_some_and(|it| it.signed)));
    let bottom = live(move || {
        let mark = mark_word(keys.mark.get());
        let (zero, beside) = match (signed.get(), unit) {
            (true, _) => ("key", Some(key(keys, Key::Minus, "key", t("minus"), "−".into_any()))),
            (false, Some(unit)) => ("key", Some(turn_unit(keys, unit))),
            (false, None) => ("key key--wide", None),
        };
        view! {
            {digit("0", zero)}
            {beside}
            {key(keys, Key::Mark, "key", t("decimal mark"), mark.into_any())}
        }
        .into_any()
    });
    view! {
        // The press must not take the focus from the field it types in.
        <div class="pad" role="group" aria-label=t("Number pad") on:mousedown=|event| event.prevent_default()>
            {row(["7", "8", "9"])}
            {key(keys, Key::Delete, "key key--word", t("Delete last digit"), delete)}
            {row(["4", "5", "6"])}
            {key(keys, Key::Clear, "key key--word", t("Clear"), t("Clear").into_any())}
            {row(["1", "2", "3"])}
            {key(keys, Key::Next, "key key--next", t("Next"), next)}
            {bottom}
        </div>
    }
    .into_any()
}

/// The pad for single fields: above the dock while one is open, and says which.
#[component]
pub fn DockedPad() -> impl IntoView {
    let keys = Keys::here();
    let units = choices(keys);
    // Where the device's own keyboard is preferred, it has no units.
    let shown = Memo::new(move |_| {
        keys.open().with(Option::is_some) && (keys.own.get() || !units.get().is_empty())
    });
    let name = move || keys.open().get().map(|it| it.name).unwrap_or_default();
    live(move || match shown.get() {
        true => docked(Signal::derive(name)),
        false => ().into_any(),
    })
}

fn docked(name: Signal<String>) -> AnyView {
    let done = press(Callback::new(|()| put_down()));
    view! {
        <section class="padbox" aria-label=t("What is being typed") on:mousedown=|event| event.prevent_default()>
            <p>
                <span>{name}</span>
                <button class="btn btn--plain" type="button" tabindex="-1" on:click=done>
                    {t("Done")}
                </button>
            </p>
            <UnitKeys/>
            <Pad/>
        </section>
    }
    .into_any()
}
