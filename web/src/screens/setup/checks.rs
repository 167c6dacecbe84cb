//! The checks in the order of work: band, verdict, and why it stands as it does.

use job::{CheckView, Figure, SetUp, figure};
use leptos::prelude::*;
use words::{say, t};

use super::Fitting;
use crate::parts::{Bar, Caution, Gate, State, live};
use crate::pictures::Picture;
use crate::screens::frame::OpenJob;
use crate::screens::told::{self, Lacks};
use crate::shown::writing;

/// The checks, and the gate they guard.
#[component]
pub fn Checks(fitting: Fitting) -> impl IntoView {
    let rows = live(move || {
        let rows =
            |told: &SetUp| told.checks.iter().map(|check| row(fitting.of, check)).collect_view();
        fitting.look(rows).into_any()
    });
    view! {
        <div class="sheet">
            <h2>{t("Checks")}</h2>
            {rows}
            {live(move || fitting.look(gate).into_any())}
        </div>
        {live(move || fitting.look(cautions).into_any())}
    }
}

fn row(of: OpenJob, check: &CheckView) -> AnyView {
    let shown = of.shown();
    let tag = check.position.map(|position| position.slot.tag());
    let picture = told::band(check, shown).map(|band| {
        let drawing = band.small(writing(check.check.figure(), shown));
        view! { <Picture drawing/> }
    });
    let says = (!check.says.is_empty() && check.missing.is_none()).then(|| {
        view! { <p class="dim">{check.says.clone()}</p> }
    });
    let read = of.at(&format!("read/{}", check.check.id()));
    view! {
        <div class="row">
            <p>
                <a class="named" href=read>
                    <b>{check.check.name()}</b>
                </a>
                " "
                <span class="dim">{tag}</span>
            </p>
            <State sign=told::sign(&check.state) words=told::verdict(check, shown)/>
            <div class="span">
                {picture}
                {says}
                {from_sheet(check, of)}
                {check.missing.clone().map(|missing| view! { <Lacks of missing/> })}
            </div>
        </div>
    }
    .into_any()
}

/// Where the limits come from: "Limits 0.20–0.35 at 22.0 mm: own manual, p. 118."
fn from_sheet(check: &CheckView, of: OpenJob) -> Option<AnyView> {
    let (band, source) = (check.sheet_band?, check.source.as_ref()?);
    let shown = of.shown();
    let limit = |value| figure(value, check.check.figure(), shown);
    let radius = check
        .sheet_radius
        .map(|radius| say!(" at {} {}", figure(radius, Figure::Radius, shown), shown.units.length));
    let words = format!(
        "{}–{}{}: {source}",
        limit(band.low()),
        limit(band.high()),
        radius.unwrap_or_default(),
    );
    Some(view! { <p class="small">{words}</p> }.into_any())
}

fn gate(told: &SetUp) -> AnyView {
    let (bar, title) = match (told.gate.is_open, told.gate.is_stale) {
        (true, _) => (Bar::Open, t("Open.")),
        (false, true) => (Bar::Stale, t("Stale.")),
        (false, false) => (Bar::Shut, t("Shut.")),
    };
    view! { <Gate bar title words=told.gate.sentence.clone()/> }.into_any()
}

fn cautions(told: &SetUp) -> AnyView {
    let caution = |words: &String| {
        view! { <Caution title=t("Before you trust it.") words=words.clone()/> }
    };
    told.cautions.iter().map(caution).collect_view().into_any()
}
