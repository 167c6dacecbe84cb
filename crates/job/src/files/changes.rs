//! What a file would change on this device, before anything of it is kept.

use std::collections::{BTreeMap, BTreeSet};
use words::t;

use super::beside::{self, Beside};
use crate::{Book, BookId, Job, Kept, Sheet, wire};

/// A line that came in, with its place.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Coming {
    /// The book it names; empty where it names none.
    pub book: String,
    /// Its place in the order; 0 where that could not be read.
    pub counter: u64,
    /// The device that wrote it; empty where that could not be read.
    pub device: String,
    /// The line to keep.
    pub line: String,
}

impl Coming {
    /// Reads a line. Never fails: what cannot be read is kept as it is.
    pub fn from_line(line: &str) -> Coming {
        let kept = Kept::from_line(line);
        let line = kept.to_line();
        match kept {
            Kept::Known(entry) => Coming {
                book: entry.book.to_string(),
                counter: entry.counter,
                device: entry.device,
                line,
            },
            Kept::Unread { counter, device, .. } => {
                let book = wire::book_named(&line).unwrap_or_default();
                Coming { book, counter, device, line }
            }
        }
    }

    /// Whether it names a book, as every entry of every version does.
    pub(super) fn is_entry(&self) -> bool {
        !self.book.is_empty()
    }
}

/// What a file would change. Entries are only ever added.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Changes {
    /// Book by book: jobs, then sheets, then tin and drawer.
    pub books: Vec<BookChange>,
    /// The lines that are not here yet, each once, in the order of their books.
    pub fresh: Vec<Coming>,
    /// How many of those this version cannot read. They are kept and exported.
    pub unread: usize,
}

/// What a file would change in one book.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BookChange {
    /// Which.
    pub book: BookId,
    /// What a person calls it: the boat, the unit, "Shim tin".
    pub title: String,
    /// Number of the job.
    pub number: Option<u32>,
    /// How many entries are here.
    pub had: usize,
    /// How many come to them.
    pub adds: usize,
    /// Written on both sides while neither knew of the other.
    pub beside: Vec<Beside>,
}

impl Changes {
    /// Compares what came with what is here: the lines of each book that the file names.
    pub fn of(coming: &[Coming], here: &BTreeMap<String, Vec<String>>) -> Changes {
        let mut by_book: BTreeMap<&str, BTreeSet<&Coming>> = BTreeMap::new();
        for line in coming {
            by_book.entry(&line.book).or_default().insert(line);
        }
        let mut changes = Changes::default();
        for (name, theirs) in by_book {
            let ours = here.get(name).map(Vec::as_slice).unwrap_or_default();
            changes.take(name, ours, &theirs);
        }
        changes.books.sort_by_key(|change| match change.book {
            BookId::Job(_) => (0, change.number),
            BookId::Sheet(_) => (1, None),
            BookId::Tin | BookId::Drawer => (2, None),
        });
        changes
    }

    fn take(&mut self, name: &str, ours: &[String], theirs: &BTreeSet<&Coming>) {
        let ours: Vec<String> = ours.iter().map(|line| Kept::from_line(line).to_line()).collect();
        let known: BTreeSet<&str> = ours.iter().map(String::as_str).collect();
        let fresh: Vec<&Coming> =
            theirs.iter().filter(|line| !known.contains(line.line.as_str())).copied().collect();
        if let Some(id) = BookId::parse(name) {
            let book = |lines: &mut dyn Iterator<Item = &str>| Book::from_lines(id.clone(), lines);
            let before = book(&mut ours.iter().map(String::as_str));
            let come = book(&mut theirs.iter().map(|line| line.line.as_str()));
            let after = before.clone().merge(&come);
            self.unread += after.unread() - before.unread();
            let (title, number) = named(&after);
            self.books.push(BookChange {
                title,
                number,
                had: before.lines().count(),
                adds: fresh.len(),
                beside: beside::of(&before, &come, &after),
                book: id,
            });
        } else {
            self.unread += fresh.len();
        }
        self.fresh.extend(fresh.into_iter().cloned());
    }

    /// How many pairs a person has to judge.
    pub fn to_judge(&self) -> usize {
        let pairs = self.books.iter().flat_map(|book| &book.beside);
        pairs.filter(|pair| !pair.agree()).count()
    }
}

/// What a person calls a book, and the number of a job.
fn named(book: &Book) -> (String, Option<u32>) {
    match book.id() {
        BookId::Job(_) => {
            let job = Job::fold(book);
            (job.boat, Some(job.number))
        }
        BookId::Sheet(_) => (Sheet::fold(book).name, None),
        BookId::Tin => (t("Shim tin").to_owned(), None),
        BookId::Drawer => (t("Tool drawer").to_owned(), None),
    }
}
