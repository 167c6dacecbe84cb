//! A clean start for each test: they share one origin.

use js_sys::{Function, Promise};
use wasm_bindgen::JsValue;
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

/// Runs a script and waits for it.
pub async fn run(script: &str) {
    give(&format!("return (async () => {{ {script} }})()")).await;
}

/// Runs a script and waits for what it returns.
pub async fn give(script: &str) -> JsValue {
    let returned = Function::new_no_args(script).call0(&JsValue::NULL).unwrap();
    JsFuture::from(Promise::resolve(&returned)).await.unwrap()
}
