//! What the guided job adds: bench checks, torques, counts, photos, parts, who signed.

use pictures::svg::svg;
use words::{say, t};

use super::html::{Cell, cell, fact, facts, heading, list, paragraph, table, typed};
use super::{Paper, Photos, icon};
use crate::{RecordBench, RecordPart, RecordSigned, RecordTorque};

/// Everything of it that there is.
pub fn leaf(paper: &Paper, photos: Photos) -> String {
    let record = paper.record;
    let bench: String = record.bench.iter().map(bench).collect();
    [
        when(&bench, || format!("<div class=\"two\">\n{bench}</div>\n")),
        record
            .seal_map
            .as_ref()
            .map(|map| heading(t("Seal map")) + &svg(map, "map"))
            .unwrap_or_default(),
        torques(&record.torques),
        told(t("Counts"), &record.counts),
        told(t("Waits"), &record.waits),
        pictures(paper, photos),
        parts(&record.parts),
        left_out(paper),
        told(t("Stale"), &record.stale),
        signed(&record.signed),
    ]
    .concat()
}

fn when(there: &str, then: impl Fn() -> String) -> String {
    if there.is_empty() { String::new() } else { then() }
}

fn told(title: &str, lines: &[String]) -> String {
    let lines = list("ticks", lines);
    when(&lines, || heading(title) + &lines)
}

fn bench(check: &RecordBench) -> String {
    let listed = |given: &[(String, String)]| {
        facts(given.iter().map(|(what, much)| fact(what, much)).collect())
    };
    let state = check.state.as_ref().map(icon::state).unwrap_or_default();
    let picture = check.picture.as_ref().map(|drawing| svg(drawing, "")).unwrap_or_default();
    let says: String = check.says.iter().map(|says| paragraph(&typed(says))).collect();
    let of = match check.step.is_empty() {
        true => typed(&check.when),
        false => format!("{}. {}", typed(&check.step), typed(&check.when)),
    };
    format!(
        "<div>{}{picture}<p class=\"small\">{of}</p>\n{}{says}{}<h3>{}</h3>\n{}</div>\n",
        heading(&check.title),
        paragraph(&state),
        listed(&check.figures),
        t("As typed"),
        listed(&check.given)
    )
}

fn torques(torques: &[RecordTorque]) -> String {
    if torques.is_empty() {
        return String::new();
    }
    let heads: [Cell; 4] = [
        ("", t("Fastener").to_owned()),
        ("n", t("Asked").to_owned()),
        ("n", t("Applied").to_owned()),
        ("", t("How").to_owned()),
    ];
    let row = |torque: &RecordTorque| {
        let (label, step) = (typed(&torque.label), typed(&torque.step));
        vec![
            ("", format!("{label}<br><span class=\"small\">{step}</span>")),
            ("n asked", typed(&torque.asked)),
            ("n applied", typed(&torque.values)),
            cell(&torque.how),
        ]
    };
    heading(t("Torques")) + &table("tbl--torques", &heads, torques.iter().map(row).collect())
}

/// What stands where a photo is not.
fn away(photo: &crate::RecordPhoto) -> String {
    match &photo.backup {
        Some(day) => say!("This photo is not at hand. The backup of {day} has it."),
        None => t("This photo is not at hand.").to_owned(),
    }
}

fn pictures(paper: &Paper, photos: Photos) -> String {
    let figure = |photo: &crate::RecordPhoto| {
        let caption = typed(&photo.caption);
        let picture = match photos(&photo.id) {
            Some(address) => format!("<img src=\"{}\" alt=\"{caption}\">", typed(&address)),
            None => format!("<span class=\"small\">{}</span>", away(photo)),
        };
        format!("<figure>{picture}<figcaption>{caption}</figcaption></figure>\n")
    };
    let figures: String = paper.record.photos.iter().map(figure).collect();
    when(&figures, || heading(t("Photos")) + &format!("<div class=\"photos\">\n{figures}</div>\n"))
}

fn parts(parts: &[RecordPart]) -> String {
    if parts.is_empty() {
        return String::new();
    }
    let heads: [Cell; 3] =
        [("", t("Part").to_owned()), ("", t("Verdict").to_owned()), ("", t("Why").to_owned())];
    let row = |part: &RecordPart| vec![cell(&part.name), cell(part.words), cell(&part.why())];
    heading(t("Parts judged")) + &table("", &heads, parts.iter().map(row).collect())
}

fn left_out(paper: &Paper) -> String {
    if paper.record.left_out.is_empty() {
        return String::new();
    }
    let heads: [Cell; 3] =
        [("", t("Step").to_owned()), ("", t("What").to_owned()), ("", t("Why").to_owned())];
    let row = |left: &crate::RecordLeft| {
        let what = format!("{} {}", t(left.what), left.when);
        vec![cell(&left.step), cell(what.trim()), cell(&left.reason)]
    };
    let rows = paper.record.left_out.iter().map(row).collect();
    heading(t("Left out, or opened again")) + &table("", &heads, rows)
}

fn signed(signed: &[RecordSigned]) -> String {
    if signed.is_empty() {
        return String::new();
    }
    let heads: [Cell; 3] = [
        ("", t("Who").to_owned()),
        ("", t("To what").to_owned()),
        ("nowrap", t("When").to_owned()),
    ];
    let rows = signed.iter().map(signature).collect();
    heading(t("Who agreed and signed")) + &table("tbl--signed", &heads, rows)
}

/// Who with the signature, to what with all that was agreed, when.
fn signature(it: &RecordSigned) -> Vec<Cell> {
    let drawn = it.drawn.as_ref().map(|drawing| svg(drawing, "signed")).unwrap_or_default();
    let terms = it.terms.iter().map(|(label, words)| fact(label, words)).collect();
    vec![
        ("", typed(&it.who) + &drawn),
        ("", typed(&it.what) + &facts(terms)),
        ("nowrap", typed(&it.when)),
    ]
}
