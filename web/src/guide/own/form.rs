//! What is done to the chosen step.

use leptos::prelude::*;
use words::t;

use super::state::{CAPTURES, Changing, WAYS, Way};
use crate::parts::{Pick, Seg, TextField, live, words};

/// The chosen step and its change.
pub fn sheet(changing: Changing) -> AnyView {
    let title =
        words(move || changing.chosen().unwrap_or_else(|| t("No step chosen yet.").to_owned()));
    let chosen = Signal::derive(move || WAYS.iter().position(|it| it.0 == changing.way()));
    let choose = Callback::new(move |at| changing.choose_way(at));
    let picks = WAYS.iter().map(|(_, words)| Pick::from(t(words))).collect();
    view! {
        <div class="sheet" id="change" tabindex="-1">
            <h2>{title}</h2>
            <Seg id="way" label=t("What is done to it") picks chosen on_choose=choose/>
            {live(move || match changing.way() {
                Way::Add => own(changing),
                Way::Drop => view! { <TextField id="reason" label=t("Why not on this unit") value=changing.reason/> }.into_any(),
                Way::Move => after(changing),
            })}
            {changing.acting.says()}
        </div>
    }
    .into_any()
}

fn own(changing: Changing) -> AnyView {
    let picks = CAPTURES.iter().map(|(.., words)| Pick::from(t(words))).collect();
    let chosen = Signal::derive(move || Some(changing.capture()));
    let choose = Callback::new(move |at| changing.choose_capture(at));
    view! {
        <TextField id="title" label=t("The act") value=changing.title placeholder=t("Grease the tab bolt")/>
        <TextField id="why" label=t("Why") value=changing.why/>
        <TextField id="caution" label=t("Caution, if any") value=changing.caution/>
        <p class="label">{t("What is captured")}</p>
        <Seg id="captures" label=t("What is captured") picks chosen on_choose=choose/>
    }
    .into_any()
}

fn after(changing: Changing) -> AnyView {
    let options = changing.guide.look(|plan, _, _| {
        let option = |step: &job::procedure::Step| {
            view! { <option value=step.id.clone()>{step.title.clone()}</option> }
        };
        plan.steps.iter().map(option).collect_view()
    });
    view! {
        <div class="field">
            <label for="after">{t("It comes after")}</label>
            <select
                id="after"
                class="inp"
                on:change:target=move |event| changing.after.set(&event.target().value())
            >
                <option value="">{t("Choose a step")}</option>
                {options}
            </select>
        </div>
    }
    .into_any()
}
