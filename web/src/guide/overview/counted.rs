//! Out and in: what was counted out must be counted in.

use job::guide::{CountState, CountView, counts};
use leptos::prelude::*;
use words::t;

use crate::guide::Guide;
use crate::guide::count_state::count_state;

/// The table; nothing while nothing was counted out.
pub fn sheet(guide: Guide) -> AnyView {
    let counts = guide.look(|plan, log, _| counts(plan, log)).unwrap_or_default();
    let counted: Vec<&CountView> =
        counts.iter().filter(|count| count.state != CountState::NotCounted).collect();
    if counted.is_empty() {
        return ().into_any();
    }
    let rows = counted.iter().map(|count| row(count)).collect_view();
    let says = counted.iter().filter(|count| !count.says.is_empty()).map(|count| {
        view! { <p>{count.says.clone()}</p> }
    });
    view! {
        <div class="sheet">
            <h2>{t("Out and in")}</h2>
            <table class="tbl">
                <thead>
                    <tr>
                        <th scope="col">{t("Counted")}</th>
                        <th class="n" scope="col">{t("Out")}</th>
                        <th class="n" scope="col">{t("In")}</th>
                        <th scope="col">{t("State")}</th>
                    </tr>
                </thead>
                <tbody>{rows}</tbody>
            </table>
            {says.collect_view()}
        </div>
    }
    .into_any()
}

fn row(count: &CountView) -> AnyView {
    view! {
        <tr>
            <td>{count.title()}</td>
            <td class="n">{count.out_words()}</td>
            <td class="n">{count.in_words().unwrap_or_else(|| "0".to_owned())}</td>
            <td>{count_state(count.state)}</td>
        </tr>
    }
    .into_any()
}
