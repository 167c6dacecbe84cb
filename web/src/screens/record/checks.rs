//! As found and as left: each check with its limits and its verdict.

use job::{Check, CheckState, Figure, Judged, Record, RecordCheck, Shown, figure};
use leptos::prelude::*;

use super::super::told;
use crate::parts::State;
use crate::pictures::Picture;
use crate::pictures::band::Band;
use crate::shown::{gauged, writing};

/// The table of checks, with the arm the lashes were read at.
pub fn table(told: &Record, shown: Shown) -> AnyView {
    let rows: Vec<AnyView> = told.checks.iter().map(|check| row(check, shown)).collect();
    let arm = (!told.arm_says.is_empty()).then(|| told.arm_says.clone());
    view! {
        <h2>"As found and as left"</h2>
        <table class="tbl tbl--checks">
            <thead>
                <tr>
                    <th scope="col">{format!("Check, {}", shown.unit)}</th>
                    <th scope="col" class="n">"Found"</th>
                    <th scope="col" class="n">"Left"</th>
                    <th scope="col" class="pic">
                        <span class="key1"></span>
                        " found  "
                        <span class="key2"></span>
                        " left"
                    </th>
                    <th scope="col">"Verdict"</th>
                </tr>
            </thead>
            <tbody>{rows}</tbody>
        </table>
        <p class="small">{arm} " After ± stands twice the standard uncertainty."</p>
    }
    .into_any()
}

fn row(check: &RecordCheck, shown: Shown) -> AnyView {
    let picture = band(check, shown).map(|band| {
        let drawing = band.narrow(writing(check.check.figure(), shown));
        view! { <Picture drawing/> }
    });
    view! {
        <tr>
            <th scope="row">
                <b>{named(check.check, shown)}</b>
                <br/>
                <span class="small">{limits(check, shown)}</span>
            </th>
            <td class="n" data-as="found">{series(check.check, check.found.as_ref(), shown)}</td>
            <td class="n" data-as="left">{series(check.check, check.left.as_ref(), shown)}</td>
            <td class="pic">{picture}</td>
            <td>
                <State sign=told::sign(&check.state) words=check.state.to_string()/>
            </td>
        </tr>
    }
    .into_any()
}

/// The check, with its unit where that is not the table's.
fn named(check: Check, shown: Shown) -> String {
    match check.shown_unit(shown) {
        unit if unit == shown.unit => check.name().to_owned(),
        unit => format!("{}, {unit}", check.name()),
    }
}

/// "0.66 ± 0.02", or that it was not read.
fn series(check: Check, judged: Option<&Judged>, shown: Shown) -> AnyView {
    let Some(judged) = judged else {
        return view! { <span class="small">"not read"</span> }.into_any();
    };
    let more = format!(" ± {}", figure(judged.expanded, check.figure(), shown));
    let worked_out = judged.worked_out.then(|| {
        view! { <br/><small>"worked out"</small> }
    });
    view! {
        {figure(judged.mean, check.figure(), shown)}
        <small>{more}</small>
        {worked_out}
    }
    .into_any()
}

/// "Limits 0.20 to 0.35 at 22.0 mm, own manual p. 118; at this arm 0.27 to 0.48".
fn limits(check: &RecordCheck, shown: Shown) -> String {
    let Some(band) = check.sheet_band else { return "no limits typed".to_owned() };
    let written = |band: measure::Band| {
        let limit = |value| figure(value, check.check.figure(), shown);
        format!("{} to {}", limit(band.low()), limit(band.high()))
    };
    let radius = check
        .sheet_radius
        .map(|radius| format!(" at {} {}", figure(radius, Figure::Radius, shown), shown.unit));
    let at_arm = check.band.filter(|_| check.check.has_arm());
    let at_arm = at_arm.map(|band| format!("; at this arm {}", written(band)));
    let source = check.source.as_ref().map(|source| format!(". Source: {source}"));
    format!(
        "Limits {}{}{}{}",
        written(band),
        radius.unwrap_or_default(),
        at_arm.unwrap_or_default(),
        source.unwrap_or_default(),
    )
}

/// The band with what was found and what was left; what was read at another arm is left out.
fn band(check: &RecordCheck, shown: Shown) -> Option<Band> {
    let found = check.found.as_ref().filter(|found| found.band == check.band);
    let left = check.left.as_ref();
    Some(Band {
        name: check.check.name().to_owned(),
        found: found.map(|found| gauged(found.mean, check.check, shown)),
        mean: left.map(|left| gauged(left.mean, check.check, shown)),
        stale: matches!(check.state, CheckState::Stale { .. }),
        verdict: check.state.to_string(),
        ..told::limits(check.check, check.band?, left, shown)
    })
}
