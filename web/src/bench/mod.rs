//! The bench owns the books. [`Bench::record`] is the only way to change one:
//! admitted by the log, stored for good, and only then shown.

mod books;
pub mod bring;
mod error;
pub mod export;
mod last;
mod mark;
mod tabs;
mod turn;

use std::sync::Arc;

use job::{Book, BookId, Drawer, Entry, Fact, Job, Refusal, Sheet, Stamp, Tin};
use leptos::prelude::*;
use wasm_bindgen_futures::spawn_local;
use web_sys::Blob;

use crate::device::now::{device_id, fresh_id, now};
use crate::parts::{LastEntry, Standing};
use crate::storage::{Photo, Row, Store, StoreError};
use books::Books;
use bring::Brought;
pub use error::RecordError;
use last::Last;
use tabs::Tabs;

/// How often an act is tried again when another tab was first: once where acts take turns.
const TRIES: usize = 5;

/// What is read before the first screen stands.
pub struct Opened {
    store: Store,
    rows: Vec<Row>,
    trouble: ArcRwSignal<Option<&'static str>>,
}

impl Opened {
    /// Opens the store and reads every row.
    ///
    /// # Errors
    /// Why the store did not open.
    pub async fn read() -> Result<Opened, StoreError> {
        let trouble = ArcRwSignal::new(None);
        let told = trouble.clone();
        let store = Store::open(move || told.set(Some(OUTDATED))).await?;
        let rows = store.all().await?;
        if store.was_replaced() {
            trouble.set(Some(REPLACED));
        } else if store.is_newer() {
            trouble.set(Some(NEWER));
        } else if rows.is_empty() && mark::is_there() {
            trouble.set(Some(CLEARED));
        }
        if !rows.is_empty() {
            mark::set();
        }
        Ok(Opened { store, rows, trouble })
    }

    /// True before anything was ever written down here, and nothing is wrong with the store.
    pub fn is_new(&self) -> bool {
        self.rows.is_empty() && self.trouble.with_untracked(Option::is_none)
    }
}

const OUTDATED: &str =
    "A newer version of the app is open in another tab, so this tab saves nothing more. Reload it.";
const NEWER: &str = "A newer version of the app made the store of this device. \
                     This version shows it and saves nothing. Reload to update.";
const CLEARED: &str = "The browser has cleared the store: there were entries here, and they are \
                       gone. Bring in your last backup, then have the browser keep them.";
const REPLACED: &str = "The browser found the store broken and began an empty one. \
                        What was in it is only in your backups: bring in the last one.";

/// The books of this device, in context of every screen.
#[derive(Clone, Copy)]
pub struct Bench {
    books: RwSignal<Books>,
    last: RwSignal<Option<Last>>,
    saved_at: RwSignal<Option<i64>>,
    trouble: RwSignal<Option<&'static str>>,
    store: StoredValue<Store, LocalStorage>,
    tabs: StoredValue<Option<Tabs>, LocalStorage>,
    brought: RwSignal<Option<Brought>>,
}

impl Bench {
    /// Takes over what was read, and follows what other tabs write.
    pub fn new(opened: Opened) -> Bench {
        let bench = Bench {
            books: RwSignal::new(Books::of(&opened.rows)),
            last: RwSignal::new(None),
            saved_at: RwSignal::new(None),
            trouble: RwSignal::from(opened.trouble),
            store: StoredValue::new_local(opened.store),
            tabs: StoredValue::new_local(None),
            brought: RwSignal::new(None),
        };
        let heard = move |books: Vec<String>| {
            spawn_local(async move {
                // What cannot be read now is read when the tab is looked at.
                if books.is_empty() {
                    bench.read_anew().await.ok();
                }
                for book in books {
                    bench.read_again(Some(&book)).await.ok();
                }
            });
        };
        bench.tabs.set_value(Some(Tabs::listen(heard)));
        let seen = window_event_listener_untyped("visibilitychange", move |_| {
            if !document().hidden() {
                spawn_local(async move {
                    bench.read_if_more().await.ok();
                });
            }
        });
        on_cleanup(move || seen.remove());
        bench
    }

    /// Writes facts down, in one act: all of them or none. Returns the ids of their entries, in
    /// the order of their books, once they are on the disk.
    ///
    /// # Errors
    /// Where a book does not admit one of them, or the store does not take them. Nothing is
    /// shown as written then.
    pub async fn record(self, facts: Vec<(BookId, Fact)>) -> Result<Vec<String>, RecordError> {
        self.record_with(facts, Vec::new()).await
    }

    /// The same with photos that the facts name: they are kept together or not at all.
    ///
    /// # Errors
    /// As for [`Bench::record`].
    pub async fn record_with(
        self,
        facts: Vec<(BookId, Fact)>,
        photos: Vec<Photo>,
    ) -> Result<Vec<String>, RecordError> {
        let before = self.last.get_untracked();
        let saving = |entries: &[Entry]| Last::of(entries, Standing::Saving);
        let outcome = self.keep(&facts, &photos, saving).await;
        self.last.set(match &outcome {
            Ok(entries) => {
                let last = Last::of(entries, Standing::Kept);
                self.retractions(&last).is_some().then_some(last)
            }
            Err(_) => before,
        });
        outcome.map(|entries| entries.into_iter().map(|entry| entry.id).collect())
    }

    /// Takes the last act of this visit back, by further entries; or puts it back again.
    ///
    /// # Errors
    /// As for [`Bench::record`], and where another tab has written in its book since.
    pub async fn turn_last(self) -> Result<(), RecordError> {
        let Some(last) = self.last.get_untracked() else { return Ok(()) };
        match last.standing {
            Standing::Saving => Ok(()),
            Standing::TakenBack => self.record(last.facts()).await.map(drop),
            Standing::Kept => {
                let retractions = self.retractions(&last).ok_or(Refusal::NotRetractable)?;
                let saving = |_: &[Entry]| last.with(Standing::Saving);
                let outcome = self.keep(&retractions, &[], saving).await;
                let stands = if outcome.is_ok() { Standing::TakenBack } else { Standing::Kept };
                self.last.set(Some(last.with(stands)));
                outcome.map(drop)
            }
        }
    }

    /// What takes an act back, as long as it is the last of its book.
    fn retractions(self, last: &Last) -> Option<Vec<(BookId, Fact)>> {
        let book = last.book()?;
        let retractions =
            self.books.with_untracked(|books| job::undo(&books.book(book), books.all()));
        last.is_taken_back_by(&retractions).then_some(retractions)
    }

    /// Admits, stores, and only then shows; meanwhile the last act is what `saving` says.
    async fn keep(
        self,
        facts: &[(BookId, Fact)],
        photos: &[Photo],
        saving: impl Fn(&[Entry]) -> Last,
    ) -> Result<Vec<Entry>, RecordError> {
        let _mine = turn::take().await;
        let store = self.store.get_value();
        let stamp = Stamp { device: device_id(), at: now(), act: fresh_id() };
        for _ in 0..TRIES {
            let entries = self.books.with_untracked(|books| books.next(facts, &stamp))?;
            self.last.set(Some(saving(&entries)));
            let rows: Vec<Row> = entries.iter().map(row).collect();
            let names = names(&rows);
            match store.add(&rows, photos).await {
                Ok(()) => self.books.update(|books| books.take(&entries)),
                Err(StoreError::Taken) => {
                    for name in &names {
                        self.read_again(Some(name)).await?;
                    }
                    // A lost connection may have kept them after all.
                    if !self.books.with_untracked(|books| books.have(&entries)) {
                        continue;
                    }
                }
                Err(error) => return Err(error.into()),
            }
            mark::set();
            self.saved_at.set(Some(stamp.at));
            self.tabs.with_value(|tabs| tabs.iter().for_each(|tabs| tabs.tell(&names)));
            return Ok(entries);
        }
        Err(StoreError::Taken.into())
    }

    /// Reads one book again, or all, and shows what is new in it.
    async fn read_again(self, book: Option<&str>) -> Result<(), StoreError> {
        let store = self.store.get_value();
        let rows = match book {
            Some(book) => store.book(book).await?,
            None => store.all().await?,
        };
        let merged = self.books.with_untracked(|books| books.merge(Books::of(&rows)));
        if let Some(merged) = merged {
            self.books.set(merged);
        }
        Ok(())
    }

    /// Reads all and shows that, and nothing that is not in the store any more.
    async fn read_anew(self) -> Result<(), StoreError> {
        let _mine = turn::take().await;
        let rows = self.store.get_value().all().await?;
        self.books.set(Books::of(&rows));
        Ok(())
    }

    /// Reads all again where the store holds more than the books.
    async fn read_if_more(self) -> Result<(), StoreError> {
        let kept = self.store.get_value().count().await?;
        let all_here = kept == self.books.with_untracked(Books::lines);
        if all_here { Ok(()) } else { self.read_again(None).await }
    }

    /// A photo; `None` where it is not on this device.
    ///
    /// # Errors
    /// Why the store did not give it.
    pub async fn photo(self, id: &str) -> Result<Option<Blob>, StoreError> {
        self.store.get_value().photo(id).await
    }

    /// The last act of this visit, for the bar that offers Undo.
    pub fn last(self) -> Option<LastEntry> {
        self.last.with(|last| last.as_ref().and_then(Last::shown))
    }

    /// True while something is on its way to the disk.
    pub fn is_saving(self) -> bool {
        self.last.with(|last| last.as_ref().is_some_and(|last| last.standing == Standing::Saving))
    }

    /// The job of that id; `None` where there is no such book.
    pub fn job(self, id: &str) -> Memo<Option<Arc<Job>>> {
        let id = id.to_owned();
        let job = move |_: Option<&_>| self.books.with(|books| books.job(&id));
        Memo::new_with_compare(job, is_another)
    }

    /// The unit sheet of that id; `None` where there is no such book.
    pub fn sheet(self, id: &str) -> Memo<Option<Arc<Sheet>>> {
        let id = id.to_owned();
        let sheet = move |_: Option<&_>| self.books.with(|books| books.sheet(&id));
        Memo::new_with_compare(sheet, is_another)
    }

    /// The unit sheet of a job.
    pub fn sheet_of(self, job: Memo<Option<Arc<Job>>>) -> Memo<Option<Arc<Sheet>>> {
        let sheet = move |_: Option<&_>| {
            let id = job.with(|job| job.as_ref().map(|job| job.sheet.clone()))?;
            self.books.with(|books| books.sheet(&id))
        };
        Memo::new_with_compare(sheet, is_another)
    }

    /// The shim tin; empty before the first shim.
    pub fn tin(self) -> Memo<Arc<Tin>> {
        let tin = move |_: Option<&_>| self.books.with(Books::tin);
        Memo::new_with_compare(tin, |old: Option<&Arc<Tin>>, new: Option<&Arc<Tin>>| {
            old.map(Arc::as_ptr) != new.map(Arc::as_ptr)
        })
    }

    /// The tool drawer; empty before the first tool. Folded anew only when something was written
    /// in it.
    pub fn drawer(self) -> Memo<Arc<Drawer>> {
        let drawer = move |_: Option<&_>| self.books.with(Books::drawer);
        Memo::new_with_compare(drawer, |old: Option<&Arc<Drawer>>, new: Option<&Arc<Drawer>>| {
            old.map(Arc::as_ptr) != new.map(Arc::as_ptr)
        })
    }

    /// Every job, the one written in last first.
    pub fn jobs(self) -> Vec<Arc<Job>> {
        let mut jobs: Vec<_> = self.books.with(|books| books.jobs().cloned().collect());
        jobs.sort_by_key(|job: &Arc<Job>| std::cmp::Reverse(job.last_at));
        jobs
    }

    /// Looks at a book as it is written.
    pub fn with_book<T>(self, id: &BookId, look: impl FnOnce(&Book) -> T) -> T {
        look(&self.books.with_untracked(|books| books.book(id)))
    }

    /// Every unit sheet.
    pub fn sheets(self) -> Vec<Arc<Sheet>> {
        self.books.with(|books| books.sheets().cloned().collect())
    }

    /// True before anything was ever written down here.
    pub fn is_empty(self) -> bool {
        self.books.with(Books::is_empty)
    }

    /// How many entries there are, read or not.
    pub fn entries(self) -> usize {
        self.books.with(Books::lines)
    }

    /// How many entries this version cannot read. They are kept and exported.
    pub fn unread(self) -> usize {
        self.books.with(Books::unread)
    }

    /// When something was last saved in this visit, milliseconds since 1970, UTC.
    pub fn saved_at(self) -> Option<i64> {
        self.saved_at.get()
    }

    /// What is wrong with the store as a whole, in a sentence.
    pub fn trouble(self) -> Option<&'static str> {
        self.trouble.get()
    }
}

/// The bench from context.
pub fn use_bench() -> Bench {
    expect_context()
}

/// Folded states are shared and never changed, so another place in memory is another state.
fn is_another<T>(old: Option<&Option<Arc<T>>>, new: Option<&Option<Arc<T>>>) -> bool {
    let place = |state: Option<&Option<Arc<T>>>| state.map(|it| it.as_ref().map(Arc::as_ptr));
    place(old) != place(new)
}

fn row(entry: &Entry) -> Row {
    Row {
        book: entry.book.to_string(),
        counter: entry.counter,
        device: entry.device.clone(),
        line: entry.to_line(),
    }
}

/// The books of rows that lie together, each once.
fn names(rows: &[Row]) -> Vec<String> {
    let mut names: Vec<String> = rows.iter().map(|row| row.book.clone()).collect();
    names.dedup();
    names
}
