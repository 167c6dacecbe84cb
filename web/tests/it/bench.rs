//! The bench: admitted, stored, then shown; two tabs; what it cannot read; undo.

use job::{BookId, Fact};
use leptos::prelude::*;
use shimwright_web::bench::Bench;
use shimwright_web::parts::Standing;
use shimwright_web::storage::{Row, Store};
use wasm_bindgen_test::wasm_bindgen_test;

use crate::fresh::{self, opened, rows_of, tab, until};

fn open_job(id: &str) -> (BookId, Fact) {
    let fact = Fact::JobOpened {
        boat: "Demo boat".to_owned(),
        complaint: String::new(),
        sheet: "demo".to_owned(),
        number: 1,
    };
    (BookId::Job(id.to_owned()), fact)
}

fn note(id: &str, text: &str) -> (BookId, Fact) {
    (BookId::Job(id.to_owned()), Fact::NoteWritten { text: text.to_owned() })
}

fn notes(bench: Bench, id: &str) -> Vec<String> {
    let job = untrack(|| bench.job(id).get());
    job.map(|job| job.notes.clone()).unwrap_or_default()
}

#[wasm_bindgen_test]
async fn what_is_written_is_there_after_reopening() {
    fresh::start().await;
    let (_owner, bench) = tab().await;
    assert!(untrack(|| bench.is_empty()));
    let ids = bench.record(vec![open_job("a"), note("a", "first")]).await.unwrap();
    assert_eq!(ids.len(), 2);
    assert!(untrack(|| bench.saved_at()).is_some());

    let (_owner, again) = tab().await;
    opened(again, "a").await;
    assert_eq!(notes(again, "a"), ["first"]);
    assert_eq!(untrack(|| again.jobs().len()), 1);
}

#[wasm_bindgen_test]
async fn what_a_book_does_not_admit_is_not_written_at_all() {
    fresh::start().await;
    let (_owner, bench) = tab().await;
    let refused = bench.record(vec![open_job("a"), note("b", "never opened")]).await.unwrap_err();
    assert_eq!(refused.to_string(), "Not begun yet. Give it a name first.");
    assert!(untrack(|| bench.is_empty()));
    assert_eq!(Store::open(|_| {}).await.unwrap().count().await, Ok(0));
}

#[wasm_bindgen_test]
async fn a_full_device_shows_nothing_as_written_and_loses_nothing() {
    fresh::start().await;
    let (_owner, bench) = tab().await;
    bench.record(vec![open_job("a"), note("a", "first")]).await.unwrap();
    fresh::fail_next_add("QuotaExceededError").await;
    let full = bench.record(vec![note("a", "second")]).await.unwrap_err();
    assert!(full.to_string().starts_with("The device has no room left"), "{full}");
    assert_eq!(notes(bench, "a"), ["first"]);
    bench.record(vec![note("a", "second")]).await.unwrap();
    assert_eq!(notes(bench, "a"), ["first", "second"]);
}

#[wasm_bindgen_test]
async fn two_acts_under_way_at_once_are_both_kept() {
    fresh::start().await;
    let (_owner, bench) = tab().await;
    bench.record(vec![open_job("a")]).await.unwrap();
    // Both are numbered from the same book; the second finds its number taken.
    let acts = js_sys::Array::new();
    for text in ["one", "two"] {
        acts.push(&wasm_bindgen_futures::future_to_promise(async move {
            bench.record(vec![note("a", text)]).await.unwrap();
            Ok(wasm_bindgen::JsValue::NULL)
        }));
    }
    wasm_bindgen_futures::JsFuture::from(js_sys::Promise::all(&acts)).await.unwrap();
    assert_eq!(notes(bench, "a"), ["one", "two"]);
}

#[wasm_bindgen_test]
async fn two_tabs_that_write_the_same_number_both_keep_their_entry() {
    fresh::start().await;
    let (_one, one) = tab().await;
    one.record(vec![open_job("a")]).await.unwrap();
    let (_two, two) = tab().await;
    // The second tab has not heard of the first one's note when it writes its own.
    one.record(vec![note("a", "one")]).await.unwrap();
    two.record(vec![note("a", "two")]).await.unwrap();
    assert_eq!(notes(two, "a"), ["one", "two"]);
    until(|| notes(one, "a") == ["one", "two"]).await;
    assert_eq!(Store::open(|_| {}).await.unwrap().count().await, Ok(3));
}

#[wasm_bindgen_test]
async fn what_cannot_be_read_is_kept_counted_and_not_in_the_way() {
    fresh::start().await;
    let row = |book: &str, line: &str| Row {
        book: book.to_owned(),
        counter: 1,
        device: "newer".to_owned(),
        line: line.to_owned(),
    };
    let newer = [row("job:a", "{\"v\":99,\"n\":1,\"device\":\"newer\"}"), row("photo:x", "…")];
    Store::open(|_| {}).await.unwrap().add(&rows_of(&newer)).await.unwrap();
    let (_owner, bench) = tab().await;
    assert_eq!(untrack(|| bench.unread()), 2);
    assert_eq!(untrack(|| bench.entries()), 2);
    bench.record(vec![open_job("a")]).await.unwrap();
    assert_eq!(untrack(|| bench.entries()), 3);
}

#[wasm_bindgen_test]
async fn the_last_act_is_taken_back_and_put_back() {
    fresh::start().await;
    let (_owner, bench) = tab().await;
    let standing = || untrack(|| bench.last()).map(|last| last.standing);
    bench.record(vec![open_job("a")]).await.unwrap();
    assert_eq!(standing(), None, "an opening stays");
    bench.record(vec![note("a", "first"), note("a", "second")]).await.unwrap();
    assert_eq!(standing(), Some(Standing::Kept));
    bench.turn_last().await.unwrap();
    assert_eq!((notes(bench, "a").len(), standing()), (0, Some(Standing::TakenBack)));
    bench.turn_last().await.unwrap();
    assert_eq!(notes(bench, "a"), ["first", "second"]);
    assert_eq!(standing(), Some(Standing::Kept));
}

#[wasm_bindgen_test]
async fn a_store_that_does_not_answer_is_said_until_it_does() {
    fresh::start().await;
    let (_owner, bench) = tab().await;
    bench.record(vec![open_job("a")]).await.unwrap();
    // A write that the browser lets stand: asked something again and again, it does not end.
    fresh::run(
        "const proto = IDBDatabase.prototype, begin = proto.transaction;
         globalThis.hold = true;
         proto.transaction = function (stores, mode, options) {
            const made = begin.call(this, stores, mode, options);
            if (mode === 'readwrite' && this.name === 'shimwright') {
                const again = () => {
                    if (globalThis.hold) made.objectStore('entries').count().onsuccess = again;
                };
                again();
                proto.transaction = begin;
            }
            return made;
         }",
    )
    .await;
    let writing = wasm_bindgen_futures::future_to_promise(async move {
        bench.record(vec![note("a", "held up")]).await.unwrap();
        Ok(wasm_bindgen::JsValue::NULL)
    });
    for _ in 0..11 {
        fresh::run("return new Promise((done) => setTimeout(done, 1000))").await;
    }
    let said = untrack(|| bench.trouble()).unwrap();
    assert!(said.starts_with("The store has not answered for ten seconds"), "{said}");
    assert!(notes(bench, "a").is_empty());
    fresh::run("globalThis.hold = false").await;
    wasm_bindgen_futures::JsFuture::from(writing).await.unwrap();
    assert_eq!(notes(bench, "a"), ["held up"]);
    assert_eq!(untrack(|| bench.trouble()), None);
}
