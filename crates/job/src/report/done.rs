//! What to mind and who signs; then what was captured, for the invoice, and what was done.

use words::t;

use super::html::{Cell, cell, fact, facts, heading, list, table, typed};
use super::{Paper, icon, leaf};
use crate::{INVOICE_SAYS, PartVerdict, RecordStep};

/// Cautions, remarks, and the lines to sign on.
pub fn end(paper: &Paper) -> String {
    let record = paper.record;
    let mut cautions = vec![
        t("The unit’s own manual and local rules come first. This record is no permit: who signs, \
         answers for the work.")
            .to_owned(),
        t("The limits were typed by the user from the sources named beside them. The app holds none \
         of its own.")
            .to_owned(),
    ];
    if !record.not_recorded.is_empty() {
        cautions.push(record.not_recorded.clone());
    }
    let to_watch = record.parts.iter().filter(|part| part.verdict == PartVerdict::Watch);
    cautions.extend(to_watch.map(|part| format!("{}: {}. {}", part.words, part.name, part.why())));
    cautions.extend(record.notes.iter().cloned());
    let stands = match record.draft.is_empty() {
        true => t("Nothing on this record was stale, out or missing when it was made."),
        false => t("Draft. The reasons stand on the first page."),
    };
    format!(
        "<div class=\"box box--c\"><h2>{} {}</h2>\n{}</div>\n\
         <div class=\"sign\"><p><span></span>{}</p><p><span></span>{}</p><p><span></span>{}</p></div>\n\
         <p class=\"small\">{stands}</p>\n",
        icon::warn(),
        t("Cautions"),
        list("ticks", &cautions),
        t("Rebuilt by"),
        t("Packs and readings seen by"),
        t("Received by owner")
    )
}

/// The leaves that follow.
pub fn leaves(paper: &Paper) -> String {
    let record = paper.record;
    let captured: String = record.captured.iter().map(captured).collect();
    let seen = list("ticks rec__steps", &record.cautions);
    let mut guided = String::new();
    if !captured.is_empty() {
        let steps = format!("<div class=\"rec__steps\">\n{captured}</div>\n");
        guided += &(heading(t("Captured, step by step")) + &steps);
    }
    guided += &invoice(paper);
    if !seen.is_empty() {
        guided += &(heading(t("Cautions that stood before the work")) + &seen);
    }
    let guided = if guided.is_empty() { guided } else { leaf::next(paper, &guided) };
    guided + &leaf::next(paper, &history(paper))
}

fn captured(step: &RecordStep) -> String {
    let values = facts(step.values.iter().map(|(label, value)| fact(label, value)).collect());
    format!("<div class=\"rec__step\"><h3>{}</h3>\n{values}</div>\n", typed(&step.step))
}

fn invoice(paper: &Paper) -> String {
    if paper.invoice.is_empty() {
        return String::new();
    }
    let heads: [Cell; 3] = [
        ("", t("For the invoice").to_owned()),
        ("n", t("How much").to_owned()),
        ("", t("Note").to_owned()),
    ];
    let row = |line: &crate::InvoiceLine| {
        vec![cell(&line.what), ("n", typed(&line.amount(paper.shown.mark))), cell(&line.note)]
    };
    let rows = paper.invoice.iter().map(row).collect();
    heading(t("Time, parts and consumables"))
        + &table("", &heads, rows)
        + &format!("<p class=\"small\">{}</p>\n", typed(t(INVOICE_SAYS)))
}

/// Times and sentences.
pub fn history(paper: &Paper) -> String {
    let heads: [Cell; 2] = [("", t("When").to_owned()), ("", t("What").to_owned())];
    let row = |(at, sentence): &(String, String)| vec![("nowrap", typed(at)), cell(sentence)];
    let rows = paper.record.history.iter().map(row).collect();
    let table = table("tbl--done", &heads, rows);
    heading(t("What was done")) + &format!("<div class=\"rec__steps\">\n{table}</div>\n")
}
