//! Virtual gearcases whose truth is hidden, and who sets them up.
//!
//! A [`Gearcase`] has a unit sheet, a tin and packs as found, all invented, and behind them a truth
//! that only its gauges show: slopes beside the formula, shims beside their measurement, scatter
//! from seating and reading. [`Gearcase::build`] builds it dry, with a [`Fault`] if one is wanted;
//! [`play`] sets it up by [`gearing::advise`] or one position at a time; [`run`] does so with many
//! and counts the dry builds, the alarms, and how often what was given nine chances in ten came
//! true.
//!
//! How the truth is drawn is written in `gearcase.rs`, what the mechanic does in `mechanic.rs`. It
//! is drawn from what is known of real gearcases, not from what the engine assumes, and never so
//! that a figure passes.
//!
//! ```
//! use gearing::layout::Layout;
//! use simulator::{Dice, Gearcase, Geometry, Policy, play};
//! let mut dice = Dice::new(1, 0);
//! let layout = Layout::find("b").unwrap();
//! let gearcase = Gearcase::draw(layout, Geometry::Known, &mut dice);
//! let first = gearcase.build(&gearcase.found, None, &mut dice);
//! let played = play(&gearcase, &first, Policy::Advice, &mut dice)?;
//! assert!(played.finished && played.builds <= 3);
//! # Ok::<(), gearing::CaseError>(())
//! ```
//!
//! Seeds come in as arguments: the same seed gives the same gearcase and the same readings.

mod dice;
mod fault;
mod gearcase;
mod mechanic;
mod play;
mod report;
mod sheet;
mod trip;
mod unit;

pub use dice::Dice;
pub use fault::Fault;
pub use gearcase::Gearcase;
pub use play::{Correction, MOST_BUILDS, Played, Policy, play};
pub use report::{Alarms, Builds, Calibration, Faults, Report, Run, Tenth, run};
pub use sheet::Geometry;
pub use trip::{FaultKind, Met, Staged, stage, trip};
