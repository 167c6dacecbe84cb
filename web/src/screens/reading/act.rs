//! The blue button: what to read next, then keeping the series.

use job::{BookId, Dock, Fact, Field, NextAct, setup};
use leptos::prelude::*;
use wasm_bindgen_futures::spawn_local;

use super::series::{Series, id};
use crate::address::use_address;
use crate::bench::use_bench;
use crate::page::lead_to;
use crate::parts::{Act, Keys, whether, words};

/// Waits for the series, then keeps it and leads to the next act.
#[component]
pub fn Keep(series: Series) -> impl IntoView {
    let (bench, keys, address) = (use_bench(), Keys::here(), use_address());
    let go = Callback::new(move |to: String| address.go(&to));
    let busy = RwSignal::new(false);
    let dock = Memo::new(move |_| series.look(|preview| preview.dock.clone()));
    let keep = move |dock: Dock, fact: Fact| {
        busy.set(true);
        spawn_local(async move {
            let book = BookId::Job(series.of.id());
            match bench.record(vec![(book, fact)]).await {
                Ok(_) => {
                    series.clear();
                    match next(series, &dock) {
                        Some(to) => go.run(to),
                        None => keys.open_first_empty(),
                    }
                }
                // The screen may have been left meanwhile; the digits are still there.
                Err(why) => drop(series.refused.try_set(Some(why.to_string()))),
            }
            busy.try_set(false);
        });
    };
    let press = Callback::new(move |()| {
        let told = |preview: &job::Preview| (preview.dock.clone(), preview.fact.clone());
        match untrack(|| series.look(told)) {
            Some((dock, Some(fact))) => keep(dock, fact),
            Some((Dock::TypeArm, None)) => go.run(series.of.at_field(Field::ArmRadius)),
            _ => {}
        }
    });
    let show = Callback::new(move |()| {
        if let Some(Dock::ReadFirst { stop, .. } | Dock::TypeAgain { stop, .. }) =
            dock.get_untracked()
        {
            lead_to(&id(stop));
        }
    });
    let waits = |dock: &Dock| matches!(dock, Dock::ReadFirst { .. } | Dock::TypeAgain { .. });
    view! {
        <Act
            words=words(move || dock.get().map(|dock| dock.words()).unwrap_or_default())
            waits=whether(move || dock.get().as_ref().is_some_and(waits))
            busy=whether(move || busy.get())
            on_press=press
            on_waiting=show
        />
    }
}

/// Where to go once the series is kept; `None`: the same check is read again, here.
fn next(series: Series, dock: &Dock) -> Option<String> {
    let of = series.of;
    let read =
        |check: job::Check| (check != series.check).then(|| of.at(&format!("read/{}", check.id())));
    match dock {
        Dock::NearReadAgain => None,
        Dock::Keep { .. } => {
            let next = of.look_once(|(job, sheet, tin), shown| setup(job, sheet, tin, shown).next);
            match next {
                Some(NextAct::Read(check) | NextAct::ReadAgain(check)) => read(check),
                _ => Some(of.at("setup")),
            }
        }
        _ => Some(of.at("setup")),
    }
}
