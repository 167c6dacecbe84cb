//! The backup: one file with everything in it.

use job::{date, hour_minute};
use leptos::prelude::*;

use crate::bench::export::{Exported, last_export};
use crate::bench::use_bench;
use crate::device::now::utc_offset_minutes;
use crate::parts::{Facts, Glyph, Notice};
use crate::storage::StoreError;

/// What came of the last press.
pub type Outcome = Option<Result<Exported, StoreError>>;

/// When the last backup was made, and what has been written since.
#[component]
pub fn Backup(
    /// What came of the last press, if there was one.
    outcome: Signal<Outcome>,
) -> impl IntoView {
    let bench = use_bench();
    let last = Memo::new(move |_| match outcome.get() {
        Some(Ok(made)) => Some(made),
        _ => last_export(),
    });
    let facts = move || {
        let (when, in_it) = match last.get() {
            Some(last) => (moment(last.at), last.entries.to_string()),
            None => ("none known".to_owned(), "0".to_owned()),
        };
        let here = bench.entries().to_string();
        let facts = vec![("Last backup", when), ("Entries in it", in_it), ("Entries here", here)];
        view! { <Facts facts/> }
    };
    let refused = move || {
        let why = outcome.get()?.err()?.to_string();
        Some(view! { <Notice glyph=Glyph::Warn title="No backup was made." words=why due=true/> })
    };
    let made = move || outcome.get()?.ok().map(|made| format!("Saved: {}.", made.name));
    let unread = Memo::new(move |_| bench.unread());
    let newer = move || {
        let words = format!("{} cannot be shown here. They are kept and backed up.", unread.get());
        let title = "Some entries are from a newer version.";
        (unread.get() != 0).then(|| view! { <Notice glyph=Glyph::New title words/> })
    };
    view! {
        <div class="sheet">
            <h2>"Backup"</h2>
            <div role="status">
                {refused}
                <p>{made}</p>
            </div>
            {facts}
            {newer}
            <p class="small">
                "A backup is one file with everything in it. Keep one off this device."
            </p>
        </div>
    }
}

fn moment(at: i64) -> String {
    let offset = utc_offset_minutes(at);
    format!("{}, {}", date(at, offset), hour_minute(at, offset))
}
