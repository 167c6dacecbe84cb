//! The clock of a log: a tap begins it, a tap takes the time of the next line.

use job::instrument::{Asked, since};
use leptos::prelude::*;

use super::form::id;
use super::working::Working;
use crate::device::now::{now, use_seconds};
use crate::parts::{Message, live, press, words};

/// What is to be done while the clock runs: tapped as it is done, taken back by a second tap.
pub fn acts(
    working: Working,
    at: usize,
    asked: &'static Asked,
    acts: &'static [&'static str],
) -> AnyView {
    let row = |(line, act): (usize, &'static &'static str)| {
        let value = working.text(at, line);
        let done = words(move || match value.get() {
            minutes if minutes.is_empty() => String::new(),
            minutes => format!("at {minutes} min"),
        });
        view! {
            <div class="row">
                <p>
                    <b>{*act}</b>
                    <br/>
                    <span class="dim">{done}</span>
                </p>
                {live(move || tap(working, at, line, act))}
            </div>
        }
    };
    let rows = acts.iter().enumerate().map(row).collect_view();
    view! {
        <p class="label">{asked.label}</p>
        {rows}
        <Message id=format!("{}-says", id(asked)) says=working.says(asked)/>
    }
    .into_any()
}

/// The button of an act: do it now, or take it back; while no clock runs, that it waits for one.
fn tap(working: Working, at: usize, line: usize, act: &'static str) -> AnyView {
    let text = working.text(at, line);
    if !text.get().is_empty() {
        let back = press(Callback::new(move |()| working.set(at, line, String::new())));
        return view! {
            <button class="btn btn--plain" type="button" on:click=back>
                <span class="vh">{format!("{act}: ")}</span>
                "Take back"
            </button>
        }
        .into_any();
    }
    if working.clock.text().is_empty() {
        return view! { <span class="dim">"Start the clock first"</span> }.into_any();
    }
    let now = press(Callback::new(move |()| {
        let run = untrack(|| since(&working.clock.text(), now(), working.mark()));
        if let Some(run) = run {
            working.set(at, line, run.minutes);
        }
    }));
    view! {
        <button class="btn" type="button" on:click=now>
            <span class="vh">{format!("{act}: ")}</span>
            "Done now"
        </button>
    }
    .into_any()
}

/// The clock above the lines of a field.
pub fn clock(working: Working, at: usize, places: &'static [&'static str]) -> AnyView {
    live(move || match working.clock.text().is_empty() {
        true => begin(working),
        false => running(working, at, places),
    })
}

fn begin(working: Working) -> AnyView {
    let start = press(Callback::new(move |()| working.clock.set(&now().to_string())));
    view! {
        <button class="btn btn--plain" type="button" on:click=start>
            "Start the clock"
        </button>
    }
    .into_any()
}

fn running(working: Working, at: usize, places: &'static [&'static str]) -> AnyView {
    let second = use_seconds();
    let run = move |now| since(&working.clock.text(), now, working.mark());
    let shown = words(move || run(second.get()).map(|run| run.clock).unwrap_or_default());
    let next =
        Memo::new(move |_| (0..places.len()).find(|line| working.text(at, *line).get().is_empty()));
    let take = move |line: usize| {
        press(Callback::new(move |()| {
            if let Some(run) = untrack(|| run(now())) {
                working.set(at, line, run.minutes);
            }
        }))
    };
    let log = live(move || {
        let place = next.get().and_then(|line| Some((line, *places.get(line)?)));
        let button = place.map(|(line, place)| {
            view! {
                <button class="btn" type="button" on:click=take(line)>
                    {format!("Time of line {place} is now")}
                </button>
            }
        });
        button.into_any()
    });
    let stop = press(Callback::new(move |()| working.clock.clear()));
    view! {
        <p class="headline">
            <span class="fig fig--6" role="timer">{shown}</span>
            <span class="dim">{words(move || working.runs_to().unwrap_or_default())}</span>
        </p>
        <p class="small">"The clock runs on true time. Lock the phone if you like."</p>
        <div class="btns">
            {log}
            <button class="btn btn--plain" type="button" on:click=stop>"Put the clock away"</button>
        </div>
    }
    .into_any()
}
