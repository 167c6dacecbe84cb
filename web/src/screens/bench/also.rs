//! What else is here: practice, settings and backup; and that everything is saved.

use job::apart;
use job::files::since_backup;
use leptos::prelude::*;
use words::{say, t};

use super::practice::Practice;
use crate::bench::export::last_backup;
use crate::bench::use_bench;
use crate::device::now::{use_now, utc_offset_minutes};
use crate::parts::{Glyph, Icon, Row, words};

/// The ways on that belong to no job.
#[component]
pub fn AlsoHere() -> impl IntoView {
    let (bench, now) = (use_bench(), use_now());
    let backup = words(move || {
        let last = last_backup().map(|last| (last.at, last.entries));
        let told = since_backup(last, bench.entries(), now.get());
        format!("{} {}", told.when, told.since)
    });
    view! {
        <div class="sheet sheet--quiet">
            <h2>{t("Also here")}</h2>
            <Row title=t("Practice unit") note=t("hidden faults, told why") href="/practice">
                <Icon glyph=Glyph::Go/>
            </Row>
            <Practice/>
            <Row title=t("Find a job") note=t("by boat, unit, day or tag; the archive too") href="/find">
                <Icon glyph=Glyph::Go/>
            </Row>
            <Row title=t("Shop board") note=t("a lane for each job, for the kiosk") href="/board">
                <Icon glyph=Glyph::Go/>
            </Row>
            <Row title=t("Settings and backup") note=backup href="/settings">
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
        let in_jobs = bench.every_job().first().map(|job| job.last_at);
        let at = bench.saved_at().or(in_jobs)?;
        let when = apart(at, now.get(), utc_offset_minutes(at));
        Some(say!("Saved on this device at {when}. Works with no signal."))
    };
    view! { <p class="small">{saved}</p> }
}
