//! Bench checks: the instruments beside shimming, each in a step, in a job, or alone.
//!
//! One form draws any instrument from its table in `job::instrument`. All of it is a piece of code
//! of its own: nothing here may be named by the rest of the app but [`screen()`].

mod alone;
mod answer;
mod choices;
mod clock;
mod form;
mod list;
mod stages;
mod texts;
mod working;

use job::instrument::instrument;
use leptos::prelude::*;
use words::t;

use crate::address::Screen;
use crate::parts::Empty;
use crate::screens::frame::{Here, JobScreen, OpenJob};
use working::Working;

/// Any screen of the bench checks.
pub fn screen(screen: Screen) -> AnyView {
    match screen {
        Screen::Checks { job } => list::screen(OpenJob::of(&job)),
        Screen::BenchCheck { job: Some(job), kind, step, record } => {
            in_job(OpenJob::of(&job), &kind, step, record)
        }
        Screen::BenchCheck { job: None, kind, .. } => alone::screen(&kind),
        _ => ().into_any(),
    }
}

fn in_job(of: OpenJob, kind: &str, step: Option<String>, record: Option<String>) -> AnyView {
    let back = match &step {
        Some(step) => (of.at(&format!("step/{step}")), t("Step")),
        None => (of.at("check"), t("Checks")),
    };
    match instrument(kind) {
        Some(instrument) => {
            let working = Working::on(Some(of), instrument, step, record);
            let act = move || form::act(working);
            view! {
                <JobScreen of here=Here::Checks back act>
                    {form::whole(working)}
                </JobScreen>
            }
            .into_any()
        }
        None => view! {
            <JobScreen of here=Here::Checks back act=|| ().into_any()>
                {no_such()}
            </JobScreen>
        }
        .into_any(),
    }
}

/// Nothing of that name.
fn no_such() -> AnyView {
    view! {
        <h1 class="vh">{t("No such check")}</h1>
        <Empty title=t("No such bench check.") words=t("Choose one from the bench checks of a job.")>
            <a class="btn" href="/">{t("Bench")}</a>
        </Empty>
    }
    .into_any()
}
