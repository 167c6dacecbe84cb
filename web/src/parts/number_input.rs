//! The text field that numbers are typed in; with label and word it is a [`Field`](super::Field).

use leptos::ev::KeyboardEvent;
use leptos::prelude::*;
use leptos::wasm_bindgen::JsCast;
use leptos::web_sys::HtmlInputElement;
use measure::Unit;

use super::keys::{Keys, OpenField};
use super::live::{mark, words};
use super::says::Says;
use super::text::Text;

/// A true text field: the pad, a keyboard and a gauge that types digits and Enter all land in it.
#[component]
pub fn NumberInput(
    /// Its id in the page; its word is `{id}-says`.
    #[prop(into)]
    id: String,
    /// What the pad calls it.
    #[prop(into)]
    name: String,
    /// Whether `name` is also its spoken name, where no label stands.
    #[prop(optional)]
    unlabelled: bool,
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
    /// Its class.
    #[prop(optional, into)]
    class: Signal<String>,
    /// The unit that digits without one take, where a person may take another.
    #[prop(optional, into)]
    unit: Signal<Option<Unit>>,
) -> impl IntoView {
    let keys = Keys::here();
    let (entered, left) = (id.clone(), id.clone());
    let spoken = unlabelled.then(|| name.clone());
    let enter = move |_| {
        let (id, name) = (entered.clone(), name.clone());
        keys.entered(OpenField { id, name, signed, unit, value: value.followed() });
    };
    let on_key = move |event: KeyboardEvent| {
        if event.key() == "Enter" {
            event.prevent_default();
            let input = event.current_target().and_then(|it| it.dyn_into().ok());
            input.map(|input: HtmlInputElement| keys.next(&input));
        }
    };
    view! {
        <input
            id=id.clone()
            class=class
            type=if secret { "password" } else { "text" }
            autocomplete="off"
            enterkeyhint="next"
            data-number=""
            inputmode=words(move || keys.input_mode(signed).to_owned())
            aria-label=spoken
            aria-invalid=mark(move || matches!(says.get(), Some(Says::Refused(_))))
            aria-describedby=format!("{id}-says")
            placeholder=placeholder
            disabled=disabled
            prop:value=value.followed()
            on:input:target=move |event| value.set(event.target().value())
            on:focus=enter
            on:blur=move |_| keys.left(left.clone())
            on:keydown=on_key
        />
    }
}
