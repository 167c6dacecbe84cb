//! A part that comes off, or one that is put right: which way, into what, with its photo.

use job::Guided;
use job::guide::{NOT_SURE, Rung, RungState, Way, bag, placed, put_right};
use leptos::prelude::*;
use words::{say, t};

use super::state::Rungs;
use crate::parts::{
    Act, Chip, Glyph, Pick, Seg, Sign, State, TakePhoto, TextField, live, whether, words,
};

/// The sheet of the open rung.
pub fn sheet(rungs: Rungs) -> AnyView {
    let own = rungs.adds();
    let Some(rung) = rungs.open() else {
        return if own { one(rungs, None) } else { all_out() };
    };
    one(rungs, Some(rung).filter(|_| !own))
}

fn all_out() -> AnyView {
    view! {
        <div class="sheet" id="rung" tabindex="-1">
            <div class="h">
                <h2>{t("Every part is out")}</h2>
                <State sign=Sign::In words=t("Out")/>
            </div>
            <p>{t("Tap a rung to put its place or its photo right.")}</p>
        </div>
    }
    .into_any()
}

fn one(rungs: Rungs, rung: Option<Rung>) -> AnyView {
    let next = rungs.look(|ladder| ladder.next_number).unwrap_or_default();
    let (title, state) = match &rung {
        None => (say!("Rung {next}: a part of your own"), t("Open")),
        Some(rung) => {
            let title = say!("Rung {}: {}", rung.shown, rung.name.to_lowercase());
            (title, if rung.state == RungState::ToCome { t("Open") } else { t("Put it right") })
        }
    };
    let fitted = rung.as_ref().is_some_and(|rung| rung.state == RungState::Fitted);
    let fields = match fitted {
        true => view! { <p>{t("It is in. Undo that first to put it right.")}</p> }.into_any(),
        false => fields(rungs, rung.is_none()),
    };
    view! {
        <div class="sheet" id="rung" tabindex="-1">
            <div class="h">
                <h2>{title}</h2>
                <State sign=Sign::Open words=state/>
            </div>
            {fields}
            {rungs.acting.says()}
        </div>
    }
    .into_any()
}

fn fields(rungs: Rungs, own: bool) -> AnyView {
    let name = own.then(|| {
        view! {
            <TextField
                id="part"
                label=t("What came off")
                value=rungs.name()
                placeholder=t("heat shield, port side")
            />
        }
    });
    let ways =
        [t("To the nose"), t("Aft"), t("Up"), t("Down"), t("Not sure")].map(Pick::from).into();
    let way = Signal::derive(move || rungs.way());
    let choose = Callback::new(move |at| rungs.choose_way(at));
    view! {
        {name}
        <p class="label" aria-hidden="true">
            {t("Which way did it face?")}
        </p>
        <Seg id="way" label=t("Which way did it face?") picks=ways chosen=way on_choose=choose/>
        <TextField
            id="what"
            label=t("What faced that way")
            value=rungs.what()
            placeholder=t("oil grooves, marked face, lip")
        />
        <TakePhoto
            id="photo"
            title=t("Photo before it is wiped")
            note=t("Where it sat, marks and numbers in view")
            draft=rungs.photo
        />
        {live(move || into(rungs))}
    }
    .into_any()
}

/// Into which bag.
fn into(rungs: Rungs) -> AnyView {
    let chip = |place: String| {
        let here = place.clone();
        let pressed = whether(move || !rungs.elsewhere.get() && rungs.place() == here);
        let words = placed(&place);
        let choose = Callback::new(move |()| {
            rungs.elsewhere.set(false);
            rungs.typed_place().set(place.clone());
        });
        view! { <Chip pressed on_press=choose>{words}</Chip> }
    };
    let chips = rungs.places().into_iter().map(chip).collect_view();
    let elsewhere = rungs.elsewhere;
    let other = Callback::new(move |()| {
        elsewhere.set(true);
        rungs.typed_place().set(String::new());
        crate::page::lead_to("place");
    });
    let typed = live(move || match elsewhere.get() {
        false => ().into_any(),
        true => view! {
            <TextField
                id="place"
                label=t("Bag or tray place")
                value=rungs.typed_place()
                placeholder=t("tray 2, back left")
            />
        }
        .into_any(),
    });
    view! {
        <p class="label" id="into">
            {t("Into")}
        </p>
        <div class="chips" role="group" aria-labelledby="into">
            {chips}
            <Chip pressed=elsewhere on_press=other>{t("other place")}</Chip>
        </div>
        {typed}
    }
    .into_any()
}

/// The one next act while parts come out.
pub fn act(rungs: Rungs) -> AnyView {
    if !rungs.adds() && rungs.open().is_none() {
        let turn = Callback::new(move |()| rungs.turn(true));
        return view! { <Act words=t("Going back") on_press=turn/> }.into_any();
    }
    let says = words(move || {
        let (open, adds) = (rungs.open().filter(|_| !rungs.adds()), rungs.adds());
        let next = rungs.look(|ladder| ladder.next_number).unwrap_or_default();
        match open {
            Some(rung) if rung.state != RungState::ToCome && !adds => {
                say!("Put {} right", rung.shown)
            }
            _ => say!("{next} is off, into {place}", place = placed(&rungs.place())),
        }
    });
    let press = Callback::new(move |()| keep(rungs));
    view! { <Act words=says busy=rungs.acting.busy glyph=Glyph::In on_press=press/> }.into_any()
}

fn keep(rungs: Rungs) {
    match untrack(|| fact(rungs)) {
        Ok(fact) => rungs.record(vec![fact]),
        Err(why) => rungs.acting.refuse(why),
    }
}

fn fact(rungs: Rungs) -> Result<Guided, String> {
    let (place, photo) = (rungs.place(), rungs.photo.id());
    let facing = match (rungs.facing(), rungs.way()) {
        (none, Some(at)) if none.is_empty() && Way::ALL.get(at).is_none() => NOT_SURE.to_owned(),
        (facing, _) => facing,
    };
    let open = rungs.open();
    let put = open.as_ref().filter(|_| !rungs.adds());
    if let Some(fact) = put.and_then(|rung| put_right(rung, &place, &facing, photo.clone())) {
        return Ok(fact);
    }
    let step = open.as_ref().map(|rung| rung.step.clone()).unwrap_or_default();
    let name = rungs.name().text();
    let part = put.map_or(name.trim(), |rung| rung.part.as_str());
    let fact = rungs.guide.look(|_, log, _| bag(log, &step, part, &place, &facing, photo));
    fact.ok_or_else(String::new)?.map_err(|why| why.to_string())
}
