//! What an instrument says to what was typed, or why it says nothing yet.

use measure::Verdict;
use pictures::drawing::Drawing;
use words::{say, t};
use workshop::{Basis, Caution, Explanation, MANUAL_FIRST};

use super::shown::Writing;
use super::stages::Stage;
use super::table::Table;

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
    /// Its sequence, each stage with how far it is; none where there is one stage.
    pub stages: Vec<Stage>,
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

/// A verdict in the middle of a sentence.
pub(super) fn verdict_word(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::InBand => t("in band"),
        Verdict::NearLimit => t("near limit"),
        Verdict::Out => t("out"),
        Verdict::CannotProve => t("cannot prove"),
    }
}

/// An answer with what every instrument says alike: its cautions and how it was reckoned.
pub(super) fn answered(cautions: &[Caution], why: &Explanation, writing: &Writing) -> Answer {
    let mut said: Vec<String> = cautions.iter().map(ToString::to_string).collect();
    said.push(t(MANUAL_FIRST).to_owned());
    let source = match why.basis {
        Basis::Published(source) => say!("Source: {source}.", source = t(source)),
        Basis::Derived(how) => say!("Worked out from {how}.", how = t(how)),
        Basis::CommonPractice => t("Common practice, no source.").to_owned(),
    };
    let inputs = why.given.iter().map(|input| writing.input(input));
    let explained =
        std::iter::once(t(why.formula).to_owned()).chain(inputs).chain([source]).collect();
    Answer { cautions: said, explained, ..Answer::default() }
}
