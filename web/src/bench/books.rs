//! The books of this device: of each what is known of it, and whole those that were opened.

use std::cmp::Reverse;
use std::collections::BTreeMap;
use std::sync::Arc;

use job::{Book, BookId, Drawer, Entry, Fact, Folded, Job, JobSummary, Refusal, Sheet};
use job::{Stamp, Summary, Tin};

use crate::place;
use crate::storage::{Row, Summed};

/// All books.
#[derive(Clone, Default)]
pub(super) struct Books {
    /// Of every book, by its name, also of kinds this version does not know.
    known: BTreeMap<String, Summary>,
    /// Those that were opened.
    volumes: BTreeMap<BookId, Volume>,
}

/// A book and what it amounts to, folded anew when something was written in it.
#[derive(Clone)]
pub(super) struct Volume {
    book: Book,
    folded: Folded,
    summary: Summary,
}

impl Volume {
    pub(super) fn of(book: Book) -> Volume {
        let folded = Folded::of(&book);
        Volume { summary: Summary::of(&book, &folded), folded, book }
    }

    pub(super) fn book(&self) -> &Book {
        &self.book
    }

    /// What a store keeps beside the book.
    pub(super) fn summed(&self) -> Summed {
        (self.book.id().to_string(), Some(self.summary.to_text()))
    }
}

impl Books {
    /// The books of rows, which come in the order of their books, all of them opened.
    pub(super) fn of(rows: &[Row]) -> Books {
        let mut books = Books::default();
        for rows in rows.chunk_by(|one, next| one.book == next.book) {
            let Some(name) = rows.first().map(|row| row.book.as_str()) else { continue };
            match volume(name, rows) {
                Some(volume) => books.put(volume),
                None => drop(books.known.insert(name.to_owned(), Summary::of_foreign(rows.len()))),
            }
        }
        books
    }

    /// The books that a store knows of, none of them opened; `None` where a text cannot be read.
    pub(super) fn known(summaries: Vec<Summed>) -> Option<Books> {
        let mut books = Books::default();
        for (name, text) in summaries {
            books.known.insert(name, Summary::from_text(text.as_deref()?)?);
        }
        Some(books)
    }

    /// Takes over what a store says of a book that is not open; what cannot be read is put right
    /// when the book is opened.
    pub(super) fn know(&mut self, name: String, text: Option<&str>) {
        match text.map(Summary::from_text) {
            Some(Some(summary)) => drop(self.known.insert(name, summary)),
            Some(None) => (),
            None => drop(self.known.remove(&name)),
        }
    }

    /// Whether what is known of a book is what the store says.
    pub(super) fn knows(&self, summed: &Summed) -> bool {
        self.known.get(&summed.0).map(Summary::to_text) == summed.1
    }

    /// Every opened book with these entries in it.
    pub(super) fn with(&self, entries: &[Entry]) -> Vec<Volume> {
        entries
            .chunk_by(|one, next| one.book == next.book)
            .filter_map(|entries| {
                let first = entries.first()?;
                Some(Volume::of(self.book(&first.book).with(entries.iter().cloned())))
            })
            .collect()
    }

    /// Opens a book, or puts it in the place of what it was before.
    pub(super) fn put(&mut self, volume: Volume) {
        self.known.insert(volume.book.id().to_string(), volume.summary.clone());
        self.volumes.insert(volume.book.id().clone(), volume);
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

    /// Whether there is such a book.
    pub(super) fn has(&self, id: &BookId) -> bool {
        self.known.contains_key(&id.to_string())
    }

    /// Whether a book can be looked at: it is open, or there is none.
    pub(super) fn is_open(&self, id: &BookId) -> bool {
        self.volumes.contains_key(id) || !self.has(id)
    }

    /// The book as far as it was opened.
    pub(super) fn book(&self, id: &BookId) -> Book {
        self.volumes.get(id).map_or_else(|| Book::new(id.clone()), |volume| volume.book.clone())
    }

    /// The opened books.
    pub(super) fn opened(&self) -> impl Iterator<Item = &Book> {
        self.volumes.values().map(Volume::book)
    }

    fn folded(&self, id: &BookId) -> Option<&Folded> {
        self.volumes.get(id).map(|volume| &volume.folded)
    }

    pub(super) fn tin(&self) -> Arc<Tin> {
        match self.folded(&BookId::Tin) {
            Some(Folded::Tin(tin)) => tin.clone(),
            _ => Arc::default(),
        }
    }

    pub(super) fn drawer(&self) -> Arc<Drawer> {
        match self.folded(&BookId::Drawer) {
            Some(Folded::Drawer(drawer)) => drawer.clone(),
            _ => Arc::default(),
        }
    }

    pub(super) fn sheet(&self, id: &str) -> Option<Arc<Sheet>> {
        match self.folded(&BookId::Sheet(id.to_owned()))? {
            Folded::Sheet(sheet) => Some(sheet.clone()),
            _ => None,
        }
    }

    pub(super) fn job(&self, id: &str) -> Option<Arc<Job>> {
        match self.folded(&BookId::Job(id.to_owned()))? {
            Folded::Job(job) => Some(job.clone()),
            _ => None,
        }
    }

    /// Every job, the one written in last first.
    pub(super) fn jobs(&self) -> Vec<Arc<JobSummary>> {
        let mut jobs: Vec<_> = self.known.values().filter_map(|it| it.job.clone()).collect();
        jobs.sort_by_key(|job| Reverse(job.last_at));
        jobs
    }

    /// The jobs that are not in the archive, the one written in last first.
    pub(super) fn on_bench(&self) -> Vec<Arc<JobSummary>> {
        self.jobs().into_iter().filter(|job| !job.archived).collect()
    }

    /// The job on the bench that was open last; before any was, the one written in last.
    pub(super) fn current(&self) -> Option<Arc<JobSummary>> {
        let jobs = self.on_bench();
        let last = place::carry_on().map(|last| last.path).unwrap_or_default();
        let id = last.trim_start_matches("/job/").split('/').next().unwrap_or_default();
        jobs.iter().find(|job| job.id == id).or(jobs.first()).cloned()
    }

    /// What a unit sheet is called; empty where there is none.
    pub(super) fn unit(&self, id: &str) -> String {
        let known = self.known.get(&BookId::Sheet(id.to_owned()).to_string());
        known.and_then(|summary| summary.unit.clone()).unwrap_or_default()
    }

    /// The ids of the unit sheets.
    pub(super) fn sheets(&self) -> impl Iterator<Item = String> {
        self.known.keys().filter_map(|name| match BookId::parse(name) {
            Some(BookId::Sheet(id)) => Some(id),
            _ => None,
        })
    }

    pub(super) fn is_empty(&self) -> bool {
        self.known.is_empty()
    }

    /// Entries, read or not.
    pub(super) fn entries(&self) -> usize {
        self.known.values().map(|summary| summary.entries).sum()
    }

    /// Entries this version cannot read; they are kept.
    pub(super) fn unread(&self) -> usize {
        self.known.values().map(|summary| summary.unread).sum()
    }
}

/// The book of rows; `None` for a kind of book this version does not know.
pub(super) fn volume(name: &str, rows: &[Row]) -> Option<Volume> {
    let id = BookId::parse(name)?;
    Some(Volume::of(Book::from_lines(id, rows.iter().map(|row| row.line.as_str()))))
}

/// What a store is to keep beside the rows of a book.
pub(super) fn sum(name: &str, rows: &[Row]) -> String {
    match volume(name, rows).map(|volume| volume.summed().1.unwrap_or_default()) {
        Some(text) => text,
        None => Summary::of_foreign(rows.len()).to_text(),
    }
}
