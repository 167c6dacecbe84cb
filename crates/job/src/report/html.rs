//! Small pieces of HTML. What was typed comes in through [`typed`] and no other way.

use pictures::svg::escaped;

use words::t;

use crate::files::plain;
use crate::guided::capitalised;

/// Text from outside as it may stand in a page: escaped, in one line, and with what would turn
/// letters round named instead.
pub fn typed(text: &str) -> String {
    escaped(&plain(text))
}

/// A cell: its class, which may be empty, and its HTML.
pub type Cell = (&'static str, String);

/// A cell of typed text.
pub fn cell(text: &str) -> Cell {
    ("", typed(text))
}

/// A paragraph of HTML; nothing where there is none.
pub fn paragraph(inner: &str) -> String {
    if inner.is_empty() { String::new() } else { format!("<p>{inner}</p>\n") }
}

/// A heading of the second level.
pub fn heading(words: &str) -> String {
    format!("<h2>{}</h2>\n", typed(words))
}

/// A list of typed sentences.
pub fn list<'a>(class: &str, lines: impl IntoIterator<Item = &'a String>) -> String {
    let items: String =
        lines.into_iter().map(|line| format!("<li>{}</li>\n", typed(line))).collect();
    if items.is_empty() { items } else { format!("<ul class=\"{class}\">\n{items}</ul>\n") }
}

/// A label and what stands beside it, both typed.
pub fn fact(label: &str, words: &str) -> String {
    format!("<dt>{}</dt><dd>{}</dd>\n", typed(label), typed(words))
}

/// A list of [`fact`]s; nothing where there are none.
pub fn facts(rows: String) -> String {
    if rows.is_empty() { rows } else { format!("<dl class=\"facts\">\n{rows}</dl>\n") }
}

/// A table; the first cell of each row names the row.
pub fn table(class: &str, heads: &[Cell], rows: Vec<Vec<Cell>>) -> String {
    let attribute = |class: &str| match class {
        "" => String::new(),
        class => format!(" class=\"{class}\""),
    };
    let head =
        |(class, words): &Cell| format!("<th scope=\"col\"{}>{words}</th>", attribute(class));
    let heads: String = heads.iter().map(head).collect();
    let mut body = String::new();
    for row in rows {
        body.push_str("<tr>");
        for (at, (class, inner)) in row.into_iter().enumerate() {
            // What a figure is stands beside it where the table becomes a list.
            let named = class.strip_prefix("n ").filter(|_| !inner.is_empty());
            let named = named.map(|named| t(&capitalised(named)).to_lowercase());
            let named = named.map(|named| format!(" data-as=\"{named}\"")).unwrap_or_default();
            let class = attribute(class);
            body.push_str(&match at {
                0 => format!("<th scope=\"row\"{class}>{inner}</th>"),
                _ => format!("<td{class}{named}>{inner}</td>"),
            });
        }
        body.push_str("</tr>\n");
    }
    format!(
        "<table class=\"tbl {class}\">\n<thead><tr>{heads}</tr></thead>\n<tbody>\n{body}</tbody>\n</table>\n"
    )
}
