//! Unit keys: the units that the number being typed may be in.

use job::{next_unit, unit_choices};
use leptos::prelude::*;
use measure::{Unit, unit_typed};
use words::{say, t};

use super::keys::{Key, Keys, OpenField};
use super::live::{live, press, words};

/// A key for each unit of the open field; nothing where its quantity has but one.
#[component]
pub fn UnitKeys() -> impl IntoView {
    let keys = Keys::here();
    let units = choices(keys);
    live(move || match units.get() {
        [] => ().into_any(),
        units => row(keys, units),
    })
}

/// The units to choose from for the open field.
pub(super) fn choices(keys: Keys) -> Memo<&'static [Unit]> {
    let units = |open: &OpenField| Some(unit_choices(open.unit()?.quantity()));
    Memo::new(move |_| keys.open().with(|open| open.as_ref().and_then(units)).unwrap_or_default())
}

/// One key that takes the next unit; it shows the one taken. `unit`: that of digits alone.
pub(super) fn turn_unit(keys: Keys, unit: Signal<Unit>) -> AnyView {
    let typed = move || keys.open().with(|open| unit_typed(&open.as_ref()?.text()));
    let taken = Memo::new(move |_| typed().unwrap_or_else(|| unit.get()));
    let next = move || next_unit(taken.get());
    let on_press = press(Callback::new(move |()| {
        if let Some(unit) = untrack(next) {
            keys.press(Key::Unit(unit));
        }
    }));
    let spoken = move || {
        let unit = taken.get();
        match next() {
            Some(next) => say!("Unit: {unit}. Press for {next}"),
            None => say!("Unit: {unit}"),
        }
    };
    view! {
        <button
            class="key key--word"
            type="button"
            tabindex="-1"
            aria-label=words(spoken)
            on:click=on_press
        >
            {words(move || taken.get().to_string())}
        </button>
    }
    .into_any()
}

fn row(keys: Keys, units: &'static [Unit]) -> AnyView {
    let taken = Memo::new(move |_| {
        let taken = |open: &OpenField| unit_typed(&open.text()).or(open.unit());
        keys.open().with(|open| open.as_ref().and_then(taken))
    });
    let key = |unit: Unit| {
        let on_press = press(Callback::new(move |()| keys.press(Key::Unit(unit))));
        view! {
            // A keyboard user types the unit, so the Tab key passes it by.
            <button
                class="key"
                type="button"
                tabindex="-1"
                aria-pressed=move || (taken.get() == Some(unit)).to_string()
                on:click=on_press
            >
                {unit.symbol()}
            </button>
        }
    };
    view! {
        // The press must not take the focus from the field it types in.
        <div
            class="units"
            role="group"
            aria-label=t("Unit of this number")
            on:mousedown=|event| event.prevent_default()
        >
            {units.iter().copied().map(key).collect_view()}
        </div>
    }
    .into_any()
}
