//! The last act of this visit: it can be taken back, and put back.

use job::{BookId, Entry, Fact};

use crate::parts::{LastEntry, Standing};

/// The last act.
#[derive(Clone)]
pub(super) struct Last {
    /// Its entries, in the order of their books, so a job's come after those of the tin.
    entries: Vec<Entry>,
    pub(super) standing: Standing,
}

impl Last {
    pub(super) fn of(entries: &[Entry], standing: Standing) -> Last {
        Last { entries: entries.to_vec(), standing }
    }

    pub(super) fn with(&self, standing: Standing) -> Last {
        Last { standing, ..self.clone() }
    }

    /// The book whose last act it was.
    pub(super) fn book(&self) -> Option<&BookId> {
        self.entries.last().map(|entry| &entry.book)
    }

    /// Whether these retractions take back this act and no other.
    pub(super) fn is_taken_back_by(&self, retractions: &[(BookId, Fact)]) -> bool {
        let is_ours = |fact: &Fact| match fact {
            Fact::EntryRetracted { entry, .. } => self.entries.iter().any(|ours| ours.id == *entry),
            _ => false,
        };
        !retractions.is_empty() && retractions.iter().all(|(_, fact)| is_ours(fact))
    }

    /// What puts it back.
    pub(super) fn facts(&self) -> Vec<(BookId, Fact)> {
        self.entries.iter().map(|entry| (entry.book.clone(), entry.fact.clone())).collect()
    }

    /// For the bar that offers Undo.
    pub(super) fn shown(&self) -> Option<LastEntry> {
        let entry = self.entries.last()?;
        Some(LastEntry {
            id: entry.id.clone(),
            words: entry.sentence(),
            names_owner: entry.fact.names_owner(),
            standing: self.standing,
        })
    }
}
