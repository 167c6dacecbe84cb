//! Why this: formula, inputs and source of every number of the advice.

use job::Why;
use leptos::prelude::*;
use words::t;

use super::Fitting;
use crate::parts::live;

/// Where the numbers come from, one line each that opens.
#[component]
pub fn WhyThis(fitting: Fitting) -> impl IntoView {
    let numbers = Memo::new(move |_| {
        let told = fitting.told.get()?;
        fitting.of.look(|books, shown| job::why(&told, books, shown))
    });
    let lines = live(move || {
        let numbers = numbers.get().unwrap_or_default();
        if numbers.is_empty() {
            return view! { <p>{t("Nothing is worked out yet: the unit sheet lacks teeth, radius or limits.")}</p> }
                .into_any();
        }
        numbers.iter().map(number).collect_view().into_any()
    });
    view! {
        <div class="sheet" id="why" tabindex="-1">
            <h2>{t("Why this?")}</h2>
            {lines}
        </div>
    }
}

/// A number, and behind it how it came about.
fn number(why: &Why) -> AnyView {
    let inputs = why.inputs.iter().map(|input| {
        view! {
            <dt>{input.name.clone()}</dt>
            <dd>{input.value.clone()}</dd>
        }
    });
    let inputs = (!why.inputs.is_empty()).then(|| {
        view! { <dl class="kv why__of">{inputs.collect_view()}</dl> }
    });
    view! {
        <details class="why">
            <summary>
                <span>{why.what.clone()}</span>
                <b>{why.value.clone()}</b>
            </summary>
            <p class="why__f">{why.formula}</p>
            {inputs}
            <p class="small">{why.source.clone()}</p>
        </details>
    }
    .into_any()
}
