//! What was counted out and in, and the gate that stands on it.

use job::guide::CountView;
use leptos::prelude::*;
use words::t;

use super::super::checkpoint::checkpoint;
use super::super::count_state::count_state;
use super::state::Rungs;
use crate::parts::{Glyph, Icon};

/// Out = in.
pub fn table(rungs: Rungs) -> AnyView {
    let rows: Vec<AnyView> = rungs.counts().iter().map(row).collect();
    if rows.is_empty() {
        return ().into_any();
    }
    view! {
        <div class="sheet sheet--quiet">
            <h2>{t("Out = in")}</h2>
            <table class="tbl">
                <thead>
                    <tr>
                        <th scope="col">{t("Counted")}</th>
                        <th scope="col" class="n">
                            {t("Out")}
                        </th>
                        <th scope="col" class="n">
                            {t("In")}
                        </th>
                        <th scope="col">
                            <span class="vh">{t("State")}</span>
                        </th>
                    </tr>
                </thead>
                <tbody>{rows}</tbody>
            </table>
        </div>
    }
    .into_any()
}

fn row(count: &CountView) -> AnyView {
    let shown = |count: Option<String>| count.unwrap_or_else(|| "–".to_owned());
    let says = (!count.says.is_empty()).then(|| {
        view! {
            <span class="msg msg--refused">
                <Icon glyph=Glyph::Warn/>
                <span>{count.says.clone()}</span>
            </span>
        }
    });
    view! {
        <tr>
            <th scope="row">{count.title()} {says}</th>
            <td class="n">{shown(count.out_words())}</td>
            <td class="n">{shown(count.in_words())}</td>
            <td class="right">{count_state(count.state)}</td>
        </tr>
    }
    .into_any()
}

/// The gate of the direction.
pub fn gate(rungs: Rungs) -> AnyView {
    let (counts, back) = (rungs.counts(), rungs.goes_back());
    let missing = rungs.look(|ladder| match back {
        false => ladder.to_strip(&counts),
        true => ladder.to_close(&counts),
    });
    let missing = missing.unwrap_or_default();
    match back {
        false => checkpoint(
            t("Gate: strip complete."),
            t("Every rung has a photo and a place. Rollers counted."),
            &missing,
        ),
        true => checkpoint(t("Gate: closed."), t("Every rung ticked, out = in."), &missing),
    }
}
