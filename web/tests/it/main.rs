//! What needs a browser, in a browser: the store, what may be lost, and the bench over both.
#![cfg(target_arch = "wasm32")]
// Clippy knows `#[test]` for a test, and not what the browser's runner calls one.
#![allow(clippy::unwrap_used, clippy::panic)]

mod bench;
mod bring;
mod draft;
mod fresh;
mod photo;
mod secret;
mod storage;
mod typing;

wasm_bindgen_test::wasm_bindgen_test_configure!(run_in_browser);
