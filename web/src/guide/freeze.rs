//! The sign-off of the packs: what lies in the unit, and the initials of two people, or of one who
//! says that they work alone.

use job::BookId;
use job::guide::{Freeze, FreezePack, freeze};
use leptos::prelude::*;
use words::{say, t};

use super::acting::Acting;
use super::{Guide, GuideScreen, Here};
use crate::device::now::now;
use crate::draft::{Draft, use_draft};
use crate::parts::{Act, Bar, Empty, Gate, Glyph, State, Tag, TextField, live, press, words};
use crate::scratch;
use crate::screens::told::sign;

/// The initials of whoever signed last on this device.
const LAST: &str = "initials";

#[derive(Clone, Copy)]
struct Signing {
    guide: Guide,
    frozen: Memo<Option<Freeze>>,
    acting: Acting,
    set_by: Draft,
    seen_by: Draft,
}

/// The sign-off of the packs.
pub fn screen(guide: Guide) -> AnyView {
    let at = format!("job/{}/freeze", guide.of.id());
    let look = move |_: Option<&_>| {
        let look =
            |plan: &_| guide.of.look(|(job, sheet, _), shown| freeze(job, sheet, plan, shown));
        guide.look(|plan, _, _| look(plan)).flatten().flatten()
    };
    let set_by = use_draft(&at, "set");
    if set_by.text_untracked().is_empty() {
        set_by.set(&scratch::read(LAST).unwrap_or_default());
    }
    let signing = Signing {
        guide,
        frozen: Memo::new(look),
        acting: Acting::here(),
        set_by,
        seen_by: use_draft(&at, "seen"),
    };
    let act = move || live(move || act(signing));
    view! {
        <GuideScreen guide here=Here::Freeze back=(guide.of.at("setup"), t("Set-up")) act>
            {live(move || match signing.frozen.get() {
                Some(frozen) => dialog(signing, frozen),
                None => nothing(),
            })}
        </GuideScreen>
    }
    .into_any()
}

fn nothing() -> AnyView {
    view! {
        <h1 class="vh">{t("Freeze packs")}</h1>
        <Empty
            title=t("No packs to sign for.")
            words=t("In this scope the packs stay as they are. Go on with the job.")
        />
    }
    .into_any()
}

fn dialog(signing: Signing, frozen: Freeze) -> AnyView {
    let packs = frozen.packs.into_iter().map(row).collect_view();
    let (bar, title, says) = match (frozen.missing.first(), frozen.signed) {
        (_, Some(signed)) => (Bar::Open, t("Signed."), format!("{signed}.")),
        (Some(missing), None) => (Bar::Shut, t("Not yet."), missing.clone()),
        (None, None) => {
            (Bar::Shut, t("Ready."), t("Every pack is written down. Two people sign.").to_owned())
        }
    };
    view! {
        <section class="dialog dialog--page" aria-labelledby="fz">
            <h1 id="fz">{frozen.title}</h1>
            <p>{t("Look at the tags, then sign.")}</p>
            <div>{packs}</div>
            <Gate bar title words=says/>
            <div class="initials">
                <TextField id="set-by" label=t("Set by") value=signing.set_by/>
                <TextField id="seen-by" label=t("Seen by, second person") value=signing.seen_by/>
            </div>
            {signing.acting.says()}
            <p class="small">
                {t("Not the same letters twice. Working alone? Say so: it stands on the record as ")}
                <b>{t("not seen by a second person")}</b> "."
            </p>
            <div class="btns">
                <a class="btn btn--plain" href=signing.guide.of.at("setup")>
                    {t("Not yet")}
                </a>
                <button
                    class="btn btn--plain"
                    type="button"
                    on:click=press(Callback::new(move |()| sign_it(signing, true)))
                >
                    {t("I work alone")}
                </button>
            </div>
        </section>
    }
    .into_any()
}

fn row(pack: FreezePack) -> AnyView {
    view! {
        <div class="packrow">
            <Tag words=pack.tag/>
            <p>{pack.words}</p>
            <State sign=sign(&pack.state) words=pack.state.to_string()/>
        </div>
    }
    .into_any()
}

fn act(signing: Signing) -> AnyView {
    if signing.frozen.with(Option::is_none) {
        let job = signing.guide.of.at("setup");
        return view! { <Act words=t("Set-up") href=Signal::stored(job)/> }.into_any();
    }
    let signed = |frozen: &Freeze| frozen.signed.is_some().then(|| frozen.step.clone());
    let step = signing.frozen.with(|frozen| frozen.as_ref().and_then(signed));
    if let Some(step) = step.filter(|_| signing.seen_by.text().is_empty()) {
        let step = signing.guide.of.at(&format!("step/{step}"));
        return view! { <Act words=t("Go on with the step") href=Signal::stored(step)/> }
            .into_any();
    }
    let says = words(move || match signing.seen_by.text().trim() {
        "" => t("Initials first").to_owned(),
        seen => say!("{} saw it: freeze packs", seen.to_uppercase()),
    });
    let waits = Signal::derive(move || signing.seen_by.text().trim().is_empty());
    let lead = Callback::new(|()| crate::page::lead_to("seen-by"));
    let does = Callback::new(move |()| sign_it(signing, false));
    view! {
        <Act
            words=says
            waits
            busy=signing.acting.busy
            glyph=Glyph::Lock
            on_press=does
            on_waiting=lead
        />
    }
    .into_any()
}

fn sign_it(signing: Signing, alone: bool) {
    let (set_by, seen_by) = (signing.set_by.text_untracked(), signing.seen_by.text_untracked());
    let seen_by = (!alone).then_some(seen_by.as_str());
    let signed = signing.frozen.with_untracked(|frozen| {
        frozen.as_ref().map(|frozen| frozen.sign(&set_by, seen_by, now()))
    });
    match signed {
        None => {}
        Some(Err(why)) => signing.acting.refuse(why.to_string()),
        Some(Ok(facts)) => {
            let book = BookId::Job(signing.guide.of.id());
            let facts = facts.into_iter().map(|fact| (book.clone(), fact.into())).collect();
            let done = move || {
                scratch::write(LAST, set_by.trim());
                signing.seen_by.clear();
                signing.acting.forget();
            };
            signing.acting.record(facts, Vec::new(), Box::new(done));
        }
    }
}
