//! The shop's PIN on this device: whether there is one, and whether it was given.
//!
//! It lies with the preferences, not in a book: a book goes out with every backup and is joined
//! with what comes in, so its hash would be in every file, and a file could lock this device.

use job::pin::{Pin, PinRefusal, new_pin};
use leptos::prelude::*;
use words::say;

use crate::device::now::now;
use crate::device::secret::{fresh_salt, stretched};
use crate::scratch;

/// Where it is kept.
const KEY: &str = "pin";
const WRONG: &str = "That is not the PIN. Type it again.";
const NO_HASH: &str = "This browser cannot work with a PIN here. Open the app over HTTPS.";
const NOT_KEPT: &str = "The browser keeps no settings of this page, so no PIN can be set. \
                        Allow it to store data.";

/// The lock, in context of every screen.
#[derive(Clone, Copy)]
pub struct Lock {
    pin: RwSignal<Option<Pin>>,
    given: RwSignal<bool>,
    open: Memo<bool>,
}

impl Lock {
    /// Reads what was kept, and follows what other tabs change.
    pub fn look() -> Lock {
        let (pin, given) = (RwSignal::new(kept()), RwSignal::new(false));
        let open = Memo::new(move |_| given.get() || pin.with(Option::is_none));
        let lock = Lock { pin, given, open };
        let changed = window_event_listener_untyped("storage", move |_| lock.pin.set(kept()));
        on_cleanup(move || changed.remove());
        lock
    }

    /// The PIN that is set; followed.
    pub fn pin(self) -> Option<Pin> {
        self.pin.get()
    }

    /// Whether what it guards is open: it was given, or there is none. Followed.
    pub fn is_open(self) -> bool {
        self.open.get()
    }

    /// Asks for it again from now on.
    pub fn shut(self) {
        if self.given.get_untracked() {
            self.given.set(false);
        }
    }

    /// Opens with a PIN.
    ///
    /// # Errors
    /// Why not, in a sentence.
    pub async fn open_with(self, typed: &str) -> Result<(), String> {
        // Another tab may have counted meanwhile.
        let Some(pin) = kept() else {
            self.keep(None);
            return Ok(());
        };
        let Some(tried) = pin.tried(now()) else {
            return Err(pin.waits(now()).unwrap_or_default());
        };
        self.keep(Some(tried.clone()));
        let hash = stretched(typed, tried.salt(), tried.rounds()).await;
        let hash = hash.map_err(|_| NO_HASH.to_owned())?;
        let opened = tried.opened(&hash).ok_or_else(|| {
            let waits = tried.waits(now());
            waits.map_or_else(|| WRONG.to_owned(), |waits| say!("That is not the PIN. {waits}"))
        })?;
        self.keep(Some(opened));
        self.given.set(true);
        Ok(())
    }

    /// Sets a PIN, in place of the one before, and leaves open what it guards.
    ///
    /// # Errors
    /// Why it is not taken, in a sentence.
    pub async fn set(self, first: &str, again: &str) -> Result<(), String> {
        new_pin(first, again).map_err(|refusal: PinRefusal| refusal.to_string())?;
        if !scratch::open() {
            return Err(NOT_KEPT.to_owned());
        }
        let salt = fresh_salt().map_err(|_| NO_HASH.to_owned())?;
        let hash = stretched(first, &salt, Pin::ROUNDS).await.map_err(|_| NO_HASH.to_owned())?;
        self.keep(Some(Pin::new(salt, hash)));
        self.given.set(true);
        Ok(())
    }

    /// Keeps the PIN as it is now; none: takes it away.
    pub fn keep(self, pin: Option<Pin>) {
        match &pin {
            Some(pin) => scratch::write(KEY, &pin.text()),
            None => {
                scratch::forget(KEY);
                self.given.set(false);
            }
        }
        self.pin.set(pin);
    }
}

/// The lock from context.
pub fn use_lock() -> Lock {
    expect_context()
}

fn kept() -> Option<Pin> {
    scratch::read(KEY).map(|text| Pin::read(&text))
}
