//! Whether the browser promised to keep the jobs, and how much room is left.

use js_sys::{Promise, Reflect};
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::{JsFuture, spawn_local};
use web_sys::StorageManager;

use crate::scratch;

/// Where it is noted that the browser was asked.
const ASKED: &str = "asked-to-keep";

/// The browser's answer to the wish that it never clears the jobs by itself.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Promised {
    /// Not known yet.
    Unknown,
    /// The browser promised.
    Yes,
    /// It did not: it may clear when room runs out. A backup matters more.
    No,
}

/// Bytes used by the app and bytes left for it, as the browser estimates them.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Room {
    /// In use.
    pub used: f64,
    /// Left.
    pub left: f64,
}

/// Protection of the jobs against the browser's own clearing, in context of every screen.
#[derive(Clone, Copy)]
pub struct Protection {
    promised: RwSignal<Promised>,
    room: RwSignal<Option<Room>>,
}

impl Protection {
    /// Starts unknown and looks.
    pub fn look() -> Protection {
        let protection =
            Protection { promised: RwSignal::new(Promised::Unknown), room: RwSignal::new(None) };
        spawn_local(protection.answer(|manager| manager.persisted().ok()));
        protection
    }

    /// The browser's answer so far.
    pub fn promised(self) -> Promised {
        self.promised.get()
    }

    /// Room on the device, where the browser tells.
    pub fn room(self) -> Option<Room> {
        self.room.get()
    }

    /// Asks the browser to promise; to be called from a press, or some do not ask the person.
    pub fn ask(self) {
        if self.promised.get_untracked() != Promised::Yes {
            spawn_local(self.answer(|manager| manager.persist().ok()));
        }
    }

    /// Asks once on this device, when the first thing was kept: a press came before it.
    pub fn ask_once(self) {
        if scratch::read(ASKED).is_none() {
            scratch::write(ASKED, "yes");
            self.ask();
        }
    }

    async fn answer(self, question: impl Fn(&StorageManager) -> Option<Promise>) {
        let Some(manager) = manager() else { return };
        if let Some(answer) = question(&manager) {
            let yes = JsFuture::from(answer).await.is_ok_and(|answer| answer.is_truthy());
            self.promised.set(if yes { Promised::Yes } else { Promised::No });
        }
        self.room.set(room().await);
    }
}

/// Room on the device, as the browser estimates it now; `None` where it does not tell.
pub async fn room() -> Option<Room> {
    let estimate = JsFuture::from(manager()?.estimate().ok()?).await.ok()?;
    let number = |name: &str| Reflect::get(&estimate, &name.into()).ok()?.as_f64();
    let used = number("usage")?;
    Some(Room { used, left: number("quota")? - used })
}

/// Missing in a page that is not secure and in old browsers.
fn manager() -> Option<StorageManager> {
    let navigator = web_sys::window()?.navigator();
    Reflect::get(&navigator, &"storage".into()).ok()?.dyn_into().ok()
}

/// Protection from context.
pub fn use_protection() -> Protection {
    expect_context()
}
