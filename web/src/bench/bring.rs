//! What comes in from a file: compared, kept in one transaction, and lifted out again.

use std::collections::{BTreeMap, BTreeSet};

use job::files::{Changes, Coming};
use job::{BookId, Fact, Stamp};
use leptos::prelude::*;

use super::books::sum;
use super::{Bench, Books, RecordError, again, mark, row};
use crate::device::now::{device_id, fresh_id, now};
use crate::device::turn;
use crate::storage::{Batch, Photo, Row, StoreError, Summed};

/// What was brought in last on this visit.
#[derive(Clone, Debug)]
pub struct Brought {
    /// The set, with what was known of its books before it.
    set: Batch,
    /// How many rows each book had with it.
    counts: Vec<(String, usize)>,
}

impl Brought {
    /// How many entries it was, judgements among them.
    pub fn entries(&self) -> usize {
        self.set.rows.len() + self.set.beside.len()
    }
}

impl Bench {
    /// What a file would change here.
    ///
    /// # Errors
    /// Why the store did not give what is here.
    pub async fn compare(self, coming: &[Coming]) -> Result<Changes, StoreError> {
        Ok(Changes::of(coming, &lines(&self.rows_of(coming).await?)))
    }

    /// Which of these photos are not on this device yet.
    ///
    /// # Errors
    /// What the browser gave as its reason.
    pub async fn new_photos(self, photos: Vec<Photo>) -> Result<Vec<Photo>, StoreError> {
        let mut known: BTreeSet<String> =
            self.store.get_value().photo_ids().await?.into_iter().collect();
        Ok(photos.into_iter().filter(|photo| known.insert(photo.id.clone())).collect())
    }

    /// Keeps what a file brings that is not here yet, with what was judged about it: all or none.
    ///
    /// # Errors
    /// Where a judgement is not admitted, or the store does not take it. Nothing changed then.
    pub async fn bring(
        self,
        coming: &[Coming],
        judged: &[(BookId, Fact)],
        photos: Vec<Photo>,
    ) -> Result<Brought, RecordError> {
        let _mine = turn::take().await;
        let here = self.rows_of(coming).await?;
        let fresh = Changes::of(coming, &lines(&here)).fresh;
        let fresh: Vec<Row> = fresh.into_iter().map(from_coming).collect();
        let mut together = [&here[..], &fresh[..]].concat();
        together.sort();
        let stamp = Stamp { device: device_id(), at: now(), act: fresh_id() };
        let judgements = Books::of(&together).next(judged, &stamp)?;
        let judgements: Vec<Row> = judgements.iter().map(row).collect();
        together.extend(judgements.iter().cloned());
        together.sort();
        let mut set = Batch { photos: self.new_photos(photos).await?, ..Batch::default() };
        let mut taken: BTreeSet<_> = here.iter().map(place).collect();
        for row in fresh.into_iter().chain(judgements.iter().cloned()) {
            let is_free = taken.insert(place(&row));
            if is_free { set.rows.push(row) } else { set.beside.push(row) }
        }
        set.summaries = summaries(&together);
        self.store.get_value().add(&set).await?;
        // The file still has the others.
        again::keep(&judgements);
        mark::set();
        set.summaries = before(&set.summaries, &here);
        let mut counts: BTreeMap<String, usize> = BTreeMap::new();
        for row in here.iter().chain(&set.rows).chain(&set.beside) {
            *counts.entry(row.book.clone()).or_default() += 1;
        }
        let brought = Brought { set, counts: counts.into_iter().collect() };
        // It is kept; what cannot be read now is read when the tab is looked at.
        self.show_anew().await.ok();
        self.last.set(None);
        self.saved_at.set(Some(stamp.at));
        self.brought.set(Some(brought.clone()));
        self.tell_all();
        Ok(brought)
    }

    /// Lifts what was brought in last out again: all or none, and only as long as nothing was
    /// written in its books since.
    ///
    /// # Errors
    /// [`StoreError::Taken`] where something was written since; otherwise what the browser gave as
    /// its reason. Nothing changed then.
    pub async fn lift_out(self) -> Result<(), StoreError> {
        let Some(brought) = self.brought.get_untracked() else { return Ok(()) };
        {
            let _mine = turn::take().await;
            self.store.get_value().take_out(&brought.set, &brought.counts).await?;
            again::take_out(&brought.set.rows);
        }
        self.brought.set(None);
        self.last.set(None);
        self.tell_all();
        self.read_anew().await
    }

    /// What was brought in last on this visit, as long as it was not lifted out.
    pub fn brought(self) -> Option<Brought> {
        self.brought.get()
    }

    fn tell_all(self) {
        self.tabs.with_value(|tabs| tabs.iter().for_each(|tabs| tabs.tell(&[])));
    }

    /// The rows of the books that a file names.
    async fn rows_of(self, coming: &[Coming]) -> Result<Vec<Row>, StoreError> {
        let store = self.store.get_value();
        let names: BTreeSet<&str> = coming.iter().map(|coming| coming.book.as_str()).collect();
        let mut rows = Vec::new();
        for name in names {
            rows.extend(store.book(name).await?);
        }
        Ok(rows)
    }
}

/// What is known of the books of rows.
fn summaries(rows: &[Row]) -> Vec<Summed> {
    let books = rows.chunk_by(|one, next| one.book == next.book);
    let sum = |rows: &[Row]| rows.first().map(|row| (row.book.clone(), Some(sum(&row.book, rows))));
    books.filter_map(sum).collect()
}

/// What was known of these books when only the rows `here` were in them.
fn before(now: &[Summed], here: &[Row]) -> Vec<Summed> {
    let known: BTreeMap<String, Option<String>> = summaries(here).into_iter().collect();
    now.iter().map(|(name, _)| (name.clone(), known.get(name).cloned().flatten())).collect()
}

/// The key that a row asks for.
fn place(row: &Row) -> (String, u64, String) {
    (row.book.clone(), row.counter, row.device.clone())
}

fn from_coming(coming: Coming) -> Row {
    let Coming { book, counter, device, line } = coming;
    Row { book, counter, device, line }
}

fn lines(rows: &[Row]) -> BTreeMap<String, Vec<String>> {
    let mut lines: BTreeMap<String, Vec<String>> = BTreeMap::new();
    for row in rows {
        lines.entry(row.book.clone()).or_default().push(row.line.clone());
    }
    lines
}
