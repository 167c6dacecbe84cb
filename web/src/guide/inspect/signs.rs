//! What is seen on the part: signs by what they mean.

use leptos::prelude::*;
use words::{say, t};

use super::state::Judging;
use crate::parts::{Empty, Sign, State, Tick, whether};

/// Which part it is.
pub fn head(judging: Judging) -> AnyView {
    let (Some(open), Some(at)) = (judging.open(), judging.at()) else {
        return view! { <h1 class="vh">{t("Judge")}</h1> }.into_any();
    };
    let count = judging.look(<[_]>::len);
    let note = open.criteria.note;
    view! {
        <div class="head">
            <p>{say!("Judge · part {} of {count}", at + 1)}</p>
            <h1>{t(&open.criteria.name).to_owned()}</h1>
            {(!note.is_empty()).then(|| view! { <p>{t(&note).to_owned()}</p> })}
        </div>
    }
    .into_any()
}

/// The signs to tick.
pub fn sheet(judging: Judging) -> AnyView {
    let Some(open) = judging.open() else {
        return view! {
            <Empty title=t("Nothing to judge yet.") words=t("The criteria come with the procedure.")/>
        }
        .into_any();
    };
    let criteria = open.criteria;
    view! {
        <div class="sheet" id="signs" tabindex="-1">
            <div class="h">
                <h2>{t("What do you see?")}</h2>
                <small>{t("tick all")}</small>
            </div>
            {group(judging, Sign::Out, t("Reject"), criteria.reject)}
            {group(judging, Sign::Near, t("Watch"), criteria.watch)}
            {group(judging, Sign::In, t("Reuse"), criteria.reuse)}
            <p class="small">{t("Trade practice, not a limit. Your manual goes first.")}</p>
        </div>
    }
    .into_any()
}

fn group(judging: Judging, sign: Sign, word: &'static str, signs: Vec<String>) -> AnyView {
    if signs.is_empty() {
        return ().into_any();
    }
    let tick = |seen: String| {
        let shown = t(&seen);
        let mut letters = shown.chars();
        let first = letters.next().map(|first| first.to_uppercase().collect::<String>());
        let title = first.unwrap_or_default() + letters.as_str();
        let own = seen.clone();
        let ticked = whether(move || judging.signs().contains(&own));
        let turn = Callback::new(move |ticked| judging.tick(&seen, ticked));
        view! { <Tick title ticked on_turn=turn/> }
    };
    let ticks = signs.into_iter().map(tick).collect_view();
    view! {
        <div class="judge">
            <h3>
                <State sign words=word/>
            </h3>
            {ticks}
        </div>
    }
    .into_any()
}
