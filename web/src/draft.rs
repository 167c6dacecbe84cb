//! Half-typed digits: kept at every keystroke, given back after a reload or a call.

use std::collections::BTreeSet;

use leptos::prelude::*;

use crate::scratch;

/// The drafts that fields on the screen hold at this moment, in context of every screen.
#[derive(Clone, Copy)]
pub struct Drafts {
    held: RwSignal<BTreeSet<String>>,
}

impl Default for Drafts {
    fn default() -> Drafts {
        Drafts { held: RwSignal::new(BTreeSet::new()) }
    }
}

impl Drafts {
    /// True while a field on the screen holds text that is not stored.
    pub fn held(self) -> bool {
        self.held.with(|held| !held.is_empty())
    }

    fn note(self, key: &str, holds: bool) {
        // A field may go while its entry is being stored, and the screen with it.
        if self.held.try_with_untracked(|held| held.contains(key)) == Some(!holds) {
            self.held.update(|held| {
                if holds {
                    held.insert(key.to_owned());
                } else {
                    held.remove(key);
                }
            });
        }
    }
}

/// What is typed into one field and not yet stored.
#[derive(Clone, Copy)]
pub struct Draft {
    key: StoredValue<String>,
    text: RwSignal<String>,
    drafts: Drafts,
}

impl Draft {
    /// The text as typed so far.
    pub fn text(self) -> String {
        self.text.get()
    }

    /// The text as typed so far, without following it.
    pub fn text_untracked(self) -> String {
        self.text.get_untracked()
    }

    /// Takes what the field holds now.
    pub fn set(self, text: &str) {
        let Some(key) = self.key.try_get_value() else { return };
        if text.is_empty() {
            scratch::forget(&key);
        } else {
            scratch::write(&key, text);
        }
        self.drafts.note(&key, !text.is_empty());
        self.text.try_set(text.to_owned());
    }

    /// Forgets the draft, once its text is stored or thrown away.
    pub fn clear(self) {
        self.set("");
    }

    /// What forgets the draft later, also when its screen has been left meanwhile.
    pub fn forgets(self) -> impl FnOnce() + 'static {
        let key = self.key.get_value();
        move || {
            scratch::forget(&key);
            self.clear();
        }
    }
}

/// The draft of one field: `place` is the screen with what it is about, such as
/// `job/27/read/lash-forward`; `field` tells the fields of one place apart.
pub fn use_draft(place: &str, field: &str) -> Draft {
    let drafts: Drafts = expect_context();
    let key = format!("draft.{place}#{field}");
    let text = scratch::read(&key).unwrap_or_default();
    drafts.note(&key, !text.is_empty());
    on_cleanup({
        let key = key.clone();
        move || drafts.note(&key, false)
    });
    Draft { key: StoredValue::new(key), text: RwSignal::new(text), drafts }
}
