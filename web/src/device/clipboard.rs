//! Text for other programs, by way of the clipboard.

use js_sys::{Function, Promise, Reflect};
use leptos::prelude::*;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;

/// Copies a text.
///
/// # Errors
/// What the browser threw: it can refuse.
pub async fn copy(text: &str) -> Result<(), JsValue> {
    let clipboard = Reflect::get(&window().navigator(), &"clipboard".into())?;
    let write: Function = Reflect::get(&clipboard, &"writeText".into())?.dyn_into()?;
    let written: Promise = write.call1(&clipboard, &text.into())?.dyn_into()?;
    JsFuture::from(written).await.map(drop)
}
