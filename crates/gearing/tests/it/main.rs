//! Checks of the engine against numbers from outside it, one module a subject.

// Tests may stop at the first thing that is not as it should be.
#![allow(
    missing_docs,
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing
)]

mod alarms;
mod bevel;
mod cases;
mod engine;
mod every_pack;
mod hostile;
mod layouts;
mod stacks;
