//! The bench instruments: what each asks, as a table, and what it answers to what was typed.
//!
//! What is kept of a check is what was typed, field by field ([`crate::Guided::BenchChecked`]).
//! The answer is worked out anew each time by the `workshop` crate.

mod anode;
mod answer;
mod asked;
mod clock;
mod drag;
mod fit;
mod fit_words;
mod given;
mod land;
mod leak;
mod leak_acts;
mod leak_sheet;
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
mod stages;
mod table;
mod titles;
mod torque;
mod torque_stages;

use std::collections::BTreeMap;
use words::t;

use measure::Unit;
use pictures::drawing::Drawing;
use workshop::Caution;

pub use answer::{Alarm, Answer, Headline, NoAnswer, RefusedAt};
use answer::{answered, verdict_word};
pub use asked::{Asked, Takes};
use asked::{asked, fold, optional};
pub use clock::{Elapsed, since};
use given::Given;
pub use notes::At;
pub(crate) use records::given;
pub use records::{of_record, of_step, place_for, said};
pub use stages::{Progress, Stage};
pub use table::{Table, TableRow};
pub(crate) use titles::titled;

use crate::guide::GuideLog;
use crate::{Job, Sheet, Shown, Units};

/// The texts of each field, as typed.
pub type Values = BTreeMap<String, Vec<String>>;

/// An instrument: one kind of bench check.
pub struct Instrument {
    /// Its name in files and addresses; never changes.
    pub kind: &'static str,
    title: &'static str,
    purpose: &'static str,
    /// What to say before anybody begins.
    pub cautions: &'static [Caution],
    /// What it asks, in order.
    pub fields: &'static [Asked],
    answer: fn(&mut Given) -> Option<Answer>,
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

impl Instrument {
    /// Its name on the screen.
    pub fn title(&self) -> &'static str {
        t(self.title)
    }

    /// What it is for, in one sentence.
    pub fn purpose(&self) -> &'static str {
        t(self.purpose)
    }

    /// What it says to the texts typed.
    ///
    /// # Errors
    /// [`NoAnswer`]: what is refused, field by field, and what is still wanted.
    pub fn answer(&self, values: &Values, shown: Shown) -> Result<Answer, NoAnswer> {
        self.answer_to(Given::of(self.fields, values, shown))
    }

    /// What it said to texts that were kept, as the record tells it: figures in the units of whoever
    /// reads it. A number that was kept without its unit is in the one of its field.
    ///
    /// # Errors
    /// [`NoAnswer`], as for [`Instrument::answer`].
    pub fn told(&self, values: &Values, shown: Shown) -> Result<Answer, NoAnswer> {
        let as_kept = Shown { units: Units::default(), ..shown };
        let mut given = Given::of(self.fields, values, as_kept);
        given.reader = Some(shown.units);
        self.answer_to(given)
    }

    fn answer_to(&self, mut given: Given) -> Result<Answer, NoAnswer> {
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
        if self.kind == seal::SEAL.kind { t("S1, as on the map") } else { t("prop shaft") }
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
