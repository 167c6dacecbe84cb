//! An act of a screen: written down in one piece, or said why not.

use job::{BookId, Fact};
use leptos::prelude::*;
use wasm_bindgen_futures::spawn_local;

use crate::bench::{Bench, use_bench};
use crate::parts::live;
use crate::storage::Photo;

/// How the acts of a screen stand.
#[derive(Clone, Copy)]
pub struct Acting {
    bench: Bench,
    /// One is being written down.
    pub busy: RwSignal<bool>,
    refused: RwSignal<Option<String>>,
}

impl Acting {
    /// Nothing was done yet.
    pub fn here() -> Acting {
        Acting { bench: use_bench(), busy: RwSignal::new(false), refused: RwSignal::new(None) }
    }

    /// Writes facts down with the photos they name; `then` is done once they are kept.
    pub fn record(self, facts: Vec<(BookId, Fact)>, photos: Vec<Photo>, then: Box<dyn FnOnce()>) {
        if self.busy.get_untracked() {
            return;
        }
        self.busy.set(true);
        spawn_local(async move {
            let outcome = self.bench.record_with(facts, photos).await;
            self.busy.try_set(false);
            if outcome.is_ok() {
                then();
            }
            self.refused.try_set(outcome.err().map(|why| why.to_string()));
        });
    }

    /// Says why something is not done.
    pub fn refuse(self, why: String) {
        self.refused.set(Some(why));
    }

    /// Says nothing any more.
    pub fn forget(self) {
        self.refused.set(None);
    }

    /// Why the last act was not written down.
    pub fn says(self) -> AnyView {
        let why = live(move || self.refused.get().into_any());
        view! {
            <p class="msg msg--refused" role="status">
                {why}
            </p>
        }
        .into_any()
    }
}
