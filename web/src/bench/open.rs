//! Reading: books are opened when they are first looked at, and read again when another tab wrote.

use std::sync::Arc;

use job::{Book, BookId, Job, JobSummary, Summary};
use leptos::prelude::*;
use wasm_bindgen_futures::spawn_local;

use super::Bench;
use super::books::{Books, Volume, sum, volume};
use super::wanted::wanted;
use crate::address::Screen;
use crate::device::turn;
use crate::storage::{Batch, StoreError};

const NOT_READ: &str = "The store does not give what it holds. Reload this page; if that does not \
                        help, export everything from the settings.";

impl Bench {
    /// Whether everything that a screen shows can be looked at; reads it where not. Followed.
    pub fn is_open_for(self, screen: &Screen) -> bool {
        if !self.stands.get() {
            return false;
        }
        let closed: Vec<BookId> = self.books.with(|books| {
            wanted(screen, books).into_iter().filter(|id| !books.is_open(id)).collect()
        });
        let is_open = closed.is_empty();
        self.open_soon(closed);
        if is_open && !self.books.with(|books| books.is_open(&BookId::Tin)) {
            // Its count stands among the places; the screen is drawn first.
            request_animation_frame(move || self.open_soon(vec![BookId::Tin]));
        }
        is_open
    }

    /// The first so many of these jobs, as far as they and their sheets are open; the others are
    /// read. Followed.
    pub fn opened(self, jobs: &[Arc<JobSummary>], count: usize) -> Vec<Arc<Job>> {
        let first = || jobs.iter().take(count);
        let books =
            first().flat_map(|job| [BookId::Job(job.id.clone()), BookId::Sheet(job.sheet.clone())]);
        let closed = self
            .books
            .with(|books_here| books.filter(|id| !books_here.is_open(id)).collect::<Vec<_>>());
        self.open_soon(closed);
        self.books.with(|books| first().filter_map(|job| books.job(&job.id)).collect())
    }

    /// Reads books that are not open and not on their way; one after the other, shown together.
    fn open_soon(self, ids: Vec<BookId>) {
        let on_way = self.opening.get_untracked();
        let ids: Vec<BookId> = ids.into_iter().filter(|id| !on_way.contains(id)).collect();
        if ids.is_empty() {
            return;
        }
        self.opening.update_untracked(|opening| opening.extend(ids.iter().cloned()));
        spawn_local(async move {
            let outcome = self.open(ids.iter()).await;
            self.opening.update_untracked(|opening| opening.retain(|id| !ids.contains(id)));
            if outcome.is_err() {
                self.trouble.set(Some(NOT_READ));
            }
        });
    }

    /// Reads the books that are not open yet.
    pub(super) async fn open(self, ids: impl Iterator<Item = &BookId>) -> Result<(), StoreError> {
        let mut ids: Vec<&BookId> = ids.collect();
        ids.sort();
        ids.dedup();
        ids.retain(|id| !self.books.with_untracked(|books| books.is_open(id)));
        let read = self.read(&ids).await?;
        self.show(read).await;
        Ok(())
    }

    async fn read(self, ids: &[&BookId]) -> Result<Vec<Volume>, StoreError> {
        let names: Vec<String> = ids.iter().map(|id| id.to_string()).collect();
        let rows = self.store.get_value().books(&names).await?;
        let empty = |id: &BookId| Volume::of(Book::new(id.clone()));
        let volumes = ids.iter().zip(names).zip(rows);
        Ok(volumes
            .map(|((id, name), rows)| volume(&name, &rows).unwrap_or_else(|| empty(id)))
            .collect())
    }

    /// Shows books as they were read, with what was written meanwhile. Where the store knew them
    /// otherwise, as where an older app was at work, it is put right.
    async fn show(self, read: Vec<Volume>) {
        if read.is_empty() {
            return;
        }
        let mut summaries = Vec::new();
        self.books.update(|books| {
            for volume in read {
                let here = books.book(volume.book().id());
                let both = match here.is_empty() {
                    true => volume,
                    false => Volume::of(here.merge(volume.book())),
                };
                let summed = both.summed();
                if !books.knows(&summed) {
                    summaries.push(summed);
                }
                books.put(both);
            }
        });
        if !summaries.is_empty() {
            // Refused, it is put right another time.
            self.store.get_value().add(&Batch { summaries, ..Batch::default() }).await.ok();
        }
    }

    /// Reads one book again, and shows what is new in it; of a book that is not open, what is known
    /// of it.
    pub(super) async fn read_again(self, name: &str) -> Result<(), StoreError> {
        let store = self.store.get_value();
        let open = BookId::parse(name)
            .filter(|id| self.books.with_untracked(|books| books.has(id) && books.is_open(id)));
        match open {
            Some(id) => {
                let mut read = self.read(&[&id]).await?;
                self.books.with_untracked(|books| {
                    let here = books.book(&id);
                    read.retain(|read| here.clone().merge(read.book()) != here);
                });
                self.show(read).await;
            }
            None => {
                let text = store.summary(name).await?;
                self.books.update(|books| books.know(name.to_owned(), text.as_deref()));
            }
        }
        Ok(())
    }

    /// Reads all anew and shows that, and nothing that is not in the store any more.
    pub(super) async fn read_anew(self) -> Result<(), StoreError> {
        let _mine = turn::take().await;
        self.show_anew().await
    }

    /// The same for who has the turn already.
    pub(super) async fn show_anew(self) -> Result<(), StoreError> {
        let store = self.store.get_value();
        let mut books = match store.summaries(Summary::FORM).await?.and_then(Books::known) {
            Some(books) => books,
            None => Books::of(&store.all().await?),
        };
        let open: Vec<BookId> =
            self.books.with_untracked(|books| books.opened().map(|it| it.id().clone()).collect());
        let open: Vec<&BookId> = open.iter().filter(|id| books.has(id)).collect();
        for volume in self.read(&open).await? {
            books.put(volume);
        }
        self.books.set(books);
        Ok(())
    }

    /// Reads again what the store knows otherwise.
    pub(super) async fn read_what_changed(self) -> Result<(), StoreError> {
        let Some(summaries) = self.store.get_value().summaries(Summary::FORM).await? else {
            return Ok(());
        };
        let others = self.books.with_untracked(|books| {
            let others = summaries.into_iter().filter(|summed| !books.knows(summed));
            others.map(|(name, _)| name).collect::<Vec<_>>()
        });
        for name in others {
            self.read_again(&name).await?;
        }
        Ok(())
    }

    /// Works out anew what is known of every book: once after an older app, and on a store of
    /// another version that is only looked at.
    pub(super) async fn sum_up(self) {
        let outcome = async {
            let _mine = turn::take().await;
            let store = self.store.get_value();
            if store.only_looks().is_some() {
                self.books.set(Books::of(&store.all().await?));
                return Ok(());
            }
            store.sum_all_up(Summary::FORM, sum).await?;
            let summaries = store.summaries(Summary::FORM).await?;
            self.books.set(summaries.and_then(Books::known).unwrap_or_default());
            Ok::<(), StoreError>(())
        };
        if outcome.await.is_err() {
            self.trouble.set(Some(NOT_READ));
        }
        self.stands.set(true);
    }
}
