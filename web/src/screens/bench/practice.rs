//! The practice job: an invented unit, its shims and its readings, to try everything on.

use job::{BookId, Fact, demo};
use leptos::prelude::*;
use wasm_bindgen_futures::spawn_local;
use words::{say, t};

use crate::bench::{Bench, use_bench};
use crate::device::now::fresh_id;
use crate::page;
use crate::parts::{Caution, Says, live};
use crate::screens::first::PracticeDoor;

/// In context where the practice job was asked for before the bench was there.
#[derive(Clone, Copy)]
pub struct Asked(pub StoredValue<bool>);

/// Lays out the practice job; offered while there is neither a job nor a shim.
#[component]
pub fn Practice() -> impl IntoView {
    let (bench, address) = (use_bench(), crate::address::use_address());
    let (busy, refused) = (RwSignal::new(false), RwSignal::new(None::<String>));
    let is_offered = Memo::new(move |_| is_offered(bench));
    let lay_out = Callback::new(move |()| {
        if busy.get_untracked() {
            return;
        }
        busy.set(true);
        spawn_local(async move {
            let outcome = bench.record(facts()).await;
            // The screen is gone once there is a job on the bench.
            busy.try_set(false);
            match outcome {
                Ok(_) => {
                    address.go("/");
                    request_animation_frame(page::focus_if_lost);
                }
                Err(why) => drop(refused.try_set(Some(why.to_string()))),
            }
        });
    });
    if use_context()
        .is_some_and(|Asked(asked)| asked.try_update_value(std::mem::take) == Some(true))
    {
        lay_out.run(());
    }
    let says = Signal::derive(move || refused.get().map(Says::Refused));
    live(move || match is_offered.get() {
        true => view! { <PracticeDoor on_press=lay_out says/> }.into_any(),
        false => ().into_any(),
    })
}

/// Invented shims never lie beside real ones.
fn is_offered(bench: Bench) -> bool {
    bench.every_job().is_empty() && bench.tin().with(|tin| tin.count() == 0)
}

/// All of it in one act, so that no half of it is ever left.
fn facts() -> Vec<(BookId, Fact)> {
    demo::acts(&fresh_id(), &fresh_id(), fresh_id).into_iter().flatten().collect()
}

/// Says that the practice job's shims are in the tin, as long as they are.
#[component]
pub fn Invented() -> impl IntoView {
    let tin = use_bench().tin();
    let count = Memo::new(move |_| tin.with(|tin| tin.invented()));
    live(move || match count.get() {
        0 => ().into_any(),
        count => {
            let title = say!("{count} shims here are invented, for practice.");
            view! { <Caution title words=t("Count them out before a real job.")/> }.into_any()
        }
    })
}
