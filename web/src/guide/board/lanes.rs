//! The shop's board: a lane for each open job, to be read from across the shop.

use job::guide::{ClockView, Stands};
use job::{Job, Sheet, date, hour_minute};
use leptos::prelude::*;
use words::{say, t};

use super::{at_a_glance, marks, sign};
use crate::bench::{AT_FIRST, use_bench};
use crate::device::now::{use_now, utc_offset_minutes};
use crate::guide::Guide;
use crate::page;
use crate::parts::{Bar, Empty, Gate, State, Strip, help, live, words};
use crate::pictures::Picture;
use crate::pictures::section::Section;

/// The board.
pub fn screen() -> AnyView {
    let (bench, now) = (use_bench(), use_now());
    page::title(Signal::stored(t("Shop board").to_owned()));
    let count = words(move || {
        let units = match bench.jobs().len().min(AT_FIRST) {
            1 => t("1 unit").to_owned(),
            units => say!("{units} units"),
        };
        format!("{units} · {}", date(now.get(), utc_offset_minutes(now.get())))
    });
    let clock = words(move || hour_minute(now.get(), utc_offset_minutes(now.get())));
    let jobs = Memo::new(move |_| {
        let jobs = bench.jobs();
        jobs.iter().take(AT_FIRST).map(|job| job.id.clone()).collect::<Vec<String>>()
    });
    let (help, opened) = help();
    view! {
        <header class="plate">
            <a class="grow" href="/">
                <b>{t("Shop board")}</b>
                <small>{count}</small>
            </a>
            <b class="plate__time">{clock}</b>
            {help}
        </header>
        {opened}
        <main class="main main--board" id="main" tabindex="-1">
            <h1 class="vh">{t("Shop board")}</h1>
            {live(move || match jobs.with(Vec::is_empty) {
                true => view! { <Empty title=t("No job on the board.") words=t("A job that is opened stands here.")/> }.into_any(),
                false => {
                    let lanes = jobs.get().into_iter().map(|job| lane(Guide::of(&job)));
                    view! { <div class="lanes">{lanes.collect_view()}</div> }.into_any()
                }
            })}
        </main>
    }
    .into_any()
}

fn lane(guide: Guide) -> AnyView {
    live(move || guide.of.look(|(job, sheet, _), _| view(guide, job, sheet)).into_any())
}

fn view(guide: Guide, job: &Job, sheet: &Sheet) -> AnyView {
    let section = Section::of(sheet.positions().iter().map(|position| position.id));
    let (boat, number) = (job.boat.clone(), job.number);
    let glance = at_a_glance(guide);
    let href = match glance {
        Some(_) => guide.of.at("step"),
        None => guide.of.at_job(),
    };
    let inside = match glance {
        None => view! {
            <p class="lane__s">{t("Not begun")}</p>
            <p class="lane__w">{t("Choose the scope")}</p>
        }
        .into_any(),
        Some(lane) => {
            let (stages, label) = marks(&lane.stages);
            let clocks = guide.clocks();
            let clock =
                clocks.views.iter().min_by_key(|clock| (clock.done, clock.ends_at)).map(dial);
            let gate = match (&lane.gate, &lane.stands) {
                (Some((title, missing)), _) => {
                    view! { <Gate bar=Bar::Shut title=title.clone() words=missing.clone()/> }
                        .into_any()
                }
                (None, Stands::Done) => {
                    view! { <Gate bar=Bar::Open title=t("Every gate open") words=t("hand over")/> }
                        .into_any()
                }
                (None, _) => ().into_any(),
            };
            view! {
                <Strip stages label/>
                <p class="lane__s">{lane.line}</p>
                <p class="lane__w">{lane.next}</p>
                <State sign=sign(&lane.stands) words=lane.stands.words()/>
                {clock}
                {gate}
                <footer>
                    <span>{lane.parts}</span>
                </footer>
            }
            .into_any()
        }
    };
    view! {
        <a class="lane" href=href>
            <header>
                <b class="long">{boat}</b>
                <span>{number}</span>
            </header>
            <Picture drawing=Signal::stored(section.draw()) class="sk"/>
            {inside}
        </a>
    }
    .into_any()
}

fn dial(clock: &ClockView) -> AnyView {
    let left = match clock.done {
        true => t("done").to_owned(),
        false if clock.left >= 120 => format!("{} h {:02}", clock.left / 60, clock.left % 60),
        false => format!("{} min", clock.left),
    };
    let class = if clock.done { "bclk bclk--done" } else { "bclk" };
    view! {
        <div class=class>
            <span class="dial" style:--p=clock.percent.to_string()></span>
            <p>
                <span>{clock.name.clone()}</span>
                <b>{left}</b>
            </p>
        </div>
    }
    .into_any()
}
