//! A consent that stands.

use job::agreed;
use job::guide::Consent;
use leptos::prelude::*;
use words::t;

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
                    <h1>{t("Consent stands")}</h1>
                    <p>{heading}</p>
                </div>
                {what(&last)}
            </section>
            <section class="col">
                {signed(&last)}
                <Gate
                    bar=Bar::Open
                    title=t("Gate: consent.")
                    words=t("Work, limit, stop rules, a name and a time.")
                >
                    <State sign=Sign::In words=t("Open")/>
                </Gate>
                <button class="btn btn--plain btn--wide" type="button" on:click=again>
                    {t("Ask again")}
                </button>
                {consenting.acting.says()}
            </section>
        </div>
    }
    .into_any()
}

fn what(consent: &Consent) -> AnyView {
    let work: Vec<AnyView> =
        consent.work().iter().map(|line| view! { <li>{agreed(line)}</li> }.into_any()).collect();
    view! {
        <div class="sheet">
            <h2>{t("Work agreed")}</h2>
            <ul class="plain">{work}</ul>
            <Facts facts=consent.terms()/>
        </div>
    }
    .into_any()
}

/// The signature, or whose initials stand for it.
fn signed(consent: &Consent) -> AnyView {
    if consent.signed.is_none() {
        return ().into_any();
    }
    let drawn = consent.signature().map(|drawing| {
        view! {
            <div class="signpad signpad--kept">
                <Picture drawing=Signal::stored(drawing)/>
                <small>{consent.by.clone()}</small>
            </div>
        }
    });
    let initials =
        consent.initials().map(|(label, letters)| view! { <p>{label} ": " <b>{letters}</b></p> });
    view! {
        <div class="sheet">
            <h2>{t("Signed")}</h2>
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
            Some(_) if !lock.is_open() => t("given; behind the shop’s PIN").to_owned(),
            Some(last) => last.heading(moment.now, moment.utc_offset),
            None => t("not given yet").to_owned(),
        };
        view! { <Row title=t("Consent") note href=guide.of.at("consent")/> }.into_any()
    })
}
