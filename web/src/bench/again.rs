//! A second copy of what was written since the last backup, apart from the store.
//!
//! A browser that finds its store broken, or clears a site because the disk is full, drops every
//! database of the site at once. Small texts lie elsewhere and stay. They are written out late and
//! have room for some five million characters, so nothing else is read from here.

use crate::scratch;
use crate::storage::Row;

const START: &str = "again.";

/// Keeps rows that are in the store.
pub(super) fn keep(rows: &[Row]) {
    for row in rows {
        let Row { book, counter, device, line } = row;
        scratch::write(&key(row), &format!("{book}\n{counter}\n{device}\n{line}"));
    }
}

/// The rows that are kept.
pub(super) fn rows() -> Vec<Row> {
    names().iter().filter_map(|name| row(&scratch::read(name)?)).collect()
}

/// The names under which they are kept.
pub(super) fn names() -> Vec<String> {
    scratch::keys(START)
}

/// Lets go of some, by their names: they are in a backup.
pub(super) fn let_go(names: &[String]) {
    names.iter().for_each(|name| scratch::forget(name));
}

/// Lets go of rows that were taken out of the store.
pub(super) fn take_out(rows: &[Row]) {
    rows.iter().for_each(|row| scratch::forget(&key(row)));
}

fn key(row: &Row) -> String {
    format!("{START}{} {} {}", row.book, row.counter, row.device)
}

fn row(text: &str) -> Option<Row> {
    let mut words = text.splitn(4, '\n').map(str::to_owned);
    let (book, counter) = (words.next()?, words.next()?.parse().ok()?);
    Some(Row { book, counter, device: words.next()?, line: words.next()? })
}
