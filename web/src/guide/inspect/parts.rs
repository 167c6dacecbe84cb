//! All parts with their verdicts, and the gate over them.

use job::guide::{Effect, PartView};
use leptos::prelude::*;
use words::t;

use super::super::checkpoint::checkpoint;
use super::state::Judging;
use super::verdict::told;
use crate::parts::{Sign, State, press};

/// All parts.
pub fn sheet(judging: Judging) -> AnyView {
    let rows: Vec<AnyView> =
        judging.look(|parts| parts.iter().map(|part| row(judging, part)).collect());
    if rows.is_empty() {
        return ().into_any();
    }
    view! {
        <div class="sheet">
            <h2>{t("All parts")}</h2>
            {rows}
        </div>
    }
    .into_any()
}

fn row(judging: Judging, view: &PartView) -> AnyView {
    let (word, sign) = match &view.judged {
        Some(judged) => {
            let (word, sign, _) = told(judged.verdict);
            (word, sign)
        }
        None => (t("Open"), Sign::Open),
    };
    let reason = view.judged.as_ref().map(|judged| judged.reason.clone()).unwrap_or_default();
    let notes = [reason, view.missing.clone()].into_iter().filter(|note| !note.is_empty());
    let notes: Vec<AnyView> =
        notes.map(|note| view! { <br/> <span class="dim">{note}</span> }.into_any()).collect();
    let (part, name) = (view.criteria.part.clone(), t(&view.criteria.name).to_owned());
    let choose = Callback::new(move |()| {
        judging.choose(&part);
        crate::page::show("main");
    });
    view! {
        <button class="row row--pick" type="button" on:click=press(choose)>
            <span>
                <b>{name}</b>
                {notes}
            </span>
            <State sign words=word/>
        </button>
    }
    .into_any()
}

/// The gate over all verdicts.
pub fn gate(judging: Judging) -> AnyView {
    if judging.at().is_none() {
        return ().into_any();
    }
    let missing = judging.look(Effect::to_judge);
    let words = t("Every part has a verdict, every reject a photo and a reason.");
    checkpoint(t("Gate: judged."), words, &missing)
}
