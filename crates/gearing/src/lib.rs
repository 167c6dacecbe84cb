//! Gear geometry, shim positions, and the set-up model: from readings to the shims to fit.
//!
//! This crate knows nothing of screens, files, clocks or how a number was typed. Lengths are
//! millimetres, angles degrees.

pub mod advice;
pub mod backlash;
pub mod bevel;
pub mod case;
pub mod layout;
