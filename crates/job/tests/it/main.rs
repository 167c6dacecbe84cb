//! Tests of the job crate from outside.

#![allow(missing_docs)]
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

mod bad_input;
mod bench;
mod detours;
mod golden;
mod laws;
mod layout_a;
mod layout_cde;
mod main_job;
mod tin;
mod undo;
mod unit;
mod views;
mod wire;
