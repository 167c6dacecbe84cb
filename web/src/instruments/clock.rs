//! The clock of a log: a tap begins it, a tap takes the time of the next line.

use job::instrument::since;
use leptos::prelude::*;

use super::working::Working;
use crate::device::now::{now, use_seconds};
use crate::parts::{live, press, words};

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
