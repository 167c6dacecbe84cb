//! A card for each job: how far it is, and what is wrong.

use job::{BenchCard, Job, Stage, StageState, bench_card};
use leptos::prelude::*;
use words::{say, t};

use crate::address::Screen;
use crate::bench::{AT_FIRST, use_bench};
use crate::code::{Build, Code, Piece, use_code};
use crate::device::now::now;
use crate::parts::{Sign, State, Strip, live, strip};
use crate::shown::use_shown;

/// Jobs that each press shows more.
const MORE: usize = 12;

/// The jobs, the one written in last first; those after the first few on request.
#[component]
pub fn Cards() -> impl IntoView {
    let (bench, shown, code) = (use_bench(), use_shown(), use_code());
    let count = RwSignal::new(AT_FIRST);
    live(move || {
        let here = bench.current_job().map(|job| job.id.clone());
        let jobs = bench.jobs();
        let cards: Vec<AnyView> = bench
            .opened(&jobs, count.get())
            .iter()
            .filter_map(|job| {
                let sheet = bench.sheet(&job.sheet).get()?;
                let card = bench_card(job, &sheet, now(), shown.get());
                let is_here = here.as_deref() == Some(card.job.as_str());
                let guided =
                    guided(code, job).map(|build| build(Screen::Card { job: job.id.clone() }));
                Some(view! { <Card card is_here guided/> }.into_any())
            })
            .collect();
        let left = jobs.len().saturating_sub(count.get());
        view! {
            {cards}
            <Show when=move || { left > 0 }>
                <button class="btn btn--wide" type="button" on:click=move |_| count.update(|it| *it += MORE)>
                    {older(left)}
                </button>
            </Show>
        }
        .into_any()
    })
}

/// What the button for older jobs says.
fn older(left: usize) -> String {
    match left {
        1 => t("Show 1 older job").to_owned(),
        left if left <= MORE => say!("Show {left} older jobs"),
        left => say!("Show {MORE} of {left} older jobs"),
    }
}

#[component]
fn Card(card: BenchCard, is_here: bool, guided: Option<AnyView>) -> impl IntoView {
    let href = format!("/job/{}", card.job);
    let next = card.next.words();
    let more = match card.trouble.as_str() {
        "" => next,
        trouble => format!("{trouble}. {next}"),
    };
    view! {
        <a class=if is_here { "job job--here" } else { "job" } href=href>
            <div class="job__t">
                <h3 class="long">{card.boat}</h3>
                <span class="job__n">{say!("Job {} · day {}", card.number, card.day)}</span>
            </div>
            <p class="small long">{card.unit}</p>
            {guided.unwrap_or_else(|| {
                view! {
                    <Strip stages=card.stages.map(mark).to_vec() label=spoken(&card.stages)/>
                    <div class="line">
                        <State sign=sign(&card.stages) words=card.line/>
                        <span class="dim">{more}</span>
                    </div>
                }
                .into_any()
            })}
        </a>
    }
}

/// What shows a job whose scope was chosen; none before its code has come.
fn guided(code: Code, job: &Job) -> Option<Build> {
    job.guide.scope?;
    code.built(Piece::Guide)
}

fn mark(stage: Stage) -> strip::Stage {
    match stage.state {
        StageState::NotRecorded => strip::Stage::ToDo,
        StageState::Here => strip::Stage::Here,
        StageState::Stale => strip::Stage::Stale,
        StageState::Done => strip::Stage::Done,
    }
}

/// "Stages: Look not recorded, … Shim here, …".
fn spoken(stages: &[Stage]) -> String {
    let said: Vec<String> =
        stages.iter().map(|stage| format!("{} {}", stage.name, stage.state.word())).collect();
    say!("Stages: {}", said.join(", "))
}

/// The sign of the one stage that is recorded.
fn sign(stages: &[Stage]) -> Sign {
    let recorded = stages.iter().find(|stage| stage.state != StageState::NotRecorded);
    match recorded.map(|stage| stage.state) {
        Some(StageState::Done) => Sign::In,
        Some(StageState::Stale) => Sign::Stale,
        Some(StageState::Here | StageState::NotRecorded) | None => Sign::Open,
    }
}
