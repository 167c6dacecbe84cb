//! Gear geometry, shim positions, and the set-up model: from readings to the shims to fit.
//!
//! A [`case::Case`] holds everything that is known: gears, arm, positions, checks with their bands,
//! the tin, and the dry builds so far. Of a case one can ask
//!
//! | question | answer |
//! |---|---|
//! | which packs next? | [`advise`], and [`others`] for packs that open less or are surer |
//! | what will the gauges read with these packs? | [`predict`], [`evaluate`] |
//! | what is the band at my arm? | [`bands`]; between tooth, arm and angle: [`backlash`] |
//! | what does a pack do to a reading, and how is that known? | [`influences`] |
//! | what can the tin make for one place? | [`reachable_totals`], [`nearest_pack`] |
//! | how thick to begin with after new parts? | [`first_guess`] |
//! | where can packs lie in this kind of gearcase? | [`layout::LAYOUTS`] |
//!
//! The model is written down, with jobs calculated apart from this code, in `tests/golden/`: model
//! R1. Lengths are millimetres, angles degrees. This crate knows nothing of screens, files, clocks
//! or how a number was typed.

pub mod advice;
mod advise;
pub mod backlash;
pub mod bevel;
mod buy;
pub mod case;
mod case_error;
mod causes;
mod choose;
mod conflict;
mod effect;
mod effort;
mod forest;
mod frontier;
mod influence;
pub mod layout;
mod leaf;
mod learn;
mod linear;
mod model;
mod problem;
mod reading_model;
mod refine;
pub mod rolling;
mod search;
mod shared;
mod shelf;
mod solve;
mod stack;
mod status;
mod together;
mod validate;
mod windows;

pub use advise::{advise, bands, evaluate, others, predict};
pub use case_error::{CaseError, Fault};
pub use influence::{Influence, Source, first_guess, influences};
pub use stack::{Side, nearest_pack, reachable_totals};
pub use validate::validate;
