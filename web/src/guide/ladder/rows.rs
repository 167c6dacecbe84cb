//! The rungs, each with its number, the way it faced, its place and its photo.

use job::guide::{Rung, RungState, placed};
use leptos::prelude::*;
use words::t;

use super::arrow::face;
use super::state::Rungs;
use crate::page;
use crate::parts::{Glyph, Icon, Shot, press};

/// The sheet with all rungs.
pub fn sheet(rungs: Rungs) -> AnyView {
    let back = rungs.goes_back();
    let open = if rungs.adds() { None } else { rungs.open().map(|rung| rung.part) };
    let list = rungs.look(|ladder| match back {
        false => ladder.rungs.clone(),
        true => ladder.going_back.iter().filter_map(|at| ladder.rungs.get(*at).cloned()).collect(),
    });
    let rows = list.unwrap_or_default().into_iter().map(|rung| {
        let here = open.as_ref() == Some(&rung.part);
        row(rungs, rung, here, back)
    });
    let rows = rows.collect_view();
    let add = Callback::new(move |()| {
        rungs.add();
        page::show("rung");
    });
    view! {
        <div class="sheet">
            <ol class="ladder">{rows}</ol>
            {(!back)
                .then(|| {
                    view! {
                        <button class="btn btn--wide" type="button" on:click=press(add)>
                            <Icon glyph=Glyph::Plus/>
                            {t("Add a rung between")}
                        </button>
                    }
                })}
        </div>
    }
    .into_any()
}

fn row(rungs: Rungs, rung: Rung, here: bool, back: bool) -> AnyView {
    let done = match rung.state {
        RungState::ToCome => false,
        RungState::Out => !back,
        RungState::Fitted => true,
    };
    let class = match (here, done) {
        (true, _) => "rung rung--here",
        (false, true) => "rung rung--done",
        (false, false) => "rung rung--wait",
    };
    let place = match rung.place.is_empty() {
        true => ().into_any(),
        false => place(&rung),
    };
    let one_use = back && rung.one_use && rung.state == RungState::Out;
    let end = match (back && done, &rung.photo) {
        (true, _) => view! {
            <span class="rung__in">
                <Icon glyph=Glyph::In/>
                <span class="vh">{t("is in")}</span>
            </span>
        }
        .into_any(),
        (false, Some(photo)) => {
            view! { <Shot photo=photo.clone() name=rung.name.clone()/> }.into_any()
        }
        (false, None) => view! {
            <span class="shot shot--none">
                <Icon glyph=Glyph::Camera/>
                <span class="vh">{t("no photo")}</span>
            </span>
        }
        .into_any(),
    };
    let (number, name, facing) = (rung.shown, rung.name.clone(), rung.facing.clone());
    let choose = Callback::new(move |()| {
        rungs.choose(&rung);
        page::show("rung");
    });
    view! {
        <li>
            <button
                class=class
                type="button"
                aria-current=here.then_some("step")
                on:click=press(choose)
            >
                <span class="rung__n">{number}</span>
                <span class="rung__t">
                    <b>{name}</b>
                    <span class="rung__m">{face(&facing)} {place}</span>
                    {one_use.then(|| view! { <small>{t("A new one goes on.")}</small> })}
                </span>
                {end}
            </button>
        </li>
    }
    .into_any()
}

/// Where it lies; a pack on its tag.
fn place(rung: &Rung) -> AnyView {
    let on_tag = rung.pack.as_ref() == Some(&rung.place);
    let class = if on_tag { "tag" } else { "bag" };
    view! { <span class=class>{placed(&rung.place)}</span> }.into_any()
}
