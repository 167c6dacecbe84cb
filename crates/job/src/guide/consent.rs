//! Consent: what is asked of who may decide, what is still missing, and what stands.

use std::fmt;
use words::t;

use super::freeze::letters;
use super::inspection::Effect;
use super::log::{GuideLog, Mark};
use crate::Guided;
use crate::guided::{Agreement, Answered, Capture, PartVerdict, capitalised};
use crate::procedure::{Plan, Record, RecordKind, Step};

/// Usual reasons to stop and call. Common practice, no source.
pub const STOPS: [&str; 3] =
    ["Metal chunks or a broken tooth", "A crack in the case", "A part comes later than agreed"];

/// What is usually not covered. Common practice, no source.
pub const EXCLUDED: &str = "Cracks found in the case. Hidden corrosion. Damage above the joint.";

/// Somebody agreed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Consent {
    /// Who.
    pub by: String,
    /// To what.
    pub what: String,
    /// Up to which sum; may be empty.
    pub limit: String,
    /// When.
    pub mark: Mark,
    /// All that was agreed, where it was signed.
    pub signed: Option<Box<Agreement>>,
}

/// Somebody said no.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Refused {
    /// Who.
    pub by: String,
    /// How the answer came.
    pub how: Answered,
    /// To which work.
    pub work: Vec<String>,
    /// Why, in their words; may be empty.
    pub reason: String,
    /// Initials of who took the answer; may be empty.
    pub initials: String,
    /// When.
    pub mark: Mark,
}

/// What is asked, and how it stands.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Asked {
    /// The step that asks; empty where none does.
    pub step: String,
    /// A consent stands, and something changed since: a new price is asked for.
    pub revised: bool,
    /// Nothing changed since the last consent.
    pub settled: bool,
    /// What changed: one sentence each.
    pub says: Vec<String>,
    /// The work to agree to, and whether it was agreed before.
    pub work: Vec<(String, bool)>,
    /// The consent that stands.
    pub last: Option<Consent>,
    /// The no that came after it.
    pub refused: Option<Refused>,
    /// Labels of the step that hold the answer.
    labels: Vec<(String, Holds)>,
}

/// What a label of a step holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Holds {
    Limit,
    Excluded,
    Price,
    Time,
}

/// Why a consent is not kept; `Display` is the sentence to show.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ConsentRefusal {
    /// No work is ticked.
    NoWork,
    /// No new price.
    NoPrice,
    /// Nobody said what is not covered.
    NothingExcluded,
    /// No sum to stop at.
    NoLimit,
    /// No reason to stop.
    NoStops,
    /// No name.
    NoName,
    /// Neither drawn nor initials.
    NotSigned,
    /// Hardly anything is drawn.
    OnlyADot,
    /// Initials that are no letters, or too many.
    NotLetters,
    /// No initials of who took the answer.
    NobodyTookIt,
}

impl fmt::Display for ConsentRefusal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::NoWork => t("No work is ticked. Tick what is agreed."),
            Self::NoPrice => t("No new price. Type it as you quoted it."),
            Self::NothingExcluded => {
                t("Nothing stands under what is not covered. Type it, or none.")
            }
            Self::NoLimit => t("No limit. Type the sum at which you stop and call."),
            Self::NoStops => t("No stop rule is ticked. Tick what else makes you call."),
            Self::NoName => t("No name. Type who may decide."),
            Self::NotSigned => t("Not signed. Sign in the field, or type initials."),
            Self::OnlyADot => t("Hardly anything is drawn. Sign again, or type initials."),
            Self::NotLetters => {
                t("Initials are one to three letters, such as ML. Type them again.")
            }
            Self::NobodyTookIt => t("Nobody took the answer. Type your initials."),
        })
    }
}

impl std::error::Error for ConsentRefusal {}

/// What is to be asked now. `effect`: what the verdicts change.
pub fn asked(plan: &Plan, log: &GuideLog, effect: &Effect) -> Asked {
    let last = log.consents.last().cloned();
    let since = last.as_ref().map(|last| last.mark);
    let rejected = |judged: &super::log::Judged| {
        judged.verdict == PartVerdict::Reject && since.is_none_or(|since| judged.mark > since)
    };
    let changed =
        log.judged.values().any(rejected) || log.scoped.is_some_and(|it| Some(it) > since);
    let revised = last.is_some() && changed;
    let step = plan.steps.iter().find_map(|step| asks(step, last.is_some()));
    let (step, labels) = step.unwrap_or_default();
    Asked {
        step,
        revised,
        settled: last.is_some() && !changed,
        says: if revised { effect.says.clone() } else { Vec::new() },
        work: work(plan, last.as_ref(), effect),
        refused: log.refused.last().filter(|no| Some(no.mark) > since).cloned(),
        last,
        labels,
    }
}

/// The step that asks for this consent, and what its labels hold.
fn asks(step: &Step, again: bool) -> Option<(String, Vec<(String, Holds)>)> {
    let held = |record: &Record| Some((record.label.clone(), holds(record, again)?));
    let held: Vec<_> = step.records.iter().filter_map(held).collect();
    let timed = held.iter().any(|(_, holds)| *holds == Holds::Time);
    timed.then(|| (step.id.clone(), held))
}

fn holds(record: &Record, again: bool) -> Option<Holds> {
    match (record.kind, record.label.as_str(), again) {
        (RecordKind::Text, "authorised limit", false) => Some(Holds::Limit),
        (RecordKind::Text, "not covered", false) => Some(Holds::Excluded),
        (RecordKind::Time, "consent", false) => Some(Holds::Time),
        (RecordKind::Text, "revised price", true) => Some(Holds::Price),
        (RecordKind::Time, "consent to revised price", true) => Some(Holds::Time),
        _ => None,
    }
}

/// Whether a record of a step is answered by the consent before the strip-down. A new price may
/// also be captured on its step: where nothing changed, there is nothing to sign for.
pub fn takes_consent(record: &Record) -> bool {
    holds(record, false).is_some()
}

/// What was agreed before, the scope, and what the verdicts order.
fn work(plan: &Plan, last: Option<&Consent>, effect: &Effect) -> Vec<(String, bool)> {
    let before: Vec<String> = match last {
        Some(Consent { signed: Some(agreement), .. }) => agreement.work.clone(),
        Some(consent) => vec![consent.what.clone()],
        None => Vec::new(),
    };
    let scope = effect.widens_to.unwrap_or(plan.scope).written().to_owned();
    let orders = effect.orders.iter().map(|order| capitalised(order));
    let mut work: Vec<(String, bool)> = before.into_iter().map(|line| (line, true)).collect();
    for line in [scope].into_iter().chain(orders) {
        if !work.iter().any(|(other, _)| *other == line) {
            work.push((line, false));
        }
    }
    work
}

impl Asked {
    /// What is missing before it can be kept.
    pub fn lacks(&self, given: &Agreement) -> Vec<ConsentRefusal> {
        let empty = |text: &str| text.trim().is_empty();
        let rows = [
            (given.work.is_empty(), ConsentRefusal::NoWork),
            (self.last.is_some() && empty(&given.price), ConsentRefusal::NoPrice),
            (empty(&given.excluded), ConsentRefusal::NothingExcluded),
            (empty(&given.limit), ConsentRefusal::NoLimit),
            (given.stops.is_empty(), ConsentRefusal::NoStops),
            (empty(&given.by), ConsentRefusal::NoName),
        ];
        let rows = rows.into_iter().filter(|row| row.0).map(|row| row.1);
        rows.chain(signed(given).err()).collect()
    }

    /// The facts of a yes: what was agreed, and the captures of the step that asked. `at`: now,
    /// milliseconds since 1970.
    ///
    /// # Errors
    /// The first of [`Asked::lacks`].
    pub fn agree(&self, given: Agreement, at: i64) -> Result<Vec<Guided>, ConsentRefusal> {
        if let Some(lacks) = self.lacks(&given).first() {
            return Err(*lacks);
        }
        let trimmed = |text: &str| text.trim().to_owned();
        let agreement = Agreement {
            step: self.step.clone(),
            by: trimmed(&given.by),
            price: trimmed(&given.price),
            limit: trimmed(&given.limit),
            excluded: trimmed(&given.excluded),
            initials: letters(&given.initials).unwrap_or_default(),
            ..given
        };
        let capture = |(label, holds): &(String, Holds)| {
            let value = match holds {
                Holds::Limit => Capture::Text(agreement.limit.clone()),
                Holds::Excluded => Capture::Text(agreement.excluded.clone()),
                Holds::Price => Capture::Text(agreement.price.clone()),
                Holds::Time => Capture::Time(at),
            };
            Guided::Captured { step: self.step.clone(), label: label.clone(), value }
        };
        let mut facts: Vec<Guided> = self.labels.iter().map(capture).collect();
        // Last, so that the undo bar speaks of it.
        facts.push(Guided::ConsentSigned(Box::new(agreement)));
        Ok(facts)
    }

    /// The fact of a no to the work that is ticked, or to all of it where nothing is. `reason`: why,
    /// in the owner's words; may be empty.
    ///
    /// # Errors
    /// Without a name, or with initials that are none.
    pub fn refuse(&self, given: &Agreement, reason: &str) -> Result<Guided, ConsentRefusal> {
        if given.by.trim().is_empty() {
            return Err(ConsentRefusal::NoName);
        }
        let all = || self.work.iter().map(|row| row.0.clone()).collect();
        let work = if given.work.is_empty() { all() } else { given.work.clone() };
        Ok(Guided::ConsentRefused {
            step: self.step.clone(),
            by: given.by.trim().to_owned(),
            how: given.how,
            work,
            reason: reason.trim().to_owned(),
            initials: initials(given)?.unwrap_or_default(),
        })
    }
}

fn initials(given: &Agreement) -> Result<Option<String>, ConsentRefusal> {
    match given.initials.trim() {
        "" => Ok(None),
        typed => letters(typed).map(Some).ok_or(ConsentRefusal::NotLetters),
    }
}

/// In person by a drawing or initials; otherwise by the initials of who took the answer.
fn signed(given: &Agreement) -> Result<(), ConsentRefusal> {
    let here = given.how == Answered::Here;
    match initials(given)? {
        Some(_) => Ok(()),
        None if !here => Err(ConsentRefusal::NobodyTookIt),
        None if given.drawn.is_drawn() => Ok(()),
        None if given.drawn.is_empty() => Err(ConsentRefusal::NotSigned),
        None => Err(ConsentRefusal::OnlyADot),
    }
}
