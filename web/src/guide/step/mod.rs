//! A step: what is done and why, what can hurt, what is captured, and its gate.

mod act;
mod choice;
mod done;
mod gate;
mod head;
mod number;
mod photo;
mod record;
mod sign;
mod time;
mod torque;
mod working;

use job::guide::wake;
use leptos::prelude::*;
use words::t;

use super::{Guide, GuideScreen, Here};
use crate::parts::{DockedPad, Empty, live};
use working::Working;

/// A step; without one, that where work stopped.
pub fn screen(guide: Guide, step: Option<String>) -> AnyView {
    let asked = StoredValue::new(step);
    let working = Memo::new(move |_| {
        guide.lacks().is_none().then(|| untrack(|| working(guide, asked.get_value())))
    });
    let act = move || match working.get().flatten() {
        Some(working) => act::next(working),
        None => ().into_any(),
    };
    view! {
        <GuideScreen guide here=Here::Step back=(guide.of.at_job(), t("Job")) act>
            {live(move || match working.get() {
                Some(Some(working)) => whole(working),
                Some(None) => no_step(guide),
                None => ().into_any(),
            })}
        </GuideScreen>
    }
    .into_any()
}

fn working(guide: Guide, asked: Option<String>) -> Option<Working> {
    let moment = guide.moment();
    let step = guide.look(|plan, log, course| {
        let id = asked.or_else(|| wake(course, log, &moment).step);
        plan.step(&id?).cloned()
    });
    step.flatten().map(|step| Working::on(guide, step))
}

fn whole(working: Working) -> AnyView {
    view! {
        <div class="cols">
            <section class="col">
                {head::head(working)}
                {head::waits(working)}
                {head::sketch(working)}
                {head::caution(working)}
                {live(move || head::beside(working))}
                {head::parts(working)}
                {head::tools(working)}
            </section>
            <section class="col">
                {record::sheet(working)}
                {gate::gate(working)}
                {done::sheet(working)}
                {head::around(working)}
            </section>
        </div>
        <DockedPad/>
    }
    .into_any()
}

fn no_step(guide: Guide) -> AnyView {
    view! {
        <h1 class="vh">{t("No such step")}</h1>
        <Empty
            title=t("No such step in this job.")
            words=t("The scope leaves it out, or every step is done. Choose one on the job.")
        >
            <a class="btn" href=guide.of.at_job()>{t("Job")}</a>
        </Empty>
    }
    .into_any()
}
