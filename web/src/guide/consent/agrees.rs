//! Who agrees, how, and the signature under it.

use job::guide::ConsentRefusal;
use leptos::prelude::*;
use words::{key, t};

use super::pad;
use super::state::{Consenting, field};
use crate::page::lead_to;
use crate::parts::{Act, Glyph, LongText, Pick, Seg, TextField, live, press, whether, words};

const WAYS: [&str; 3] = ["Signs here", "By phone", key!("Message")];

/// The sheet with the answer.
pub fn sheet(consenting: Consenting) -> AnyView {
    let here = Memo::new(move |_| consenting.is_here());
    let chosen = Signal::derive(move || Some(consenting.how()));
    let choose = Callback::new(move |at| consenting.choose(at));
    let initials = words(move || {
        let label =
            if here.get() { t("Or initials") } else { t("Initials of who took the answer") };
        label.to_owned()
    });
    let no = press(Callback::new(move |()| consenting.refuse()));
    view! {
        <div class="sheet">
            <h2>{t("Owner agrees")}</h2>
            <TextField
                id="by"
                label=t("Name of who may decide")
                value=consenting.by
                says=consenting.says("by")
                placeholder=t("name, owner")
            />
            <p class="label" aria-hidden="true">
                {t("How")}
            </p>
            <Seg id="how" label=t("How") picks=WAYS.map(|way| Pick::from(t(way))).into() chosen on_choose=choose/>
            {live(move || if here.get() { pad::pad(consenting) } else { ().into_any() })}
            <TextField
                id="initials"
                label=initials
                value=consenting.initials
                says=consenting.says("initials")
                placeholder="ML"
            />
            <LongText
                id="why-not"
                label=t("If the answer is no: why, in the owner’s words")
                value=consenting.why_not
            />
            {consenting.acting.says()}
            <button class="btn btn--plain btn--wide" type="button" on:click=no>
                {t("Owner says no")}
            </button>
            <p class="small">{t("A no is kept too. Untick what falls away, then ask again.")}</p>
        </div>
    }
    .into_any()
}

/// The one next act.
pub fn act(consenting: Consenting) -> AnyView {
    if !consenting.is_open() {
        let job = consenting.guide.of.at_job();
        return view! { <Act words=t("Job") href=Signal::stored(job)/> }.into_any();
    }
    let first = Memo::new(move |_| consenting.lacks().first().copied());
    let says =
        words(move || first.get().map_or(t("Keep consent"), |lacks| to_do(lacks)).to_owned());
    let waits = whether(move || first.get().is_some());
    let lead = Callback::new(move |()| {
        if let Some(lacks) = first.get_untracked() {
            lead_to(field(lacks));
        }
    });
    let keep = Callback::new(move |()| consenting.agree());
    view! {
        <Act
            words=says
            waits
            busy=consenting.acting.busy
            glyph=Glyph::In
            on_press=keep
            on_waiting=lead
        />
    }
    .into_any()
}

/// What to do about what is missing.
fn to_do(lacks: ConsentRefusal) -> &'static str {
    match lacks {
        ConsentRefusal::NoWork => t("Tick the work first"),
        ConsentRefusal::NoPrice => t("Type the new price"),
        ConsentRefusal::NothingExcluded => t("Say what is not covered"),
        ConsentRefusal::NoLimit => t("Type the limit"),
        ConsentRefusal::NoStops => t("Tick a stop rule"),
        ConsentRefusal::NoName => t("Type who may decide"),
        ConsentRefusal::NotSigned | ConsentRefusal::OnlyADot => t("Sign first"),
        ConsentRefusal::NotLetters | ConsentRefusal::NobodyTookIt => t("Type the initials"),
    }
}
