//! The one place that knows how an entry is written: one JSON object a line, see WIRE.md.

use serde::de::DeserializeOwned;
use serde::{Deserialize, Serialize};

use crate::guided::{self, GuidedLine};
use crate::{BookId, Entry, Fact, Guided, Kept};

/// The version of the kinds that were there first; guided facts have their own.
const VERSION: u32 = 1;

/// The largest counter: a browser's store and other readers of JSON count in doubles.
const LARGEST: u64 = (1 << 53) - 1;

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Line<Book, Word, F> {
    v: u32,
    book: Book,
    id: Word,
    n: u64,
    device: Word,
    at: i64,
    fact: F,
}

/// What is read of a line that says nothing else to this version.
#[derive(Default, Deserialize)]
#[serde(default)]
struct Outside {
    n: u64,
    device: String,
}

/// The book of a line that says nothing else to this version.
#[derive(Deserialize)]
struct InBook {
    book: String,
}

pub(crate) fn write(entry: &Entry) -> String {
    match &entry.fact {
        Fact::Guided(fact) => written(entry, guided::VERSION, GuidedLine(fact)),
        fact => written(entry, VERSION, fact),
    }
}

fn written<F: Serialize>(entry: &Entry, version: u32, fact: F) -> String {
    let line = Line {
        v: version,
        book: entry.book.to_string(),
        id: entry.id.as_str(),
        n: entry.counter,
        device: entry.device.as_str(),
        at: entry.at,
        fact,
    };
    // Nothing in an entry can fail to be written; an empty line would be kept as unread.
    serde_json::to_string(&line).unwrap_or_default()
}

pub(crate) fn read(line: &str) -> Kept {
    let guided = |GuidedLine(fact): GuidedLine<Guided>| Fact::Guided(fact);
    known(line, VERSION, |fact: Fact| fact)
        .or_else(|| known(line, guided::VERSION, guided))
        .map_or_else(|| unread(line), Kept::Known)
}

fn known<F: DeserializeOwned>(line: &str, version: u32, fact: fn(F) -> Fact) -> Option<Entry> {
    let line: Line<String, String, F> = serde_json::from_str(line).ok()?;
    if line.v != version || line.n > LARGEST {
        return None;
    }
    Some(Entry {
        book: BookId::parse(&line.book)?,
        id: line.id,
        counter: line.n,
        device: line.device,
        at: line.at,
        fact: fact(line.fact),
    })
}

fn unread(line: &str) -> Kept {
    let Outside { n, device } = serde_json::from_str(line).unwrap_or_default();
    let counter = if n > LARGEST { 0 } else { n };
    Kept::Unread { line: line.to_owned(), counter, device }
}

/// The book that a line names, whether or not this version knows such books.
pub(crate) fn book_named(line: &str) -> Option<String> {
    serde_json::from_str(line).ok().map(|InBook { book }| book)
}
