//! A sound log to write in.
//!
//! Chromium keeps all databases of a site in one log. A kill, a flat battery or a full disk can leave
//! its last record half written. The next start still reads everything, goes on in the same log, and
//! the start after that finds "checksum mismatch" and drops every database of the site: measured with
//! version 156, `tests/e2e/torn.test.mjs`. Once more than four megabytes are written, a new log
//! begins and the old one is dropped, half record and all. So that comes before anything is written
//! down on a visit, and again after a write that failed.

use js_sys::{Array, Reflect, Uint8Array};
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::JsFuture;
use web_sys::{Blob, CacheStorage, IdbDatabase, IdbTransactionMode, Response};

use super::StoreError;
use super::asked::{completed, factory, making, opened, other};

/// Of the database and the cache that are filled and dropped.
const NAME: &str = "shimwright-fresh";
const STORE: &str = "pieces";
/// Larger pieces would lie outside the log.
const PIECE: u32 = 48_000;
const PIECES: u32 = 16;
/// All in all 4.6 MB; the log ends at 4.2.
const TURNS: u32 = 6;
/// More than goes into the log, so that filling it does not fill the disk.
const ROOM: u32 = 8_000_000;

/// Makes sure that there is room, then has a new log begun.
///
/// # Errors
/// [`StoreError::Full`] where the device has less than a few megabytes left; nothing was written
/// into the log then. Otherwise what the browser gave as its reason.
pub(super) async fn begin() -> Result<(), StoreError> {
    has_room().await?;
    fill().await
}

/// Writes a file beside the databases and takes it away again. A browser's own estimate of the room
/// left does not tell of a full disk.
async fn has_room() -> Result<(), StoreError> {
    let window = web_sys::window().filter(|window| {
        // Missing in a page that is not secure.
        Reflect::get(window, &"caches".into()).is_ok_and(|caches| caches.is_object())
    });
    let Some(caches) = window.and_then(|window| window.caches().ok()) else { return Ok(()) };
    let Ok(cache) = JsFuture::from(caches.open(NAME)).await else { return Ok(()) };
    let cache: web_sys::Cache = cache.unchecked_into();
    let room = Array::of1(&Uint8Array::new_with_length(ROOM));
    let room = Blob::new_with_u8_array_sequence(&room).map_err(other)?;
    let room = Response::new_with_opt_blob(Some(&room)).map_err(other)?;
    let taken = JsFuture::from(cache.put_with_str(&format!("/{NAME}"), &room)).await;
    let dropped = drop_cache(&caches).await;
    taken.and(dropped).map(drop).map_err(|_| StoreError::Full)
}

async fn drop_cache(caches: &CacheStorage) -> Result<JsValue, JsValue> {
    JsFuture::from(caches.delete(NAME)).await
}

async fn fill() -> Result<(), StoreError> {
    let factory = factory()?;
    let request = factory.open_with_u32(NAME, 1).map_err(other)?;
    making(&request, &[STORE]);
    opened(&request).await?;
    let base: IdbDatabase = request.result().map_err(other)?.unchecked_into();
    let outcome = fill_all(&base).await;
    base.close();
    // It goes once the last connection is closed.
    factory.delete_database(NAME).ok();
    outcome
}

async fn fill_all(base: &IdbDatabase) -> Result<(), StoreError> {
    // Of no pattern: the browser makes what it can smaller.
    let mut piece = vec![0; PIECE as usize];
    if let Some(crypto) = web_sys::window().and_then(|window| window.crypto().ok()) {
        crypto.get_random_values_with_u8_array(&mut piece).map_err(other)?;
    }
    let piece = Uint8Array::from(piece.as_slice());
    for _ in 0..TURNS {
        let transaction = base
            .transaction_with_str_and_mode(STORE, IdbTransactionMode::Readwrite)
            .map_err(other)?;
        let store = transaction.object_store(STORE).map_err(other)?;
        for number in 0..PIECES {
            store.put_with_key(&piece, &number.into()).map_err(other)?;
        }
        completed(&transaction).await?;
    }
    Ok(())
}
