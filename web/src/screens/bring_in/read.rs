//! Reading a chosen file piece by piece, or the card in the address.

use job::files::{Card, Coming, Incoming, MOST_BYTES, Parcel, Picture, Refused, Whole};
use job::{BookId, Stamp};
use js_sys::{Array, Uint8Array};
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use wasm_bindgen::JsValue;
use wasm_bindgen_futures::{JsFuture, spawn_local};
use web_sys::{Blob, BlobPropertyBag, Event, File, HtmlInputElement};
use words::t;

use super::BringIn;
use crate::device::now::now;
use crate::parts::{Glyph, Icon};
use crate::storage::Photo;

/// How much of a file is held at once.
const PIECE: f64 = 1024.0 * 1024.0;
/// What stands before a card in the address.
const CARD: &str = "#sheet=";

/// The browser's own way to choose a file.
#[component]
pub fn Chooser(at: BringIn, words: &'static str) -> impl IntoView {
    let chosen = move |event: Event| {
        let input: Option<HtmlInputElement> =
            event.target().and_then(|target| target.dyn_into().ok());
        let Some(input) = input else { return };
        let file = input.files().and_then(|files| files.get(0));
        // The same file may be chosen again.
        input.set_value("");
        if let Some(file) = file {
            take(at, file);
        }
    };
    view! {
        <label class="btn btn--file">
            <Icon glyph=Glyph::Bring/>
            {words}
            <input class="vh" type="file" accept=".jsonl,.txt,.json,application/x-ndjson" on:change=chosen/>
        </label>
    }
}

fn take(at: BringIn, file: File) {
    at.busy.set(true);
    spawn_local(async move {
        match read(&file).await {
            Ok((parcel, photos)) => at.look(file.name(), parcel, photos).await,
            Err(why) => at.refuse(why),
        }
    });
}

async fn read(file: &File) -> Result<(Parcel, Vec<Photo>), String> {
    let size = file.size();
    if size > MOST_BYTES as f64 {
        return Err(Refused::TooLarge.to_string());
    }
    let (mut incoming, mut photos, mut at) = (Incoming::new(), Vec::new(), 0.0);
    while at < size {
        let bytes = piece(file, at).await.map_err(|_| UNREADABLE.to_owned())?;
        let complete = incoming.push(&bytes).map_err(|why| why.to_string())?;
        photos.extend(complete.into_iter().filter_map(kept));
        at += PIECE;
    }
    let (parcel, last) = incoming.finish().map_err(|why| why.to_string())?;
    photos.extend(last.and_then(kept));
    Ok((parcel, photos))
}

const UNREADABLE: &str = "The device did not give the file: it may have been moved or changed. \
                          Choose it again.";

async fn piece(file: &File, at: f64) -> Result<Vec<u8>, JsValue> {
    let piece = file.slice_with_f64_and_f64(at, at + PIECE)?;
    let bytes = JsFuture::from(piece.array_buffer()).await?;
    Ok(Uint8Array::new(&bytes).to_vec())
}

/// A photo as the browser keeps it, which may be on disk.
fn kept(picture: Picture) -> Option<Photo> {
    let kind = BlobPropertyBag::new();
    kind.set_type(picture.kind()?);
    let bytes = Array::of1(&Uint8Array::from(picture.bytes.as_slice()));
    let blob = Blob::new_with_u8_array_sequence_and_options(&bytes, &kind).ok()?;
    Some(Photo { id: picture.id, picture: blob })
}

/// A unit sheet that came as a code: the phone's camera opened its address.
pub fn card_of_address(at: BringIn) {
    let hash = window().location().hash().unwrap_or_default();
    let Some(text) = hash.strip_prefix(CARD) else { return };
    let card = Card::from_text(text);
    let stamp = Stamp { device: "code".to_owned(), at: now(), act: card.name() };
    match card.book(BookId::Sheet(card.name()), &stamp) {
        Ok(book) => {
            let is_here = untrack(|| at.bench.has_sheet(&card.name()));
            let lines = book.lines().filter(|_| !is_here).map(Coming::from_line).collect();
            let parcel = Parcel { coming: lines, whole: Whole::Yes, ..Parcel::default() };
            spawn_local(at.look(t("Unit sheet from a code").to_owned(), parcel, Vec::new()));
        }
        Err(why) => at.refuse(why.to_string()),
    }
}
