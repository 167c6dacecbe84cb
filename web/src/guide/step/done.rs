//! Closing a step, leaving it out, opening it again.

use job::guide::StepState;
use job::{BookId, Guided};
use leptos::prelude::*;
use words::t;

use super::working::Working;
use crate::address::{Address, use_address};
use crate::draft::{Draft, use_draft};
use crate::parts::{TextField, live, press};

/// Closes the step where the guide admits it, and goes on to the next.
pub fn finish(working: Working, address: Address) {
    let id = working.step(|step| step.id.clone());
    let fact = working.guide.look_once(|_, _, course| course.finish(&id));
    write(working, fact.map(|it| it.map_err(|why| why.to_string())), move || {
        if working.again.try_get_untracked().is_none() {
            // The screen was left meanwhile.
            return;
        }
        let next = working.guide.look_once(|_, _, course| {
            let next = course.next.and_then(|next| course.steps.get(next));
            next.map(|next| working.guide.at_step(&next.id))
        });
        address.go(&next.flatten().unwrap_or_else(|| working.guide.of.at_job()));
    });
}

fn write(working: Working, fact: Option<Result<Guided, String>>, then: impl FnOnce() + 'static) {
    match fact {
        Some(Ok(fact)) => {
            let facts = vec![(BookId::Job(working.guide.of.id()), fact.into())];
            working.acting.record(facts, Vec::new(), Box::new(then));
        }
        Some(Err(why)) => {
            working.acting.refuse(why);
            crate::page::lead_to("step-end");
        }
        None => {}
    }
}

/// The end of a step.
pub fn sheet(working: Working) -> AnyView {
    let address = use_address();
    let place = format!("job/{}/step/{}", working.guide.of.id(), working.step(|it| it.id.clone()));
    let reason = use_draft(&place, "end reason");
    let state = Memo::new(move |_| working.view(|view| (view.ready, view.state.clone())));
    let end = live(move || match state.get() {
        Some((true, StepState::Done { .. } | StepState::Skipped { .. })) => again(working, reason),
        Some((true, StepState::Open | StepState::Stale { .. })) => open(working, reason, address),
        Some((false, _)) | None | Some((true, StepState::Locked { .. })) => ().into_any(),
    });
    view! {
        <div id="step-end" tabindex="-1">
            {end}
        </div>
    }
    .into_any()
}

fn open(working: Working, reason: Draft, address: Address) -> AnyView {
    let close = press(Callback::new(move |()| finish(working, address)));
    let skip = press(Callback::new(move |()| {
        let id = working.step(|step| step.id.clone());
        let why = reason.text_untracked();
        let fact = working.guide.look_once(|plan, log, course| course.skip(plan, log, &id, &why));
        let then = move || reason.clear();
        write(working, fact.map(|it| it.map_err(|why| why.to_string())), then);
    }));
    view! {
        <div class="sheet">
            <h2 class="vh">{t("End of the step")}</h2>
            <button class="btn btn--wide" type="button" on:click=close>
                {t("Close this step")}
            </button>
            <details class="fold">
                <summary>{t("Leave it out")}</summary>
                <TextField id="end-reason" label=t("Why it is left out") value=reason/>
                <button class="btn btn--plain btn--wide" type="button" on:click=skip>
                    {t("Leave this step out")}
                </button>
            </details>
            {working.acting.says()}
        </div>
    }
    .into_any()
}

fn again(working: Working, reason: Draft) -> AnyView {
    let reopen = press(Callback::new(move |()| {
        let reopened = Guided::StepReopened {
            step: working.step(|step| step.id.clone()),
            reason: reason.text_untracked().trim().to_owned(),
        };
        write(working, Some(Ok(reopened)), move || reason.clear());
    }));
    view! {
        <div class="sheet">
            <h2 class="vh">{t("End of the step")}</h2>
            <details class="fold">
                <summary>{t("Open it again")}</summary>
                <p>{t("What needs this step is done again after it.")}</p>
                <TextField id="end-reason" label=t("Why it is opened again") value=reason/>
                <button class="btn btn--plain btn--wide" type="button" on:click=reopen>
                    {t("Open this step again")}
                </button>
            </details>
            {working.acting.says()}
        </div>
    }
    .into_any()
}
