//! Small texts that may be lost: the browser writes them out late and may forget the last half
//! minute. Nothing a job stands on goes here.

use gloo_storage::{LocalStorage, Storage};

/// Put before every key, so that other pages of the same origin are left alone.
const PREFIX: &str = "shimwright.";

thread_local! {
    /// Asked once: touching storage that the browser blocks stops the app.
    static OPEN: bool = web_sys::window().is_some_and(|window| matches!(window.local_storage(), Ok(Some(_))));
}

/// True where the browser allows this page small storage.
pub fn open() -> bool {
    OPEN.with(|open| *open)
}

/// What was kept under a key, if it is there and readable.
pub fn read(key: &str) -> Option<String> {
    if !open() {
        return None;
    }
    LocalStorage::get(format!("{PREFIX}{key}")).ok()
}

/// Keeps a text under a key, as far as the browser does.
pub fn write(key: &str, text: &str) {
    if open() {
        // It may be lost by definition, also at once.
        LocalStorage::set(format!("{PREFIX}{key}"), text).ok();
    }
}

/// Forgets a key.
pub fn forget(key: &str) {
    if open() {
        LocalStorage::delete(format!("{PREFIX}{key}"));
    }
}
