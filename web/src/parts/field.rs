//! Field: a label, what is typed, and the word at it.

use leptos::prelude::*;
use measure::Unit;

use super::live::{mark, words};
use super::number_input::NumberInput;
use super::says::{Message, Says};
use super::text::Text;

fn class(says: Option<Says>, empty: bool) -> String {
    match says {
        Some(Says::Refused(_)) => "inp inp--refused",
        Some(Says::Doubt(_)) => "inp inp--bad",
        None if empty => "inp inp--empty",
        Some(Says::Told(_)) | None => "inp",
    }
    .to_owned()
}

/// A number field. What is typed stays, whatever the word says.
#[component]
pub fn Field(
    /// Its id in the page.
    #[prop(into)]
    id: String,
    /// What stands above it.
    #[prop(into)]
    label: Signal<String>,
    /// What the pad calls it, where the label is too short to stand alone.
    #[prop(optional, into)]
    name: Option<String>,
    /// What is typed, digit by digit.
    #[prop(into)]
    value: Text,
    /// The word at it.
    #[prop(optional, into)]
    says: Signal<Option<Says>>,
    /// What stands in it while it is empty.
    #[prop(optional, into)]
    placeholder: String,
    /// Whether it takes a minus.
    #[prop(optional)]
    signed: bool,
    /// Whether its digits are hidden, as those of a PIN.
    #[prop(optional)]
    secret: bool,
    /// Whether it is locked.
    #[prop(optional, into)]
    disabled: Signal<bool>,
    /// The unit that digits without one take, where a person may take another.
    #[prop(optional, into)]
    unit: Signal<Option<Unit>>,
) -> impl IntoView {
    let name = name.unwrap_or_else(|| label.get_untracked());
    let class = words(move || class(says.get(), value.is_empty()));
    view! {
        <div class="field">
            <label for=id.clone()>{label}</label>
            <NumberInput id=id.clone() name value says placeholder signed secret disabled class unit/>
            <Message id=format!("{id}-says") says/>
        </div>
    }
}

/// A field for words: a boat, a page of the manual.
#[component]
pub fn TextField(
    /// Its id in the page.
    #[prop(into)]
    id: String,
    /// What stands above it.
    #[prop(into)]
    label: Signal<String>,
    /// What is typed.
    #[prop(into)]
    value: Text,
    /// The word at it.
    #[prop(optional, into)]
    says: Signal<Option<Says>>,
    /// What stands in it while it is empty.
    #[prop(optional, into)]
    placeholder: String,
) -> impl IntoView {
    view! {
        <div class="field">
            <label for=id.clone()>{label}</label>
            <input
                id=id.clone()
                class=words(move || class(says.get(), false))
                type="text"
                autocomplete="off"
                enterkeyhint="done"
                aria-invalid=mark(move || matches!(says.get(), Some(Says::Refused(_))))
                aria-describedby=format!("{id}-says")
                placeholder=placeholder
                prop:value=value.followed()
                on:input:target=move |event| value.set(event.target().value())
            />
            <Message id=format!("{id}-says") says/>
        </div>
    }
}
