//! Writes invented entries, with or without photos, one after the other, and says which were
//! acknowledged: for the tests that kill the browser, fill the store or open a second tab.
//!
//! `/states/writing#JOB&COUNT&BYTES`: into which job, how many, and how large a photo goes with each;
//! 0: a note without one.

use job::{BookId, Capture, Fact, Guided};
use js_sys::{Array, Uint8Array};
use leptos::prelude::*;
use wasm_bindgen_futures::spawn_local;
use web_sys::{Blob, BlobPropertyBag};

use crate::bench::{Bench, use_bench};
use crate::device::now::fresh_id;
use crate::parts::{Back, Dock, Plate, words};
use crate::storage::Photo;

/// The page that writes.
#[component]
pub fn WritingScreen() -> impl IntoView {
    let bench = use_bench();
    let (done, refused) = (RwSignal::new(0usize), RwSignal::new(String::new()));
    let hash = window().location().hash().unwrap_or_default();
    let mut words_ = hash.trim_start_matches('#').split('&').map(str::to_owned);
    let job = BookId::Job(words_.next().unwrap_or_default());
    let mut number = || words_.next().and_then(|word| word.parse().ok()).unwrap_or(0usize);
    let (count, bytes) = (number(), number());
    let book = StoredValue::new(job.clone());
    spawn_local(async move {
        open(bench, &job).await;
        for number in 0..count {
            match write(bench, &job, number, bytes).await {
                Ok(entry) => {
                    leptos::logging::log!("acknowledged {entry}");
                    done.try_update(|done| *done += 1);
                }
                Err(why) => {
                    leptos::logging::log!("refused {why}");
                    refused.try_set(why);
                    break;
                }
            }
        }
        leptos::logging::log!("ended");
    });
    let order = words(move || {
        done.track();
        bench.entries();
        let ids = |book: &job::Book| book.entries().map(|it| it.id.clone()).collect::<Vec<_>>();
        bench.with_book(&book.get_value(), ids).join("\n")
    });
    view! {
        <Plate title="Writing" subtitle="for the builders"/>
        <main class="main" id="main" tabindex="-1">
            <h1>"Invented entries are written"</h1>
            <p>
                <output id="done">{move || done.get()}</output>
            </p>
            <p role="alert" id="refused">
                {move || refused.get()}
            </p>
            <pre id="order" hidden>
                {order}
            </pre>
        </main>
        <Dock>
            <Back href="/" words="Bench"/>
        </Dock>
    }
}

async fn open(bench: Bench, job: &BookId) {
    let fact = Fact::JobOpened {
        boat: "Invented, for a test".to_owned(),
        complaint: String::new(),
        sheet: "none".to_owned(),
        number: 1,
    };
    // Another tab may have opened it before.
    bench.record(vec![(job.clone(), fact)]).await.ok();
}

async fn write(bench: Bench, job: &BookId, number: usize, bytes: usize) -> Result<String, String> {
    // A note, or what a step captured.
    let (fact, photos) = match bytes {
        0 => (Fact::NoteWritten { text: format!("Invented note {number}.") }, Vec::new()),
        bytes => {
            let picture = picture(bytes).ok_or("The browser made no picture.")?;
            let photo = Photo { id: fresh_id(), picture };
            let value = Capture::Photo(photo.id.clone());
            let (step, label) = ("b10a".to_owned(), format!("invented {number}"));
            (Guided::Captured { step, label, value }.into(), vec![photo])
        }
    };
    let names: Vec<String> = photos.iter().map(|photo| photo.id.clone()).collect();
    let entries = bench.record_with(vec![(job.clone(), fact)], photos).await;
    let entries = entries.map_err(|why| why.to_string())?;
    Ok([entries, names].concat().join(" "))
}

/// Bytes that pass for a JPEG, of no pattern that a store could make smaller.
fn picture(bytes: usize) -> Option<Blob> {
    let mut seed = 0x2545_F491_u32;
    let mut noise = vec![0xFF, 0xD8, 0xFF, 0xE0];
    noise.extend((0..bytes).map(|_| {
        seed ^= seed << 13;
        seed ^= seed >> 17;
        seed ^= seed << 5;
        (seed >> 8) as u8
    }));
    let kind = BlobPropertyBag::new();
    kind.set_type("image/jpeg");
    let parts = Array::of1(&Uint8Array::from(noise.as_slice()));
    Blob::new_with_u8_array_sequence_and_options(&parts, &kind).ok()
}
