//! Tables as other programs read them.
//!
//! CSV by RFC 4180: fields parted by commas, lines by CR LF, quoted where they hold a comma, a
//! quote or a line end, quotes doubled.
//!
//! Spreadsheets take a cell that begins with `=`, `+`, `-`, `@`, a tab or a line end for a formula
//! (OWASP, "CSV Injection"), some after spaces or as full-width letters too. Text that begins so
//! gets an apostrophe before it, which spreadsheets do not show. Numbers come from typed numbers,
//! never from text, so that those below zero stay numbers.

use measure::Decimal;

/// A cell of a table.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum Cell {
    Text(String),
    Number(Decimal),
}

impl Cell {
    pub fn text(text: &str) -> Cell {
        Cell::Text(text.to_owned())
    }

    pub fn count(number: usize) -> Cell {
        Cell::Number(Decimal::from(number))
    }

    /// As a field of a CSV line.
    pub fn csv(&self) -> String {
        match self {
            Cell::Number(number) => number.to_string(),
            Cell::Text(text) => quoted(&harmless(text)),
        }
    }

    /// For a page of plain text, in one line; what would turn or hide letters is named instead.
    pub fn plain(&self) -> String {
        match self {
            Cell::Number(number) => number.to_string(),
            Cell::Text(text) => plain(text),
        }
    }
}

/// One line of CSV, with its line end.
pub(crate) fn csv_line(cells: &[Cell]) -> String {
    let fields: Vec<String> = cells.iter().map(Cell::csv).collect();
    fields.join(",") + "\r\n"
}

fn harmless(text: &str) -> String {
    let first = text.trim_start_matches([' ', '\u{a0}', '\u{feff}']).chars().next();
    let starts_formula = matches!(
        first,
        Some('=' | '+' | '-' | '@' | '\t' | '\r' | '\n' | '＝' | '＋' | '－' | '＠')
    );
    if starts_formula { format!("'{text}") } else { text.to_owned() }
}

fn quoted(text: &str) -> String {
    // A NUL ends the text for some readers.
    let text = text.replace('\0', "\u{fffd}");
    if text.contains([',', '"', '\r', '\n']) {
        format!("\"{}\"", text.replace('"', "\"\""))
    } else {
        text
    }
}

/// Text in one line; what would turn or hide letters is named instead.
pub(crate) fn plain(text: &str) -> String {
    let mut shown = String::new();
    for letter in text.chars() {
        let turns = matches!(letter, '\u{200e}' | '\u{200f}' | '\u{061c}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}');
        match letter {
            '\n' | '\r' | '\t' => shown.push(' '),
            _ if turns || letter.is_control() => {
                shown.push_str(&format!("[U+{:04X}]", u32::from(letter)));
            }
            _ => shown.push(letter),
        }
    }
    shown
}

#[cfg(test)]
mod tests {
    use super::*;

    fn csv(text: &str) -> String {
        Cell::text(text).csv()
    }

    #[test]
    fn fields_are_quoted_as_rfc_4180_says() {
        // RFC 4180, section 2, rules 5 to 7.
        assert_eq!(csv("aaa"), "aaa");
        assert_eq!(csv("b CRLF bb".replace(" CRLF ", "\r\n").as_str()), "\"b\r\nbb\"");
        assert_eq!(csv("b\"bb"), "\"b\"\"bb\"");
        assert_eq!(csv("zzz, yyy"), "\"zzz, yyy\"");
        assert_eq!(csv_line(&[Cell::text("aaa"), Cell::text("bbb")]), "aaa,bbb\r\n");
    }

    #[test]
    fn no_text_starts_a_formula_and_a_number_below_zero_stays_one() {
        // The letters of OWASP's page "CSV Injection".
        for start in ["=", "+", "-", "@", "\t", "\r", "\n"] {
            for before in ["", " ", "\u{a0}"] {
                let cell = csv(&format!("{before}{start}cmd|' /C calc'!A0"));
                assert!(cell.trim_start_matches('"').starts_with('\''), "{cell:?}");
            }
        }
        assert_eq!(csv("=1+1\",=2"), "\"'=1+1\"\",=2\"");
        assert_eq!(Cell::Number(Decimal::new(-2, 2)).csv(), "-0.02");
        assert_eq!(csv("-0.02"), "'-0.02");
        assert_eq!(csv("Grey Heron"), "Grey Heron");
    }

    #[test]
    fn plain_text_names_what_would_turn_it_round() {
        assert_eq!(plain("a\u{202e}b\nc\u{0}"), "a[U+202E]b c[U+0000]");
    }
}
