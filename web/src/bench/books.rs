//! The books of this device, each folded anew when something was written in it.

use std::collections::BTreeMap;
use std::sync::Arc;

use job::{Book, BookId, Drawer, Entry, Fact, Job, Refusal, Sheet, Stamp, Tin};

use crate::storage::Row;

/// All books, by id.
#[derive(Clone, Default)]
pub(super) struct Books {
    volumes: BTreeMap<BookId, Volume>,
    /// Rows of kinds of books this version does not know; they stay in the store.
    foreign: usize,
}

/// A book and what it amounts to.
#[derive(Clone)]
struct Volume {
    book: Book,
    state: State,
}

#[derive(Clone)]
enum State {
    Tin(Arc<Tin>),
    Drawer(Arc<Drawer>),
    Sheet(Arc<Sheet>),
    Job(Arc<Job>),
}

impl Books {
    /// The books of rows, which come in the order of their books.
    pub(super) fn of(rows: &[Row]) -> Books {
        let mut books = Books::default();
        for rows in rows.chunk_by(|one, next| one.book == next.book) {
            match rows.first().and_then(|row| BookId::parse(&row.book)) {
                Some(id) => {
                    books.put(Book::from_lines(id, rows.iter().map(|row| row.line.as_str())));
                }
                None => books.foreign += rows.len(),
            }
        }
        books
    }

    /// What was read again, with what was here. `None`: there is nothing new.
    pub(super) fn merge(&self, again: Books) -> Option<Books> {
        let mut merged = self.clone();
        let mut is_new = false;
        for (id, volume) in again.volumes {
            let book = self.book(&id).merge(&volume.book);
            if book != self.book(&id) {
                merged.put(book);
                is_new = true;
            }
        }
        is_new.then_some(merged)
    }

    /// Writes entries in.
    pub(super) fn take(&mut self, entries: &[Entry]) {
        for entries in entries.chunk_by(|one, next| one.book == next.book) {
            if let Some(first) = entries.first() {
                self.put(self.book(&first.book).with(entries.iter().cloned()));
            }
        }
    }

    /// The entries that facts become, if every book admits its own.
    pub(super) fn next(
        &self,
        facts: &[(BookId, Fact)],
        stamp: &Stamp,
    ) -> Result<Vec<Entry>, Refusal> {
        let mut by_book: BTreeMap<&BookId, Vec<Fact>> = BTreeMap::new();
        for (id, fact) in facts {
            by_book.entry(id).or_default().push(fact.clone());
        }
        let mut entries = Vec::new();
        for (id, facts) in by_book {
            entries.extend(self.book(id).next(facts, stamp)?);
        }
        Ok(entries)
    }

    /// Whether all of these are written in.
    pub(super) fn have(&self, entries: &[Entry]) -> bool {
        entries.iter().all(|wanted| {
            let volume = self.volumes.get(&wanted.book);
            volume.is_some_and(|volume| volume.book.entries().any(|entry| entry == wanted))
        })
    }

    pub(super) fn book(&self, id: &BookId) -> Book {
        self.volumes.get(id).map_or_else(|| Book::new(id.clone()), |volume| volume.book.clone())
    }

    pub(super) fn all(&self) -> impl Iterator<Item = &Book> {
        self.volumes.values().map(|volume| &volume.book)
    }

    pub(super) fn tin(&self) -> Arc<Tin> {
        match self.volumes.get(&BookId::Tin).map(|volume| &volume.state) {
            Some(State::Tin(tin)) => tin.clone(),
            _ => Arc::default(),
        }
    }

    pub(super) fn drawer(&self) -> Arc<Drawer> {
        match self.volumes.get(&BookId::Drawer).map(|volume| &volume.state) {
            Some(State::Drawer(drawer)) => drawer.clone(),
            _ => Arc::default(),
        }
    }

    pub(super) fn sheets(&self) -> impl Iterator<Item = &Arc<Sheet>> {
        self.volumes.values().filter_map(|volume| match &volume.state {
            State::Sheet(sheet) => Some(sheet),
            _ => None,
        })
    }

    pub(super) fn jobs(&self) -> impl Iterator<Item = &Arc<Job>> {
        self.job_books().map(|(_, job)| job)
    }

    /// The book of every job, and what it amounts to.
    pub(super) fn job_books(&self) -> impl Iterator<Item = (&Book, &Arc<Job>)> {
        self.volumes.values().filter_map(|volume| match &volume.state {
            State::Job(job) => Some((&volume.book, job)),
            _ => None,
        })
    }

    pub(super) fn sheet(&self, id: &str) -> Option<Arc<Sheet>> {
        match &self.volumes.get(&BookId::Sheet(id.to_owned()))?.state {
            State::Sheet(sheet) => Some(sheet.clone()),
            _ => None,
        }
    }

    pub(super) fn job(&self, id: &str) -> Option<Arc<Job>> {
        match &self.volumes.get(&BookId::Job(id.to_owned()))?.state {
            State::Job(job) => Some(job.clone()),
            _ => None,
        }
    }

    pub(super) fn is_empty(&self) -> bool {
        self.volumes.is_empty()
    }

    /// Entries, read or not.
    pub(super) fn lines(&self) -> usize {
        self.foreign + self.all().map(|book| book.lines().count()).sum::<usize>()
    }

    /// Entries this version cannot read; they are kept.
    pub(super) fn unread(&self) -> usize {
        self.foreign + self.all().map(Book::unread).sum::<usize>()
    }

    fn put(&mut self, book: Book) {
        let state = match book.id() {
            BookId::Tin => State::Tin(Arc::new(Tin::fold(&book))),
            BookId::Drawer => State::Drawer(Arc::new(Drawer::fold(&book))),
            BookId::Sheet(_) => State::Sheet(Arc::new(Sheet::fold(&book))),
            BookId::Job(_) => State::Job(Arc::new(Job::fold(&book))),
        };
        self.volumes.insert(book.id().clone(), Volume { book, state });
    }
}
