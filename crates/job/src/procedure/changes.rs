//! A shop's own changes to a procedure, kept in the unit sheet's book.

use crate::Guided;

/// One change, as the shop wrote it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Change {
    /// A step of the shop's own.
    Added {
        /// Its id: `own-…`.
        step: String,
        /// The step it follows.
        after: String,
        /// The act.
        title: String,
        /// Why.
        why: String,
        /// Cautions.
        caution: String,
        /// What to capture, in the grammar.
        records: Vec<String>,
    },
    /// A step that is not done on this unit.
    Dropped {
        /// Which.
        step: String,
        /// Why.
        reason: String,
    },
    /// A step that is shown, and proposed, after another.
    Moved {
        /// Which.
        step: String,
        /// The step it follows now.
        after: String,
    },
}

/// The changes of a unit sheet, in the order they were made.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Changes(pub Vec<Change>);

impl Change {
    /// The change that a fact makes; `None` for the other facts.
    pub fn of(fact: &Guided) -> Option<Change> {
        Some(match fact.clone() {
            Guided::StepAdded { step, after, title, why, caution, records } => {
                Change::Added { step, after, title, why, caution, records }
            }
            Guided::StepDropped { step, reason } => Change::Dropped { step, reason },
            Guided::StepMoved { step, after } => Change::Moved { step, after },
            _ => return None,
        })
    }
}

impl Changes {
    /// Takes the next fact of the sheet's book in.
    pub(crate) fn take(&mut self, fact: &Guided) {
        self.0.extend(Change::of(fact));
    }
}
