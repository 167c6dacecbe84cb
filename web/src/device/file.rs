//! Handing a file to the person: by the device's own share sheet where it takes files, else as a
//! download.

use std::time::Duration;

use js_sys::{Array, Function, Object, Promise, Reflect};
use leptos::prelude::*;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{Blob, DomException, File, FilePropertyBag, HtmlAnchorElement, Url};

/// The browser needs the file's contents until it has written them.
const WRITTEN_BY: Duration = Duration::from_secs(60);

/// The kind of a page that is a file of its own.
pub const PAGE: &str = "text/html";

/// How a file was handed over.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Handed {
    /// To the share sheet, which took it.
    Shared,
    /// As a download.
    Saved,
    /// The share sheet was closed without taking it.
    NotTaken,
}

/// Whether the device's share sheet takes text files.
pub fn shares_files() -> bool {
    file(&Array::of1(&"x".into()), "x.txt", "text/plain").is_ok_and(|file| can_share(&file))
}

/// Hands a file over; `parts` are texts and blobs.
///
/// # Errors
/// What the browser threw.
pub async fn hand_over(
    parts: &Array,
    name: &str,
    kind: &str,
    share: bool,
) -> Result<Handed, JsValue> {
    if share {
        // Share sheets take only kinds they know; pages are among them.
        let file = match kind {
            PAGE => file(parts, name, kind)?,
            _ => file(parts, &format!("{name}.txt"), "text/plain")?,
        };
        match shared(&file).await {
            Ok(()) => return Ok(Handed::Shared),
            Err(thrown) if was_closed(&thrown) => return Ok(Handed::NotTaken),
            // Refused, such as when reading took long: then as a download.
            Err(_) => {}
        }
    }
    download(&*file(parts, name, kind)?, name).map(|()| Handed::Saved)
}

fn file(parts: &Array, name: &str, kind: &str) -> Result<File, JsValue> {
    let options = FilePropertyBag::new();
    options.set_type(kind);
    File::new_with_blob_sequence_and_options(parts, name, &options)
}

fn download(blob: &Blob, name: &str) -> Result<(), JsValue> {
    let address = Url::create_object_url_with_blob(blob)?;
    let link: HtmlAnchorElement = document().create_element("a")?.unchecked_into();
    link.set_href(&address);
    link.set_download(name);
    link.click();
    set_timeout(move || drop(Url::revoke_object_url(&address)), WRITTEN_BY);
    Ok(())
}

fn sharing(file: &File) -> Result<JsValue, JsValue> {
    let data = Object::new();
    Reflect::set(&data, &"files".into(), &Array::of1(file))?;
    Ok(data.into())
}

fn can_share(file: &File) -> bool {
    let asked = || -> Result<bool, JsValue> {
        let navigator = window().navigator();
        let can: Function = Reflect::get(&navigator, &"canShare".into())?.dyn_into()?;
        Ok(can.call1(&navigator, &sharing(file)?)?.is_truthy())
    };
    asked().unwrap_or(false)
}

async fn shared(file: &File) -> Result<(), JsValue> {
    let navigator = window().navigator();
    let share: Function = Reflect::get(&navigator, &"share".into())?.dyn_into()?;
    let taken: Promise = share.call1(&navigator, &sharing(file)?)?.dyn_into()?;
    JsFuture::from(taken).await.map(drop)
}

fn was_closed(thrown: &JsValue) -> bool {
    thrown.dyn_ref::<DomException>().is_some_and(|thrown| thrown.name() == "AbortError")
}
