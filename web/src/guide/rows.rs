//! A step as a row of a list, with its state.

use job::apart;
use job::guide::{Moment, StepState, StepView};
use leptos::prelude::*;
use words::{say, t};

use super::Guide;
use crate::parts::{Sign, State};

/// The sign and the word of a state.
pub fn sign(state: &StepState) -> (Sign, &'static str) {
    match state {
        StepState::Open => (Sign::Open, t("Open")),
        StepState::Locked { .. } => (Sign::Lock, t("Locked")),
        StepState::Done { .. } => (Sign::In, t("Done")),
        StepState::Skipped { .. } => (Sign::Near, t("Left out")),
        StepState::Stale { .. } => (Sign::Stale, t("Stale")),
    }
}

/// What is said under a step: cause and cure, or when.
pub fn note(view: &StepView, moment: &Moment) -> String {
    match &view.state {
        StepState::Done { at } => apart(*at, moment.now, moment.utc_offset),
        StepState::Skipped { reason, .. } => reason.clone(),
        StepState::Locked { opens } => opens.clone(),
        StepState::Stale { why } => why.clone(),
        StepState::Open => match (view.waits.first(), view.captured) {
            (Some(waits), _) => waits.clone(),
            (None, 0) => String::new(),
            (None, some) => say!("{some} captured, {} to do", view.to_capture.len()),
        },
    }
}

/// The row; the whole of it leads to the step.
fn row(guide: Guide, view: &StepView, note: String) -> AnyView {
    let (sign, words) = sign(&view.state);
    let note = (!note.is_empty()).then(|| {
        view! {
            <br/>
            <span class="dim">{note}</span>
        }
    });
    view! {
        <a class="row row--3" href=guide.at_step(&view.id)>
            <b class="dim">{view.number}</b>
            <p>
                <b>{view.title.clone()}</b>
                {note}
            </p>
            <State sign words/>
        </a>
    }
    .into_any()
}

/// Rows of steps one after the other. Of those that are locked only the first says what opens it:
/// the others wait for it too.
pub fn rows<'a>(
    guide: Guide,
    views: impl Iterator<Item = &'a StepView>,
    moment: &Moment,
) -> Vec<AnyView> {
    let mut told = false;
    let one = |view: &StepView| {
        let locked = matches!(view.state, StepState::Locked { .. });
        let note = if locked && told { String::new() } else { note(view, moment) };
        told |= locked;
        row(guide, view, note)
    };
    views.map(one).collect()
}

/// Rows under a line that opens them.
pub fn fold(summary: AnyView, class: &'static str, rows: Vec<AnyView>) -> AnyView {
    view! {
        <details class="fold">
            <summary class=class>{summary}</summary>
            {rows}
        </details>
    }
    .into_any()
}
