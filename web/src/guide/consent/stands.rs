//! A consent that stands.

use job::guide::Consent;
use job::{Agreement, Signature};
use leptos::prelude::*;
use pictures::signature::signature;

use super::super::Guide;
use super::state::Consenting;
use crate::lock::use_lock;
use crate::parts::{Bar, Facts, Gate, Row, Sign, State, live, press};
use crate::pictures::Picture;

/// What was agreed, and the way to ask once more.
pub fn sheet(consenting: Consenting) -> AnyView {
    let Some(last) = consenting.look(|asked| asked.last.clone()) else { return ().into_any() };
    let moment = untrack(|| consenting.guide.moment());
    let heading = last.heading(moment.now, moment.utc_offset);
    let again = press(Callback::new(move |()| consenting.ask_again()));
    view! {
        <div class="cols">
            <section class="col">
                <div class="head">
                    <h1>"Consent stands"</h1>
                    <p>{heading}</p>
                </div>
                {what(&last)}
            </section>
            <section class="col">
                {signed(&last)}
                <Gate
                    bar=Bar::Open
                    title="Gate: consent."
                    words="Work, limit, stop rules, a name and a time."
                >
                    <State sign=Sign::In words="Open"/>
                </Gate>
                <button class="btn btn--plain btn--wide" type="button" on:click=again>
                    "Ask again"
                </button>
                {consenting.acting.says()}
            </section>
        </div>
    }
    .into_any()
}

fn what(consent: &Consent) -> AnyView {
    let or_none = |text: &str| match text {
        "" => "not said".to_owned(),
        text => text.to_owned(),
    };
    let mut facts = vec![("Limit", or_none(&consent.limit))];
    let mut work = vec![consent.what.clone()];
    if let Some(signed) = &consent.signed {
        let Agreement { price, stops, excluded, declined, .. } = signed.as_ref();
        work.clone_from(&signed.work);
        facts.insert(0, ("Price", or_none(price)));
        facts.push(("Stop and call", or_none(&stops.join("; "))));
        facts.push(("Not covered", or_none(excluded)));
        if !declined.is_empty() {
            facts.push(("Not wanted", declined.join("; ")));
        }
    }
    let work: Vec<AnyView> =
        work.into_iter().map(|line| view! { <li>{line}</li> }.into_any()).collect();
    view! {
        <div class="sheet">
            <h2>"Work agreed"</h2>
            <ul class="plain">{work}</ul>
            <Facts facts/>
        </div>
    }
    .into_any()
}

/// The signature, or whose initials stand for it.
fn signed(consent: &Consent) -> AnyView {
    let Some(agreement) = &consent.signed else { return ().into_any() };
    let drawn = consent.signature().map(|label| {
        let strokes = agreement.drawn.strokes();
        let drawing = signature(strokes, (Signature::WIDTH, Signature::HEIGHT), label);
        view! {
            <div class="signpad signpad--kept">
                <Picture drawing=Signal::stored(drawing)/>
                <small>{consent.by.clone()}</small>
            </div>
        }
    });
    let initials = (!agreement.initials.is_empty())
        .then(|| view! { <p>"Initials: " <b>{agreement.initials.clone()}</b></p> });
    view! {
        <div class="sheet">
            <h2>"Signed"</h2>
            {drawn}
            {initials}
        </div>
    }
    .into_any()
}

/// The row that leads here: who agreed last, or that nobody did.
pub fn row(guide: Guide) -> AnyView {
    let lock = use_lock();
    let last = Memo::new(move |_| guide.look(|_, log, _| log.consents.last().cloned()).flatten());
    live(move || {
        let moment = untrack(|| guide.moment());
        let note = match last.get() {
            Some(_) if !lock.is_open() => "given; behind the shop’s PIN".to_owned(),
            Some(last) => last.heading(moment.now, moment.utc_offset),
            None => "not given yet".to_owned(),
        };
        view! { <Row title="Consent" note href=guide.of.at("consent")/> }.into_any()
    })
}
