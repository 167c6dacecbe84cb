//! The blue button: the one next act of the job.

use job::{BookId, Fact, Field, FittedShim, NextAct, PackAct, SetUp, Slot, all_the_same, fit};
use leptos::prelude::*;
use wasm_bindgen_futures::spawn_local;

use super::Fitting;
use crate::address::use_address;
use crate::bench::use_bench;
use crate::device::now::fresh_id;
use crate::page::{lead_to, show};
use crate::parts::{Act, Message, Says, live, whether};

/// What the button does.
#[derive(Clone, PartialEq)]
enum Does {
    /// Leads on.
    Go(String),
    /// Shows a part of this screen.
    Show(&'static str),
    /// Writes down the packs that were found.
    WritePacks,
    /// Writes down that packs are fitted, then leads on.
    Fit(String),
}

/// The next act, as the core names it.
#[component]
pub fn Next(fitting: Fitting) -> impl IntoView {
    let (bench, address) = (use_bench(), use_address());
    let go = Callback::new(move |to: String| address.go(&to));
    let busy = RwSignal::new(false);
    let record = Callback::new(move |(facts, then): (Vec<(BookId, Fact)>, Option<String>)| {
        busy.set(true);
        fitting.refused.set(None);
        spawn_local(async move {
            match (bench.record(facts).await, then) {
                (Ok(_), Some(to)) => go.run(to),
                (Ok(_), None) => fitting.found.clear(),
                // The screen may have been left meanwhile; what was typed is still there.
                (Err(why), _) => {
                    fitting.refused.try_set(Some(why.to_string()));
                    lead_to("act-says");
                }
            }
            busy.try_set(false);
        });
    });
    let press = Callback::new(move |does: Does| match does {
        Does::Go(to) => go.run(to),
        Does::Show(part) => show(part),
        Does::WritePacks => record.run((fitting.found.facts(), None)),
        Does::Fit(to) => record.run((fitted(fitting), Some(to))),
    });
    let next = Memo::new(move |_| act(fitting));
    live(move || {
        let Some((words, does, waits)) = next.get() else { return ().into_any() };
        let on_press = Callback::new(move |()| press.run(does.clone()));
        let on_waiting = Callback::new(move |()| fitting.found.show());
        view! {
            <Act
                words=words
                waits=Signal::stored(waits)
                busy=whether(move || busy.get())
                on_press
                on_waiting
            />
        }
        .into_any()
    })
}

/// Why an act was not written down.
#[component]
pub fn Refused(fitting: Fitting) -> impl IntoView {
    let says = Signal::derive(move || fitting.refused.get().map(Says::Refused));
    view! { <Message id="act-says" says/> }
}

/// What the button says, what it does, and whether it waits.
fn act(fitting: Fitting) -> Option<(String, Does, bool)> {
    let told = |told: &SetUp| match fitting.all_the_same.get() {
        true => fitting.of.look(|(job, sheet, _), shown| all_the_same(told, job, sheet, shown)),
        false => Some(told.next.clone()),
    };
    let next = fitting.look(told).flatten()?;
    let of = fitting.of;
    let read = |check: &job::Check| of.at(&format!("read/{}", check.id()));
    let does = match &next {
        NextAct::WritePack(_) => {
            let (words, waits) = fitting.found.act()?;
            return Some((words, Does::WritePacks, waits));
        }
        NextAct::TypeField(field) => Does::Go(of.at_field(*field)),
        NextAct::MoveArm => Does::Go(of.at_field(Field::ArmShaft)),
        NextAct::Read(check) | NextAct::ReadAgain(check) => Does::Go(read(check)),
        NextAct::Fit { read: check, .. } => Does::Fit(read(check)),
        NextAct::SeeCauses(_) => Does::Show("alarm"),
        NextAct::SeeFit | NextAct::SeeConflict => Does::Show("advice"),
        NextAct::FillTin => Does::Go("/tin".to_owned()),
        NextAct::PrintRecord => Does::Go(of.at("record")),
    };
    Some((next.words(), does, false))
}

/// The facts of fitting the packs that are advised.
fn fitted(fitting: Fitting) -> Vec<(BookId, Fact)> {
    let advised = |told: &SetUp| -> Vec<(Slot, Vec<FittedShim>)> {
        let changed = told.advice.packs.iter().filter(|pack| pack.act == PackAct::Fit);
        let shims = |pack: &job::PackView| pack.shims.iter().map(|it| it.shim.clone()).collect();
        changed.map(|pack| (pack.slot, shims(pack))).collect()
    };
    let packs = untrack(|| fitting.look(advised)).unwrap_or_default();
    let facts = fitting.of.look_once(|(job, sheet, tin), _| fit(job, sheet, tin, &packs, fresh_id));
    facts.unwrap_or_default()
}
