//! Plate: who is on the bench, and the unit shown.

use leptos::prelude::*;
use words::t;

use super::help::help;
use super::live::{live, press};

/// The data plate at the top of every screen; it stays put.
#[component]
pub fn Plate(
    /// The boat, or the name of the screen.
    #[prop(into)]
    title: Signal<String>,
    /// Job and unit, or what else places it.
    #[prop(into)]
    subtitle: Signal<String>,
    /// The unit toggle, where lengths are shown.
    #[prop(optional)]
    children: Option<Children>,
) -> impl IntoView {
    let (help, opened) = help();
    view! {
        <header class="plate">
            <div class="grow">
                <b>{title}</b>
                <small>{subtitle}</small>
            </div>
            {children.map(|it| it())}
            {help}
        </header>
        {opened}
    }
}

/// Converts for show only; what was typed keeps its digits and unit.
#[component]
pub fn UnitToggle(
    /// Whether inches are shown; millimetres otherwise.
    #[prop(into)]
    inches: Signal<bool>,
    /// Shows the other unit.
    on_toggle: Callback<()>,
) -> impl IntoView {
    live(move || {
        let (spoken, mm, inch) = match inches.get() {
            true => (t("Unit: inches. Press for millimetres"), None, Some("true")),
            false => (t("Unit: millimetres. Press for inches"), Some("true"), None),
        };
        view! {
            <button class="unit" type="button" on:click=press(on_toggle)>
                <span aria-hidden="true" aria-current=mm>{t("mm")}</span>
                <span aria-hidden="true" aria-current=inch>{t("in")}</span>
                <span class="vh">{spoken}</span>
            </button>
        }
        .into_any()
    })
}
