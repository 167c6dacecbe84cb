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
        more => format!("<p>And {more} more, on the next leaf.</p>\n"),
    };
    let mark = match record.draft.is_empty() {
        true => String::new(),
        false => format!(
            "<div class=\"draft__mark\">\n<p>Draft. This job is not finished.</p>\n{}{more}</div>\n",
            list("ticks", record.draft.iter().take(REASONS))
        ),
    };
    format!(
        "<section class=\"leaf\">\n<header class=\"rec\"><div><h1>Gearcase job record</h1>\n\
         <p>{}</p>\n{complaint}{scope}</div>\n<div class=\"right\"><b>Opened {}</b><br>Made {made}\
         </div></header>\n{mark}{inner}</section>\n",
        title(paper),
        typed(&record.opened)
    )
}

/// A further leaf.
pub fn next(paper: &Paper, inner: &str) -> String {
    let mark = if paper.record.draft.is_empty() { "" } else { "<p><b>Draft</b></p>" };
    format!(
        "<section class=\"leaf\">\n<header class=\"rec rec--s\"><p><b>{}</b></p>{mark}</header>\n\
         {inner}</section>\n",
        title(paper)
    )
}

/// "Job 27 · Grey Heron · Demo unit".
fn title(paper: &Paper) -> String {
    let record = paper.record;
    typed(&say!("Job {} · {} · {}", record.number, record.boat, record.unit))
}
