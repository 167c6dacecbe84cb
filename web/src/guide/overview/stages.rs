//! The stage that work is in, step by step; the others as one line each.

use job::guide::{Course, Moment, StageView, StepView, guide_stages, wake};
use job::procedure::{Plan, Step};
use leptos::prelude::*;
use words::{say, t};

use crate::guide::Guide;
use crate::guide::rows::{fold, rows};
use crate::parts::{Bar, Gate, Sign, State, Strip, strip};

/// The stage that work is in.
pub fn here(guide: Guide) -> AnyView {
    let moment = guide.moment();
    let whole = guide.look(|plan, log, course| {
        let stages = guide_stages(plan, course);
        let at = stages.iter().position(|stage| stage.here).unwrap_or(stages.len() - 1);
        let stage = stages.get(at)?;
        let says = wake(course, log, &moment).says;
        Some(sheet(guide, (plan, course), (&stages, stage), &says, &moment))
    });
    whole.flatten().unwrap_or_else(|| ().into_any())
}

fn sheet(
    guide: Guide,
    (plan, course): (&Plan, &Course),
    (stages, stage): (&[StageView], &StageView),
    says: &str,
    moment: &Moment,
) -> AnyView {
    let views: Vec<&StepView> = steps(course, stage);
    let (settled, open): (Vec<&StepView>, Vec<&StepView>) =
        views.into_iter().partition(|view| view.is_settled());
    let settled = (!settled.is_empty()).then(|| {
        let rows = rows(guide, settled.iter().copied(), moment);
        fold(say!("{} done in this stage", settled.len()).into_any(), "", rows)
    });
    let rows = rows(guide, open.iter().copied(), moment);
    let gate = open.iter().find_map(|view| gate(plan.step(&view.id)?, view));
    let next = course.next.and_then(|next| course.steps.get(next));
    let phase = next.map(|view| view.phase.words()).unwrap_or(t("all done"));
    let count = next.map(|view| say!("step {} of {}", view.number, course.steps.len()));
    view! {
        <div class="sheet">
            {named(stages)}
            <div class="h">
                <h1>{format!("{}: {phase}", stage.name)}</h1>
                <span class="dim nowrap">{count}</span>
            </div>
            <p>{says.to_owned()}</p>
            {settled}
            <div>{rows}</div>
            {gate}
        </div>
    }
    .into_any()
}

fn steps<'a>(course: &'a Course, stage: &StageView) -> Vec<&'a StepView> {
    stage.steps.iter().filter_map(|at| course.steps.get(*at)).collect()
}

/// The next gate of the stage.
fn gate(step: &Step, view: &StepView) -> Option<AnyView> {
    let gate = view.gate.as_ref()?;
    let title = say!("Gate: {step}.", step = step.title);
    let state = match gate.missing.len() {
        0 => None,
        some => {
            let words = say!("{some} to do");
            Some(view! { <State sign=Sign::Lock words/> })
        }
    };
    let words = sentence(&gate.words);
    Some(view! { <Gate bar=Bar::Shut title words>{state}</Gate> }.into_any())
}

/// A condition as a sentence.
pub fn sentence(words: &str) -> String {
    let mut letters = words.chars();
    let first = letters.next().map(|first| first.to_uppercase().collect::<String>());
    format!("{}{}.", first.unwrap_or_default(), letters.as_str().trim_end_matches('.'))
}

/// The stages with their names.
fn named(stages: &[StageView]) -> AnyView {
    let marks: Vec<strip::Stage> = stages.iter().map(|stage| mark(stage).0).collect();
    let said: Vec<String> =
        stages.iter().map(|stage| format!("{} {}", stage.name, mark(stage).1)).collect();
    let names = stages.iter().map(|stage| (stage.name, stage.here)).collect();
    view! { <Strip stages=marks label=say!("Stages: {}", said.join(", ")) names/> }.into_any()
}

/// The mark of a stage, and its word.
pub fn mark(stage: &StageView) -> (strip::Stage, &'static str) {
    match (stage.here, stage.stale, stage.is_done()) {
        (true, ..) => (strip::Stage::Here, t("here")),
        (_, 1.., _) => (strip::Stage::Stale, t("stale")),
        (.., true) => (strip::Stage::Done, t("done")),
        _ => (strip::Stage::ToDo, t("to do")),
    }
}

/// The other stages, each with its steps behind it.
pub fn others(guide: Guide) -> AnyView {
    let moment = guide.moment();
    let stages = guide.look(|plan, _, course| {
        let stages = guide_stages(plan, course);
        let others = stages.iter().filter(|stage| !stage.here);
        others.map(|stage| other(guide, course, stage, &moment)).collect_view()
    });
    view! {
        <div class="sheet">
            <h2>{t("Other stages")}</h2>
            {stages}
        </div>
    }
    .into_any()
}

fn other(guide: Guide, course: &Course, stage: &StageView, moment: &Moment) -> AnyView {
    let views = steps(course, stage);
    let (sign, words) = match mark(stage).0 {
        strip::Stage::Done => (Sign::In, t("Done")),
        strip::Stage::Stale => (Sign::Stale, t("Stale")),
        _ if views.iter().any(|view| view.ready) => (Sign::Open, t("Open")),
        _ => (Sign::Lock, t("Locked")),
    };
    let note = match stage.minutes {
        0 => say!("{count} steps", count = views.len()),
        minutes => say!("{} of {} steps, {minutes} min to do", stage.settled, views.len()),
    };
    let summary = view! {
        <span>
            <b>{stage.name}</b>
            <br/>
            <span class="dim">{note}</span>
        </span>
        <State sign words/>
    };
    fold(summary.into_any(), "row", rows(guide, views.iter().copied(), moment))
}
