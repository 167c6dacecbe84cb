//! What is being changed in the steps of this unit.

use job::procedure::Change;
use job::{BookId, Fact, Guided};
use leptos::prelude::*;
use words::key;

use crate::device::now::fresh_id;
use crate::draft::{Draft, use_draft};
use crate::guide::Guide;
use crate::guide::acting::Acting;

/// What can be done to a step.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Way {
    /// A step of the shop's own comes after it.
    Add,
    /// It is not done on this unit.
    Drop,
    /// It is done after another.
    Move,
}

pub const WAYS: [(Way, &str); 3] =
    [(Way::Add, "Add after it"), (Way::Drop, "Leave out"), (Way::Move, key!("Move"))];

/// What an own step can capture: kind, label and options in the grammar of procedures, and the word
/// it is chosen by. The label is turned where it is shown.
pub const CAPTURES: [(&str, &str, &str, &str); 4] = [
    ("", "", "", key!("Nothing")),
    ("photo", "how it looks", "", key!("Photo")),
    ("text", "what was seen", "", key!("Words")),
    ("choice", "in order", "|yes/no", "Yes or no"),
];

/// The change that is being made.
#[derive(Clone, Copy)]
pub struct Changing {
    pub guide: Guide,
    pub acting: Acting,
    /// The step it is about.
    pub step: Draft,
    way: Draft,
    pub title: Draft,
    pub why: Draft,
    pub caution: Draft,
    captures: Draft,
    pub reason: Draft,
    pub after: Draft,
}

impl Changing {
    /// Nothing but what was left half typed.
    pub fn of(guide: Guide) -> Changing {
        let at = format!("job/{}/steps", guide.of.id());
        let draft = |field| use_draft(&at, field);
        Changing {
            guide,
            acting: Acting::here(),
            step: draft("step"),
            way: draft("way"),
            title: draft("title"),
            why: draft("why"),
            caution: draft("caution"),
            captures: draft("captures"),
            reason: draft("reason"),
            after: draft("after"),
        }
    }

    /// What is done; followed.
    pub fn way(self) -> Way {
        let at: usize = self.way.text().parse().unwrap_or_default();
        WAYS.get(at).map_or(Way::Add, |it| it.0)
    }

    pub fn choose_way(self, at: usize) {
        self.way.set(&at.to_string());
        self.acting.forget();
    }

    /// The place of what an own step captures; followed.
    pub fn capture(self) -> usize {
        self.captures.text().parse().unwrap_or_default()
    }

    pub fn choose_capture(self, at: usize) {
        self.captures.set(&at.to_string());
    }

    /// The title of the chosen step; followed.
    pub fn chosen(self) -> Option<String> {
        let id = self.step.text();
        self.guide.look(|plan, _, _| plan.step(&id).map(|step| step.title.clone())).flatten()
    }

    fn fact(self) -> Guided {
        let text = |draft: Draft| draft.text_untracked().trim().to_owned();
        let step = text(self.step);
        match untrack(|| self.way()) {
            Way::Add => Guided::StepAdded {
                step: format!("own-{}", fresh_id()),
                after: step,
                title: text(self.title),
                why: text(self.why),
                caution: text(self.caution),
                records: CAPTURES
                    .get(untrack(|| self.capture()))
                    .filter(|(kind, ..)| !kind.is_empty())
                    .map(|(kind, label, options, _)| format!("{kind}:{label}{options}"))
                    .into_iter()
                    .collect(),
            },
            Way::Drop => Guided::StepDropped { step, reason: text(self.reason) },
            Way::Move => Guided::StepMoved { step, after: text(self.after) },
        }
    }

    /// Writes the change into the unit's book, or says why it cannot be made.
    pub fn keep(self) {
        let fact = self.fact();
        let refused = Change::of(&fact).and_then(|change| {
            self.guide.look_once(|plan, _, _| plan.changed(&change).err()).flatten()
        });
        if let Some(refused) = refused {
            return self.acting.refuse(refused.to_string());
        }
        let Some(sheet) = self.guide.of.look_once(|(_, sheet, _), _| sheet.id.clone()) else {
            return;
        };
        let facts: Vec<(BookId, Fact)> = vec![(BookId::Sheet(sheet), fact.into())];
        let then = move || {
            for draft in [self.title, self.why, self.caution, self.reason, self.after] {
                draft.clear();
            }
        };
        self.acting.record(facts, Vec::new(), Box::new(then));
    }
}
