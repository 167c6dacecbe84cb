//! Text files of the site.

use leptos::prelude::*;
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::JsFuture;

/// A file did not come, or is not what it should be.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NotHere;

/// The text of a file of the site.
///
/// # Errors
/// Where it does not come.
pub async fn text(address: &str) -> Result<String, NotHere> {
    let fetched = JsFuture::from(window().fetch_with_str(address)).await;
    let response: web_sys::Response = fetched
        .ok()
        .and_then(|it| it.dyn_into().ok())
        .filter(web_sys::Response::ok)
        .ok_or(NotHere)?;
    let text = response.text().map_err(|_| NotHere)?;
    JsFuture::from(text).await.ok().and_then(|text| text.as_string()).ok_or(NotHere)
}
