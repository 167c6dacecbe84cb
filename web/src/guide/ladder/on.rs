//! A part that goes back: beside its photo, the way it faced.

use job::guide::{Rung, RungState, faced, placed, turned};
use job::{Capture, Guided};
use leptos::prelude::*;
use words::{say, t};

use super::state::Rungs;
use crate::parts::{
    Act, Caution, Glyph, Icon, Pick, Seg, Shot, Sign, State, TakePhoto, live, words,
};

/// The sheet of the rung that goes back.
pub fn sheet(rungs: Rungs) -> AnyView {
    let Some(rung) = open(rungs) else {
        return view! {
            <div class="sheet" id="rung" tabindex="-1">
                <div class="h">
                    <h2>{t("Every rung is ticked")}</h2>
                    <State sign=Sign::In words=t("In")/>
                </div>
                <p>{t("Nothing is left on the bench.")}</p>
            </div>
        }
        .into_any();
    };
    let title = say!("Next: {}, {}", rung.name.to_lowercase(), rung.shown);
    let from = (!rung.place.is_empty()).then(|| say!("From {place}.", place = placed(&rung.place)));
    let new = rung.one_use.then_some(t(" Never used again: a new one goes on."));
    view! {
        <div class="sheet" id="rung" tabindex="-1">
            <div class="h">
                <h2>{title}</h2>
                <State sign=Sign::Open words=t("Next")/>
            </div>
            {found_and_fitted(rungs, &rung)}
            <p>{from}{new}</p>
            {question(rungs, &rung)}
            {rungs.acting.says()}
        </div>
    }
    .into_any()
}

/// The rung that is open, as long as it is out.
fn open(rungs: Rungs) -> Option<Rung> {
    rungs.open().filter(|rung| rung.state == RungState::Out)
}

fn found_and_fitted(rungs: Rungs, rung: &Rung) -> AnyView {
    let found = match &rung.photo {
        Some(photo) => {
            view! { <Shot photo=photo.clone() name=rung.name.clone() wide=true/> }.into_any()
        }
        None => view! {
            <span class="shot shot--none shot--wide">
                <Icon glyph=Glyph::Camera/>
            </span>
        }
        .into_any(),
    };
    let said = if rung.photo.is_some() { t("As found") } else { t("As found: no photo was taken") };
    view! {
        <div class="versus">
            <figure>
                {found}
                <figcaption class="small">{said}</figcaption>
            </figure>
            <figure>
                <TakePhoto
                    id="photo"
                    title=t("As fitted")
                    note=t("Same view, then compare")
                    draft=rungs.photo
                />
            </figure>
        </div>
    }
    .into_any()
}

/// How it faces now, where it is known how it faced.
fn question(rungs: Rungs, rung: &Rung) -> AnyView {
    let Some(found) = rung.faced().map(str::to_owned) else { return ().into_any() };
    let picks = vec![Pick::from(faced(&found)), Pick::from(faced(&turned(&found)))];
    let found = faced(&found);
    let chosen = rungs.faces;
    let choose = Callback::new(move |at| chosen.set(Some(at)));
    let wrong = live(move || {
        match chosen.get() {
        Some(1) => view! {
            <Caution title=say!("It came out {found}.") words=t("Turn it round, then answer again.")/>
        }
        .into_any(),
        _ => ().into_any(),
    }
    });
    view! {
        <p class="label" aria-hidden="true">
            {t("How does it face?")}
        </p>
        <div id="faces">
            <Seg id="facing" label=t("How does it face?") picks chosen on_choose=choose/>
        </div>
        <div role="status">{wrong}</div>
    }
    .into_any()
}

/// The one next act while parts go back.
pub fn act(rungs: Rungs) -> AnyView {
    let Some(rung) = open(rungs) else {
        let job = rungs.guide.of.at_job();
        return view! { <Act words=t("Job") href=Signal::stored(job)/> }.into_any();
    };
    let asks = rung.faced().is_some();
    let (number, facing) = (rung.shown, faced(&rung.facing));
    let says = words(move || match rungs.faces.get() {
        _ if !asks => say!("{number} is in"),
        Some(0) => say!("{number} is in, {facing}"),
        Some(_) => say!("Turn {number} round first"),
        None => say!("Say how {number} faces"),
    });
    let waits = Signal::derive(move || asks && rungs.faces.get() != Some(0));
    let lead = Callback::new(move |()| crate::page::lead_to("faces"));
    let press = Callback::new(move |()| rungs.record(facts(rungs, &rung)));
    view! {
        <Act
            words=says
            waits
            busy=rungs.acting.busy
            glyph=Glyph::In
            on_press=press
            on_waiting=lead
        />
    }
    .into_any()
}

/// It is fitted, with a photo of that where there is one.
fn facts(rungs: Rungs, rung: &Rung) -> Vec<Guided> {
    let fitted = rung.number.map(|number| Guided::PartFitted { number });
    let step = rung.back_in.clone().unwrap_or_else(|| rung.step.clone());
    let photo = rungs.photo.id().map(|photo| Guided::Captured {
        step,
        label: rung.fitted_label(),
        value: Capture::Photo(photo),
    });
    fitted.into_iter().chain(photo).collect()
}
