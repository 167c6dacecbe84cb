//! What can have happened in the guided job, in the past tense.

mod admit;
mod capture;
mod consent;
mod wire;
mod words;

pub(crate) use admit::admit;
pub use capture::{Capture, TorqueOn};
pub use consent::{Agreement, Answered, Signature};
pub(crate) use wire::{GuidedLine, VERSION};
pub(crate) use words::{
    FITTED, REJECTED, SHIMS_FOR, all_agreed, capitalised, labelled, sentence, spaced, without_stop,
};
pub use words::{agreed, item_words};

use std::collections::BTreeMap;

use ::words::{key, t};

use crate::procedure::Scope;

/// Something that happened in the guided job, the unit's own procedure, or the tool drawer.
///
/// The form in files is described in WIRE.md; it is read and written by one table, not derived.
#[derive(Clone, Debug, PartialEq, Eq)]
#[allow(missing_docs, reason = "the fields are described once, at their kind")]
pub enum Guided {
    /// The job follows this revision of its layout's procedure.
    ProcedurePinned { layout: String, revision: u32 },
    /// How much is done was agreed, or changed: why, in words; may be empty.
    ScopeChosen { scope: Scope, reason: String },
    /// A step was done.
    StepDone { step: String },
    /// A step was left out, for a reason.
    StepSkipped { step: String, reason: String },
    /// A step must be done again, and everything that needs it.
    StepReopened { step: String, reason: String },
    /// A person judged a gate that speaks of a limit; failed, it opens its step again.
    GateJudged { step: String, passed: bool, by: String, reason: String },
    /// A record of a step was captured; a later capture of the same label replaces it.
    Captured { step: String, label: String, value: Capture },
    /// A wait was started; `marks` are minutes after the start, the last is its end.
    ClockStarted { clock: String, step: String, label: String, marks: Vec<u32> },
    /// A wait was ended by hand, for a reason; may be empty.
    ClockStopped { clock: String, reason: String },
    /// A part came off: its number on the ladder, where it lies, which way it faced, its photo.
    PartBagged {
        number: u32,
        part: String,
        step: String,
        place: String,
        facing: String,
        photo: Option<String>,
    },
    /// A part was fitted for good.
    PartFitted { number: u32 },
    /// A part was judged.
    PartJudged {
        part: String,
        verdict: PartVerdict,
        signs: Vec<String>,
        reason: String,
        photo: Option<String>,
    },
    /// Somebody agreed: to what, up to which sum, in their words.
    ConsentGiven { by: String, what: String, limit: String },
    /// Somebody agreed: to which work, up to which sum, and when to stop and call; signed.
    ConsentSigned(Box<Agreement>),
    /// Somebody said no to that work: how the answer came, why, in their words, and to whom, in
    /// initials; both may be empty.
    ConsentRefused {
        step: String,
        by: String,
        how: Answered,
        work: Vec<String>,
        reason: String,
        initials: String,
    },
    /// A tool or consumable was seen to for this job; `from`: whom or where, may be empty.
    ToolReadied { tool: String, how: Readied, from: String },

    /// A bench check was done: with which instrument, on what, for which step (both may be empty),
    /// and each field as it was typed. A later one of the same step, place and kind replaces it.
    BenchChecked {
        step: String,
        place: String,
        kind: String,
        values: BTreeMap<String, Vec<String>>,
    },

    /// The shop added a step of its own, after another.
    StepAdded {
        step: String,
        after: String,
        title: String,
        why: String,
        caution: String,
        records: Vec<String>,
    },
    /// The shop leaves a step out on this unit.
    StepDropped { step: String, reason: String },
    /// The shop does a step after another one.
    StepMoved { step: String, after: String },

    /// A tool is in the drawer: what it is called in the steps, and what is written on it.
    ToolKept { tool: String, name: String, number: String },
    /// A tool goes by another name or number too.
    ToolNamed { tool: String, other: String },
    /// A number, printed or told, is wrong for a tool: a note says what is right.
    ToolCorrected { tool: String, wrong: String, note: String },
    /// A tool is not in the drawer any more.
    ToolGone { tool: String, why: String },
}

/// A verdict on a part.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum PartVerdict {
    /// Never used again.
    Reject,
    /// Used again; look at it next time.
    Watch,
    /// Used again.
    Reuse,
}

/// What was done about a tool.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Readied {
    /// It is in the van.
    Packed,
    /// Somebody lends it.
    Borrowed,
    /// It is on order.
    Ordered,
    /// None of these any more.
    Unpacked,
}

impl PartVerdict {
    /// Every verdict, with its word in files.
    pub(crate) const ALL: [(PartVerdict, &'static str); 3] = [
        (PartVerdict::Reject, key!("reject")),
        (PartVerdict::Watch, key!("watch")),
        (PartVerdict::Reuse, key!("reuse")),
    ];

    /// Its word.
    pub fn word(self) -> &'static str {
        Self::ALL.iter().find(|row| row.0 == self).map_or("", |row| row.1)
    }

    /// The word as it is shown.
    pub fn words(self) -> &'static str {
        t(self.word())
    }
}

impl Readied {
    /// Every way, with its word in files.
    pub(crate) const ALL: [(Readied, &'static str); 4] = [
        (Readied::Packed, key!("packed")),
        (Readied::Borrowed, key!("borrowed")),
        (Readied::Ordered, key!("ordered")),
        (Readied::Unpacked, key!("unpacked")),
    ];

    /// Its word.
    pub fn word(self) -> &'static str {
        Self::ALL.iter().find(|row| row.0 == self).map_or("", |row| row.1)
    }

    /// The word as it is shown.
    pub fn words(self) -> &'static str {
        t(self.word())
    }
}
