//! Backups and tables, for safe keeping off this device.

use job::files::{Backup, Head, Picture, csv, parts, text};
use job::{Book, BookId, Sheet, photos_of};
use js_sys::{Array, Uint8Array};
use leptos::prelude::*;
use wasm_bindgen::JsValue;
use wasm_bindgen_futures::JsFuture;
use web_sys::Blob;

use super::{Bench, again, mark};
use crate::device::file::{Handed, hand_over};
use crate::device::now::{device_id, now, utc_offset_minutes};
use crate::scratch;
use crate::storage::{Row, Store, StoreError};

/// Where the last backup is noted; it may be lost, and then none is known.
const NOTED: &str = "exported";
const LINES: &str = "application/x-ndjson";

/// A backup of everything that was handed over.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Exported {
    /// Its name, of the first file where there are several.
    pub name: String,
    /// How many entries it holds.
    pub entries: usize,
    /// How many photos it holds.
    pub photos: usize,
    /// How many files it is.
    pub files: usize,
    /// When, milliseconds since 1970, UTC.
    pub at: i64,
    /// How it was handed over.
    pub handed: Handed,
}

/// When the last backup of everything was made, and how many entries it held.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct LastBackup {
    /// When, milliseconds since 1970, UTC.
    pub at: i64,
    /// How many entries it held.
    pub entries: usize,
}

/// The last backup this device knows of.
pub fn last_backup() -> Option<LastBackup> {
    let noted = scratch::read(NOTED)?;
    let mut words = noted.split(' ');
    Some(LastBackup { at: words.next()?.parse().ok()?, entries: words.next()?.parse().ok()? })
}

/// What a table of readings is written as.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum View {
    /// A table for a spreadsheet.
    Csv,
    /// Plain text.
    Text,
}

impl Bench {
    /// Hands over a file with everything in the store, as it lies, those entries too that this
    /// version cannot read, and every photo; with `share` to the device's share sheet.
    ///
    /// # Errors
    /// Why the store did not give it, or the browser did not take the file.
    pub async fn back_up(self, share: bool) -> Result<Exported, StoreError> {
        let store = self.store.get_value();
        let again = again::names();
        let (rows, photos) = (store.all().await?, store.photo_ids().await?);
        let exported = write(&store, "everything", &rows, &photos, share).await?;
        if exported.handed != Handed::NotTaken {
            scratch::write(NOTED, &format!("{} {}", exported.at, exported.entries));
            mark::set();
            again::let_go(&again);
            // What was in it is in the backup too; left, it is removed after the next.
            Store::remove_copy().await.ok();
        }
        Ok(exported)
    }

    /// What is in the copy that was made before a store of an older version was changed: entries
    /// and photos; `None` where there is none.
    pub async fn copy() -> Option<(usize, usize)> {
        let copy = Store::copy().await.ok()??;
        Some((copy.count().await.ok()?, copy.photo_ids().await.ok()?.len()))
    }

    /// Hands over a file with everything in that copy.
    ///
    /// # Errors
    /// As for [`Bench::back_up`].
    pub async fn save_copy() -> Result<Exported, StoreError> {
        let copy = Store::copy().await?.ok_or(StoreError::Lost)?;
        let (rows, photos) = (copy.all().await?, copy.photo_ids().await?);
        write(&copy, "everything", &rows, &photos, false).await
    }

    /// Removes that copy.
    ///
    /// # Errors
    /// What the browser gave as its reason.
    pub async fn remove_copy() -> Result<(), StoreError> {
        Store::remove_copy().await
    }

    /// Hands over one job: its book, its unit sheet's, and the photos it names.
    ///
    /// # Errors
    /// As for [`Bench::back_up`].
    pub async fn back_up_job(self, job: &str, share: bool) -> Result<Exported, StoreError> {
        let store = self.store.get_value();
        let book = BookId::Job(job.to_owned()).to_string();
        let mut rows = store.book(&book).await?;
        let id = BookId::Job(job.to_owned());
        let named = photos_of(&Book::from_lines(id, rows.iter().map(|row| row.line.as_str())));
        let jobs = untrack(|| self.every_job());
        let sheet = jobs.iter().find(|it| it.id == job).map(|job| job.sheet.clone());
        if let Some(sheet) = sheet {
            rows.extend(store.book(&BookId::Sheet(sheet).to_string()).await?);
        }
        let photos: Vec<String> = named.into_iter().collect();
        write(&store, &book, &rows, &photos, share).await
    }

    /// Hands over a unit sheet.
    ///
    /// # Errors
    /// As for [`Bench::back_up`].
    pub async fn back_up_sheet(self, sheet: &str, share: bool) -> Result<Exported, StoreError> {
        let store = self.store.get_value();
        let book = BookId::Sheet(sheet.to_owned()).to_string();
        write(&store, &book, &store.book(&book).await?, &[], share).await
    }

    /// Hands over the readings of every job for other programs.
    ///
    /// # Errors
    /// What the browser threw.
    pub async fn readings(self, view: View, share: bool) -> Result<(String, Handed), StoreError> {
        let offset = utc_offset_minutes(now());
        let mut jobs = Vec::new();
        for job in untrack(|| self.every_job()).iter().rev() {
            let sheet = self.stored(BookId::Sheet(job.sheet.clone())).await?;
            jobs.push((self.stored(BookId::Job(job.id.clone())).await?, Sheet::fold(&sheet)));
        }
        let jobs = jobs.iter().map(|(book, sheet)| (book, sheet));
        let (page, ending, kind) = match view {
            View::Csv => (csv(jobs, offset), "csv", "text/csv"),
            View::Text => (text(jobs, offset), "txt", "text/plain"),
        };
        let name = format!("shimwright-readings-{}.{ending}", today());
        let handed = hand_over(&Array::of1(&page.into()), &name, kind, share).await;
        handed.map(|handed| (name, handed)).map_err(|thrown| StoreError::from_thrown(&thrown))
    }

    /// A book as it lies in the store, without opening it for the screens.
    async fn stored(self, id: BookId) -> Result<Book, StoreError> {
        let rows = self.store.get_value().book(&id.to_string()).await?;
        Ok(Book::from_lines(id, rows.iter().map(|row| row.line.as_str())))
    }
}

fn today() -> String {
    let day: String = js_sys::Date::new_0().to_iso_string().into();
    day.get(..10).unwrap_or(&day).to_owned()
}

/// Writes one file, or several where the photos fill more than one.
async fn write(
    store: &Store,
    holds: &str,
    rows: &[Row],
    photos: &[String],
    share: bool,
) -> Result<Exported, StoreError> {
    let thrown = |thrown: JsValue| StoreError::from_thrown(&thrown);
    let mut pictures = Vec::new();
    for id in photos {
        if let Some(picture) = store.photo(id).await? {
            pictures.push((id, picture));
        }
    }
    let sizes: Vec<u64> = pictures.iter().map(|(_, picture)| picture.size() as u64).collect();
    let files = parts(&sizes);
    let (at, of) = (now(), files.len());
    let mut exported = Exported {
        name: String::new(),
        entries: rows.len(),
        photos: pictures.len(),
        files: of,
        at,
        handed: Handed::Saved,
    };
    let (mut left, mut rows) = (pictures.as_slice(), rows);
    for (part, count) in (1u32..).zip(files) {
        let (own, later) = left.split_at(count);
        let head = Head {
            at,
            device: device_id(),
            app: env!("CARGO_PKG_VERSION").to_owned(),
            holds: holds.to_owned(),
            entries: u32::try_from(rows.len()).unwrap_or(u32::MAX),
            photos: u32::try_from(count).unwrap_or(u32::MAX),
            part: (part, u32::try_from(of).unwrap_or(u32::MAX)),
        };
        let lines = written(&head, rows, own).await.map_err(thrown)?;
        let number = if of > 1 { format!("-{part}-of-{of}") } else { String::new() };
        let name = format!("shimwright-{}{number}.jsonl", today());
        exported.handed = hand_over(&lines, &name, LINES, share).await.map_err(thrown)?;
        if part == 1 {
            exported.name = name;
        }
        (left, rows) = (later, &[]);
    }
    Ok(exported)
}

/// The parts of one file. Each photo's line goes to the browser at once, which may keep it on disk.
async fn written(
    head: &Head,
    rows: &[Row],
    pictures: &[(&String, Blob)],
) -> Result<Array, JsValue> {
    let (mut backup, first) = Backup::begin(head);
    let entries: String = rows.iter().map(|row| backup.entry(&row.line)).collect();
    let parts = Array::of2(&first.into(), &entries.into());
    for (id, picture) in pictures {
        let bytes = JsFuture::from(picture.array_buffer()).await?;
        let picture = Picture { id: (*id).clone(), bytes: Uint8Array::new(&bytes).to_vec() };
        let line = backup.photo(&picture);
        parts.push(&Blob::new_with_str_sequence(&Array::of1(&line.into()))?.into());
    }
    parts.push(&backup.end().into());
    Ok(parts)
}
