//! Everything in one file, for safe keeping off this device.

use std::time::Duration;

use js_sys::Array;
use leptos::prelude::*;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{Blob, BlobPropertyBag, HtmlAnchorElement, Url};

use crate::device::now::now;
use crate::scratch;
use crate::storage::Row;

/// Where the last export is noted; it may be lost, and then none is known.
const NOTED: &str = "exported";
/// The browser needs the file's contents until it has written them.
const WRITTEN_BY: Duration = Duration::from_secs(60);

/// A file of everything that was handed over.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Exported {
    /// Its name.
    pub name: String,
    /// How many entries it holds.
    pub entries: usize,
    /// When, milliseconds since 1970, UTC.
    pub at: i64,
}

/// The last export this device knows of.
pub fn last_export() -> Option<Exported> {
    let noted = scratch::read(NOTED)?;
    let mut words = noted.split(' ');
    let (at, entries) = (words.next()?.parse().ok()?, words.next()?.parse().ok()?);
    Some(Exported { name: words.next()?.to_owned(), entries, at })
}

/// Hands the browser a file with one line for each row, as it lies.
pub(super) fn hand_over(rows: &[Row]) -> Result<Exported, JsValue> {
    let day: String = js_sys::Date::new_0().to_iso_string().into();
    let name = format!("shimwright-{}.jsonl", day.get(..10).unwrap_or(&day));
    let text: String = rows.iter().flat_map(|row| [row.line.as_str(), "\n"]).collect();
    let kind = BlobPropertyBag::new();
    kind.set_type("application/x-ndjson");
    let blob = Blob::new_with_str_sequence_and_options(&Array::of1(&text.into()), &kind)?;
    let address = Url::create_object_url_with_blob(&blob)?;
    let link: HtmlAnchorElement = document().create_element("a")?.unchecked_into();
    link.set_href(&address);
    link.set_download(&name);
    link.click();
    set_timeout(move || drop(Url::revoke_object_url(&address)), WRITTEN_BY);
    let exported = Exported { name, entries: rows.len(), at: now() };
    scratch::write(NOTED, &format!("{} {} {}", exported.at, exported.entries, exported.name));
    Ok(exported)
}
