//! The reason why, after the decision and never before.

use leptos::prelude::*;
use practice::{Mark, Told};
use words::{say, t};

use super::Unit;
use crate::parts::{Sign, State};

/// What was chosen, and why it was right or not.
pub fn sheet(unit: Unit, told: &Told) -> AnyView {
    let chosen = unit.decided().map(|decided| decided.decision).unwrap_or_default();
    let title = unit.round.with(|round| {
        round.as_ref().and_then(|it| it.decisions.get(chosen)).map(|it| it.title.to_lowercase())
    });
    let (sign, word) =
        if told.is_right { (Sign::In, t("The cause")) } else { (Sign::Near, t("Not the cause")) };
    let says = told.says.iter().map(|(bold, rest)| {
        view! {
            <p>
                <b>{bold.clone()}</b>
                {rest.clone()}
            </p>
        }
    });
    view! {
        <div class="sheet" role="status">
            <h2 id="told" tabindex="-1">{say!("You chose: {}", title.unwrap_or_default())}</h2>
            <State sign words=word/>
            <div class="told">{says.collect_view()}</div>
        </div>
    }
    .into_any()
}

/// What was looked at and what was not.
pub fn reasons(told: &Told) -> AnyView {
    let rows = told.reasons.iter().map(|reason| {
        let (sign, word) = match reason.mark {
            Mark::Right => (Sign::In, t("Right")),
            Mark::Missed => (Sign::Near, t("Missed")),
            Mark::Cost => (Sign::Near, t("Cost")),
        };
        view! {
            <div class="row">
                <p>
                    <b>{reason.title.clone()}</b>
                    <br/>
                    <span class="dim">{reason.note.clone()}</span>
                </p>
                <State sign words=word/>
            </div>
        }
    });
    view! {
        <div class="sheet">
            <h2>{t("Reasons, not points")}</h2>
            <div>{rows.collect_view()}</div>
        </div>
    }
    .into_any()
}
