//! A sequence on the screen: what is done, now and next, ticked one after the other.

use job::instrument::{Answer, Progress, Stage, Takes};
use leptos::prelude::*;
use words::{say, t};

use super::working::Working;
use crate::parts::{Sign, State, live, press, whether, words};

/// The stages, the way back from the last that was ticked, and the way to keep them before all are.
pub fn shown(working: Working) -> AnyView {
    let stages = Memo::new(move |_| {
        let now = working.says_now().ok();
        now.map(|now| (now.answer.stages, now.kept)).unwrap_or_default()
    });
    let is_whole = whether(move || stages.with(|(stages, _)| stages.is_empty()));
    let list = live(move || stages.get().0.into_iter().map(row).collect_view().into_any());
    // What was kept stands; only what is typed is ticked on.
    let last = Memo::new(move |_| {
        stages.with(|(stages, kept)| if *kept { None } else { last_done(stages) })
    });
    let taken = press(Callback::new(move |()| {
        if let Some((done, _)) = last.get_untracked() {
            tick_up_to(working, done - 1, None);
        }
    }));
    let take_back = words(move || {
        last.get()
            .map(|(_, stage)| say!("Take back {title}", title = stage.title))
            .unwrap_or_default()
    });
    let said = words(move || match (last.get(), now(working).is_some()) {
        (None, _) => String::new(),
        (Some((_, stage)), true) => format!("{act}.", act = stage.act),
        (Some((_, stage)), false) => say!("{act}. All stages done.", act = stage.act),
    });
    let keeps = press(Callback::new(move |()| working.keep()));
    let waits = whether(move || working.of.is_none() || now(working).is_none());
    view! {
        <div class="sheet" prop:hidden=is_whole>
            <h2>{t("Stages")}</h2>
            <ol>{list}</ol>
            <p class="dim" role="status">
                {said}
            </p>
            <div class="btns">
                <button
                    class="btn btn--plain"
                    type="button"
                    prop:hidden=whether(move || last.get().is_none())
                    on:click=taken
                >
                    {take_back}
                </button>
                <button class="btn btn--plain" type="button" prop:hidden=waits on:click=keeps>
                    {t("Keep it as it stands")}
                </button>
            </div>
        </div>
    }
    .into_any()
}

fn row(stage: Stage) -> impl IntoView {
    let sign = match stage.progress {
        Progress::Done => Sign::In,
        Progress::Now => Sign::Open,
        Progress::Next => Sign::Lock,
    };
    let is_now = stage.progress == Progress::Now;
    let again = stage.again.map(|says| view! { <p class="stage__again">{says}</p> });
    view! {
        <li class="stage" aria-current=is_now.then_some("step")>
            <b aria-hidden="true">{stage.mark}</b>
            <p>
                <span class="vh">{format!("{title}: ", title = stage.title)}</span>
                <b>{stage.asked}</b>
                <br/>
                <span class="dim">{stage.how}</span>
            </p>
            <State sign words=stage.progress.word()/>
            {again}
        </li>
    }
}

/// How many are done, and the last of them.
fn last_done(stages: &[Stage]) -> Option<(usize, Stage)> {
    let done = stages.iter().take_while(|stage| stage.progress == Progress::Done);
    done.enumerate().last().map(|(at, stage)| (at + 1, stage.clone()))
}

/// The stage that is now, to what is typed, with its place; followed.
pub fn now(working: Working) -> Option<(usize, Stage)> {
    working.answer.with(|answer| {
        let (at, stage) = answer.as_ref().ok().and_then(Answer::stage_now)?;
        Some((at, stage.clone()))
    })
}

/// Ticks the stage that is now.
pub fn tick(working: Working) {
    if let Some((at, stage)) = untrack(|| now(working)) {
        tick_up_to(working, at, Some(stage.tick));
    }
}

/// Leaves as many ticks as there are to be, and adds one more.
fn tick_up_to(working: Working, count: usize, next: Option<String>) {
    let Some((field, _)) = working.field_that(|takes| takes == Takes::Ticks) else { return };
    let kept = untrack(|| working.lines(field)).into_iter().take(count);
    let ticks: Vec<String> = kept.chain(next).collect();
    working.set_lines(field, &ticks);
}
