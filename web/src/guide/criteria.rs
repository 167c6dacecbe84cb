//! What parts are judged by: fetched once, then kept for every screen of this visit.

use std::cell::RefCell;
use std::sync::Arc;

use job::guide::Criteria;
use leptos::prelude::*;
use wasm_bindgen_futures::spawn_local;

use crate::device::fetched;

thread_local! {
    static KEPT: RefCell<Option<Arc<Vec<Criteria>>>> = const { RefCell::new(None) };
}

/// The criteria of every part; empty until they have come, and where they do not come.
pub fn criteria() -> RwSignal<Arc<Vec<Criteria>>> {
    let kept = KEPT.with_borrow(Clone::clone);
    let criteria = RwSignal::new(kept.clone().unwrap_or_default());
    if kept.is_none() {
        spawn_local(async move {
            let Ok(text) = fetched::text(Criteria::ADDRESS).await else { return };
            let Ok(read) = Criteria::parse(&text).map(Arc::new) else { return };
            KEPT.with_borrow_mut(|kept| *kept = Some(read.clone()));
            // The screen may have been left meanwhile.
            criteria.try_set(read);
        });
    }
    criteria
}
