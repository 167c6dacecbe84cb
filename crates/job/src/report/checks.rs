//! As found and as left: checks with their limits and verdicts, and packs beside the section.

use measure::Decimal;
use pictures::band::Band;
use pictures::section::Section;
use pictures::svg::svg;
use words::{say, t};

use super::html::{Cell, heading, table as rows, typed};
use super::{Paper, icon};
use crate::{
    Check, CheckState, Figure, Judged, RecordCheck, RecordPack, Shown, figure, gauged, limits,
    writing,
};

/// The table of checks, with the arm the lashes were read at.
pub fn table(paper: &Paper) -> String {
    let (record, shown) = (paper.record, paper.shown);
    let heads: [Cell; 5] = [
        ("", say!("Check, {}", shown.units.length)),
        ("n", t("Found").to_owned()),
        ("n", t("Left").to_owned()),
        (
            "pic",
            format!(
                "<span class=\"key1\"></span> {}  <span class=\"key2\"></span> {}",
                t("Found").to_lowercase(),
                t("Left").to_lowercase()
            ),
        ),
        ("", t("Verdict").to_owned()),
    ];
    let body = record.checks.iter().map(|check| row(check, shown)).collect();
    let arm = typed(&record.arm_says);
    heading(t("As found and as left"))
        + &rows("tbl--checks", &heads, body)
        + &format!(
            "<p class=\"small\">{arm} {}</p>\n",
            t("After ± stands twice the standard uncertainty.")
        )
}

fn row(check: &RecordCheck, shown: Shown) -> Vec<Cell> {
    let picture = band(check, shown)
        .map(|band| svg(&band.narrow(writing(check.check.figure(), shown)), ""))
        .unwrap_or_default();
    let name = typed(&named(check.check, shown));
    let bounds = typed(&bounds(check, shown));
    vec![
        ("", format!("<b>{name}</b><br><span class=\"small\">{bounds}</span>")),
        ("n found", series(check.check, check.found.as_ref(), shown)),
        ("n left", series(check.check, check.left.as_ref(), shown)),
        ("pic", picture),
        ("", icon::state(&check.state)),
    ]
}

/// The check, with its unit where that is not the table's.
fn named(check: Check, shown: Shown) -> String {
    match check.shown_unit(shown) {
        unit if unit == shown.units.length => check.name().to_owned(),
        unit => format!("{}, {unit}", check.name()),
    }
}

/// "0.66 ± 0.02", or that it was not read.
fn series(check: Check, judged: Option<&Judged>, shown: Shown) -> String {
    let Some(judged) = judged else {
        return format!("<span class=\"small\">{}</span>", t("not read"));
    };
    let mean = figure(judged.mean, check.figure(), shown);
    let more = figure(judged.expanded, check.figure(), shown);
    let how = match judged.worked_out {
        true => format!("<br><small>{}</small>", t("worked out")),
        false => String::new(),
    };
    format!("{mean} <small>± {more}</small>{how}")
}

/// "Limits 0.20 to 0.35 at 22.0 mm; at this arm 0.27 to 0.48. Source: own manual p. 118".
fn bounds(check: &RecordCheck, shown: Shown) -> String {
    let Some(band) = check.sheet_band else { return t("no limits typed").to_owned() };
    let written = |band: measure::Band| {
        let limit = |value| figure(value, check.check.figure(), shown);
        say!("{low} to {high}", low = limit(band.low()), high = limit(band.high()))
    };
    let (limits, unit) = (written(band), shown.units.length);
    let limits = match check.sheet_radius {
        Some(radius) => say!(
            "Limits {limits} at {radius} {unit}",
            radius = figure(radius, Figure::Radius, shown)
        ),
        None => say!("Limits {limits}"),
    };
    let at_arm = check.band.filter(|_| check.check.has_arm());
    let at_arm = at_arm.map(|band| say!("; at this arm {limits}", limits = written(band)));
    let source = check.source.as_ref().map(|source| say!(". Source: {source}"));
    limits + &at_arm.unwrap_or_default() + &source.unwrap_or_default()
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
        ..limits(check.check, check.band?, left, shown)
    })
}

/// Both tables of packs beside the section sketch.
pub fn packs(paper: &Paper) -> String {
    let (record, unit) = (paper.record, paper.shown.units.length);
    let section = Section::of(record.packs.iter().map(|pack| pack.position.id));
    let left = |pack: &RecordPack| pack_row(pack, &pack.left, pack.total, paper.shown);
    let found = |pack: &RecordPack| pack_row(pack, &pack.found, pack.found_total, paper.shown);
    let heads: [Cell; 3] = [
        ("", t("Pack").to_owned()),
        ("", t("Shims, as measured").to_owned()),
        ("n", t("Together").to_owned()),
    ];
    let tables = heading(&say!("Packs left in the case, {unit}"))
        + &rows("", &heads, record.packs.iter().map(left).collect())
        + &heading(&say!("Packs as found, {unit}"))
        + &rows("", &heads, record.packs.iter().map(found).collect());
    let sketch = svg(&section.draw(), "sk");
    format!("<div class=\"two two--pack\">\n<div>{tables}</div>\n{sketch}\n</div>\n")
}

fn pack_row(pack: &RecordPack, shims: &[Decimal], total: Decimal, shown: Shown) -> Vec<Cell> {
    let thickness = |value: &Decimal| figure(*value, Figure::Shim, shown);
    let (shims, total) = match shims {
        [] => (t("not written down").to_owned(), String::new()),
        _ => {
            let each: Vec<String> = shims.iter().map(thickness).collect();
            (each.join(" + "), thickness(&total))
        }
    };
    vec![
        ("", format!("<span class=\"tag\">{}</span>", pack.position.id)),
        ("", shims),
        ("n", total),
    ]
}
