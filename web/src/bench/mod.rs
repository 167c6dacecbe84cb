//! The bench owns the books. [`Bench::record`] is the only way to change one:
//! admitted by the log, stored for good, and only then shown.

mod again;
mod books;
pub mod bring;
mod error;
pub mod export;
mod last;
mod look;
mod mark;
mod open;
mod tabs;
mod wanted;

use std::time::Duration;

use job::{BookId, Entry, Fact, Refusal, Stamp, Summary};
use leptos::prelude::*;
use wasm_bindgen_futures::spawn_local;

use crate::device::now::{device_id, fresh_id, now};
use crate::device::turn;
use crate::parts::Standing;
use crate::storage::{Batch, Photo, Row, Store, StoreError, Summed};
use books::{Books, Volume};
use bring::Brought;
pub use error::RecordError;
use last::Last;
use tabs::Tabs;
pub use wanted::AT_FIRST;

/// How often an act is tried again when another tab was first: once where acts take turns.
const TRIES: usize = 5;

/// What is read before the first screen stands.
pub struct Opened {
    store: Store,
    /// `None`: to be worked out anew.
    summaries: Option<Vec<Summed>>,
    is_empty: bool,
    trouble: ArcRwSignal<Option<&'static str>>,
}

impl Opened {
    /// Opens the store and reads what is known of its books.
    ///
    /// # Errors
    /// Why the store did not open.
    pub async fn read() -> Result<Opened, StoreError> {
        let trouble = ArcRwSignal::new(None);
        let told = trouble.clone();
        let store = Store::open(move |why| {
            told.set(Some(if why == StoreError::Cleared { CLEARED_NOW } else { OUTDATED }));
        });
        let store = store.await?;
        let mut summaries = store.summaries(Summary::FORM).await?;
        let mut is_empty = match &summaries {
            Some(summaries) => summaries.is_empty(),
            None => store.count().await? == 0,
        };
        if let Some(why) = store.only_looks() {
            trouble.set(Some(if why == StoreError::Older { OLDER } else { NEWER }));
        } else if is_empty && (mark::is_there() || store.was_replaced()) {
            let rows = again::rows();
            is_empty = rows.is_empty();
            trouble.set(Some(match (is_empty, store.was_replaced()) {
                (false, _) => PUT_BACK,
                (true, true) => REPLACED,
                (true, false) => CLEARED,
            }));
            if !is_empty {
                put_back(&store, rows).await?;
                summaries = None;
            }
        }
        if !is_empty {
            mark::set();
        }
        Ok(Opened { store, summaries, is_empty, trouble })
    }

    /// Whether something was written down here before, as far as is known without opening the
    /// store.
    pub fn was_here() -> bool {
        mark::is_there()
    }

    /// True before anything was ever written down here, and nothing is wrong with the store.
    pub fn is_new(&self) -> bool {
        self.is_empty && self.trouble.with_untracked(Option::is_none)
    }
}

/// Puts rows into an empty store; another tab may have been first.
async fn put_back(store: &Store, rows: Vec<Row>) -> Result<(), StoreError> {
    match store.add(&Batch { rows, ..Batch::default() }).await {
        Ok(()) | Err(StoreError::Taken) => Ok(()),
        Err(why) => Err(why),
    }
}

const OUTDATED: &str =
    "A newer version of the app is open in another tab, so this tab saves nothing more. Reload it.";
const NEWER: &str = "A newer version of the app made the store of this device. \
                     This version shows it and saves nothing. Reload to update.";
const OLDER: &str = "The store of this device is still in its older form, because the copy that comes before a \
     change could not be made. It is shown and takes nothing. Free some room, then reload.";
const CLEARED: &str = "The browser has cleared the store: there were entries here, and they are \
                       gone. Bring in your last backup, then have the browser keep them.";
/// How long a write may take before it is said.
const PATIENCE: Duration = Duration::from_secs(10);
const NO_ANSWER: &str = "The store has not answered for ten seconds; the device may be full. What was typed last is \
     not saved yet. Free some room; if it stays like this, reload.";
const CLEARED_NOW: &str = "The browser has cleared the store while this page was open, so nothing more is saved here. \
     Reload it: what was written since the last backup is put back.";
const PUT_BACK: &str = "The browser had lost the store. What was written since the last backup is put back from a \
     second copy, without its photos. Bring in that backup for the rest.";
const REPLACED: &str = "The browser found the store broken and began an empty one. \
                        What was in it is only in your backups: bring in the last one.";

/// The books of this device, in context of every screen.
#[derive(Clone, Copy)]
pub struct Bench {
    books: RwSignal<Books>,
    /// Books that are being read.
    opening: RwSignal<Vec<BookId>>,
    /// False while what is known of the books is worked out anew.
    stands: RwSignal<bool>,
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
        let known = opened.summaries.and_then(Books::known);
        let stands = known.is_some();
        let bench = Bench {
            books: RwSignal::new(known.unwrap_or_default()),
            opening: RwSignal::new(Vec::new()),
            stands: RwSignal::new(stands),
            last: RwSignal::new(None),
            saved_at: RwSignal::new(None),
            trouble: RwSignal::from(opened.trouble),
            store: StoredValue::new_local(opened.store),
            tabs: StoredValue::new_local(None),
            brought: RwSignal::new(None),
        };
        if !stands {
            spawn_local(bench.sum_up());
        }
        let store = bench.store.get_value();
        // Once the first screen is drawn; whoever writes meanwhile waits for it.
        request_animation_frame(move || {
            spawn_local(async move {
                let _mine = turn::take().await;
                // Refused, the first write says why.
                store.freshen().await.ok();
            });
        });
        let heard = move |names: Vec<String>| {
            spawn_local(async move {
                // What cannot be read now is read when the tab is looked at.
                if names.is_empty() {
                    bench.read_anew().await.ok();
                }
                for name in names {
                    bench.read_again(&name).await.ok();
                }
            });
        };
        bench.tabs.set_value(Some(Tabs::listen(heard)));
        let seen = window_event_listener_untyped("visibilitychange", move |_| {
            if !document().hidden() {
                spawn_local(async move {
                    bench.read_what_changed().await.ok();
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
        self.record_set(facts, Batch { photos, ..Batch::default() }).await
    }

    /// Takes photos of a job off this device and writes that down, with the time of the backup that
    /// has them.
    ///
    /// # Errors
    /// As for [`Bench::record`]. No photo is gone then.
    pub async fn free_photos(
        self,
        job: &str,
        photos: Vec<String>,
        backup: i64,
    ) -> Result<(), RecordError> {
        let fact = Fact::PhotosFreed { photos: photos.clone(), backup };
        let set = Batch { freed: photos, ..Batch::default() };
        self.record_set(vec![(BookId::Job(job.to_owned()), fact)], set).await.map(drop)
    }

    /// Writes facts down with what a set has beside their rows.
    async fn record_set(
        self,
        facts: Vec<(BookId, Fact)>,
        set: Batch,
    ) -> Result<Vec<String>, RecordError> {
        let before = self.last.get_untracked();
        let saving = |entries: &[Entry]| Last::of(entries, Standing::Saving);
        let outcome = self.keep(&facts, &set, saving).await;
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
                let outcome = self.keep(&retractions, &Batch::default(), saving).await;
                let stands = if outcome.is_ok() { Standing::TakenBack } else { Standing::Kept };
                self.last.set(Some(last.with(stands)));
                outcome.map(drop)
            }
        }
    }

    /// Waits for the store, and says so where it does not answer: a browser whose disk is full may
    /// let a write stand for minutes.
    async fn awaited<T>(self, answer: impl Future<Output = T>) -> T {
        let say = move || self.trouble.set(Some(NO_ANSWER));
        let timer = set_timeout_with_handle(say, PATIENCE).ok();
        let answer = answer.await;
        if let Some(timer) = timer {
            timer.clear();
        }
        if self.trouble.get_untracked() == Some(NO_ANSWER) {
            self.trouble.set(None);
        }
        answer
    }

    /// What takes an act back, as long as it is the last of its book.
    fn retractions(self, last: &Last) -> Option<Vec<(BookId, Fact)>> {
        let book = last.book()?;
        let retractions =
            self.books.with_untracked(|books| job::undo(&books.book(book), books.opened()));
        last.is_taken_back_by(&retractions).then_some(retractions)
    }

    /// Admits, stores, and only then shows; meanwhile the last act is what `saving` says.
    async fn keep(
        self,
        facts: &[(BookId, Fact)],
        with: &Batch,
        saving: impl Fn(&[Entry]) -> Last,
    ) -> Result<Vec<Entry>, RecordError> {
        let _mine = turn::take().await;
        self.open(facts.iter().map(|(id, _)| id)).await?;
        let store = self.store.get_value();
        let stamp = Stamp { device: device_id(), at: now(), act: fresh_id() };
        for _ in 0..TRIES {
            let entries = self.books.with_untracked(|books| books.next(facts, &stamp))?;
            self.last.set(Some(saving(&entries)));
            let volumes = self.books.with_untracked(|books| books.with(&entries));
            let set = Batch {
                rows: entries.iter().map(row).collect(),
                summaries: volumes.iter().map(Volume::summed).collect(),
                ..with.clone()
            };
            let names: Vec<String> = set.summaries.iter().map(|(name, _)| name.clone()).collect();
            match self.awaited(store.add(&set)).await {
                Ok(()) => {
                    self.books.update(|books| volumes.into_iter().for_each(|it| books.put(it)));
                }
                Err(StoreError::Taken) => {
                    for name in &names {
                        self.read_again(name).await?;
                    }
                    // A lost connection may have kept them after all.
                    if !self.books.with_untracked(|books| books.have(&entries)) {
                        continue;
                    }
                }
                Err(error) => return Err(error.into()),
            }
            again::keep(&set.rows);
            mark::set();
            self.saved_at.set(Some(stamp.at));
            self.tabs.with_value(|tabs| tabs.iter().for_each(|tabs| tabs.tell(&names)));
            return Ok(entries);
        }
        Err(StoreError::Taken.into())
    }
}

/// The bench from context.
pub fn use_bench() -> Bench {
    expect_context()
}

fn row(entry: &Entry) -> Row {
    Row {
        book: entry.book.to_string(),
        counter: entry.counter,
        device: entry.device.clone(),
        line: entry.to_line(),
    }
}
