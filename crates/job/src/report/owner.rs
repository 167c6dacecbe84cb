//! The owner's words at the head of the record.

use words::t;

use super::Paper;
use super::html::{list, typed};

/// What was wrong and done, and what the owner does next.
pub fn boxes(paper: &Paper) -> String {
    let owner = paper.owner;
    let part = |title: &str, lines: &[String]| match lines.is_empty() {
        true => String::new(),
        false => format!("<h3>{title}</h3>\n{}", list("rec__told", lines)),
    };
    let told = part(t("What was wrong"), &owner.wrong) + &part(t("What was done"), &owner.done);
    let told = match told.is_empty() {
        true => String::new(),
        false => format!("<div class=\"box\"><h2>{}</h2>\n{told}</div>\n", t("In plain words")),
    };
    let check = match owner.next_check.is_empty() {
        true => String::new(),
        false => format!("<p><b>{}</b></p>\n", typed(&owner.next_check)),
    };
    let next = list("ticks", &owner.watch)
        + &check
        + &part(t("Take care"), &owner.cautions)
        + &part(t("Not covered"), &owner.not_covered);
    format!(
        "<div class=\"two\">\n{told}<div class=\"box\"><h2>{}</h2>\n{next}</div>\n</div>\n",
        t("What you do next")
    )
}
