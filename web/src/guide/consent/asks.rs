//! What is asked: what changed and what it costs, the work, what is not covered, when to stop.

use job::guide::STOPS;
use leptos::prelude::*;

use super::state::Consenting;
use crate::parts::{Caution, Glyph, Icon, LongText, Row, TextField, Tick, live, whether};

/// What this consent is about, and the one before it.
pub fn head(consenting: Consenting) -> AnyView {
    let moment = untrack(|| consenting.guide.moment());
    consenting.look(|asked| {
        let title = match asked.last {
            Some(_) => "Consent to the new price",
            None => "Consent before the strip-down",
        };
        let before = asked.last.as_ref().map(|last| {
            let heading = last.heading(moment.now, moment.utc_offset);
            let limit = match last.limit.as_str() {
                "" => String::new(),
                limit => format!(", limit {limit}"),
            };
            format!("Agreed last: {heading}{limit}.")
        });
        let no = asked.refused.as_ref().map(|no| no.says(moment.now, moment.utc_offset));
        let opening = "Opening the case often finds more: agree first, then open.".to_owned();
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
        view! { <TextField id="price" label value=consenting.price placeholder="with currency"/> }
    };
    let Some(last) = last else {
        return view! {
            <div class="sheet">
                <h2>"Price"</h2>
                {price("Price as you quote it, if there is one yet")}
            </div>
        }
        .into_any();
    };
    let says: Vec<AnyView> =
        says.into_iter().map(|said| view! { <p>{said}</p> }.into_any()).collect();
    let before = last.signed.map(|signed| signed.price).filter(|price| !price.is_empty());
    let before = before.map(|before| {
        view! {
            <dt>"Agreed before"</dt>
            <dd class="off">{before}</dd>
        }
    });
    let new = live(move || match consenting.price.text() {
        text if text.is_empty() => "not typed".into_any(),
        text => text.into_any(),
    });
    view! {
        <div class="sheet">
            <h2>"What changed"</h2>
            {says}
            <dl class="money">
                {before}
                <dt class="sum">"New price"</dt>
                <dd class="sum">{new}</dd>
            </dl>
            {price("New price, as you quote it")}
            <Row
                title="See why"
                note="photos and reasons of what was judged"
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
            <h2>"Work agreed"</h2>
            {ticks}
            <TextField id="more" label="Other work agreed" value=consenting.more/>
        </div>
    }
    .into_any()
}

/// What is not covered.
pub fn excluded(consenting: Consenting) -> AnyView {
    view! {
        <div class="sheet">
            <h2>"Not covered"</h2>
            <LongText
                id="excluded"
                label="What this price does not cover"
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
            <h2>"Stop and call"</h2>
            <TextField
                id="limit"
                label="When the price passes"
                value=consenting.limit
                placeholder="with currency"
            />
            {ticks}
            <Caution title="No answer, no work" words="past the limit."/>
        </div>
    }
    .into_any()
}

fn tick(consenting: Consenting, line: String, before: bool) -> AnyView {
    let (title, own) = (line.clone(), line.clone());
    let ticked = whether(move || consenting.ticked(&own, before));
    let turn = Callback::new(move |_| consenting.turn(&line));
    view! { <Tick title ticked on_turn=turn/> }.into_any()
}
