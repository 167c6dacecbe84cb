//! Keeps the screen lit while a job is open.

use js_sys::{Promise, Reflect};
use leptos::prelude::*;
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::{JsFuture, spawn_local};

#[wasm_bindgen]
extern "C" {
    /// What `navigator.wakeLock` is; web-sys hides it behind an unstable flag.
    type WakeLock;

    #[wasm_bindgen(catch, method)]
    fn request(this: &WakeLock, kind: &str) -> Result<Promise, JsValue>;

    /// A lock that was given.
    #[derive(Clone)]
    #[wasm_bindgen(js_name = WakeLockSentinel)]
    type Given;

    #[wasm_bindgen(catch, method)]
    fn release(this: &Given) -> Result<Promise, JsValue>;
}

/// Keeps the screen lit for as long as the caller is on it.
///
/// The browser lets go when the page is hidden, so it is asked again each time the page is seen.
/// Where it refuses, as on a low battery, the device's own time-out stands.
pub fn keep_awake() {
    let given = StoredValue::new_local(None::<Given>);
    take(given);
    let listener = window_event_listener_untyped("visibilitychange", move |_| {
        if !document().hidden() {
            take(given);
        }
    });
    on_cleanup(move || {
        listener.remove();
        if let Some(given) = given.try_update_value(Option::take).flatten() {
            given.release().ok();
        }
    });
}

fn take(keep: StoredValue<Option<Given>, LocalStorage>) {
    let Some(asked) = lock().and_then(|lock| lock.request("screen").ok()) else { return };
    spawn_local(async move {
        let Ok(given) = JsFuture::from(asked).await else { return };
        let given: Given = given.unchecked_into();
        let left_meanwhile = keep.try_set_value(Some(given.clone())).is_some();
        if left_meanwhile {
            given.release().ok();
        }
    });
}

fn lock() -> Option<WakeLock> {
    let lock = Reflect::get(&window().navigator(), &"wakeLock".into()).ok()?;
    lock.is_object().then(|| lock.unchecked_into())
}
