//! A store of an older version is copied before it is changed.
//!
//! The copy is a second database of the same shape. It stays until a person removes it or a backup
//! of everything was made.

use js_sys::Array;
use wasm_bindgen::prelude::*;
use web_sys::{IdbDatabase, IdbKeyRange, IdbObjectStore, IdbTransactionMode};

use super::StoreError;
use super::asked::{completed, factory, making, opened, other, succeeded};
use super::database::{ENTRIES, NAME, PHOTOS, VERSION};
use crate::device::turn;

/// Name of the copy.
pub(super) const COPY: &str = "shimwright-copy";
/// Rows that are copied at once; pictures are larger.
const AT_ONCE: [(&str, u32); 2] = [(ENTRIES, 500), (PHOTOS, 10)];

/// Copies the store as it lies, and counts what has arrived. Tabs take turns.
///
/// # Errors
/// What the browser gave as its reason, such as [`StoreError::Full`]. The store is as it was then.
pub(super) async fn copy() -> Result<(), StoreError> {
    let _mine = turn::take().await;
    let factory = factory()?;
    let request = factory.open(NAME).map_err(other)?;
    opened(&request).await?;
    let from: IdbDatabase = request.result().map_err(other)?.unchecked_into();
    if from.version() >= f64::from(VERSION) {
        // Another tab was first.
        from.close();
        return Ok(());
    }
    remove_copy().await?;
    let request = factory.open_with_u32(COPY, 1).map_err(other)?;
    making(&request, &[ENTRIES, PHOTOS]);
    opened(&request).await?;
    let to: IdbDatabase = request.result().map_err(other)?.unchecked_into();
    let outcome = copy_all(&from, &to).await;
    from.close();
    to.close();
    outcome
}

/// Removes the copy, if there is one.
///
/// # Errors
/// What the browser gave as its reason.
pub(super) async fn remove_copy() -> Result<(), StoreError> {
    let request = factory()?.delete_database(COPY).map_err(other)?;
    succeeded(&request).await.map(drop)
}

async fn copy_all(from: &IdbDatabase, to: &IdbDatabase) -> Result<(), StoreError> {
    for (name, at_once) in AT_ONCE {
        // The first version had no photos.
        if !from.object_store_names().contains(name) {
            continue;
        }
        let mut after = JsValue::UNDEFINED;
        loop {
            let rows = rows_after(&reading(from, name)?, &after, at_once).await?;
            let Some((last, _)) = rows.last() else { break };
            after = last.clone();
            let mode = IdbTransactionMode::Readwrite;
            let transaction = to.transaction_with_str_and_mode(name, mode).map_err(other)?;
            let store = transaction.object_store(name).map_err(other)?;
            for (key, value) in &rows {
                store.add_with_key(value, key).map_err(other)?;
            }
            completed(&transaction).await?;
        }
        if count(from, name).await? != count(to, name).await? {
            return Err(StoreError::Older);
        }
    }
    Ok(())
}

/// The next rows in the order of their keys, whatever the keys are.
async fn rows_after(
    store: &IdbObjectStore,
    after: &JsValue,
    most: u32,
) -> Result<Vec<(JsValue, JsValue)>, StoreError> {
    let range = match after.is_undefined() {
        true => JsValue::UNDEFINED,
        false => IdbKeyRange::lower_bound_with_open(after, true).map_err(other)?.into(),
    };
    let keys = store.get_all_keys_with_key_and_limit(&range, most).map_err(other)?;
    let values = store.get_all_with_key_and_limit(&range, most).map_err(other)?;
    let values = Array::from(&succeeded(&values).await?);
    let keys = Array::from(&keys.result().map_err(other)?);
    Ok(keys.iter().zip(values.iter()).collect())
}

async fn count(base: &IdbDatabase, name: &str) -> Result<Option<f64>, StoreError> {
    let request = reading(base, name)?.count().map_err(other)?;
    Ok(succeeded(&request).await?.as_f64())
}

fn reading(base: &IdbDatabase, name: &str) -> Result<IdbObjectStore, StoreError> {
    base.transaction_with_str(name).map_err(other)?.object_store(name).map_err(other)
}
