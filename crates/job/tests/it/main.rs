//! Tests of the job crate from outside.

#![allow(missing_docs)]
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

mod any_layout;
mod bad_input;
mod bench;
mod detours;
mod files;
mod find;
mod golden;
mod guided;
mod guided_bags;
mod guided_bench_checks;
mod guided_consent;
mod guided_job;
mod guided_parts;
mod guided_refusals;
mod guided_set_up;
mod html;
mod instruments;
mod instruments_any;
mod instruments_fit;
mod instruments_refusals;
mod instruments_runout;
mod instruments_seals;
mod instruments_settings;
mod instruments_torque;
mod laws;
mod layout_a;
mod layout_cde;
mod leak_stages;
mod main_job;
mod owner;
mod procedure_rules;
mod procedure_trade;
mod procedures;
mod record;
mod record_units;
mod report;
mod summary;
mod tin;
mod undo;
mod unit;
mod views;
mod wire;
