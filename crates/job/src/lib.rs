//! Unit sheets, the shim tin, jobs: their books, the fold, and what every screen must be told.
//!
//! A [`Book`] is an append-only set of [`Entry`]s, each a past-tense [`Fact`]. [`Sheet`], [`Tin`]
//! and [`Job`] are folded from a book; everything a screen shows ([`setup()`], [`preview()`],
//! [`record()`] …) is worked out from those three and never stored. The guided job is a
//! [`procedure::Plan`] with what the job's book says of it: [`guide`].
//!
//! This crate knows no browser, clock, randomness, file or network: times and ids come in as
//! arguments.

mod admission;
mod advice;
mod alarm;
mod archive;
mod bench;
mod book;
mod by_id;
mod carried;
mod case;
mod check;
mod check_view;
mod clock;
pub mod demo;
mod drawer;
mod drawn;
mod entry;
mod fact;
mod field;
mod field_rows;
mod figure;
pub mod files;
mod find;
mod first_guess;
mod fit;
mod folded;
pub mod guide;
mod guided;
mod influence_view;
pub mod instrument;
mod invoice;
mod job;
mod json;
mod leak_field;
mod marks;
mod next_act;
mod other_packs;
mod owner;
mod pack_spread;
mod pack_typing;
mod pack_view;
pub mod pin;
mod plan;
mod position;
mod predicted;
mod preload;
mod preview;
pub mod procedure;
mod reading;
mod record;
mod refusal;
pub mod report;
mod sentence;
mod setup;
mod sheet;
mod sheet_arm;
mod sheet_needs;
mod sheet_part;
mod shelf;
mod shim_typing;
mod slopes;
mod stale;
mod standing;
mod state;
mod summary;
mod tin;
mod torque;
mod trials;
mod type_in;
mod typing;
mod undo;
mod units;
mod what_if;
mod why;
mod wire;

pub use advice::{AdviceStatus, AdviceView};
pub use alarm::{AlarmView, CauseView};
pub use archive::{PhotosStay, may_free_photos, photos_of};
pub use bench::{BenchCard, bench_card, next_number};
pub use book::Book;
pub use check::{ArmShaft, Bearings, Check, Mesh};
pub use check_view::CheckView;
pub use clock::{ago, apart, date, day_number, hour_minute};
pub use drawer::{Drawer, Found, Tool};
pub use drawn::{drawn, gauged, limits, writing};
pub use entry::{BookId, Entry, Kept, Stamp};
pub use fact::{Counted, Fact, FieldValue, FittedShim};
pub use field::{Field, FieldFacts, Group, Kind};
pub use figure::{Figure, Shown, figure};
pub use first_guess::{FirstGuess, first_guesses};
pub use fit::{fit, record_found};
pub use folded::Folded;
pub use guided::{Agreement, Answered, Capture, Guided, PartVerdict, Readied, Signature, TorqueOn};
pub use guided::{agreed, item_words};
pub use influence_view::{InfluenceCell, InfluenceRow, InfluenceView, Known, influence_view};
pub use invoice::{INVOICE_SAYS, InvoiceKind, InvoiceLine, invoice, invoice_csv, invoice_text};
pub use job::{Job, PackFit, PartsChange, Reading};
pub use leak_field::{LeakPart, LeakRefusal, LeakStage};
pub use marks::{MarkKind, MarkUnit, PartMark, Plus};
pub use next_act::{NextAct, Stage, StageState, all_the_same, next_act, stages};
pub use other_packs::{OtherPacks, other_packs};
pub use owner::{Owner, owner};
pub use pack_spread::pack_spread;
pub use pack_typing::{PackPreview, pack_preview};
pub use pack_view::{PackAct, PackView, ShimView};
pub use position::{Position, Slot};
pub use predicted::Predicted;
pub use preview::{Dock, Preview, Stop, preview};
pub use reading::Judged;
pub use record::{
    Record, RecordBench, RecordCheck, RecordLeft, RecordPack, RecordPart, RecordPhoto,
    RecordSigned, RecordStep, RecordTorque, record,
};
pub use refusal::Refusal;
pub use setup::{Gate, SetUp, setup};
pub use sheet::Sheet;
pub use sheet_needs::{Missing, ToDo};
pub use sheet_part::PartState;
pub use shelf::{Family, families};
pub use shim_typing::{ShimPreview, ShimTexts, shim_preview};
pub use slopes::{expected_says, expected_slopes};
pub use state::CheckState;
pub use summary::{JobSummary, Summary};
pub use tin::{NewShim, Shim, Tin, TinRow};
pub use trials::{TrialPoint, TrialsView};
pub use type_in::{Doubt, FieldRefusal, doubt, read_fields, shim_doubt, type_in};
pub use typing::Typing;
pub use undo::undo;
pub use units::{Units, next_unit, unit_choices};
pub use what_if::{WhatIf, what_if};
pub use why::{Input, Why, why};
