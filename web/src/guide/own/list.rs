//! The steps to choose from, and what was changed so far.

use job::procedure::{Change, Step};
use leptos::prelude::*;
use words::{say, t};

use super::state::Changing;
use crate::page::lead_to;
use crate::parts::{Sign, State, whether};

/// What was changed on this unit.
pub fn changes(changing: Changing) -> AnyView {
    let lines = changing
        .guide
        .of
        .look(|(_, sheet, _), _| sheet.changes.0.iter().map(words).collect::<Vec<_>>());
    let set_aside = changing.guide.look(|plan, _, _| plan.set_aside.clone()).unwrap_or_default();
    let lines = lines.unwrap_or_default();
    if lines.is_empty() {
        return ().into_any();
    }
    let title = |id: &str| {
        changing.guide.look(|plan, _, _| plan.step(id).map(|step| step.title.clone())).flatten()
    };
    let row = |(id, says): (String, String)| {
        let name = title(&id).unwrap_or(id);
        view! {
            <p>
                <b class="long">{name}</b>
                <span class="dim long">{says}</span>
            </p>
        }
    };
    view! {
        <div class="sheet sheet--quiet">
            <h2>{t("Changed on this unit")}</h2>
            {lines.into_iter().map(row).collect_view()}
            {set_aside.into_iter().map(|says| view! { <p class="msg">{says}</p> }).collect_view()}
        </div>
    }
    .into_any()
}

/// The step of a change, and what became of it.
fn words(change: &Change) -> (String, String) {
    match change {
        Change::Added { step, .. } => (step.clone(), t("Own step").to_owned()),
        Change::Dropped { step, reason } => (step.clone(), say!("Left out: {reason}")),
        Change::Moved { step, .. } => (step.clone(), t("Moved").to_owned()),
    }
}

/// Every step, to choose one.
pub fn steps(changing: Changing) -> AnyView {
    let rows = changing.guide.look(|plan, _, _| {
        plan.steps.iter().enumerate().map(|(at, step)| row(changing, at, step)).collect_view()
    });
    view! {
        <div class="sheet">
            <h2>{t("Choose a step")}</h2>
            <div class="flow" role="radiogroup" aria-label=t("Step")>
                {rows}
            </div>
        </div>
    }
    .into_any()
}

fn row(changing: Changing, at: usize, step: &Step) -> AnyView {
    let id = step.id.clone();
    let here = id.clone();
    let chosen = whether(move || changing.step.text() == here);
    let choose = move |_| {
        changing.step.set(&id);
        changing.acting.forget();
        lead_to("change");
    };
    let own = step.own.then(|| view! { <State sign=Sign::Open words=t("Own")/> });
    view! {
        <label class="choice">
            <input type="radio" name="step" prop:checked=chosen on:change=choose/>
            <span>
                <b>{format!("{} {}", at + 1, step.title)}</b>
                {own}
            </span>
        </label>
    }
    .into_any()
}
