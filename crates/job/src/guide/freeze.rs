//! Freezing the packs: what lies in the unit is agreed, and a second person signs that they saw it.

use std::fmt;
use words::{key, say, t};

use super::set_up::shims;
use crate::guided::Capture;
use crate::procedure::{Plan, RecordKind, Step};
use crate::standing::standing;
use crate::{Check, CheckState, Figure, Guided, Job, PackFit, Sheet, Shown, Slot, figure};

/// What is to be frozen.
#[derive(Clone, Debug, PartialEq)]
pub struct Freeze {
    /// The step it belongs to; where old packs go back, the one that lists them.
    pub step: String,
    /// The act: "Freeze packs".
    pub title: String,
    /// Every pack the step asks for that the unit has.
    pub packs: Vec<FreezePack>,
    /// What keeps it from being signed: one sentence each.
    pub missing: Vec<String>,
    /// What was signed last: "JO set, SA saw".
    pub signed: Option<String>,
    /// Labels that hold the packs, with what they get.
    captures: Vec<(String, Capture)>,
    /// The labels that hold the initials and the time.
    initials: String,
    time: Option<String>,
}

/// A pack as it is to be frozen.
#[derive(Clone, Debug, PartialEq)]
pub struct FreezePack {
    /// Its position, as on its tag.
    pub tag: &'static str,
    /// "0.801 · depth 0.63"; "not written down".
    pub words: String,
    /// The state of the check it sets.
    pub state: CheckState,
}

/// Why it is not signed; `Display` is the sentence to show.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum FreezeRefusal {
    /// Something must be put right first.
    NotYet {
        /// What, in words.
        missing: String,
    },
    /// No initials, or no letters.
    NoInitials {
        /// Whose: "who set it".
        of: &'static str,
    },
    /// The same letters twice.
    SameTwice {
        /// The letters.
        found: String,
    },
}

impl fmt::Display for FreezeRefusal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            FreezeRefusal::NotYet { missing } => f.write_str(&say!("Not yet. {missing}")),
            FreezeRefusal::NoInitials { of } => {
                f.write_str(&say!("No initials of {of}. Type one to three letters, such as SA."))
            }
            FreezeRefusal::SameTwice { found } => f.write_str(&say!(
                "{found} stands there twice. A second person signs, or say that you work alone."
            )),
        }
    }
}

impl std::error::Error for FreezeRefusal {}

/// Works out what is to be frozen; `None` where this plan asks nobody to sign for packs.
pub fn freeze(job: &Job, sheet: &Sheet, plan: &Plan, shown: Shown) -> Option<Freeze> {
    let (step, state) = place(plan)?;
    let mut frozen = Freeze {
        step: step.id.clone(),
        title: match state {
            "frozen" => t("Freeze packs").to_owned(),
            _ => step.title.clone(),
        },
        packs: Vec::new(),
        missing: Vec::new(),
        signed: None,
        captures: Vec::new(),
        initials: initials(step)?.to_owned(),
        time: step
            .records
            .iter()
            .find(|record| record.kind == RecordKind::Time)
            .map(|record| record.label.clone()),
    };
    let signed = job.guide.capture(&step.id, &frozen.initials);
    frozen.signed = signed.map(|kept| kept.value.words());
    for record in &step.records {
        let Some((position, _)) = record.pack().filter(|pack| pack.1 == state) else { continue };
        let Some(slot) = Slot::named(position) else { continue };
        let label = record.label.clone();
        if !sheet.positions().iter().any(|position| position.slot == slot) {
            frozen.captures.push((label, Capture::None(key!("none here").to_owned())));
            continue;
        }
        frozen.take(slot, label, job, sheet, shown);
    }
    Some(frozen)
}

/// The step that freezes packs, else the one that lists old packs which go back; and how it names
/// the packs.
fn place(plan: &Plan) -> Option<(&Step, &'static str)> {
    ["frozen", "listed"].into_iter().find_map(|state| {
        let has = |step: &&Step| {
            let mut packs = step.records.iter().filter_map(crate::procedure::Record::pack);
            packs.any(|pack| pack.1 == state) && initials(step).is_some()
        };
        Some((plan.steps.iter().find(has)?, state))
    })
}

fn initials(step: &Step) -> Option<&str> {
    let labels = step.records.iter().map(|record| record.label.as_str());
    labels.into_iter().find(|label| label.starts_with("second initials"))
}

/// What is written down after who set a pack, where one looked on.
const SET: &str = " set, ";
/// What is written down after who looked on.
const SAW: &str = " saw";
/// What is written down after who set a pack, where nobody looked on.
const ALONE: &str = " set, not seen by a second person";

/// Who signed, as it is shown; `None` where the text is no signing of packs.
pub(crate) fn signed_words(text: &str) -> Option<String> {
    if let Some(set_by) = text.strip_suffix(ALONE) {
        return Some(say!("{set_by} set, not seen by a second person"));
    }
    let (set_by, other) = text.strip_suffix(SAW)?.split_once(SET)?;
    Some(say!("{set_by} set, {other} saw"))
}

impl Freeze {
    fn take(&mut self, slot: Slot, label: String, job: &Job, sheet: &Sheet, shown: Shown) {
        let check = slot.check().filter(|check| sheet.checks().contains(check));
        let (state, judged) = match check {
            Some(check) => standing(check, job, sheet, shown),
            None => (CheckState::NoBand, None),
        };
        let mut words = match job.pack(slot).map(PackFit::total) {
            Some(total) => figure(total, Figure::Shim, shown),
            None => t("not written down").to_owned(),
        };
        if let (Some(check), Some(judged)) = (check, judged) {
            let read = figure(judged.mean, check.figure(), shown);
            words = format!("{words} · {} {read}", check.short());
        }
        match job.pack(slot).and_then(shims) {
            Some(shims) => self.captures.push((label, shims)),
            None => {
                self.missing.push(say!("{pack}: the pack is not written down.", pack = slot.tag()))
            }
        }
        if let Some(check) = check.filter(|_| !may_freeze(&state)) {
            self.lacks(check, &state);
        }
        self.packs.push(FreezePack { tag: slot.tag(), words, state });
    }

    fn lacks(&mut self, check: Check, state: &CheckState) {
        let words = state.to_string().to_lowercase();
        let says = match state {
            CheckState::Stale { why } => why.clone(),
            CheckState::Open | CheckState::Locked { .. } => {
                say!("{check}: not read.", check = check.name())
            }
            _ => format!("{}: {words}.", check.name()),
        };
        if !self.missing.contains(&says) {
            self.missing.push(says);
        }
    }

    /// The facts of signing: every pack as it lies, the initials, the time. `seen_by`: a second
    /// person's initials, or `None` where one works alone, which stands on the record.
    ///
    /// # Errors
    /// [`FreezeRefusal`], whose `Display` is the sentence to show.
    pub fn sign(
        &self,
        set_by: &str,
        seen_by: Option<&str>,
        at: i64,
    ) -> Result<Vec<Guided>, FreezeRefusal> {
        if let Some(missing) = self.missing.first() {
            return Err(FreezeRefusal::NotYet { missing: missing.clone() });
        }
        let no = |of| move || FreezeRefusal::NoInitials { of };
        let set_by = letters(set_by).ok_or_else(no(t("who set it")))?;
        let words = match seen_by {
            None => format!("{set_by}{ALONE}"),
            Some(other) => {
                let other = letters(other).ok_or_else(no(t("the second person")))?;
                if other == set_by {
                    return Err(FreezeRefusal::SameTwice { found: other });
                }
                format!("{set_by}{SET}{other}{SAW}")
            }
        };
        let signed = (self.initials.clone(), Capture::Text(words));
        let time = self.time.clone().map(|label| (label, Capture::Time(at)));
        let captures = self.captures.iter().cloned().chain([signed]).chain(time);
        let fact = |(label, value)| Guided::Captured { step: self.step.clone(), label, value };
        Ok(captures.map(fact).collect())
    }
}

/// In band, or without limits: then the manual decides, and the gate asks for it.
fn may_freeze(state: &CheckState) -> bool {
    matches!(state, CheckState::InBand | CheckState::NoBand)
}

/// Initials: one to three letters, large.
pub(super) fn letters(text: &str) -> Option<String> {
    let text = text.trim().to_uppercase();
    let fits = text.chars().all(char::is_alphabetic) && (1..=3).contains(&text.chars().count());
    fits.then_some(text)
}
