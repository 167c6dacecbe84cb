//! A clean start for each test: they share one origin.

use js_sys::{Function, Promise};
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::JsFuture;

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

/// Runs a script and waits for what it returns.
pub async fn run(script: &str) {
    let returned = Function::new_no_args(script).call0(&wasm_bindgen::JsValue::NULL).unwrap();
    if let Some(promise) = returned.dyn_ref::<Promise>() {
        JsFuture::from(promise.clone()).await.unwrap();
    }
}
