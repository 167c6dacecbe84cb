//! Slots: one per reading of a series; the one being typed grows.

use leptos::prelude::*;
use measure::Unit;

use super::live::words;
use super::number_input::NumberInput;
use super::says::{Message, Says};
use super::text::Text;

/// A place for one reading.
#[derive(Clone)]
pub struct Slot {
    /// Its id in the page.
    pub id: String,
    /// Where it is read, such as "270°".
    pub place: String,
    /// The same, spoken with its unit.
    pub spoken: String,
    /// What is typed, digit by digit.
    pub value: Text,
    /// The word at it.
    pub says: Signal<Option<Says>>,
    /// The unit that digits without one take.
    pub unit: Signal<Option<Unit>>,
}

/// As many characters fit in a slot at full size.
const FULL: usize = 6;

/// A reading series. The words stand under the slots at full width.
#[component]
pub fn Slots(
    /// In the order they are read.
    slots: Vec<Slot>,
) -> impl IntoView {
    let messages = slots.iter().map(|slot| (format!("{}-says", slot.id), slot.says));
    let messages = messages.map(|(id, says)| view! { <Message id says/> }).collect_view();
    let slot = |slot: Slot| {
        let Slot { id, place, spoken, value, says, unit } = slot;
        let class = words(move || {
            let class = match says.get() {
                Some(Says::Refused(_)) => "slot slot--refused",
                Some(Says::Doubt(_)) => "slot slot--doubt",
                Some(Says::Told(_)) | None => "slot",
            };
            // A value with its unit must be read whole, or its digits pass for another unit's.
            let long = if value.get().len() > FULL { " slot--long" } else { "" };
            format!("{class}{long}")
        });
        view! {
            <label class=class>
                <small>{place}</small>
                <NumberInput id name=spoken unlabelled=true value says unit/>
            </label>
        }
    };
    view! {
        <div class="slots">{slots.into_iter().map(slot).collect_view()}</div>
        {messages}
    }
}
