//! Gear geometry, shim positions, and the set-up model: from readings to the shims to fit.
//!
//! This crate knows nothing of screens, files, clocks or how a number was typed. Lengths are
//! millimetres, angles degrees.

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
mod learn;
mod linear;
mod model;
mod problem;
mod reading_model;
mod refine;
mod search;
mod shared;
mod shelf;
mod solve;
mod stack;
mod status;
mod validate;

pub use advise::{advise, bands, evaluate, others, predict};
pub use case_error::{CaseError, Fault};
pub use influence::{Influence, Source, first_guess, influences};
pub use stack::{Side, nearest_pack, reachable_totals};
pub use validate::validate;
