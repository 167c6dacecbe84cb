//! A clean start for each test: they share one origin.

use js_sys::{Function, Promise};
use leptos::prelude::*;
use shimwright_web::address::Screen;
use shimwright_web::bench::{Bench, Opened};
use shimwright_web::storage::{Batch, Row};
use wasm_bindgen::JsValue;
use wasm_bindgen_futures::JsFuture;

/// Rows to be added together.
pub fn rows_of(rows: &[Row]) -> Batch {
    Batch { rows: rows.to_vec(), ..Batch::default() }
}

/// A bench over the store, as a tab has it, once it knows its books. The owner must live as long as
/// the bench is used.
pub async fn tab() -> (Owner, Bench) {
    let opened = Opened::read().await.unwrap();
    let owner = Owner::new();
    let bench = owner.with(|| Bench::new(opened));
    until(|| untrack(|| bench.is_open_for(&Screen::Settings))).await;
    (owner, bench)
}

/// Looks at a job, as its screens do, until its books are read.
pub async fn opened(bench: Bench, job: &str) {
    let screen = Screen::of(&format!("/job/{job}"));
    until(|| untrack(|| bench.is_open_for(&screen))).await;
}

/// Until something that another task does has come.
pub async fn until(holds: impl Fn() -> bool) {
    for _ in 0..100 {
        if holds() {
            return;
        }
        run("return new Promise((done) => setTimeout(done, 10))").await;
    }
    panic!("nothing came within a second");
}

/// Deletes the database and everything in localStorage.
pub async fn start() {
    run("return new Promise((done, failed) => {
            localStorage.clear();
            const request = indexedDB.deleteDatabase('shimwright');
            request.onsuccess = done;
            request.onerror = failed;
        })")
    .await;
}

/// Makes the next `add` of the browser's store throw what a full or failing device throws.
pub async fn fail_next_add(name: &str) {
    run(&format!(
        "const proto = IDBObjectStore.prototype, add = proto.add;
         proto.add = function () {{ proto.add = add; throw new DOMException('simulated', '{name}'); }};"
    ))
    .await;
}

/// Runs a script and waits for it.
pub async fn run(script: &str) {
    give(&format!("return (async () => {{ {script} }})()")).await;
}

/// Runs a script and waits for what it returns.
pub async fn give(script: &str) -> JsValue {
    let returned = Function::new_no_args(script).call0(&JsValue::NULL).unwrap();
    JsFuture::from(Promise::resolve(&returned)).await.unwrap()
}
