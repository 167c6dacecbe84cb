//! What is asked: what changed and what it costs, the work, what is not covered, when to stop.

use job::agreed;
use job::guide::STOPS;
use leptos::prelude::*;
use words::{say, t};

use super::state::Consenting;
use crate::parts::{Caution, Glyph, Icon, LongText, Row, TextField, Tick, live, whether};

/// What this consent is about, and the one before it.
pub fn head(consenting: Consenting) -> AnyView {
    let moment = untrack(|| consenting.guide.moment());
    consenting.look(|asked| {
        let title = match asked.last {
            Some(_) => t("Consent to the new price"),
            None => t("Consent before the strip-down"),
        };
        let before = asked.last.as_ref().map(|last| {
            let heading = last.heading(moment.now, moment.utc_offset);
            match last.limit.as_str() {
                "" => say!("Agreed last: {heading}."),
                limit => say!("Agreed last: {heading}, limit {limit}."),
            }
        });
        let no = asked.refused.as_ref().map(|no| no.says(moment.now, moment.utc_offset));
        let opening = t("Opening the case often finds more: agree first, then open.").to_owned();
        let says = before.unwrap_or(opening);
        view! {
            <div class="head">
                <h1>{title}</h1>
                <p>{says}</p>
                {no.map(|no| view! { <p><b>{no}</b></p> })}
            </div>
        }
        .into_any()
    })
}

/// What changed, and the price as it is quoted.
pub fn changes(consenting: Consenting) -> AnyView {
    let (says, last) = consenting.look(|asked| (asked.says.clone(), asked.last.clone()));
    let price = move |label: &'static str| {
        view! { <TextField id="price" label value=consenting.price placeholder=t("with currency")/> }
    };
    let Some(last) = last else {
        return view! {
            <div class="sheet">
                <h2>{t("Price")}</h2>
                {price(t("Price as you quote it, if there is one yet"))}
            </div>
        }
        .into_any();
    };
    let says: Vec<AnyView> =
        says.into_iter().map(|said| view! { <p>{said}</p> }.into_any()).collect();
    let before = last.signed.map(|signed| signed.price).filter(|price| !price.is_empty());
    let before = before.map(|before| {
        view! {
            <dt>{t("Agreed before")}</dt>
            <dd class="off">{before}</dd>
        }
    });
    let new = live(move || match consenting.price.text() {
        text if text.is_empty() => t("not typed").into_any(),
        text => text.into_any(),
    });
    view! {
        <div class="sheet">
            <h2>{t("What changed")}</h2>
            {says}
            <dl class="money">
                {before}
                <dt class="sum">{t("New price")}</dt>
                <dd class="sum">{new}</dd>
            </dl>
            {price(t("New price, as you quote it"))}
            <Row
                title=t("See why")
                note=t("photos and reasons of what was judged")
                href=consenting.guide.of.at("inspect")
            >
                <Icon glyph=Glyph::Go/>
            </Row>
        </div>
    }
    .into_any()
}

/// The work, line by line.
pub fn work(consenting: Consenting) -> AnyView {
    let lines = Memo::new(move |_| consenting.look(|asked| asked.work.clone()));
    let ticks = live(move || {
        let ticks = lines.get().into_iter().map(|(line, before)| tick(consenting, line, before));
        ticks.collect_view().into_any()
    });
    view! {
        <div class="sheet" id="work" tabindex="-1">
            <h2>{t("Work agreed")}</h2>
            {ticks}
            <TextField id="more" label=t("Other work agreed") value=consenting.more/>
        </div>
    }
    .into_any()
}

/// What is not covered.
pub fn excluded(consenting: Consenting) -> AnyView {
    view! {
        <div class="sheet">
            <h2>{t("Not covered")}</h2>
            <LongText
                id="excluded"
                label=t("What this price does not cover")
                value=consenting.excluded()
            />
        </div>
    }
    .into_any()
}

/// When work stops until somebody was asked.
pub fn stops(consenting: Consenting) -> AnyView {
    let ticks: Vec<AnyView> =
        STOPS.iter().map(|stop| tick(consenting, (*stop).to_owned(), true)).collect();
    view! {
        <div class="sheet" id="stops" tabindex="-1">
            <h2>{t("Stop and call")}</h2>
            <TextField
                id="limit"
                label=t("When the price passes")
                value=consenting.limit
                placeholder=t("with currency")
            />
            {ticks}
            <Caution title=t("No answer, no work") words=t("past the limit.")/>
        </div>
    }
    .into_any()
}

fn tick(consenting: Consenting, line: String, before: bool) -> AnyView {
    let (title, own) = (agreed(&line), line.clone());
    let ticked = whether(move || consenting.ticked(&own, before));
    let turn = Callback::new(move |_| consenting.turn(&line));
    view! { <Tick title ticked on_turn=turn/> }.into_any()
}
