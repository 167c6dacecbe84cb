//! Turns between everything that writes on this device, in this tab and in others: one lock, which
//! the browser hands out in the order it was asked for and takes back when a tab is gone.

use js_sys::{Function, Promise, Reflect};
use leptos::prelude::window;
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::JsFuture;

const NAME: &str = "shimwright";

#[wasm_bindgen]
extern "C" {
    /// `navigator.locks`, which web-sys hides behind an unstable flag.
    #[wasm_bindgen(js_name = LockManager)]
    type Locks;

    /// Calls `held` once the lock is ours; it stays ours until the promise of `held` is kept.
    #[wasm_bindgen(method)]
    fn request(this: &Locks, name: &str, held: &JsValue) -> Asked;

    #[wasm_bindgen(js_name = Promise)]
    type Asked;

    #[wasm_bindgen(method)]
    fn catch(this: &Asked, refused: &Function) -> JsValue;
}

/// A turn to write. It ends when this is dropped.
pub struct Turn {
    end: Option<Function>,
}

impl Drop for Turn {
    fn drop(&mut self) {
        if let Some(end) = &self.end {
            // A promise's own function never throws.
            end.call0(&JsValue::NULL).ok();
        }
    }
}

/// Waits for a turn. A browser that has no locks, or refuses one, gives it at once: the store then
/// refuses what another tab was first with, and that is tried again.
pub async fn take() -> Turn {
    let locks = Reflect::get(&window().navigator(), &"locks".into());
    let Some(locks) = locks.ok().filter(JsValue::is_object) else { return Turn { end: None } };
    let locks: Locks = locks.unchecked_into();
    let mut end = None;
    let held = Promise::new(&mut |kept, _| end = Some(kept));
    let granted = Promise::new(&mut |granted: Function, refused: Function| {
        let held = held.clone();
        let on_grant = Closure::once_into_js(move || {
            granted.call0(&JsValue::NULL).ok();
            held
        });
        locks.request(NAME, &on_grant).catch(&refused);
    });
    JsFuture::from(granted).await.ok();
    Turn { end }
}
