//! The photos of a record: shown from the store, or written into the file.

use std::collections::BTreeMap;
use std::sync::{Arc, Mutex};

use job::RecordPhoto;
use job::files::Picture;
use js_sys::Uint8Array;
use leptos::prelude::*;
use wasm_bindgen_futures::{JsFuture, spawn_local};
use web_sys::Url;

use crate::bench::{Bench, use_bench};

/// Addresses of photos as they come from the store, for as long as they are shown.
#[derive(Clone, Copy)]
pub struct Shots {
    addresses: RwSignal<BTreeMap<String, String>>,
}

impl Shots {
    /// The photos of a record; they go with what shows them.
    pub fn of(photos: &[RecordPhoto]) -> Shots {
        let (bench, addresses) = (use_bench(), RwSignal::new(BTreeMap::new()));
        // None once they are no longer shown.
        let made = Arc::new(Mutex::new(Some(Vec::new())));
        let gone = made.clone();
        on_cleanup(move || {
            let made = gone.lock().ok().and_then(|mut made| made.take());
            made.iter().flatten().for_each(|address: &String| revoke(address));
        });
        let ids: Vec<String> = photos.iter().map(|photo| photo.id.clone()).collect();
        spawn_local(async move {
            let mut found = BTreeMap::new();
            for id in ids {
                let Ok(Some(picture)) = bench.photo(&id).await else { continue };
                let Ok(address) = Url::create_object_url_with_blob(&picture) else { continue };
                match made.lock().as_deref_mut() {
                    Ok(Some(made)) => made.push(address.clone()),
                    _ => return revoke(&address),
                }
                found.insert(id, address);
            }
            addresses.try_set(found);
        });
        Shots { addresses }
    }

    /// Where a photo is; followed.
    pub fn address(self, id: &str) -> Option<String> {
        self.addresses.with(|it| it.get(id).cloned())
    }
}

fn revoke(address: &str) {
    // An address that is not known any more does no harm.
    Url::revoke_object_url(address).ok();
}

/// Each photo as an address that holds it; those that are not on this device are left out.
pub async fn held(bench: Bench, photos: &[RecordPhoto]) -> BTreeMap<String, String> {
    let mut held = BTreeMap::new();
    for RecordPhoto { id, .. } in photos {
        let Ok(Some(picture)) = bench.photo(id).await else { continue };
        let Ok(bytes) = JsFuture::from(picture.array_buffer()).await else { continue };
        let picture = Picture { id: id.clone(), bytes: Uint8Array::new(&bytes).to_vec() };
        held.extend(picture.address().map(|address| (id.clone(), address)));
    }
    held
}
