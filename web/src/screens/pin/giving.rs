//! Giving the PIN: one field, and what came of it.

use leptos::prelude::*;
use wasm_bindgen_futures::spawn_local;
use words::t;

use super::field;
use crate::device::now::now;
use crate::lock::{Lock, use_lock};
use crate::page::lead_to;
use crate::parts::{Says, press};

/// The PIN as it is typed to open what it guards.
#[derive(Clone, Copy)]
pub struct Giving {
    lock: Lock,
    typed: RwSignal<String>,
    says: RwSignal<Option<Says>>,
    pub busy: RwSignal<bool>,
}

impl Giving {
    /// Nothing is typed yet.
    pub fn here() -> Giving {
        let lock = use_lock();
        let waits = untrack(|| lock.pin()).and_then(|pin| pin.waits(now()));
        Giving {
            lock,
            typed: RwSignal::new(String::new()),
            says: RwSignal::new(waits.map(Says::Refused)),
            busy: RwSignal::new(false),
        }
    }

    /// Tries what is typed.
    pub fn give(self) {
        if self.busy.get_untracked() {
            return;
        }
        self.busy.set(true);
        self.says.set(None);
        spawn_local(async move {
            let outcome = self.lock.open_with(&self.typed.get_untracked()).await;
            // Opened, what it guards stands in place of this field.
            self.busy.try_set(false);
            if let Err(why) = outcome {
                self.says.try_set(Some(Says::Refused(why)));
                lead_to("pin");
            }
        });
    }

    /// The field.
    pub fn field(self) -> AnyView {
        field("pin", t("Shop PIN"), self.typed, self.says.into())
    }

    /// The field and its button.
    pub fn form(self) -> AnyView {
        let give = press(Callback::new(move |()| self.give()));
        view! {
            {self.field()}
            <button class="btn btn--wide" type="button" on:click=give>
                {t("Give the PIN")}
            </button>
        }
        .into_any()
    }
}
