//! What comes in from a file is kept whole or not at all, and can be lifted out again.

use job::files::Coming;
use job::{BookId, Fact};
use leptos::prelude::*;
use shimwright_web::bench::Opened;
use shimwright_web::storage::{Photo, Store, StoreError};
use wasm_bindgen::JsCast;
use wasm_bindgen_test::wasm_bindgen_test;

use crate::fresh::{self, tab};

fn line(n: u64, device: &str, fact: &str) -> Coming {
    Coming::from_line(&format!(
        r#"{{"v":1,"book":"job:j","id":"{device}{n}.0","n":{n},"device":"{device}","at":0,"fact":{fact}}}"#
    ))
}

fn opened() -> Coming {
    line(1, "a", r#"{"job-opened":{"boat":"Invented","complaint":"","sheet":"s","number":1}}"#)
}

fn note(n: u64, device: &str, text: &str) -> Coming {
    line(n, device, &format!(r#"{{"note-written":{{"text":"{text}"}}}}"#))
}

async fn photo(id: &str) -> Photo {
    let picture = fresh::give("return new Blob(['x'])").await.unchecked_into();
    Photo { id: id.to_owned(), picture }
}

fn written(text: &str) -> (BookId, Fact) {
    (BookId::Job("j".to_owned()), Fact::NoteWritten { text: text.to_owned() })
}

#[wasm_bindgen_test]
async fn it_is_kept_with_its_photos_and_the_same_again_changes_nothing() {
    fresh::start().await;
    let (_owner, bench) = tab().await;
    // Two lines of one place, and lines of no place at all.
    let strange = ["not JSON", "nor this"].map(Coming::from_line);
    let coming = [&[opened(), note(2, "a", "one"), note(2, "a", "other")][..], &strange].concat();
    let brought = bench.bring(&coming, &[], vec![photo("p").await]).await.unwrap();
    assert_eq!(brought.entries(), 5);
    assert_eq!((bench.entries(), bench.unread()), (5, 2));
    assert!(bench.photo("p").await.unwrap().is_some());
    assert_eq!(bench.compare(&coming).await.unwrap().fresh, []);
    let again = bench.bring(&coming, &[], vec![photo("p").await]).await.unwrap();
    assert_eq!(again.entries(), 0);
    let store = Store::open(|_| {}).await.unwrap();
    assert_eq!(store.count().await.unwrap(), 5);
}

#[wasm_bindgen_test]
async fn it_is_lifted_out_as_long_as_nothing_was_written_on_top() {
    fresh::start().await;
    let (_owner, bench) = tab().await;
    bench.bring(&[opened()], &[], Vec::new()).await.unwrap();
    bench.record(vec![written("mine")]).await.unwrap();
    bench.bring(&[note(7, "b", "theirs")], &[], vec![photo("p").await]).await.unwrap();
    bench.lift_out().await.unwrap();
    assert_eq!(bench.entries(), 2);
    assert!(bench.photo("p").await.unwrap().is_none());
    bench.bring(&[note(7, "b", "theirs")], &[], Vec::new()).await.unwrap();
    bench.record(vec![written("on top")]).await.unwrap();
    assert_eq!(bench.lift_out().await, Err(StoreError::Taken));
    assert_eq!(bench.entries(), 4);
}

#[wasm_bindgen_test]
async fn what_the_store_does_not_take_is_not_there_in_part() {
    fresh::start().await;
    let (_owner, bench) = tab().await;
    fresh::fail_next_add("QuotaExceededError").await;
    let refused = bench.bring(&[opened(), note(2, "a", "one")], &[], Vec::new()).await;
    assert_eq!(refused.err().map(|why| why.to_string()), Some(StoreError::Full.to_string()));
    assert_eq!(bench.entries(), 0);
    assert_eq!(Store::open(|_| {}).await.unwrap().count().await.unwrap(), 0);
}

#[wasm_bindgen_test]
async fn a_judgement_is_kept_with_what_it_is_about() {
    fresh::start().await;
    let (_owner, bench) = tab().await;
    bench.bring(&[opened()], &[], Vec::new()).await.unwrap();
    let theirs = note(5, "b", "theirs");
    let judged = Fact::EntryRetracted { entry: "b5.0".to_owned(), why: "ours stands".to_owned() };
    let judged = [(BookId::Job("j".to_owned()), judged)];
    let brought = bench.bring(&[theirs], &judged, Vec::new()).await.unwrap();
    assert_eq!(brought.entries(), 2);
    fresh::opened(bench, "j").await;
    let job = untrack(|| bench.job("j").get()).unwrap();
    assert!(job.notes.is_empty());
    assert_eq!(bench.entries(), 3);
}

#[wasm_bindgen_test]
async fn a_store_that_was_cleared_is_told_from_a_new_device() {
    fresh::start().await;
    assert!(Opened::read().await.unwrap().is_new());
    let (_owner, bench) = tab().await;
    bench.bring(&[opened()], &[], Vec::new()).await.unwrap();
    fresh::run(
        "const base = await new Promise((done) => {
            const request = indexedDB.open('shimwright');
            request.onsuccess = () => done(request.result);
         });
         await new Promise((done) => {
            const cleared = base.transaction('entries', 'readwrite');
            cleared.objectStore('entries').clear();
            cleared.oncomplete = done;
         });
         base.close();",
    )
    .await;
    assert!(!Opened::read().await.unwrap().is_new());
}
