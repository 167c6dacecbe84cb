//! What an instrument asks: a row of its table.

use measure::{Sign, Unit};
use words::t;

/// One thing an instrument asks.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Asked {
    /// Its name in files; never changes.
    pub id: &'static str,
    pub(super) label: &'static str,
    /// What it takes.
    pub takes: Takes,
    /// Whether the instrument answers without it.
    pub optional: bool,
}

/// Choices whose word says something else elsewhere: their translation hangs on their label too.
const AT_LABEL: &[&str] = &[
    "Stage: low",
    "Seals: in",
    "Seals: out",
    "Hose into a blank: tight",
    "The gears: new",
    "Spring in its groove: seen",
    "New, no twist, greased: seen",
];

impl Asked {
    /// What stands above it.
    pub fn label(&self) -> &'static str {
        t(self.label)
    }

    /// A word of its choices as it is shown; it is kept as it stands in the table, and what was typed
    /// comes back as it is.
    pub fn word<'a>(&self, word: &'a str) -> &'a str {
        let (Takes::One(words) | Takes::Cards(words)) = self.takes else { return word };
        if !words.contains(&word) {
            return word;
        }
        let own = AT_LABEL.iter().find(|text| {
            text.strip_prefix(self.label).and_then(|it| it.strip_prefix(": ")) == Some(word)
        });
        let turned = own.map(|text| t(text)).filter(|turned| !AT_LABEL.contains(turned));
        turned.unwrap_or_else(|| t(word))
    }
}

/// A field that the instrument needs.
pub(super) const fn asked(id: &'static str, label: &'static str, takes: Takes) -> Asked {
    Asked { id, label, takes, optional: false }
}

/// A field that the instrument answers without.
pub(super) const fn optional(id: &'static str, label: &'static str, takes: Takes) -> Asked {
    Asked { id, label, takes, optional: true }
}

/// The fields after it are folded under these words, to the next fold.
pub(super) const fn fold(id: &'static str, label: &'static str) -> Asked {
    optional(id, label, Takes::Fold)
}

/// What a field takes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Takes {
    /// A number; without a unit it is in this one.
    Number(Unit, Sign),
    /// One number at each of these places; a place may stay empty.
    Numbers(Unit, Sign, &'static [&'static str]),
    /// A number as [`Takes::Number`], with these usual ones to choose from.
    Usual(Unit, Sign, &'static [&'static str]),
    /// Minutes since a clock began that the form keeps, one at each of these places.
    Times(&'static [&'static str]),
    /// Minutes since the same clock, one for each of these acts, tapped as it is done.
    Acts(&'static [&'static str]),
    /// What each stage of a sequence was ticked at, in their order: [`Stage`](super::Stage).
    Ticks,
    /// One of these words.
    One(&'static [&'static str]),
    /// One of these words, each with its picture: [`card`].
    Cards(&'static [&'static str]),
    /// The unit that numbers of its quantity are typed in; the first until one is chosen.
    Unit(&'static [Unit]),
    /// Words.
    Words,
    /// Nothing: what follows is folded under its label until it is wanted.
    Fold,
}
