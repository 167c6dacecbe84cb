//! What is asked of IndexedDB, as futures.

use js_sys::{Function, Promise};
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::JsFuture;
use web_sys::{IdbDatabase, IdbFactory, IdbOpenDbRequest, IdbRequest, IdbTransaction};
use words::t;

use super::StoreError;

pub(super) fn other(thrown: JsValue) -> StoreError {
    StoreError::from_thrown(&thrown)
}

pub(super) fn factory() -> Result<IdbFactory, StoreError> {
    let refused = |seen: &str| StoreError::Refused { seen: seen.to_owned() };
    let window = web_sys::window().ok_or_else(|| refused(t("no window")))?;
    window.indexed_db().map_err(other)?.ok_or_else(|| refused(t("no IndexedDB")))
}

/// Waits until the connection stands.
pub(super) async fn opened(request: &IdbOpenDbRequest) -> Result<(), StoreError> {
    let outcome = settled(|done, failed| {
        request.set_onsuccess(Some(done));
        request.set_onerror(Some(failed));
        request.set_onblocked(Some(failed));
    });
    match outcome.await {
        Ok(()) => Ok(()),
        Err(event) if event.type_() == "blocked" => Err(StoreError::Blocked),
        Err(_) => Err(thrown_by(request)),
    }
}

/// Has these object stores made where the database is new.
pub(super) fn making(request: &IdbOpenDbRequest, stores: &'static [&'static str]) {
    let made = request.clone();
    let make = Closure::once_into_js(move || {
        if let Ok(base) = made.result().map(JsCast::unchecked_into::<IdbDatabase>) {
            // One that could not be made shows in the first transaction.
            stores.iter().for_each(|store| drop(base.create_object_store(store)));
        }
    });
    request.set_onupgradeneeded(make.dyn_ref());
}

pub(super) async fn succeeded(request: &IdbRequest) -> Result<JsValue, StoreError> {
    let outcome = settled(|done, failed| {
        request.set_onsuccess(Some(done));
        request.set_onerror(Some(failed));
    });
    outcome.await.map_err(|_| thrown_by(request))?;
    request.result().map_err(other)
}

/// Waits for a transaction whose requests were made; half a set must not stay.
pub(super) async fn ended(
    transaction: &IdbTransaction,
    made: Result<(), JsValue>,
) -> Result<(), StoreError> {
    if let Err(thrown) = made {
        // A transaction that cannot be ended has ended by itself.
        transaction.abort().ok();
        return Err(other(thrown));
    }
    completed(transaction).await
}

pub(super) async fn completed(transaction: &IdbTransaction) -> Result<(), StoreError> {
    let outcome = settled(|done, failed| {
        transaction.set_oncomplete(Some(done));
        transaction.set_onabort(Some(failed));
    });
    outcome.await.map(drop).map_err(|_| match transaction.error() {
        Some(exception) => other(exception.into()),
        // An abort without a reason is the browser closing the connection.
        None => StoreError::Lost,
    })
}

fn thrown_by(request: &IdbRequest) -> StoreError {
    match request.error() {
        Ok(Some(exception)) => other(exception.into()),
        Ok(None) => StoreError::Lost,
        Err(thrown) => other(thrown),
    }
}

/// Waits for the first event of two handlers: the one that it went well, the one that it did not.
///
/// The promise's own functions are the handlers, so no closure has to be kept alive.
async fn settled(listen: impl Fn(&Function, &Function)) -> Result<(), web_sys::Event> {
    let promise = Promise::new(&mut |done, failed| listen(&done, &failed));
    JsFuture::from(promise).await.map(drop).map_err(JsCast::unchecked_into)
}
