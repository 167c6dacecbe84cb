//! The clock of a log: a tap begins it, a tap takes the time of the next line or of an act.

use job::instrument::{Asked, Takes, since};
use leptos::prelude::*;
use words::{say, t};

use super::form::id;
use super::working::Working;
use crate::device::now::{now, use_seconds};
use crate::parts::{Message, live, press, words};

/// The way to begin it, beside the lines; nothing while it runs.
pub fn begin(working: Working) -> AnyView {
    live(move || match working.clock.text().is_empty() {
        true => {
            let start = press(Callback::new(move |()| working.clock.set(&now().to_string())));
            view! {
                <button class="btn btn--plain" type="button" on:click=start>
                    {t("Start the clock")}
                </button>
            }
            .into_any()
        }
        false => ().into_any(),
    })
}

/// The clock while it runs, before all else.
pub fn running(working: Working) -> AnyView {
    let times = working.field_that(|takes| matches!(takes, Takes::Times(_)));
    let is_on = Memo::new(move |_| !working.clock.text().is_empty());
    live(move || match times {
        Some((at, asked @ Asked { takes: Takes::Times(places), .. })) if is_on.get() => {
            runs(working, at, asked, places)
        }
        _ => ().into_any(),
    })
}

fn runs(
    working: Working,
    at: usize,
    asked: &'static Asked,
    places: &'static [&'static str],
) -> AnyView {
    let second = use_seconds();
    let run = move |now| since(&working.clock.text(), now, working.mark());
    let shown = words(move || run(second.get()).map(|run| run.clock).unwrap_or_default());
    let next =
        Memo::new(move |_| (0..places.len()).find(|line| working.text(at, *line).get().is_empty()));
    let log = live(move || {
        let place = next.get().and_then(|line| Some((line, *places.get(line)?)));
        let button = place.map(|(line, place)| {
            let take = press(Callback::new(move |()| take(working, at, line)));
            let said = match places {
                [_] => say!("{} is now", asked.label()),
                _ => say!("Time of line {place} is now"),
            };
            view! { <button class="btn" type="button" on:click=take>{said}</button> }
        });
        button.into_any()
    });
    let stop = press(Callback::new(move |()| working.clock.clear()));
    view! {
        <div class="sheet">
            <p class="headline">
                <span class="fig fig--6" role="timer">{shown}</span>
                <span class="dim">{words(move || working.runs_to().unwrap_or_default())}</span>
            </p>
            <div class="btns">
                {log}
                <button class="btn btn--plain" type="button" on:click=stop>{t("Put the clock away")}</button>
            </div>
            <p class="small">{t("The clock runs on true time. Lock the phone if you like.")}</p>
        </div>
    }
    .into_any()
}

/// Takes the time now into a line of a field.
fn take(working: Working, at: usize, line: usize) {
    let run = untrack(|| since(&working.clock.text(), now(), working.mark()));
    if let Some(run) = run {
        working.set(at, line, run.minutes);
    }
}

/// What is to be done while the clock runs: tapped as it is done, taken back by a second tap.
pub fn acts(working: Working) -> AnyView {
    let field = working.field_that(|takes| matches!(takes, Takes::Acts(_)));
    let Some((at, asked @ Asked { takes: Takes::Acts(acts), .. })) = field else {
        return ().into_any();
    };
    let is_on = Memo::new(move |_| !working.clock.text().is_empty() || !working.is_empty(at));
    live(move || {
        let rows = is_on.get().then(|| {
            let row = |(line, act): (usize, &&'static str)| row(working, at, line, act);
            view! {
                <div class="sheet">
                    <h2>{asked.label()}</h2>
                    {acts.iter().enumerate().map(row).collect_view()}
                    <Message id=format!("{}-says", id(asked)) says=working.says(asked)/>
                </div>
            }
        });
        rows.into_any()
    })
}

/// In the form, before the clock runs: that these wait for it.
pub fn acts_without(working: Working, asked: &'static Asked, acts: &[&str]) -> AnyView {
    let wanted = say!(
        "{}: tapped here once the clock runs.",
        acts.iter().map(|act| t(act)).collect::<Vec<_>>().join(", ")
    );
    live(move || {
        let waits = working.clock.text().is_empty().then(|| {
            view! {
                <p class="label">{asked.label()}</p>
                <p class="dim">{wanted.clone()}</p>
            }
        });
        waits.into_any()
    })
}

fn row(working: Working, at: usize, line: usize, act: &'static str) -> AnyView {
    let value = working.text(at, line);
    let done = words(move || match value.get() {
        minutes if minutes.is_empty() => String::new(),
        minutes => say!("at {minutes} min"),
    });
    view! {
        <div class="row">
            <p>
                <b>{t(act)}</b>
                <br/>
                <span class="dim">{done}</span>
            </p>
            {live(move || tap(working, at, line, act))}
        </div>
    }
    .into_any()
}

/// The button of an act: done now, or taken back.
fn tap(working: Working, at: usize, line: usize, act: &'static str) -> AnyView {
    let is_done = !working.text(at, line).get().is_empty();
    let (class, said) =
        if is_done { ("btn btn--plain", t("Take back")) } else { ("btn", t("Done now")) };
    let tapped = press(Callback::new(move |()| match is_done {
        true => working.set(at, line, String::new()),
        false => take(working, at, line),
    }));
    view! {
        <button class=class type="button" on:click=tapped>
            <span class="vh">{format!("{}: ", t(act))}</span>
            {said}
        </button>
    }
    .into_any()
}
