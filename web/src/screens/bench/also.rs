//! What else is here: practice, settings and backup; and that everything is saved.

use job::{ago, apart};
use leptos::prelude::*;

use super::practice::Practice;
use crate::bench::export::last_export;
use crate::bench::use_bench;
use crate::device::now::{use_now, utc_offset_minutes};
use crate::parts::{Glyph, Icon, Row};

/// The ways on that belong to no job.
#[component]
pub fn AlsoHere() -> impl IntoView {
    let now = use_now();
    let backup = Signal::derive(move || match last_export() {
        Some(last) => format!("last backup {}", ago(last.at, now.get())),
        None => "no backup known".to_owned(),
    });
    view! {
        <div class="sheet sheet--quiet">
            <h2>"Also here"</h2>
            <Practice/>
            <Row title="Settings and backup" note=backup href="/settings">
                <Icon glyph=Glyph::Go/>
            </Row>
        </div>
    }
}

/// When something was saved last.
#[component]
pub fn Saved() -> impl IntoView {
    let (bench, now) = (use_bench(), use_now());
    let saved = move || {
        let in_jobs = bench.jobs().first().map(|job| job.last_at);
        let at = bench.saved_at().or(in_jobs)?;
        let when = apart(at, now.get(), utc_offset_minutes(at));
        Some(format!("Saved on this device at {when}. Works with no signal."))
    };
    view! { <p class="small">{saved}</p> }
}
