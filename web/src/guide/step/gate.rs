//! The gate of a step: what is missing, and a person's word where only a person can tell.

use job::guide::GateView;
use job::{BookId, Guided};
use leptos::prelude::*;
use words::{say, t};

use super::working::Working;
use crate::draft::{Draft, use_draft};
use crate::guide::overview::sentence;
use crate::parts::{Bar, Gate, Sign, State, TextField, live, press};

/// What a person says of a gate.
#[derive(Clone, Copy)]
struct Judge {
    working: Working,
    by: Draft,
    reason: Draft,
}

/// The gate; nothing where the step has none.
pub fn gate(working: Working) -> AnyView {
    let place = format!("job/{}/step/{}", working.guide.of.id(), working.step(|it| it.id.clone()));
    let (by, reason) = (use_draft(&place, "gate by"), use_draft(&place, "gate reason"));
    let judge = Judge { working, by, reason };
    let gate = Memo::new(move |_| working.view(|view| view.gate.clone()).flatten());
    let open = Memo::new(move |_| {
        working.view(|view| view.ready && !view.is_settled()).unwrap_or_default()
    });
    let shown = live(move || gate.get().map(|gate| bar(&gate)).into_any());
    let asks = Memo::new(move |_| {
        let asks =
            |gate: &GateView| gate.asks && gate.judged_by.is_none() && gate.missing.is_empty();
        open.get() && gate.with(|gate| gate.as_ref().is_some_and(asks))
    });
    let form = live(move || if asks.get() { form(judge) } else { ().into_any() });
    view! {
        <div id="gate" tabindex="-1">
            {shown}
            {form}
        </div>
    }
    .into_any()
}

fn bar(gate: &GateView) -> AnyView {
    let words = sentence(&gate.words);
    if gate.passed {
        let by = gate.judged_by.as_ref().map(|by| say!(" {by} said yes.")).unwrap_or_default();
        return view! {
            <Gate bar=Bar::Open title=t("Gate:") words=format!("{words}{by}")>
                <State sign=Sign::In words=t("Open")/>
            </Gate>
        }
        .into_any();
    }
    let state = match gate.missing.len() {
        0 => t("Yes or no").to_owned(),
        some => say!("{some} to do"),
    };
    let missing = gate.missing.iter().map(|missing| view! { <li>{missing.clone()}</li> });
    let missing = missing.collect_view();
    view! {
        <Gate bar=Bar::Shut title=t("Gate:") words>
            <State sign=Sign::Lock words=state/>
        </Gate>
        <ul class="missing">{missing}</ul>
    }
    .into_any()
}

/// Only a person can compare: yes or no, with a name, and a reason for no.
fn form(judge: Judge) -> AnyView {
    let say = move |passed: bool| {
        press(Callback::new(move |()| {
            let working = judge.working;
            let text = |draft: Draft| draft.text_untracked().trim().to_owned();
            let fact = Guided::GateJudged {
                step: working.step(|step| step.id.clone()),
                passed,
                by: text(judge.by),
                reason: text(judge.reason),
            };
            let facts = vec![(BookId::Job(working.guide.of.id()), fact.into())];
            let then = move || judge.reason.clear();
            working.acting.record(facts, Vec::new(), Box::new(then));
        }))
    };
    view! {
        <div class="sheet">
            <h3>{t("Does it hold? Your manual and your eye decide.")}</h3>
            <TextField id="gate-by" label=t("Your initials") value=judge.by/>
            <TextField
                id="gate-reason"
                label=t("Why, where it does not hold")
                value=judge.reason
                placeholder=t("spread over the limit at 180°")
            />
            <div class="btns">
                <button class="btn" type="button" on:click=say(true)>
                    {t("Yes, it holds")}
                </button>
                <button class="btn btn--plain" type="button" on:click=say(false)>
                    {t("No: open it again")}
                </button>
            </div>
            {judge.working.acting.says()}
        </div>
    }
    .into_any()
}
