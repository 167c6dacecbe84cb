//! The open map: what is open, locked and stale, and on what it hangs, a stage at a time.

mod drawing;

use job::guide::{Map, guide_stages, map};
use leptos::prelude::*;
use words::t;

use super::{Guide, GuideScreen, Here};
use crate::parts::{Act, Pick, Seg, live, words};
use crate::pictures::Picture;

/// The map.
pub fn screen(guide: Guide) -> AnyView {
    let chosen = RwSignal::new(None::<usize>);
    let stage = Memo::new(move |_| chosen.get().or_else(|| here(guide)).unwrap_or_default());
    let href = Signal::derive(move || guide.of.at("step"));
    let act = move || view! { <Act words=t("Carry on with the step") href/> }.into_any();
    view! {
        <GuideScreen guide here=Here::OpenMap back=(guide.of.at_job(), t("Job")) act>
            {whole(guide, stage, chosen)}
        </GuideScreen>
    }
    .into_any()
}

/// The stage that work is in.
fn here(guide: Guide) -> Option<usize> {
    let here = guide
        .look(|plan, _, course| guide_stages(plan, course).iter().position(|stage| stage.here));
    here.flatten()
}

fn whole(guide: Guide, stage: Memo<usize>, chosen: RwSignal<Option<usize>>) -> AnyView {
    let names = Memo::new(move |_| {
        let names = guide.look(|plan, _, course| {
            guide_stages(plan, course).iter().map(|stage| stage.name).collect::<Vec<_>>()
        });
        names.unwrap_or_default()
    });
    let name = move || names.with(|names| names.get(stage.get()).copied().unwrap_or_default());
    let map = Memo::new(move |_| guide.look(|plan, _, course| map(plan, course)));
    let picture = Signal::derive(move || {
        map.with(|map| map.as_ref().map(|map| drawing::draw(map, name()))).unwrap_or_default()
    });
    let choose = Callback::new(move |at| chosen.set(Some(at)));
    let picks = live(move || {
        let picks = names.get().into_iter().map(Pick::from).collect();
        let chosen = Signal::derive(move || Some(stage.get()));
        view! { <Seg id="stage" label=t("Stage") picks chosen on_choose=choose/> }.into_any()
    });
    view! {
        <div class="head">
            <h1>{t("Open map")}</h1>
            <p>{t("What is open, locked and stale, and what it waits for.")}</p>
        </div>
        <div class="six">{picks}</div>
        <div class="cols">
            <section class="col">
                <div class="sheet">
                    <h2>{words(move || name().to_owned())}</h2>
                    <Picture drawing=picture/>
                </div>
            </section>
            <section class="col">{live(move || steps(guide, name()))}</section>
        </div>
    }
    .into_any()
}

/// The steps of the stage: the picture's control.
fn steps(guide: Guide, name: &str) -> AnyView {
    let moment = guide.moment();
    let rows = guide.look(|_, _, course| {
        let steps = course.steps.iter().filter(|view| view.phase.stage() == name);
        super::rows::rows(guide, steps, &moment)
    });
    view! {
        <div class="sheet">
            <h2>{t("Its steps")}</h2>
            <div>{rows}</div>
        </div>
    }
    .into_any()
}

/// The nodes of a stage, with their places in the map.
fn of_stage<'a>(map: &'a Map, name: &str) -> Vec<(usize, &'a job::guide::MapNode)> {
    map.nodes.iter().enumerate().filter(|(_, node)| node.stage == name).collect()
}
