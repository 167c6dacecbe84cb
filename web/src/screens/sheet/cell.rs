//! A field of the sheet while it is typed in.

use job::Field;
use leptos::prelude::*;

use crate::draft::{Draft, use_draft};

/// A field while it is typed in.
#[derive(Clone, Copy)]
pub struct Cell {
    draft: Draft,
    /// What stands in it and is not saved; `None`: what is saved stands there.
    pub text: RwSignal<Option<String>>,
    /// What is being stored: Enter and leaving the field ask for the same twice.
    pub storing: RwSignal<Option<String>>,
    /// Why what stands in it is not taken.
    pub refused: RwSignal<Option<String>>,
}

impl Cell {
    /// The field of a sheet, with what was half typed.
    pub fn of(sheet: &str, field: Field) -> Cell {
        let draft = use_draft(&format!("sheet/{sheet}"), field.facts().id);
        let half = draft.text_untracked();
        let text = RwSignal::new((!half.is_empty()).then_some(half));
        Cell { draft, text, storing: RwSignal::new(None), refused: RwSignal::new(None) }
    }

    /// Takes what the field holds now.
    pub fn set(self, text: String) {
        self.draft.set(&text);
        self.text.set(Some(text));
    }

    /// Whether that very text is on its way to the disk.
    pub fn is_being_stored(self, text: &str) -> bool {
        self.storing.with_untracked(|storing| storing.as_deref() == Some(text))
    }

    /// What stood in the field is saved; what was typed since stays.
    pub fn settle(self, text: &str) {
        self.refused.try_set(None);
        let same = self.text.try_get_untracked().flatten().unwrap_or_default() == text;
        if same {
            self.draft.clear();
            self.text.try_set(None);
        }
    }
}
