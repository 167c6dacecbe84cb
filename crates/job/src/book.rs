//! A book: the entries written in it, in order.

use std::collections::{BTreeMap, BTreeSet};

use crate::{BookId, Entry, Fact, Kept, Refusal, Stamp, admission};

/// An append-only set of entries, in the order (counter, device).
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Book {
    id: BookId,
    kept: BTreeMap<Key, Kept>,
}

/// Counter, device and the line itself: two copies of an entry are one, and nothing is overwritten.
type Key = (u64, String, String);

impl Book {
    /// A book with nothing in it.
    pub fn new(id: BookId) -> Book {
        Book { id, kept: BTreeMap::new() }
    }

    /// A book from its lines, in any order. A line of another book is kept as unread.
    pub fn from_lines<'a>(id: BookId, lines: impl IntoIterator<Item = &'a str>) -> Book {
        let mut book = Book::new(id);
        for line in lines {
            book.keep(Kept::from_line(line));
        }
        book
    }

    /// Which book it is.
    pub fn id(&self) -> &BookId {
        &self.id
    }

    /// The entries this version understands, in order, retracted ones too.
    pub fn entries(&self) -> impl DoubleEndedIterator<Item = &Entry> {
        self.kept.values().filter_map(|kept| match kept {
            Kept::Known(entry) => Some(entry),
            Kept::Unread { .. } => None,
        })
    }

    /// Every line, in order, those not understood too: what a backup holds.
    pub fn lines(&self) -> impl Iterator<Item = &str> {
        self.kept.keys().map(|(_, _, line)| line.as_str())
    }

    /// How many entries this version does not understand. They are kept.
    pub fn unread(&self) -> usize {
        self.kept.len() - self.entries().count()
    }

    /// Whether there is nothing in it.
    pub fn is_empty(&self) -> bool {
        self.kept.is_empty()
    }

    /// The entries that count: those retracted, and the retractions themselves, left out.
    pub fn live(&self) -> Vec<&Entry> {
        let retracted: BTreeSet<&str> = self
            .entries()
            .filter_map(|entry| match &entry.fact {
                Fact::EntryRetracted { entry, .. } => Some(entry.as_str()),
                _ => None,
            })
            .collect();
        self.entries()
            .filter(|entry| !matches!(entry.fact, Fact::EntryRetracted { .. }))
            .filter(|entry| !retracted.contains(entry.id.as_str()))
            .collect()
    }

    /// The entries that these facts become, if the book admits them; nothing is added yet.
    ///
    /// # Errors
    /// [`Refusal`], whose `Display` is the sentence to show. All facts are admitted, or none.
    pub fn next(&self, facts: Vec<Fact>, stamp: &Stamp) -> Result<Vec<Entry>, Refusal> {
        let mut book = self.clone();
        let mut entries = Vec::new();
        let first = self.highest().saturating_add(1);
        for (fact, (number, counter)) in facts.into_iter().zip((0u64..).zip(first..)) {
            admission::admit(&book, &fact)?;
            let entry = Entry {
                id: format!("{}.{number}", stamp.act),
                book: self.id.clone(),
                counter,
                device: stamp.device.clone(),
                at: stamp.at,
                fact,
            };
            book.keep(Kept::Known(entry.clone()));
            entries.push(entry);
        }
        admission::admit_together(self, &book)?;
        Ok(entries)
    }

    /// The book with these entries.
    #[must_use]
    pub fn with(mut self, entries: impl IntoIterator<Item = Entry>) -> Book {
        for entry in entries {
            self.keep(Kept::Known(entry));
        }
        self
    }

    /// Both copies of a book together: every entry of either, none changed.
    ///
    /// The same whichever way round and however often.
    #[must_use]
    pub fn merge(mut self, other: &Book) -> Book {
        for (key, kept) in &other.kept {
            self.kept.insert(key.clone(), kept.clone());
        }
        self
    }

    fn keep(&mut self, kept: Kept) {
        let line = kept.to_line();
        let (kept, counter, device) = match kept {
            Kept::Known(entry) if entry.book == self.id => {
                let (counter, device) = (entry.counter, entry.device.clone());
                (Kept::Known(entry), counter, device)
            }
            Kept::Known(Entry { counter, device, .. }) | Kept::Unread { counter, device, .. } => {
                let line = line.clone();
                (Kept::Unread { line, counter, device: device.clone() }, counter, device)
            }
        };
        self.kept.insert((counter, device, line), kept);
    }

    fn highest(&self) -> u64 {
        self.kept.last_key_value().map_or(0, |((counter, ..), _)| *counter)
    }
}
