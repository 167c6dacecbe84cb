//! What the core says of a check, as signs, words and bands.

use job::{CheckState, CheckView, Missing, Predicted, Shown, Typing, figure};
use leptos::prelude::*;
use words::say;

use super::frame::OpenJob;
use crate::parts::{Says, Sign};
use crate::pictures::band::Band;
use crate::shown::gauged;

/// The sign of a state.
pub fn sign(state: &CheckState) -> Sign {
    match state {
        CheckState::InBand => Sign::In,
        CheckState::NearLimit | CheckState::CannotProve | CheckState::TightSpot => Sign::Near,
        CheckState::Out => Sign::Out,
        CheckState::Stale { .. } => Sign::Stale,
        CheckState::Locked { .. } => Sign::Lock,
        CheckState::Open | CheckState::NoBand => Sign::Open,
    }
}

/// "0.63 in band"; without a reading, the state alone.
pub fn verdict(view: &CheckView, shown: Shown) -> String {
    let word = view.state.to_string();
    match view.judged.as_ref() {
        Some(judged) => {
            format!("{} {}", figure(judged.mean, view.check.figure(), shown), word.to_lowercase())
        }
        None => word,
    }
}

/// The band of a check as it stands; `None` without limits.
pub fn band(view: &CheckView, shown: Shown) -> Option<Band> {
    let judged = view.judged.as_ref();
    Some(Band {
        name: view.check.name().to_owned(),
        mean: judged.map(|judged| gauged(judged.mean, view.check, shown)),
        stale: matches!(view.state, CheckState::Stale { .. }),
        verdict: view.state.to_string(),
        ..job::limits(view.check, view.band?, judged, shown)
    })
}

/// The band of a prediction; `None` without limits.
pub fn predicted_band(predicted: &Predicted, shown: Shown) -> Option<Band> {
    let draw = |value| gauged(value, predicted.check, shown);
    Some(Band {
        name: predicted.check.name().to_owned(),
        predicted: Some((draw(predicted.mean), draw(predicted.expanded))),
        ..job::limits(predicted.check, predicted.band?, None, shown)
    })
}

/// The word at a field.
pub fn told(typing: &Typing) -> Option<Says> {
    let refused = typing.refused.clone().map(Says::Refused);
    refused.or_else(|| Some(Says::Doubt(typing.doubt.as_ref()?.to_string())))
}

/// What the sheet lacks for a check, with the way to the first of the fields.
#[component]
pub fn Lacks(
    /// The job.
    of: OpenJob,
    /// What is missing.
    missing: Missing,
) -> impl IntoView {
    let field = missing.fields.first().copied().map(|field| {
        let words = say!("Type {}", field.facts().name());
        view! { <a class="btn" href=of.at_field(field)>{words}</a> }
    });
    view! {
        <p>{missing.sentence}</p>
        {field}
    }
}
