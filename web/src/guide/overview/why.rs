//! Why things locked or went stale: the causes in words, and the way to the map.

use job::guide::{StepState, StepView};
use leptos::prelude::*;
use words::t;

use crate::guide::Guide;

/// Stale steps with their causes; else what the next lock waits for.
pub fn sheet(guide: Guide) -> AnyView {
    let said = guide.look(|_, _, course| {
        let stale: Vec<AnyView> = course.steps.iter().filter_map(stale).take(4).collect();
        let locked = course.steps.iter().filter_map(locked).take(1);
        let said = if stale.is_empty() { locked.collect() } else { stale };
        said.into_iter().collect_view()
    });
    view! {
        <div class="sheet">
            <h2>{t("Why things locked or went stale")}</h2>
            {said}
            <a class="btn btn--wide" href=guide.of.at("map")>
                {t("Open the map")}
            </a>
        </div>
    }
    .into_any()
}

fn stale(view: &StepView) -> Option<AnyView> {
    let StepState::Stale { why } = &view.state else { return None };
    Some(told(view, why))
}

fn locked(view: &StepView) -> Option<AnyView> {
    let StepState::Locked { opens } = &view.state else { return None };
    Some(told(view, opens))
}

fn told(view: &StepView, why: &str) -> AnyView {
    view! {
        <p>
            <b>{format!("{} {}", view.number, view.title)}</b>
            <br/>
            {why.to_owned()}
        </p>
    }
    .into_any()
}
