//! Bags and ladder: every part that comes off gets the next number, its place and the way it
//! faced; going back it is read from the foot up.

mod arrow;
mod counted;
mod off;
mod on;
mod rows;
mod state;

use leptos::prelude::*;
use words::{say, t};

use super::{Guide, GuideScreen, Here};
use crate::parts::{Pick, Seg, live, words};
use state::Rungs;

/// Bags and ladder.
pub fn screen(guide: Guide) -> AnyView {
    let rungs = Rungs::of(guide);
    let act =
        move || live(move || if rungs.goes_back() { on::act(rungs) } else { off::act(rungs) });
    let back = (guide.of.at_job(), t("Job"));
    view! {
        <GuideScreen guide here=Here::Ladder back act>
            {direction(rungs)}
            {head(rungs)}
            <div class="cols cols--ladder">
                <section class="col col--open">
                    {live(move || {
                        if rungs.goes_back() { on::sheet(rungs) } else { off::sheet(rungs) }
                    })}
                </section>
                <section class="col col--rungs">{live(move || rows::sheet(rungs))}</section>
                <section class="col col--rest">
                    {live(move || counted::table(rungs))} {live(move || counted::gate(rungs))}
                </section>
            </div>
        </GuideScreen>
    }
    .into_any()
}

/// Coming out or going back.
fn direction(rungs: Rungs) -> AnyView {
    let picks = vec![Pick::from(t("Coming out")), Pick::from(t("Going back"))];
    let chosen = Signal::derive(move || Some(usize::from(rungs.goes_back())));
    let choose = Callback::new(move |at| rungs.turn(at == 1));
    view! { <Seg id="direction" label=t("Direction") picks chosen on_choose=choose/> }.into_any()
}

fn head(rungs: Rungs) -> AnyView {
    let title = words(move || {
        let back = rungs.goes_back();
        let told = rungs.look(|ladder| match back {
            false => say!("Coming out: {} of {}", ladder.out, ladder.rungs.len()),
            true => say!("Going back: {} of {}", ladder.fitted, ladder.out),
        });
        told.unwrap_or_default()
    });
    let how = words(move || {
        let how = match rungs.goes_back() {
            false => t("One layer, one photo, one bag. Arrow left points to the nose."),
            true => t("Same ladder, from the foot up. Arrow left points to the nose."),
        };
        how.to_owned()
    });
    view! {
        <div class="head">
            <h1>{title}</h1>
            <p>{how}</p>
        </div>
    }
    .into_any()
}
