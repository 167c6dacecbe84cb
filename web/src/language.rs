//! The language of the screen: what is learnt of it, and when.
//!
//! The words of the first page come with it, the others behind it, as its code does. A catalogue
//! that does not come leaves English standing, which is never wrong; the worker keeps them all, so
//! that can only be before the app is kept on the device.

use std::cell::RefCell;

use js_sys::Promise;
use leptos::prelude::*;
use wasm_bindgen::JsValue;
use wasm_bindgen_futures::{JsFuture, future_to_promise};

use crate::device::fetched;
use crate::prefs::Language;

/// What the first page needs, and what comes behind it.
const FIRST: &[&str] = &["door"];
const REST: &[&str] = &["app", "steps"];

thread_local! {
    /// What is on its way or has come, so that nobody asks twice.
    static ASKED: RefCell<Vec<(&'static str, Promise)>> = const { RefCell::new(Vec::new()) };
}

/// Learns the words of the first page.
pub async fn learn_first() {
    learn(FIRST).await;
    if let Some(page) = document().document_element() {
        // Refused, the page is read aloud in the wrong voice; nothing else hangs on it.
        page.set_attribute("lang", words::language()).ok();
    }
}

/// Learns the words of all that is behind the first page.
pub async fn learn_rest() {
    learn(REST).await;
}

async fn learn(parts: &'static [&'static str]) {
    let Some(language) = chosen() else { return };
    let asked: Vec<Promise> = parts.iter().map(|part| asked(language, part)).collect();
    for part in asked {
        // It says nothing, whether it came or not.
        JsFuture::from(part).await.ok();
    }
}

fn asked(language: &'static str, part: &'static str) -> Promise {
    let known = ASKED.with_borrow(|asked| asked.iter().find(|(it, _)| *it == part).cloned());
    known.map(|(_, promise)| promise).unwrap_or_else(|| {
        let promise = future_to_promise(async move {
            if let Ok(text) = fetched::text(&format!("/words/{language}-{part}.txt")).await {
                // A torn file leaves English standing, as one that does not come.
                words::learn(&text).ok();
            }
            Ok(JsValue::UNDEFINED)
        });
        ASKED.with_borrow_mut(|asked| asked.push((part, promise.clone())));
        promise
    })
}

/// The language besides English that is wanted: the one chosen here, or else the device’s.
fn chosen() -> Option<&'static str> {
    match Language::kept_here() {
        Language::English => None,
        Language::Spanish => Some("es"),
        Language::Device => {
            let device = window().navigator().language().unwrap_or_default();
            device.starts_with("es").then_some("es")
        }
    }
}
