//! What is known of a book without opening it.
//!
//! A store keeps one beside each book, so that a bench with a thousand jobs opens without reading
//! them. It is derived: worked out again from the book at any time, and in no backup.

use std::sync::Arc;

use serde::{Deserialize, Serialize};

use crate::{Book, Folded, Job};

/// What is known of a book without opening it.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Summary {
    /// Entries, read or not.
    pub entries: usize,
    /// Entries this version cannot read; they are kept.
    pub unread: usize,
    /// What stands on a job's back; `None` for any other book.
    pub job: Option<Arc<JobSummary>>,
    /// What a unit sheet is called; `None` for any other book.
    pub unit: Option<String>,
}

/// A job in a few words.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct JobSummary {
    /// Id of its book.
    pub id: String,
    /// Boat or customer's name for it.
    pub boat: String,
    /// Id of its unit sheet.
    pub sheet: String,
    /// Number on the bench.
    pub number: u32,
    /// When it was opened, milliseconds since 1970, UTC.
    pub opened_at: i64,
    /// When the last entry was written, milliseconds since 1970, UTC.
    pub last_at: i64,
    /// Words to find it by.
    pub tags: Vec<String>,
    /// It is off the bench and the board.
    pub archived: bool,
}

impl JobSummary {
    fn of(job: &Job) -> JobSummary {
        JobSummary {
            id: job.id.clone(),
            boat: job.boat.clone(),
            sheet: job.sheet.clone(),
            number: job.number,
            opened_at: job.opened_at,
            last_at: job.last_at,
            tags: job.tags.iter().cloned().collect(),
            archived: job.archived,
        }
    }
}

impl Summary {
    /// The form they are written in. A store that holds another form works them out anew.
    pub const FORM: &str = "2";

    /// Of a book and what it amounts to.
    pub fn of(book: &Book, folded: &Folded) -> Summary {
        let counts =
            Summary { entries: book.lines().count(), unread: book.unread(), ..Summary::default() };
        match folded {
            Folded::Job(job) => Summary { job: Some(Arc::new(JobSummary::of(job))), ..counts },
            Folded::Sheet(sheet) => Summary { unit: Some(sheet.name.clone()), ..counts },
            Folded::Tin(_) | Folded::Drawer(_) => counts,
        }
    }

    /// Of rows in a book of a kind this version does not know.
    pub fn of_foreign(rows: usize) -> Summary {
        Summary { entries: rows, unread: rows, ..Summary::default() }
    }

    /// As it is written.
    pub fn to_text(&self) -> String {
        // Nothing in it can fail to be written; an empty text reads as none.
        serde_json::to_string(self).unwrap_or_default()
    }

    /// As it was written; `None` where it is not of this form.
    pub fn from_text(text: &str) -> Option<Summary> {
        serde_json::from_str(text).ok()
    }
}
