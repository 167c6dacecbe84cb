//! Entries written side by side: on two devices about the same thing, neither knowing of the other.

use std::collections::{BTreeMap, BTreeSet};
use words::{key, say, t};

use crate::guided::{item_words, spaced};
use crate::{Book, BookId, Entry, Fact, Guided};

/// What was written on both sides about one thing.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Beside {
    /// What about, for people: "B2 fitted", "Forward backlash".
    pub about: String,
    /// Written here, in order; never empty.
    pub ours: Vec<Entry>,
    /// Written there, in order; never empty.
    pub theirs: Vec<Entry>,
}

/// Which side stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stands {
    /// What was written here.
    Ours,
    /// What was written there.
    Theirs,
}

impl Beside {
    /// Whether both say the same in the end.
    pub fn agree(&self) -> bool {
        let last = |entries: &[Entry]| entries.last().map(|entry| entry.fact.clone());
        last(&self.ours) == last(&self.theirs)
    }

    /// Which side stands if nobody judges: the one that is later in the order.
    pub fn unjudged(&self) -> Stands {
        if last(&self.ours) > last(&self.theirs) { Stands::Ours } else { Stands::Theirs }
    }

    /// The further entries that make one side stand: what the other wrote later is taken back.
    /// None where the order lets it stand by itself. Nothing leaves the history.
    pub fn judged(&self, stands: Stands) -> Vec<(BookId, Fact)> {
        let (kept, other) = match stands {
            Stands::Ours => (&self.ours, &self.theirs),
            Stands::Theirs => (&self.theirs, &self.ours),
        };
        let later = other.iter().filter(|entry| Some(place(entry)) > last(kept));
        later
            .map(|entry| {
                let why = key!("written side by side, the other one stands").to_owned();
                (entry.book.clone(), Fact::EntryRetracted { entry: entry.id.clone(), why })
            })
            .collect()
    }
}

/// A place in the order of a book.
fn place(entry: &Entry) -> (u64, &str) {
    (entry.counter, &entry.device)
}

fn last(entries: &[Entry]) -> Option<(u64, &str)> {
    entries.last().map(place)
}

/// The pairs of a book: what only we have against what only they have, as far as it still counts.
pub(super) fn of(ours: &Book, theirs: &Book, both: &Book) -> Vec<Beside> {
    if ours.is_empty() {
        return Vec::new();
    }
    let counts: BTreeSet<(&str, u64, &str)> = both.live().into_iter().map(name).collect();
    let only = |book: &Book, other: &Book| {
        let other: BTreeSet<_> = other.entries().map(name).map(owned).collect();
        let mut about: BTreeMap<String, Vec<Entry>> = BTreeMap::new();
        for entry in book.entries() {
            let is_only_here = !other.contains(&owned(name(entry)));
            if let (true, true, Some(what)) =
                (is_only_here, counts.contains(&name(entry)), about_what(&entry.fact))
            {
                about.entry(what).or_default().push(entry.clone());
            }
        }
        about
    };
    let mut there = only(theirs, ours);
    let here = only(ours, theirs).into_iter();
    here.filter_map(|(about, ours)| {
        there.remove(&about).map(|theirs| Beside { about, ours, theirs })
    })
    .collect()
}

fn name(entry: &Entry) -> (&str, u64, &str) {
    (&entry.id, entry.counter, &entry.device)
}

fn owned((id, counter, device): (&str, u64, &str)) -> (String, u64, String) {
    (id.to_owned(), counter, device.to_owned())
}

/// What a fact settles for as long as no later one does. `None`: it stands beside any other.
fn about_what(fact: &Fact) -> Option<String> {
    Some(match fact {
        Fact::PackFitted { slot, as_found: true, .. } => say!("{pack} as found", pack = slot.tag()),
        Fact::PackFitted { slot, as_found: false, .. } => say!("{pack} fitted", pack = slot.tag()),
        Fact::PackHeld { slot, .. } => say!("{pack} held", pack = slot.tag()),
        Fact::JobArchived { .. } => t("whether the job is in the archive").to_owned(),
        Fact::JobTagged { tag, .. } => say!("the tag {tag}"),
        Fact::ReadingTaken { check, .. } => check.name().to_owned(),
        Fact::FieldTyped { field, .. } | Fact::FieldCleared { field } => {
            field.facts().name().to_owned()
        }
        Fact::VariantChosen { slot, .. } => say!("where {pack} lies", pack = slot.tag()),
        Fact::SignConfirmed { position } | Fact::SignOverridden { position, .. } => {
            say!("which way {position} pushes")
        }
        Fact::BuildChosen { position, .. } => say!("how {position} is built"),
        Fact::Guided(guided) => return about_what_guided(guided),
        _ => return None,
    })
}

fn about_what_guided(fact: &Guided) -> Option<String> {
    Some(match fact {
        Guided::Captured { step, label, .. } => say!("{label}, step {step}", label = t(label)),
        Guided::StepDone { step }
        | Guided::StepSkipped { step, .. }
        | Guided::StepReopened { step, .. } => say!("how step {step} stands"),
        Guided::GateJudged { step, .. } => say!("the gate of step {step}"),
        Guided::BenchChecked { step, place, kind, .. } if !step.is_empty() => {
            let name = crate::instrument::titled(kind);
            match place.as_str() {
                "" => say!("{name}, step {step}"),
                place => say!("{name}, {place}, step {step}"),
            }
        }
        Guided::PartBagged { number, .. } => say!("what hangs at number {number}"),
        Guided::PartJudged { part, .. } => say!("verdict on {part}", part = spaced(part)),
        Guided::ConsentSigned(_) | Guided::ConsentRefused { .. } => {
            t("what was agreed to").to_owned()
        }
        Guided::ScopeChosen { .. } => t("the scope of the job").to_owned(),
        Guided::ToolReadied { tool, .. } => say!("how {tool} comes along", tool = item_words(tool)),
        _ => return None,
    })
}
