//! Room on a device: what the photos of a job need before they may leave it.

use std::collections::BTreeSet;
use std::fmt;
use words::t;

use crate::files::photos_named;
use crate::{Book, Job};

/// Every photo that a job's book names, also in entries that were taken back.
pub fn photos_of(book: &Book) -> BTreeSet<String> {
    book.entries().flat_map(photos_named).map(str::to_owned).collect()
}

/// Why photos stay on the device.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PhotosStay {
    /// The job is worked on.
    OnTheBench,
    /// No backup was ever made on this device.
    NoBackup,
    /// A photo is younger than the last backup.
    OlderBackup,
}

impl fmt::Display for PhotosStay {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            PhotosStay::OnTheBench => {
                t("The job is on the bench, so its photos stay. Put it in the archive first.")
            }
            PhotosStay::NoBackup => {
                t("No backup was made on this device, so the photos stay. Make one first.")
            }
            PhotosStay::OlderBackup => t(
                "The last backup is older than a photo of this job, so they stay. Make one first.",
            ),
        })
    }
}

/// Whether the photos of a job, folded from `book`, may leave the device: it is in the archive, and the last backup of
/// everything, made at `last_backup`, has every one of them. Times are milliseconds since 1970, UTC.
///
/// # Errors
/// Why they stay.
pub fn may_free_photos(
    job: &Job,
    book: &Book,
    last_backup: Option<i64>,
) -> Result<i64, PhotosStay> {
    if !job.archived {
        return Err(PhotosStay::OnTheBench);
    }
    let backup = last_backup.ok_or(PhotosStay::NoBackup)?;
    let with_photo = book.entries().filter(|entry| !photos_named(entry).is_empty());
    match with_photo.map(|entry| entry.at).max() {
        Some(last) if last >= backup => Err(PhotosStay::OlderBackup),
        _ => Ok(backup),
    }
}
