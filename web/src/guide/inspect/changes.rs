//! What the verdicts change: packs, scope, orders; and the way to who must agree.

use leptos::prelude::*;
use words::{say, t};

use super::state::Judging;
use crate::guide::consent;
use crate::parts::{Sign, State, press};

/// The sheet with what changes.
pub fn sheet(judging: Judging) -> AnyView {
    let effect = judging.effect();
    if effect.says.is_empty() {
        return view! {
            <div class="sheet">
                <h2>{t("What it changes")}</h2>
                <p class="dim">{t("Nothing yet. A reject changes scope, orders and price.")}</p>
            </div>
        }
        .into_any();
    }
    let row = |says: String| {
        view! {
            <div class="packrow packrow--2">
                <p>{says}</p>
                <State sign=Sign::Open words=t("Changes")/>
            </div>
        }
    };
    let says = effect.says.iter().cloned().map(row).collect_view();
    let orders = effect.orders.iter().map(|order| view! { <li>{t(order).to_owned()}</li> });
    let orders = orders.collect_view();
    let widening = judging.look(|parts| effect.widening(parts));
    let widen = effect.widens_to.zip(widening).map(|(scope, fact)| {
        let words = say!("Widen the scope: {}", scope.words().to_lowercase());
        let does = Callback::new(move |()| judging.record(vec![fact.clone()], Box::new(|| ())));
        view! {
            <button class="btn btn--wide" type="button" on:click=press(does)>
                {words}
            </button>
        }
    });
    view! {
        <div class="sheet">
            <h2>{t("What it changes")}</h2>
            {says}
            <h3>{t("To order")}</h3>
            <ul class="plain">{orders}</ul>
            {widen}
            <h3>{t("Call before you order")}</h3>
            {consent::row(judging.guide)}
        </div>
    }
    .into_any()
}
