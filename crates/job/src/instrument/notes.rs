//! The second line under the words of a choice, and fields that are asked only where a word was chosen.

use measure::Verdict;
use words::{say, t};

use super::metal::OWN;
use super::{Asked, Instrument, Takes, Values, leak, leak_sheet, torque, verdict_word};
use crate::guide::GuideLog;
use crate::{Sheet, Shown};

/// Field, the field of the same form whose word asks for it, and that word.
const ONLY_AT: [(&str, &str, &str); 3] = [
    ("because", "stage", leak::NOT_APPLICABLE),
    ("outer-own", "outer", OWN),
    ("inner-own", "inner", OWN),
];

/// Where in a job a check is opened.
#[derive(Clone, Copy, Debug)]
pub struct At<'a> {
    /// The unit sheet of the job.
    pub sheet: &'a Sheet,
    /// What was kept in the job.
    pub log: &'a GuideLog,
    /// The step; may be empty.
    pub step: &'a str,
}

impl Instrument {
    /// Whether a field is asked for now: most always are. What was typed in one is not hidden.
    pub fn asks(&self, asked: &Asked, values: &Values) -> bool {
        let first = |id: &str| values.get(id).and_then(|texts| texts.first()).map(String::as_str);
        let only_at = ONLY_AT.iter().find(|(field, ..)| *field == asked.id);
        let is_empty = first(asked.id).is_none_or(str::is_empty);
        if asked.id == leak_sheet::SOURCE {
            return !is_empty;
        }
        only_at.is_none_or(|(_, other, word)| !is_empty || first(other) == Some(*word))
    }

    /// What stands under each word or usual number of a field, from what is typed, from the unit sheet and
    /// from what was kept at that step; none where nothing does.
    pub fn notes(
        &self,
        asked: &Asked,
        values: &Values,
        shown: Shown,
        at: Option<At>,
    ) -> Vec<String> {
        match (asked.takes, at) {
            (Takes::Usual(_, _, usual), _) => torque::at_angles(self.fields, values, shown, usual),
            (Takes::One(stages), Some(at))
                if self.kind == leak::LEAK.kind && asked.id == "stage" =>
            {
                let note = |stage: &&str| {
                    let asks = leak_sheet::note(at.sheet, stage);
                    let came = self.came_of(at.log, at.step, stage, shown);
                    match (asks.is_empty(), came.is_empty()) {
                        (false, false) => say!("{asks}, {came}"),
                        (false, true) => asks,
                        (true, _) => came,
                    }
                };
                stages.iter().map(note).collect()
            }
            _ => Vec::new(),
        }
    }

    /// What came of a stage that was kept at that step: "in band"; empty before.
    fn came_of(&self, log: &GuideLog, step: &str, stage: &str, shown: Shown) -> String {
        let of_stage = log
            .checks
            .iter()
            .filter(|(key, _)| key.kind == self.kind && key.step == step && key.stage == stage);
        let Some((_, last)) = of_stage.max_by_key(|(_, check)| check.mark) else {
            return String::new();
        };
        let verdict = self.answer(&last.values, shown).ok().and_then(|answer| answer.verdict);
        match verdict {
            Some(Verdict::InBand) => t("held").to_owned(),
            Some(verdict) => verdict_word(verdict).to_owned(),
            None if stage == leak::NOT_APPLICABLE => t("reason kept").to_owned(),
            None => t("no verdict yet").to_owned(),
        }
    }
}
