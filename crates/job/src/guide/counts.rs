//! Out and in: what was counted out must be counted in.

use measure::Decimal;
use words::{say, t};

use super::log::{GuideLog, Kept};
use crate::guided::{Capture, capitalised};
use crate::procedure::{Plan, Record};

/// Something counted out and in.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CountView {
    /// What: "pinion rollers".
    pub name: String,
    /// How many came out, as typed.
    pub out: Option<Decimal>,
    /// How many went in, as counted last.
    pub inside: Option<Decimal>,
    /// How they stand.
    pub state: CountState,
    /// What is wrong and what to do; empty where nothing is.
    pub says: String,
}

/// How out and in stand.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CountState {
    /// Not counted out.
    NotCounted,
    /// Out, and not counted in.
    ToFit,
    /// In equals out.
    Agree,
    /// In does not equal out.
    Differ,
}

impl CountView {
    /// What is counted, as a title: "Pinion rollers".
    pub fn title(&self) -> String {
        capitalised(t(&self.name))
    }

    /// How many came out; `None` while that is not counted.
    pub fn out_words(&self) -> Option<String> {
        self.out.map(|count| count.normalize().to_string())
    }

    /// How many went in; `None` while that is not counted.
    pub fn in_words(&self) -> Option<String> {
        self.inside.map(|count| count.normalize().to_string())
    }
}

const IN: [&str; 3] = [" still in", " saved", " in"];

/// Everything this plan counts out.
pub fn counts(plan: &Plan, log: &GuideLog) -> Vec<CountView> {
    let records =
        || plan.steps.iter().flat_map(|step| step.records.iter().map(move |record| (step, record)));
    records()
        .filter_map(|(step, record)| Some((step, record, name_out(record)?)))
        .map(|(step, record, name)| {
            let out = log.capture(&step.id, &record.label).and_then(count);
            let last = records()
                .filter(|(_, record)| record.is_count() && name_in(record) == Some(name))
                .filter_map(|(step, record)| log.capture(&step.id, &record.label))
                .max_by_key(|kept| kept.mark);
            let inside = last.and_then(count);
            let (state, says) = match (out, inside) {
                (None, _) => (CountState::NotCounted, String::new()),
                (Some(_), None) => (CountState::ToFit, String::new()),
                (Some(out), Some(inside)) if out == inside => (CountState::Agree, String::new()),
                (Some(out), Some(inside)) => (CountState::Differ, sentence(name, out, inside)),
            };
            CountView { name: name.to_owned(), out, inside, state, says }
        })
        .collect()
}

/// What a count out counts.
pub(super) fn name_out(record: &Record) -> Option<&str> {
    record.label.strip_suffix(" out").filter(|_| record.is_count())
}

/// What a count in counts.
pub(super) fn name_in(record: &Record) -> Option<&str> {
    IN.iter().find_map(|ending| record.label.strip_suffix(ending))
}

/// The number counted; `None` where it was not counted, or two counts differ.
pub(super) fn count(kept: &Kept) -> Option<Decimal> {
    let Capture::Readings(values) = &kept.value else { return None };
    let first = values.first()?.amount().value;
    values.iter().all(|value| value.amount().value == first).then_some(first)
}

/// "17 pinion rollers in, 18 out. Find 1 before you go on."
pub(super) fn sentence(name: &str, out: Decimal, inside: Decimal) -> String {
    let (out_text, in_text) = (out.normalize(), inside.normalize());
    let name = t(name);
    let cure = if inside < out {
        say!("Find {count} before you go on.", count = (out - inside).normalize())
    } else {
        t("Count both again.").to_owned()
    };
    if in_text == Decimal::ZERO {
        let name = capitalised(name);
        return say!("{name}: none in, {out_text} out. {cure}");
    }
    say!("{in_text} {name} in, {out_text} out. {cure}")
}
