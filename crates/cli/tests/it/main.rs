//! Checks of the command's lines and of the golden jobs, one module a subject.

// Tests may stop at the first thing that is not as it should be.
#![allow(
    missing_docs,
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing
)]

mod answers;
mod bad_input;
mod bench;
mod brute_force;
mod command;
mod files;
mod golden;
mod golden_jobs;
mod packs;
mod stream;
mod support;
