//! What the verdicts change: packs, scope, orders; and who agreed to it. A price is only what a
//! person types.

use job::Guided;
use leptos::prelude::*;

use super::state::Judging;
use crate::draft::use_draft;
use crate::parts::{Pick, Seg, Sign, State, TextField, press};

const WAYS: [&str; 3] = ["Here", "By phone", "Message"];

/// The sheet with what changes.
pub fn sheet(judging: Judging) -> AnyView {
    let effect = judging.effect();
    if effect.says.is_empty() {
        return view! {
            <div class="sheet">
                <h2>"What it changes"</h2>
                <p class="dim">"Nothing yet. A reject changes scope, orders and price."</p>
            </div>
        }
        .into_any();
    }
    let row = |says: String| {
        view! {
            <div class="packrow packrow--2">
                <p>{says}</p>
                <State sign=Sign::Open words="Changes"/>
            </div>
        }
    };
    let says = effect.says.iter().cloned().map(row).collect_view();
    let orders = effect.orders.iter().cloned().map(|order| view! { <li>{order}</li> });
    let orders = orders.collect_view();
    let widening = judging.look(|parts| effect.widening(parts));
    let widen = effect.widens_to.zip(widening).map(|(scope, fact)| {
        let words = format!("Widen the scope: {}", scope.words().to_lowercase());
        let does = Callback::new(move |()| judging.record(vec![fact.clone()], Box::new(|| ())));
        view! {
            <button class="btn btn--wide" type="button" on:click=press(does)>
                {words}
            </button>
        }
    });
    view! {
        <div class="sheet">
            <h2>"What it changes"</h2>
            {says}
            <h3>"To order"</h3>
            <ul class="plain">{orders}</ul>
            {widen}
            <Consent judging/>
        </div>
    }
    .into_any()
}

/// Who agreed to the change, and to which price.
#[component]
fn Consent(judging: Judging) -> impl IntoView {
    let at = format!("job/{}/consent", judging.guide.of.id());
    let (price, by, way) = (use_draft(&at, "price"), use_draft(&at, "by"), use_draft(&at, "way"));
    let chosen = Signal::derive(move || way.text().parse().ok().or(Some(0)));
    let choose = Callback::new(move |at: usize| way.set(&at.to_string()));
    let keep = Callback::new(move |()| {
        let (how, effect) = untrack(|| (chosen.get(), judging.effect()));
        let how = how.and_then(|at| WAYS.get(at)).copied().unwrap_or_default();
        let what = format!("{}; {}", effect.orders.join(", "), how.to_lowercase());
        let fact =
            Guided::ConsentGiven { by: by.text_untracked(), what, limit: price.text_untracked() };
        let done = Box::new(move || [price, by, way].into_iter().for_each(|draft| draft.clear()));
        judging.record(vec![fact], done);
    });
    let last = judging.guide.look(|_, log, _| log.consents.last().cloned()).flatten();
    let last = last.map(|consent| {
        let limit = match consent.limit.is_empty() {
            true => String::new(),
            false => format!(", up to {}", consent.limit),
        };
        view! { <p class="dim">{format!("Agreed last: {}, {}{limit}.", consent.by, consent.what)}</p> }
    });
    view! {
        <h3>"Call before you order"</h3>
        {last}
        <TextField id="price" label="New price, as you quote it" value=price placeholder="with currency"/>
        <TextField id="by" label="Who agrees" value=by placeholder="name, owner"/>
        <p class="label" aria-hidden="true">
            "How"
        </p>
        <Seg
            id="how"
            label="How"
            picks=WAYS.map(Pick::from).into()
            chosen
            on_choose=choose
        />
        <button class="btn btn--wide" type="button" on:click=press(keep)>
            "Keep consent"
        </button>
    }
}
