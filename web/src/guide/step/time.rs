//! Points in time, and the waits that begin at them.

use job::guide::usual_minutes;
use job::procedure::Record;
use job::{Capture, Guided};
use leptos::prelude::*;
use words::{say, t};

use super::record::id;
use super::working::Working;
use crate::device::now::{fresh_id, now};
use crate::parts::{Chip, Field, press};

/// Notes the time; where a wait begins, starts its clock too.
pub fn time(working: Working, at: usize, record: &Record) -> AnyView {
    if begins_wait(working, record) {
        return wait(working, at, record);
    }
    let note = press(Callback::new(move |()| note(working, at)));
    view! {
        <button class="btn btn--wide" type="button" on:click=note>
            {say!("Now: {}", t(&record.label))}
        </button>
    }
    .into_any()
}

/// Notes this moment.
pub fn note(working: Working, at: usize) {
    working.keep(at, Capture::Time(now()), None);
}

/// Whether a wait begins at a record.
pub fn begins_wait(working: Working, record: &Record) -> bool {
    record.label.ends_with(" from") && working.step(|step| step.meanwhile)
}

/// Notes this moment and starts the clock of as many minutes as were typed.
pub fn start(working: Working, at: usize, minutes: &str) {
    let Some(record) = working.record(at) else { return };
    let Some(minutes) = minutes.trim().parse().ok().filter(|minutes: &u32| *minutes > 0) else {
        let found = minutes.trim();
        let why = say!("{found} is no number of minutes. Type a whole one, such as 30.");
        return working.refuse(at, why);
    };
    let clock = Guided::ClockStarted {
        clock: fresh_id(),
        step: working.step(|step| step.id.clone()),
        label: record.label,
        marks: vec![minutes],
    };
    working.keep_with(at, Capture::Time(now()), vec![clock], Vec::new(), Box::new(|| ()));
}

fn wait(working: Working, at: usize, record: &Record) -> AnyView {
    let usual = usual_minutes(&record.label);
    let label = say!("{}: minutes to wait", record.title());
    let says = match usual {
        Some((least, most)) if least == most => {
            say!("Common practice: {least} min. Your manual or the package goes first.")
        }
        Some((least, most)) => {
            say!("Common practice: {least} to {most} min. Your manual or the package goes first.")
        }
        None => t("Your manual or the package says how long.").to_owned(),
    };
    let mut chips: Vec<u32> = usual.into_iter().flat_map(|(least, most)| [least, most]).collect();
    chips.dedup();
    let chip = |minutes: u32| {
        let begin = Callback::new(move |()| start(working, at, &minutes.to_string()));
        view! {
            <Chip pressed=Signal::stored(false) on_press=begin>
                {say!("Start {minutes} min")}
            </Chip>
        }
    };
    let name = label.clone();
    view! {
        <Field id=format!("{}-0", id(at)) label name value=working.line(at, 0)/>
        <p class="small">{says}</p>
        <div class="chips">{chips.into_iter().map(chip).collect_view()}</div>
    }
    .into_any()
}
