//! Find: a job by what is known of it, those in the archive too.

use std::sync::Arc;
use words::{say, t};

use job::{JobSummary, date};
use leptos::prelude::*;

use crate::bench::{Bench, use_bench};
use crate::device::now::{now, utc_offset_minutes};
use crate::page;
use crate::parts::{Act, Back, Dock, Glyph, Icon, Plate, Row, TextField, live, words};

/// Jobs shown at first, and more on each press.
const SOME: usize = 20;

/// Find.
#[component]
pub fn FindScreen() -> impl IntoView {
    let (bench, typed, count) = (use_bench(), RwSignal::new(String::new()), RwSignal::new(SOME));
    let found = Memo::new(move |_| typed.with(|typed| found(bench, typed)));
    let told = words(move || counted(found.with(Vec::len), bench.every_job().len()));
    page::title(Signal::stored(t("Find a job").to_owned()));
    view! {
        <Plate title=t("Find a job") subtitle=t("Those in the archive too")/>
        <main class="main" id="main" tabindex="-1">
            <h1 class="vh">{t("Find a job")}</h1>
            <div class="sheet">
                <TextField
                    id="find"
                    label=t("Boat, unit, number, day or tag")
                    value=typed
                    placeholder=t("heron may")
                />
                <p class="small" role="status">
                    {told}
                </p>
                {live(move || rows(bench, found, count.get()))}
                <Show when=move || { found.with(Vec::len) > count.get() }>
                    <button
                        class="btn btn--wide"
                        type="button"
                        on:click=move |_| count.update(|count| *count += SOME)
                    >
                        {t("Show more")}
                    </button>
                </Show>
            </div>
        </main>
        <Dock>
            <Back href="/" words=t("Bench")/>
            <Act words=t("New job") href="/new-job"/>
        </Dock>
    }
}

fn found(bench: Bench, typed: &str) -> Vec<Arc<JobSummary>> {
    let offset = utc_offset_minutes(now());
    let jobs = bench.every_job().into_iter();
    jobs.filter(|job| job.has_words(typed, &bench.unit(&job.sheet), offset)).collect()
}

fn counted(found: usize, all: usize) -> String {
    match (found, all) {
        (_, 0) => t("No job on this device yet").to_owned(),
        (0, _) => t("No job has all of these words. Type fewer, or a part of one.").to_owned(),
        (1, 1) => t("1 job").to_owned(),
        (found, all) if found == all => say!("{all} jobs"),
        (found, all) => say!("{found} of {all} jobs"),
    }
}

fn rows(bench: Bench, found: Memo<Vec<Arc<JobSummary>>>, count: usize) -> AnyView {
    let row = |job: &Arc<JobSummary>| {
        let (title, href) = (job.boat.clone(), format!("/job/{}", job.id));
        view! {
            <Row title=title note=about(bench, job) href=href>
                <Icon glyph=Glyph::Go/>
            </Row>
        }
    };
    found.with(|found| found.iter().take(count).map(row).collect_view()).into_any()
}

/// "Job 27 · Twin prop, invented · 12 May 2026 · whine · in the archive".
fn about(bench: Bench, job: &JobSummary) -> String {
    let opened = date(job.opened_at, utc_offset_minutes(job.opened_at));
    let known = [say!("Job {}", job.number), bench.unit(&job.sheet), opened];
    let archived = job.archived.then(|| "in the archive".to_owned());
    let all = known.into_iter().chain(job.tags.iter().cloned()).chain(archived);
    all.filter(|part| !part.is_empty()).collect::<Vec<_>>().join(" · ")
}
