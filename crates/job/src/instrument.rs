//! The bench instruments: what each asks, as a table, and what it answers to what was typed.
//!
//! What is kept of a check is what was typed, field by field ([`crate::Guided::BenchChecked`]).
//! The answer is worked out anew each time by the `workshop` crate.

mod anode;
mod clock;
mod drag;
mod fit;
mod fit_words;
mod given;
mod land;
mod leak;
mod leak_acts;
mod leak_words;
mod limit_band;
mod locker;
mod lube;
mod metal;
mod notes;
mod oring;
mod oring_sizes;
mod pattern;
mod pattern_unit;
mod play;
mod press;
mod records;
mod runout;
mod seal;
mod seal_map;
mod shown;
mod table;
mod titles;
mod torque;

use std::collections::BTreeMap;

use measure::{Sign, Unit, Verdict};
use pictures::drawing::Drawing;
use workshop::{Basis, Caution, Explanation, MANUAL_FIRST};

pub use clock::{Elapsed, since};
use given::Given;
pub(crate) use records::given;
pub use records::{of_record, of_step, place_for, said};
use shown::Writing;
pub use table::{Table, TableRow};
pub(crate) use titles::titled;

use crate::guide::GuideLog;
use crate::{Job, Sheet, Shown};

/// The texts of each field, as typed.
pub type Values = BTreeMap<String, Vec<String>>;

/// An instrument: one kind of bench check.
pub struct Instrument {
    /// Its name in files and addresses; never changes.
    pub kind: &'static str,
    /// Its name on the screen.
    pub title: &'static str,
    /// What it is for, in one sentence.
    pub purpose: &'static str,
    /// What to say before anybody begins.
    pub cautions: &'static [Caution],
    /// What it asks, in order.
    pub fields: &'static [Asked],
    answer: fn(&mut Given) -> Option<Answer>,
}

/// One thing an instrument asks.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Asked {
    /// Its name in files; never changes.
    pub id: &'static str,
    /// What stands above it.
    pub label: &'static str,
    /// What it takes.
    pub takes: Takes,
    /// Whether the instrument answers without it.
    pub optional: bool,
}

/// A field that the instrument needs.
const fn asked(id: &'static str, label: &'static str, takes: Takes) -> Asked {
    Asked { id, label, takes, optional: false }
}

/// A field that the instrument answers without.
const fn optional(id: &'static str, label: &'static str, takes: Takes) -> Asked {
    Asked { id, label, takes, optional: true }
}

/// The fields after it are folded under these words, to the next fold.
const fn fold(id: &'static str, label: &'static str) -> Asked {
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

/// The figure that answers, read from across the bench.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Headline {
    /// What it is: "Set the wrench to".
    pub title: &'static str,
    /// The number alone.
    pub number: String,
    /// Its unit, with the ± where that matters.
    pub unit: String,
    /// What it stands against; may be empty.
    pub note: String,
}

/// What can hurt a person now: what, and what to do.
pub type Alarm = (&'static str, String);

/// What an instrument says.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Answer {
    /// Its verdict; `None` where there is none, as without a limit.
    pub verdict: Option<Verdict>,
    /// What can hurt a person now: what, and what to do.
    pub alarm: Option<Alarm>,
    /// What must be done before there is a verdict.
    pub waits: Option<String>,
    /// The one figure that matters now.
    pub headline: Option<Headline>,
    /// That figure against its limits.
    pub band: Option<Drawing>,
    /// The answer in a sentence or a few.
    pub says: Vec<String>,
    /// Figures: what, and how much with its ±.
    pub figures: Vec<(&'static str, String)>,
    /// What the gauge cannot see.
    pub blind: Option<String>,
    /// Cautions.
    pub cautions: Vec<String>,
    /// How it was reckoned: the formula, then each input, then the source.
    pub explained: Vec<String>,
    /// Its picture.
    pub picture: Option<Drawing>,
    /// A second picture, under the answer.
    pub below: Option<Drawing>,
    /// What there is to choose from, side by side.
    pub table: Option<Table>,
}

/// Why a field's text is not taken.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RefusedAt {
    /// The field's id.
    pub field: &'static str,
    /// What to say at it.
    pub says: String,
}

/// Why there is no answer.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct NoAnswer {
    /// Texts that are not taken.
    pub refused: Vec<RefusedAt>,
    /// Labels of the fields that are still wanted.
    pub wanted: Vec<&'static str>,
    /// What can hurt a person now, whatever is still wanted.
    pub alarm: Option<Alarm>,
}

/// Every instrument, in the order of the list.
pub const ALL: &[Instrument] = &[
    leak::LEAK,
    runout::RUNOUT,
    play::PLAY,
    drag::DRAG,
    torque::TORQUE,
    fit::FIT,
    press::PRESS,
    lube::LUBE,
    oring::ORING,
    seal::SEAL,
    pattern::PATTERN,
    locker::LOCKER,
    land::LAND,
    anode::ANODE,
];

/// The instrument of a kind; `None` for one that a later version wrote.
pub fn instrument(kind: &str) -> Option<&'static Instrument> {
    ALL.iter().find(|instrument| instrument.kind == kind)
}

/// The picture of a word of [`Takes::Cards`]; `None` where there is none.
pub fn card(word: &str) -> Option<Drawing> {
    pattern::card(word)
}

/// A verdict in the middle of a sentence.
fn verdict_word(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::InBand => "in band",
        Verdict::NearLimit => "near limit",
        Verdict::Out => "out",
        Verdict::CannotProve => "cannot prove",
    }
}

impl Answer {
    /// Its first figure and its verdict: "Off centre 0.0329 ± 0.0012 mm, in band".
    pub fn short(&self) -> String {
        let headline = self.headline.as_ref();
        let figure = match headline {
            Some(it) => Some(format!("{} {} {}", it.title, it.number, it.unit)),
            None => self.figures.first().map(|(name, value)| format!("{name} {value}")),
        };
        let verdict = self.verdict.map(verdict_word);
        let said = self.says.first().filter(|_| figure.is_none()).cloned();
        let parts = figure.into_iter().chain(said).chain(verdict.map(str::to_owned));
        parts.collect::<Vec<_>>().join(", ")
    }
}

impl Instrument {
    /// What it says to the texts typed.
    ///
    /// # Errors
    /// [`NoAnswer`]: what is refused, field by field, and what is still wanted.
    pub fn answer(&self, values: &Values, shown: Shown) -> Result<Answer, NoAnswer> {
        let mut given = Given::of(self.fields, values, shown);
        let answer = (self.answer)(&mut given);
        match answer {
            Some(mut answer) if given.refused.is_empty() => {
                let before: Vec<String> = self.cautions.iter().map(ToString::to_string).collect();
                answer.cautions.retain(|caution| !before.contains(caution));
                answer.alarm = given.alarm;
                Ok(answer)
            }
            _ => {
                let Given { refused, wanted, alarm, .. } = given;
                Err(NoAnswer { refused, wanted, alarm })
            }
        }
    }

    /// The unit a number of a field is typed in; `None` for words.
    pub fn unit_of(&self, asked: &Asked, values: &Values, shown: Shown) -> Option<Unit> {
        Given::of(self.fields, values, shown).unit_of(asked)
    }

    /// A place such as it is kept under, where there is more than one.
    pub fn place_like(&self) -> &'static str {
        if self.kind == seal::SEAL.kind { "S1, as on the map" } else { "prop shaft" }
    }

    /// What its answer means on this unit, a sentence each; often nothing more.
    pub fn of_unit(&self, answer: &Answer, job: &Job, sheet: &Sheet, shown: Shown) -> Vec<String> {
        let moves_pinion = self.kind == pattern::PATTERN.kind && answer.below.is_some();
        if moves_pinion { pattern_unit::of_unit(job, sheet, shown) } else { Vec::new() }
    }

    /// What the unit has of this kind, with what was kept; `None` for a kind without such a map.
    pub fn map(&self, sheet: &Sheet, log: &GuideLog) -> Option<Drawing> {
        if self.kind == seal::SEAL.kind { seal_map::seal_map(sheet, log) } else { None }
    }

    /// The texts as they are kept: with their units, what is empty left out.
    ///
    /// # Errors
    /// [`NoAnswer`]: what is refused.
    pub fn kept(&self, values: &Values, shown: Shown) -> Result<Values, NoAnswer> {
        let mut given = Given::of(self.fields, values, shown);
        let kept = self
            .fields
            .iter()
            .map(|asked| (asked.id.to_owned(), given.texts(asked)))
            .filter(|(_, texts)| texts.iter().any(|text| !text.is_empty()))
            .collect();
        if given.refused.is_empty() {
            Ok(kept)
        } else {
            Err(NoAnswer { refused: given.refused, ..NoAnswer::default() })
        }
    }
}

/// An answer with what every instrument says alike: its cautions and how it was reckoned.
fn answered(cautions: &[Caution], why: &Explanation, writing: &Writing) -> Answer {
    let mut said: Vec<String> = cautions.iter().map(ToString::to_string).collect();
    said.push(MANUAL_FIRST.to_owned());
    let source = match why.basis {
        Basis::Published(source) => format!("Source: {source}."),
        Basis::Derived(how) => format!("Worked out from {how}."),
        Basis::CommonPractice => "Common practice, no source.".to_owned(),
    };
    let inputs = why.given.iter().map(|input| writing.input(input));
    let explained = std::iter::once(why.formula.to_owned()).chain(inputs).chain([source]).collect();
    Answer { cautions: said, explained, ..Answer::default() }
}
