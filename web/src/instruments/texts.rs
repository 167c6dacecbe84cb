//! What is half typed into an instrument, field by field.

use job::instrument::{Asked, Instrument, Takes, Values};
use leptos::prelude::*;

use super::working::Working;
use crate::draft::Draft;
use crate::parts::Text;

impl Working {
    /// The text of one place of a field.
    pub fn text(self, field: usize, line: usize) -> Text {
        let text = move || self.lines(field).get(line).cloned().unwrap_or_default();
        let set = Callback::new(move |text: String| self.set(field, line, text));
        Text::new(Signal::derive(text), set)
    }

    /// What it was done on: the record it was opened from until a person says otherwise.
    pub fn place(self) -> Text {
        let text = move || {
            let said = self.place.text();
            if said.is_empty() { self.record.get_value().unwrap_or_default() } else { said }
        };
        let set = Callback::new(move |text: String| self.place.set(&text));
        Text::new(Signal::derive(text), set)
    }

    /// The text of each place of a field; followed.
    pub fn lines(self, field: usize) -> Vec<String> {
        let text = self.drafts.with_value(|drafts| drafts.get(field).map(|draft| draft.text()));
        text.unwrap_or_default().split('\n').map(str::to_owned).collect()
    }

    /// Takes what one place of a field holds now.
    pub fn set(self, field: usize, line: usize, text: String) {
        let mut lines = untrack(|| self.lines(field));
        lines.resize(lines.len().max(line + 1), String::new());
        if let Some(place) = lines.get_mut(line) {
            *place = text;
        }
        self.set_lines(field, &lines);
    }

    /// The same of all its places.
    pub fn set_lines(self, field: usize, lines: &[String]) {
        let before = self.values.get_untracked();
        let all = lines.join("\n");
        let all = if all.trim().is_empty() { "" } else { &all };
        if self.unit.text_untracked().is_empty() {
            self.unit.set(&self.shown.get_untracked().units.to_string());
        }
        self.drafts.with_value(|drafts| {
            if let Some(draft) = drafts.get(field) {
                draft.set(all);
            }
        });
        self.follow(field, &before);
        self.drafts.with_value(|drafts| {
            if drafts.iter().all(|draft| draft.text_untracked().is_empty()) {
                self.unit.clear();
            }
        });
        self.refused.set(None);
    }

    /// Whether nothing is typed at a field; followed.
    pub fn is_empty(self, field: usize) -> bool {
        self.lines(field).iter().all(String::is_empty)
    }

    /// What the unit sheet of the job says where something else is typed; followed.
    pub fn otherwise(self, asked: &'static Asked) -> Option<String> {
        let says = self.of?.look(|(_, sheet, _), _| {
            let shown = self.shown.get();
            self.values.with(|values| self.instrument.otherwise(asked, values, sheet, shown))
        });
        says.flatten()
    }

    /// Puts into the other fields what follows from one that was typed.
    fn follow(self, field: usize, before: &Values) {
        let (Some(of), Some(asked)) = (self.of, self.instrument.fields.get(field)) else { return };
        let follows = untrack(|| {
            let (after, shown) = (self.values.get(), self.shown.get());
            of.look(|(_, sheet, _), _| {
                self.instrument.follows(asked.id, before, &after, sheet, shown)
            })
        });
        for (id, text) in follows.unwrap_or_default() {
            let at = self.instrument.fields.iter().position(|asked| asked.id == id);
            self.drafts.with_value(|drafts| {
                if let Some(draft) = at.and_then(|at| drafts.get(at)) {
                    draft.set(&text);
                }
            });
        }
    }
}

/// What is typed into each field; followed.
pub fn typed(instrument: &Instrument, drafts: StoredValue<Vec<Draft>>) -> Values {
    drafts.with_value(|drafts| {
        let texts = |(asked, draft): (&Asked, &Draft)| {
            let text = draft.text();
            let texts = match asked.takes {
                Takes::Numbers(..) | Takes::Times(_) | Takes::Acts(_) | Takes::Ticks => {
                    text.split('\n').map(str::to_owned).collect()
                }
                _ => vec![text],
            };
            (asked.id.to_owned(), texts)
        };
        instrument.fields.iter().zip(drafts).map(texts).collect()
    })
}
