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

/// The keys under which something was kept that begin so.
pub fn keys(start: &str) -> Vec<String> {
    if !open() {
        return Vec::new();
    }
    let raw = LocalStorage::raw();
    let all = (0..LocalStorage::length()).filter_map(|at| raw.key(at).ok().flatten());
    let own = all.filter_map(|key| key.strip_prefix(PREFIX).map(str::to_owned));
    own.filter(|key| key.starts_with(start)).collect()
}

/// Forgets a key.
pub fn forget(key: &str) {
    if open() {
        LocalStorage::delete(format!("{PREFIX}{key}"));
    }
}
