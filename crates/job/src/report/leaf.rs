//! Leaves: each one says which job it is of, and that it is a draft while it is.

use words::{say, t};

use super::Paper;
use super::html::{heading, list, paragraph, typed};
use crate::clock;

/// Reasons of a draft that stand on the first leaf.
const REASONS: usize = 6;

/// The reasons of a draft that do not stand on the first leaf.
pub fn further(paper: &Paper) -> String {
    let reasons = list("ticks", paper.record.draft.iter().skip(REASONS));
    if reasons.is_empty() { reasons } else { heading(t("Why this is a draft, further")) + &reasons }
}

/// The first leaf, with the complaint, the dates, and why it is a draft.
pub fn first(paper: &Paper, inner: &str) -> String {
    let record = paper.record;
    let told = |label: &str, text: &str| match text.trim() {
        "" => String::new(),
        text => paragraph(&format!("{label}: {}", typed(text))),
    };
    let (complaint, scope) =
        (told(t("Complaint"), &record.complaint), told(t("Scope"), &record.scope));
    let made = clock::date(paper.at, paper.shown.utc_offset);
    let more = match record.draft.len().saturating_sub(REASONS) {
        0 => String::new(),
        more => format!("<p>{}</p>\n", say!("And {more} more, on the next leaf.")),
    };
    let mark = match record.draft.is_empty() {
        true => String::new(),
        false => format!(
            "<div class=\"draft__mark\">\n<p>{}</p>\n{}{more}</div>\n",
            t("Draft. This job is not finished."),
            list("ticks", record.draft.iter().take(REASONS))
        ),
    };
    format!(
        "<section class=\"leaf\">\n<header class=\"rec\"><div><h1>{}</h1>\n\
         <p>{}</p>\n{complaint}{scope}</div>\n<div class=\"right\"><b>{}</b><br>{}</div></header>\n{mark}{inner}</section>\n",
        t("Gearcase job record"),
        title(paper),
        typed(&say!("Opened {date}", date = record.opened)),
        say!("Made {date}", date = made)
    )
}

/// A further leaf.
pub fn next(paper: &Paper, inner: &str) -> String {
    let mark = match paper.record.draft.is_empty() {
        true => String::new(),
        false => format!("<p><b>{}</b></p>", t("Draft")),
    };
    format!(
        "<section class=\"leaf\">\n<header class=\"rec rec--s\"><p><b>{}</b></p>{mark}</header>\n\
         {inner}</section>\n",
        title(paper)
    )
}

/// "Job 27 · Grey Heron · Demo unit".
fn title(paper: &Paper) -> String {
    let record = paper.record;
    typed(&say!(
        "Job {number} · {boat} · {unit}",
        number = record.number,
        boat = record.boat,
        unit = record.unit
    ))
}
