//! The data files of the guided job: fetched once, then kept for every screen of this visit.

use std::cell::RefCell;
use std::sync::Arc;

use job::procedure::Procedure;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::JsFuture;

/// A file did not come, or is not what it should be.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NotHere;

thread_local! {
    static KEPT: RefCell<Vec<Arc<Procedure>>> = const { RefCell::new(Vec::new()) };
}

/// A procedure that has come already.
pub fn kept(layout: &str, revision: u32) -> Option<Arc<Procedure>> {
    let is_it = |it: &&Arc<Procedure>| it.layout == layout && it.revision == revision;
    KEPT.with_borrow(|kept| kept.iter().find(is_it).cloned())
}

/// A procedure, from its file.
///
/// # Errors
/// Where the file does not come or does not follow the grammar.
pub async fn procedure(layout: &str, revision: u32) -> Result<Arc<Procedure>, NotHere> {
    if let Some(kept) = kept(layout, revision) {
        return Ok(kept);
    }
    let text = text(&Procedure::address(layout, revision)).await?;
    let read = Procedure::parse(layout, revision, &text).map_err(|_| NotHere)?;
    let read = Arc::new(read);
    KEPT.with_borrow_mut(|kept| kept.push(read.clone()));
    Ok(read)
}

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
