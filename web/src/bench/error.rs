//! Why something was not written down, in a sentence.

use std::fmt;

use job::Refusal;

use crate::storage::StoreError;

/// Why something was not written down; nothing changed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum RecordError {
    /// A book does not admit it.
    Refused(Refusal),
    /// The store did not take it.
    Store(StoreError),
}

impl From<Refusal> for RecordError {
    fn from(refusal: Refusal) -> RecordError {
        RecordError::Refused(refusal)
    }
}

impl From<StoreError> for RecordError {
    fn from(error: StoreError) -> RecordError {
        RecordError::Store(error)
    }
}

impl fmt::Display for RecordError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            RecordError::Refused(refusal) => refusal.fmt(f),
            RecordError::Store(error) => error.fmt(f),
        }
    }
}

impl std::error::Error for RecordError {}
