//! The guided job: what is open, what is missing, what waits, worked out from a plan and a log.
//!
//! Everything here is derived and never stored. Time comes in as a [`Moment`]. A screen takes the
//! log from [`filled`], what the set-up says from [`told()`], asks [`Course::of`] once and reads the rest from it; facts to record come from [`Course::finish`],
//! [`Course::skip`], [`capture`], [`bag`] and are ordinary values.

mod beside;
mod clocks;
mod consent;
mod consent_told;
mod counts;
mod course;
mod facing;
mod finish;
mod freeze;
mod gate;
mod inspection;
mod ladder;
mod lane;
mod log;
mod map;
mod pack_list;
mod packs;
mod set_up;
mod stages;
mod titled;
mod typing;
mod van;
mod wake;

pub use beside::{Beside, beside};
pub use clocks::{ClockView, clock_warning, clocks, usual_minutes};
pub use consent::{Asked, Consent, ConsentRefusal, EXCLUDED, Refused, STOPS, asked, takes_consent};
pub use counts::{CountState, CountView, counts};
pub use course::{Course, Moment, StepState, StepView, Told};
pub use facing::{NOT_SURE, Way, faced, facing, turned};
pub use finish::GuideRefusal;
pub(crate) use freeze::signed_words;
pub use freeze::{Freeze, FreezePack, FreezeRefusal, freeze};
pub use gate::GateView;
pub use inspection::{Criteria, Effect, PartView, effects, inspection, suggest};
pub use ladder::{Ladder, Rung, RungState, bag, ladder, placed, put_right};
pub use lane::{Lane, Stands, lane};
pub use log::{BenchCheck, CheckKey, Clock, GuideLog, Judged, Kept, Mark, StepLog};
pub use map::{Map, MapNode, map};
pub use pack_list::{Item, PackList, pack_list};
pub use set_up::{check_of, filled, for_set_up, told};
pub use stages::{StageView, guide_stages};
pub use titled::titled;
pub use typing::{CaptureRefusal, Doubtful, capture, pack_shims};
pub use van::{Van, VanGroup, van};
pub use wake::{Wake, wake};
