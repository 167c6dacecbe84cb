//! A bound on how long a search may take.

use std::cell::Cell;

use crate::case_error::{CaseError, Fault};

/// Steps after which a search gives up: about a second. Real cases take a few thousand.
const MOST: u32 = 40_000_000;

/// Counts the steps of a search.
#[derive(Debug, Default)]
pub(crate) struct Effort {
    spent: Cell<u32>,
}

impl Effort {
    /// Counts a step; says whether there were too many, so that the search can stop.
    pub fn spend(&self) -> bool {
        self.spent.set(self.spent.get().saturating_add(1));
        self.spent.get() > MOST
    }

    /// Refuses the answer of a search that gave up: it would not be the best one.
    pub fn check(&self) -> Result<(), CaseError> {
        if self.spent.get() > MOST {
            Err(CaseError::new("positions", Fault::TooManyPacks))
        } else {
            Ok(())
        }
    }
}
