//! The bench checks of a job: what there is, and what was kept last.

use job::apart;
use job::instrument::{ALL, Instrument};
use leptos::prelude::*;
use words::{say, t};

use crate::device::now::{use_now, utc_offset_minutes};
use crate::parts::live;
use crate::screens::frame::{Here, JobScreen, OpenJob};

/// The screen.
pub fn screen(of: OpenJob) -> AnyView {
    view! {
        <JobScreen of here=Here::Checks back=(of.at_job(), t("Job")) act=|| ().into_any()>
            <div class="head">
                <h1>{t("Bench checks")}</h1>
                <p>{t("Each opens from its step too. The last one kept counts; all stand in the book.")}</p>
            </div>
            <div class="sheet">{ALL.iter().map(|it| row(of, it)).collect_view()}</div>
        </JobScreen>
    }
    .into_any()
}

fn row(of: OpenJob, instrument: &'static Instrument) -> AnyView {
    let now = use_now();
    let kept = live(move || {
        let last =
            of.look(|(job, ..), _| job.guide.last_check(instrument.kind).map(|it| it.mark.at));
        let now = now.get();
        let words = match last.flatten() {
            Some(at) => say!("Kept {}", apart(at, now, utc_offset_minutes(now))),
            None => instrument.purpose().to_owned(),
        };
        words.into_any()
    });
    view! {
        <div class="row">
            <p>
                <b>{instrument.title()}</b>
                <br/>
                <span class="dim">{kept}</span>
            </p>
            <a class="btn" href=of.at(&format!("check/{}", instrument.kind))>
                {t("Open")}
                <span class="vh">{instrument.title()}</span>
            </a>
        </div>
    }
    .into_any()
}
