//! Rows are kept whole, in order, and never overwritten.

use std::cell::Cell;
use std::rc::Rc;

use shimwright_web::storage::{Row, Store, StoreError};
use wasm_bindgen_test::wasm_bindgen_test;

use crate::fresh::{self, rows_of};

fn row(book: &str, counter: u64, device: &str) -> Row {
    let line = format!("{{\"book\":\"{book}\",\"counter\":{counter}}}");
    Row { book: book.to_owned(), counter, device: device.to_owned(), line }
}

async fn open() -> Store {
    Store::open(|_| {}).await.unwrap()
}

#[wasm_bindgen_test]
async fn rows_come_back_in_order_after_reopening() {
    fresh::start().await;
    let rows = [row("job", 10, "a"), row("job", 2, "b"), row("job", 2, "a"), row("tin", 1, "a")];
    open().await.add(&rows_of(&rows)).await.unwrap();
    let store = open().await;
    let expected =
        [row("job", 2, "a"), row("job", 2, "b"), row("job", 10, "a"), row("tin", 1, "a")];
    assert_eq!(store.all().await.unwrap(), expected);
    assert_eq!(store.book("job").await.unwrap(), expected[..3]);
    assert_eq!(store.book("jo").await.unwrap(), []);
}

#[wasm_bindgen_test]
async fn a_key_in_use_is_refused_and_nothing_of_the_set_stays() {
    fresh::start().await;
    let (one, two) = (open().await, open().await);
    one.add(&rows_of(&[row("job", 1, "a")])).await.unwrap();
    let clash = two.add(&rows_of(&[row("tin", 1, "a"), row("job", 1, "a")])).await;
    assert_eq!(clash, Err(StoreError::Taken));
    assert_eq!(one.all().await.unwrap(), [row("job", 1, "a")]);
}

#[wasm_bindgen_test]
async fn a_full_device_says_so_and_keeps_what_was_there() {
    fresh::start().await;
    let store = open().await;
    store.add(&rows_of(&[row("job", 1, "a")])).await.unwrap();
    fresh::fail_next_add("QuotaExceededError").await;
    let full = store.add(&rows_of(&[row("job", 2, "a")])).await.unwrap_err();
    assert_eq!(
        full.to_string(),
        "The device has no room left, so this was not saved. \
         Free some room, such as the photos of a finished job, then press again."
    );
    store.add(&rows_of(&[row("job", 2, "a")])).await.unwrap();
    assert_eq!(store.all().await.unwrap().len(), 2);
}

#[wasm_bindgen_test]
async fn a_lost_connection_is_opened_again_once() {
    fresh::start().await;
    let store = open().await;
    fresh::fail_next_add("InvalidStateError").await;
    store.add(&rows_of(&[row("job", 1, "a")])).await.unwrap();
    assert_eq!(store.all().await.unwrap().len(), 1);
}

#[wasm_bindgen_test]
async fn a_newer_version_in_another_tab_ends_this_one() {
    fresh::start().await;
    let told = Rc::new(Cell::new(0));
    let counted = told.clone();
    let store = Store::open(move |_| counted.set(counted.get() + 1)).await.unwrap();
    store.add(&rows_of(&[row("job", 1, "a")])).await.unwrap();
    fresh::run(
        "return new Promise((done, failed) => {
            const request = indexedDB.open('shimwright', 9);
            request.onsuccess = () => { request.result.close(); done(); };
            request.onerror = failed;
            request.onblocked = failed;
        })",
    )
    .await;
    assert_eq!(told.get(), 1);
    assert_eq!(store.add(&rows_of(&[row("job", 2, "a")])).await, Err(StoreError::Newer));
    assert_eq!(store.all().await.unwrap().len(), 1);
    // Opened anew, it is shown and takes nothing.
    let later = Store::open(|_| {}).await.unwrap();
    assert!(later.only_looks() == Some(StoreError::Newer) && !later.was_replaced());
    assert_eq!(later.all().await.unwrap().len(), 1);
    assert_eq!(later.add(&rows_of(&[row("job", 3, "a")])).await, Err(StoreError::Newer));
}

#[wasm_bindgen_test]
async fn writes_are_strictly_durable() {
    fresh::start().await;
    fresh::run(
        "const proto = IDBDatabase.prototype, transaction = proto.transaction;
         proto.transaction = function (stores, mode, options) {
            const made = transaction.call(this, stores, mode, options);
            if (mode === 'readwrite') globalThis.durability = made.durability;
            return made;
         }",
    )
    .await;
    open().await.add(&rows_of(&[row("job", 1, "a")])).await.unwrap();
    fresh::run("if (globalThis.durability !== 'strict') throw new Error(globalThis.durability)")
        .await;
}
