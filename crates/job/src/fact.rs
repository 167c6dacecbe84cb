//! What can have happened, in the past tense.

use measure::{Decimal, Typed, Unit, round};
use serde::{Deserialize, Serialize};

use crate::{ArmShaft, Check, Field, Guided, PartMark, Slot, tin::NET_PLACES};

/// Something that happened. What a person typed is kept as typed.
///
/// The form in files is described in WIRE.md.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub enum Fact {
    /// A unit sheet was begun: the first entry of its book.
    SheetOpened {
        /// What the person calls the unit.
        name: String,
        /// The layout: `a` to `e`.
        layout: String,
    },
    /// A value was typed in, or typed over.
    FieldTyped {
        /// Where.
        field: Field,
        /// What.
        value: FieldValue,
    },
    /// A value was taken out again.
    FieldCleared {
        /// Where.
        field: Field,
    },
    /// A value in doubt was looked at again, and stands.
    ValueStands {
        /// Where.
        field: Field,
    },
    /// It was seen where a pack lies, or that the unit has none there.
    VariantChosen {
        /// Which pack.
        slot: Slot,
        /// The position, `B1c`; `None`: there is no such pack.
        position: Option<String>,
    },
    /// A person saw on the sketch that a thicker pack pushes the way the position says.
    SignConfirmed {
        /// The position.
        position: String,
    },
    /// A person says that a thicker pack pushes the other way.
    SignOverridden {
        /// The position.
        position: String,
        /// Why.
        reason: String,
    },
    /// It was seen how the unit is built around a position.
    BuildChosen {
        /// The position.
        position: String,
        /// Which of the position's other builds, from 0; `None`: the usual one.
        build: Option<u32>,
    },

    /// Shims, all alike, were measured and put in the tin.
    ShimsAdded {
        /// A name for them that was never used before.
        shim: String,
        /// Kind of shim: the position's family.
        family: String,
        /// Measured at two places of the ring.
        places: [Typed; 2],
        /// What the micrometer read when closed; taken off.
        zero: Typed,
        /// What is marked on it.
        marked: Option<Typed>,
        /// How many.
        count: u32,
    },
    /// A shim that was found in a case went into the tin.
    ShimCameOut {
        /// A name for it that was never used before.
        shim: String,
        /// Kind of shim: the position's family.
        family: String,
        /// Its net thickness as it was written down.
        net: Typed,
        /// Id of the job.
        job: String,
    },
    /// The number of shims changed.
    ShimsCounted {
        /// Which.
        shim: String,
        /// How many more; below zero fewer.
        change: i32,
        /// Why.
        why: Counted,
    },
    /// A shim was found unfit: it is no longer offered.
    ShimRejected {
        /// Which.
        shim: String,
        /// Why.
        why: String,
    },

    /// A job was begun: the first entry of its book.
    JobOpened {
        /// Boat or customer's name for it.
        boat: String,
        /// The complaint, in the owner's words; may be empty.
        complaint: String,
        /// Id of the unit sheet.
        sheet: String,
        /// Number on this bench.
        number: u32,
    },
    /// A pack lies in the case.
    PackFitted {
        /// Where.
        slot: Slot,
        /// Its shims.
        shims: Vec<FittedShim>,
        /// It was found so; `false`: it was fitted.
        as_found: bool,
    },
    /// A pack must stay as it is, or may be changed again.
    PackHeld {
        /// The pack.
        slot: Slot,
        /// It must stay.
        held: bool,
    },
    /// New parts went in that a pack must make up for; readings it moves count no longer.
    PartsChanged {
        /// The pack.
        slot: Slot,
        /// Marks and heights, old and new; may be empty.
        marks: Vec<PartMark>,
    },
    /// A series of readings was taken.
    ReadingTaken {
        /// Of what.
        check: Check,
        /// One for each stop, in order.
        values: Vec<Typed>,
        /// Radius of the arm, for backlash.
        arm: Option<Typed>,
        /// The shaft the arm was on, for backlash.
        on: Option<ArmShaft>,
    },
    /// A word to find the job by was put on it, or taken off.
    JobTagged {
        /// The word, or a few.
        tag: String,
        /// It is on the job.
        tagged: bool,
    },
    /// The job went off the bench and the board, or came back.
    JobArchived {
        /// It is off.
        archived: bool,
    },
    /// Photos of the job left this device; a backup has them.
    PhotosFreed {
        /// Their ids.
        photos: Vec<String>,
        /// When that backup was made, milliseconds since 1970, UTC.
        backup: i64,
    },
    /// A remark.
    NoteWritten {
        /// As written.
        text: String,
    },

    /// An earlier entry of this book no longer counts.
    EntryRetracted {
        /// Its id.
        entry: String,
        /// Why.
        why: String,
    },

    /// Something of the guided job; read and written by its own table.
    #[serde(skip)]
    Guided(Guided),
}

impl Fact {
    /// Whether its sentence names who may decide for the boat.
    pub fn names_owner(&self) -> bool {
        let Fact::Guided(fact) = self else { return false };
        matches!(
            fact,
            Guided::ConsentGiven { .. } | Guided::ConsentSigned(_) | Guided::ConsentRefused { .. }
        )
    }

    /// Whether it can be taken back: not what opens a book, nor what no entry can undo.
    pub(crate) fn can_go(&self) -> bool {
        !matches!(
            self,
            Fact::SheetOpened { .. } | Fact::JobOpened { .. } | Fact::PhotosFreed { .. }
        )
    }
}

impl From<Guided> for Fact {
    fn from(fact: Guided) -> Fact {
        Fact::Guided(fact)
    }
}

/// A value of the unit sheet.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(untagged)]
pub enum FieldValue {
    /// A measured number with its unit.
    Number(Typed),
    /// A whole number: teeth.
    Count(u32),
    /// One of the field's choices, or free text such as a source.
    Word(String),
}

/// Why the number of shims changed.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub enum Counted {
    /// More were there than thought.
    Found,
    /// They are gone.
    Lost,
    /// Taken for a job.
    Taken {
        /// Id of the job.
        job: String,
    },
    /// Put back from a job.
    PutBack {
        /// Id of the job.
        job: String,
    },
}

/// A shim of a pack.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub enum FittedShim {
    /// Measured as it came out of the case; net, the micrometer's zero taken off.
    Measured(Typed),
    /// From the tin.
    FromTin {
        /// Which.
        shim: String,
        /// Its net thickness, mm.
        net: Decimal,
    },
}

impl FittedShim {
    /// Net thickness, mm, to 0.00001 mm.
    pub fn net(&self) -> Decimal {
        match self {
            FittedShim::Measured(typed) => round(typed.in_unit(Unit::Millimetre), NET_PLACES),
            FittedShim::FromTin { net, .. } => *net,
        }
    }
}
