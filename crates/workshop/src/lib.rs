//! The bench calculations beside shimming: the measurements that decide whether a unit comes back.
//!
//! Each instrument is a module with one input struct, one function to an answer, and the answer's
//! uncertainty, verdict, cautions and explanation as plain data:
//!
//! | module | question |
//! |---|---|
//! | [`leak`] | does the case hold pressure and vacuum, and how much gets out? |
//! | [`runout`] | how far off centre, where is the high spot, bent or cocked or out of round? |
//! | [`drag`], [`setting`] | rolling torque and end play of the bearings, and the pack that sets them |
//! | [`torque`] | what to set on the wrench |
//! | [`fit`], [`press`] | how hot, how cold, how hard to press, and what holds when warm |
//! | [`seal`], [`oring`], [`as568`] | do lip seals and rings sit as they should? |
//! | [`lube`], [`pattern`] | what do the oil and the tooth print say? |
//! | [`locker`], [`corrosion`], [`land`] | small things that are recorded |
//!
//! An input is a [`Reading`]: an amount and its standard uncertainty. A result is a [`Figure`].
//! Limits come from the unit's own manual as [`Limits`]; there are none built in. Figures of common
//! practice are named as such and never turn into a verdict.
//!
//! Names of inputs, formulae and units are English keys and are turned where they are shown:
//! [`Refusal`] and [`Caution`] turn what they say themselves.
//!
//! This crate knows nothing of screens, files, clocks or how a number was typed.

pub mod as568;
mod caution;
pub mod corrosion;
pub mod drag;
pub mod fit;
mod formula;
pub mod land;
pub mod leak;
mod limits;
pub mod locker;
pub mod lube;
pub mod oring;
pub mod pattern;
pub mod press;
mod reading;
mod refusal;
pub mod runout;
pub mod seal;
pub mod setting;
pub mod torque;

pub use caution::{Caution, MANUAL_FIRST};
pub use formula::{Basis, Explanation, Figure, Given};
pub use limits::Limits;
pub use reading::Reading;
pub use refusal::Refusal;
