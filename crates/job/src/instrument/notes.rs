//! The second line under the words of a choice, and fields that are asked only where a word was chosen.

use measure::Verdict;
use words::t;

use super::metal::OWN;
use super::{Asked, Instrument, Takes, Values, leak, torque, verdict_word};
use crate::Shown;
use crate::guide::GuideLog;

/// Field, the field of the same form whose word asks for it, and that word.
const ONLY_AT: [(&str, &str, &str); 3] = [
    ("because", "stage", leak::NOT_APPLICABLE),
    ("outer-own", "outer", OWN),
    ("inner-own", "inner", OWN),
];

impl Instrument {
    /// Whether a field is asked for now: most always are. What was typed in one is not hidden.
    pub fn asks(&self, asked: &Asked, values: &Values) -> bool {
        let first = |id: &str| values.get(id).and_then(|texts| texts.first()).map(String::as_str);
        let only_at = ONLY_AT.iter().find(|(field, ..)| *field == asked.id);
        let is_empty = first(asked.id).is_none_or(str::is_empty);
        only_at.is_none_or(|(_, other, word)| !is_empty || first(other) == Some(*word))
    }

    /// What stands under each word or usual number of a field, from what is typed and from what was kept
    /// at that step; none where nothing does.
    pub fn notes(
        &self,
        asked: &Asked,
        values: &Values,
        shown: Shown,
        kept: Option<(&GuideLog, &str)>,
    ) -> Vec<String> {
        match (asked.takes, kept) {
            (Takes::Usual(_, _, usual), _) => torque::at_angles(self.fields, values, shown, usual),
            (Takes::One(stages), Some((log, step)))
                if self.kind == leak::LEAK.kind && asked.id == "stage" =>
            {
                stages.iter().map(|stage| self.came_of(log, step, stage, shown)).collect()
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
