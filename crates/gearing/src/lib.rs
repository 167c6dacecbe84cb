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
pub mod layout;
mod learn;
mod linear;
mod model;
mod problem;
mod reading_model;
mod refine;
mod search;
mod shelf;
mod solve;
mod status;
mod validate;

pub use advise::{advise, bands, evaluate, predict};
pub use case_error::{CaseError, Fault};
pub use validate::validate;
