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
    /// The unit of digits without one: that of the first digit typed, whatever is shown later.
    unit: Draft,
    /// The one unit they can have, where that is no length.
    own: Option<Unit>,
    prefs: Prefs,
}

impl Entries {
    /// Fields of these names at a place such as `job/27/read/depth`, as they were left.
    pub fn at(place: &str, names: &[&str]) -> Entries {
        let texts = names.iter().map(|name| use_draft(place, name)).collect();
        let unit = use_draft(place, "unit");
        Entries { texts: StoredValue::new(texts), unit, own: None, prefs: use_prefs() }
    }

    /// The same in a unit that is no length, such as N·m.
    pub fn always_in(self, unit: Unit) -> Entries {
        Entries { own: Some(unit), ..self }
    }

    /// The texts as typed so far, in order.
    pub fn texts(self) -> Vec<String> {
        self.texts.with_value(|texts| texts.iter().map(|text| text.text()).collect())
    }

    /// The unit that digits without one take.
    pub fn unit(self) -> Unit {
        match (self.own, self.unit.text().as_str()) {
            (Some(own), _) => own,
            (None, "in") => Unit::Inch,
            (None, "mm") => Unit::Millimetre,
            (None, _) => self.prefs.unit(),
        }
    }

    /// Whether that is another unit than lengths are shown in, so that the fields must say it.
    pub fn is_unit_told(self) -> bool {
        self.unit() != self.prefs.unit()
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
        if self.unit.text_untracked().is_empty() {
            self.unit.set(&untrack(|| self.prefs.unit()).to_string());
        }
        self.texts.with_value(|texts| {
            if let Some(draft) = texts.get(at) {
                draft.set(text);
            }
            if texts.iter().all(|text| text.text_untracked().is_empty()) {
                self.unit.clear();
            }
        });
    }
}
