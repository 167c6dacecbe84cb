//! The procedure of a layout: its steps, from the phone call to the invoice.
//!
//! Procedures are data, read at run time from files whose names hold layout and revision. A
//! published revision is never edited; a job pins the one it was begun with. The grammar is written
//! down in PROCEDURES.md. The steps are common practice; limits come from the user's unit sheet.

mod changes;
mod decode;
mod phase;
mod plan;
mod record;

pub use changes::{Change, Changes};
pub use decode::ProcedureError;
pub use phase::{Phase, Scope};
pub use plan::{Plan, PlanRefusal};
pub use record::{Choice, Record, RecordKind, Repeats};

/// The newest published revision of every layout's procedure.
pub const NEWEST: u32 = 1;

/// The steps of a layout, in the order shown.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Procedure {
    /// The layout: `b`.
    pub layout: String,
    /// Its published revision.
    pub revision: u32,
    /// The steps. Needs point backwards.
    pub steps: Vec<Step>,
}

/// One act with what it needs, what it can hurt, and what is captured.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Step {
    /// A name, never a number: `b28a`.
    pub id: String,
    /// The phase of the job.
    pub phase: Phase,
    /// The act, in one line.
    pub title: String,
    /// Why it is done.
    pub why: String,
    /// Tools, the same words everywhere.
    pub tools: Vec<String>,
    /// Cautions, to be shown before the act.
    pub caution: String,
    /// Steps that must be done first.
    pub needs: Vec<String>,
    /// What to capture.
    pub records: Vec<Record>,
    /// Consumables, the same words everywhere.
    pub consumables: Vec<String>,
    /// What must hold before the step counts as done.
    pub gate: Option<Gate>,
    /// Scopes in which the step is done.
    pub scopes: Vec<Scope>,
    /// Shim positions it concerns, every possible member of the slot.
    pub positions: Vec<String>,
    /// What happens to parts, in the order it is done.
    pub parts: Vec<PartAct>,
    /// Labour of one practised person, waits left out.
    pub minutes: u32,
    /// A wait clock starts in this step.
    pub meanwhile: bool,
    /// A step of the shop's own, not of the published procedure.
    pub own: bool,
}

/// What must hold before a step counts as done.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Gate {
    /// The condition in words.
    pub words: String,
    /// The records that decide it.
    pub proof: Vec<Proof>,
}

/// A record that decides a gate.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Proof {
    /// The step that holds it; `None`: the gate's own.
    pub step: Option<String>,
    /// Its label.
    pub label: String,
}

/// Something done to a part.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PartAct {
    /// What is done.
    pub act: Act,
    /// The place in the unit the part belongs to: `pinion-nut`.
    pub part: String,
}

/// What can be done to a part.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Act {
    /// Taken off or out as found.
    Off,
    /// Of those taken off: never used again.
    Reject,
    /// Put in for a trial.
    Dry,
    /// Taken out of the trial.
    Back,
    /// Fitted for good.
    On,
}

impl Procedure {
    /// Reads a procedure from its file, one JSON object a line.
    ///
    /// # Errors
    /// [`ProcedureError`], whose `Display` says which line does not follow the grammar.
    pub fn parse(layout: &str, revision: u32, text: &str) -> Result<Procedure, ProcedureError> {
        decode::procedure(layout, revision, text)
    }

    /// Where the file of a revision lies on the site: `/procedures/layout-b-r1.jsonl`.
    pub fn address(layout: &str, revision: u32) -> String {
        format!("/procedures/layout-{layout}-r{revision}.jsonl")
    }

    /// A step by its id.
    pub fn step(&self, id: &str) -> Option<&Step> {
        self.steps.iter().find(|step| step.id == id)
    }
}

impl Step {
    /// A record by its label.
    pub fn record(&self, label: &str) -> Option<&Record> {
        self.records.iter().find(|record| record.label == label)
    }

    /// The parts to which something is done.
    pub fn parts_of(&self, act: Act) -> impl Iterator<Item = &str> {
        self.parts.iter().filter(move |part| part.act == act).map(|part| part.part.as_str())
    }
}

impl Act {
    /// Every act in the order done, with its name in files.
    pub(crate) const ALL: [(Act, &'static str); 5] = [
        (Act::Off, "off"),
        (Act::Reject, "reject"),
        (Act::Dry, "dry"),
        (Act::Back, "back"),
        (Act::On, "on"),
    ];
}
