//! Lengths that are typed together on one screen and stored together; half typed they outlive a
//! reload.

use leptos::prelude::*;
use measure::Unit;

use crate::draft::{Draft, use_draft};
use crate::parts::Text;
use crate::prefs::{Prefs, use_prefs};

/// The texts of fields that belong together, in one unit.
#[derive(Clone, Copy)]
pub struct Entries {
    texts: StoredValue<Vec<Draft>>,
    /// The units of digits without one: those of the first digit typed, whatever is shown later.
    pinned: Draft,
    /// A unit of their quantity.
    own: Unit,
    prefs: Prefs,
}

impl Entries {
    /// Fields of these names at a place such as `job/27/read/depth`, as they were left.
    pub fn at(place: &str, names: &[&str]) -> Entries {
        let texts = names.iter().map(|name| use_draft(place, name)).collect();
        let (texts, pinned) = (StoredValue::new(texts), use_draft(place, "unit"));
        Entries { texts, pinned, own: Unit::Millimetre, prefs: use_prefs() }
    }

    /// The same for another quantity than a length: that of `own`.
    pub fn like(self, own: Unit) -> Entries {
        Entries { own, ..self }
    }

    /// The texts as typed so far, in order.
    pub fn texts(self) -> Vec<String> {
        self.texts.with_value(|texts| texts.iter().map(|text| text.text()).collect())
    }

    /// The unit that digits without one take.
    pub fn unit(self) -> Unit {
        self.prefs.units().named(&self.pinned.text()).of(self.own)
    }

    /// Whether that is another unit than the plate shows, so that the fields must say it.
    pub fn is_unit_told(self) -> bool {
        self.unit() != self.prefs.units().length
    }

    /// What the field at a place of the order holds.
    pub fn text(self, at: usize) -> Text {
        let text = move || {
            self.texts.with_value(|texts| texts.get(at).map(|text| text.text())).unwrap_or_default()
        };
        Text::new(Signal::derive(text), Callback::new(move |text: String| self.set(at, &text)))
    }

    /// Empties the field at a place, once its text is stored.
    pub fn clear(self, at: usize) {
        self.set(at, "");
    }

    fn set(self, at: usize, text: &str) {
        if self.pinned.text_untracked().is_empty() {
            self.pinned.set(&untrack(|| self.prefs.units()).to_string());
        }
        self.texts.with_value(|texts| {
            if let Some(draft) = texts.get(at) {
                draft.set(text);
            }
            if texts.iter().all(|text| text.text_untracked().is_empty()) {
                self.pinned.clear();
            }
        });
    }
}
