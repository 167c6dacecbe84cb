//! Entries and the books they belong to.

use std::fmt;

use crate::{Fact, sentence, wire};

/// Which book an entry belongs to. Its text form is `tin`, `drawer`,
/// `sheet:ID` or `job:ID`.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum BookId {
    /// The shim tin; a device has one.
    Tin,
    /// The tool drawer; a device has one.
    Drawer,
    /// A unit sheet.
    Sheet(String),
    /// A job.
    Job(String),
}

/// A fact, with who wrote it down and when.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Entry {
    /// The act it was written in and its number there: `k3x9.0`.
    pub id: String,
    /// The book.
    pub book: BookId,
    /// Its place in the order: one more than the highest seen when it was written.
    pub counter: u64,
    /// The device that wrote it.
    pub device: String,
    /// When, milliseconds since 1970 began, UTC.
    pub at: i64,
    /// What happened.
    pub fact: Fact,
}

/// A line of a book: read, or kept as it is.
#[allow(clippy::large_enum_variant, reason = "nearly every line of a book is known")]
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Kept {
    /// An entry this version understands.
    Known(Entry),
    /// Written by a newer version, or unreadable. Kept, counted and exported, never dropped.
    Unread {
        /// The line as it came.
        line: String,
        /// Its place in the order, where that much could be read; else 0.
        counter: u64,
        /// Its device, where that much could be read; else empty.
        device: String,
    },
}

/// What an entry needs from outside.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Stamp {
    /// Name of this device.
    pub device: String,
    /// Now, milliseconds since 1970 began, UTC.
    pub at: i64,
    /// A name for this act that was never used before, without a point. Entries that belong together
    /// carry the same, also in different books: they are undone together.
    pub act: String,
}

impl Entry {
    /// The entry as one JSON line, without a line end; see WIRE.md.
    pub fn to_line(&self) -> String {
        wire::write(self)
    }

    /// What happened, in one line as a mechanic would write it.
    ///
    /// Numbers stand as they were typed.
    pub fn sentence(&self) -> String {
        sentence::of(&self.fact)
    }

    /// The act it was written in: entries of one act are undone together.
    pub fn act(&self) -> &str {
        self.id.split_once('.').map_or(&self.id, |(act, _)| act)
    }
}

impl Kept {
    /// Reads a line. Never fails: what cannot be read is kept as it is.
    pub fn from_line(line: &str) -> Kept {
        wire::read(line)
    }

    /// The line to keep.
    pub fn to_line(&self) -> String {
        match self {
            Kept::Known(entry) => entry.to_line(),
            Kept::Unread { line, .. } => line.clone(),
        }
    }

    /// Its place in the order.
    pub fn counter(&self) -> u64 {
        match self {
            Kept::Known(entry) => entry.counter,
            Kept::Unread { counter, .. } => *counter,
        }
    }
}

impl BookId {
    /// The book of that text.
    pub fn parse(text: &str) -> Option<BookId> {
        match text.split_once(':') {
            None if text == "tin" => Some(BookId::Tin),
            None if text == "drawer" => Some(BookId::Drawer),
            None => None,
            Some((_, "")) => None,
            Some(("sheet", id)) => Some(BookId::Sheet(id.to_owned())),
            Some(("job", id)) => Some(BookId::Job(id.to_owned())),
            Some(_) => None,
        }
    }
}

impl fmt::Display for BookId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            BookId::Tin => f.write_str("tin"),
            BookId::Drawer => f.write_str("drawer"),
            BookId::Sheet(id) => write!(f, "sheet:{id}"),
            BookId::Job(id) => write!(f, "job:{id}"),
        }
    }
}
