//! The guided job on the screen: steps, captures, gates, clocks, and what belongs to them.
//!
//! All of it is a piece of code of its own: nothing here may be named by the rest of the app but
//! [`screen()`], through the split function of `main.rs`, and by the record, a piece of its own,
//! [`Guide`].

mod acting;
mod board;
mod checkpoint;
mod consent;
mod count_state;
mod criteria;
mod ended;
mod frame;
mod freeze;
mod inspect;
mod ladder;
mod load;
mod map;
mod open;
mod overview;
mod own;
mod rows;
mod step;
mod tools;

use leptos::prelude::*;

use crate::address::Screen;
pub use crate::screens::frame::Here;
pub use frame::GuideScreen;
pub use open::{Guide, Lacks};

/// Any screen of the guided job.
pub fn screen(screen: Screen) -> AnyView {
    match screen {
        Screen::Job { job } => overview::screen(Guide::of(&job)),
        Screen::Step { job, step } => step::screen(Guide::of(&job), step),
        Screen::OwnSteps { job } => own::screen(Guide::of(&job)),
        Screen::OpenMap { job } => map::screen(Guide::of(&job)),
        Screen::Ladder { job } => ladder::screen(Guide::of(&job)),
        Screen::Inspect { job } => inspect::screen(Guide::of(&job)),
        Screen::Consent { job } => consent::screen(Guide::of(&job)),
        Screen::Tools { job: Some(job) } => tools::van_screen(Guide::of(&job)),
        Screen::Tools { job: None } => tools::drawer_screen(),
        Screen::Freeze { job } => freeze::screen(Guide::of(&job)),
        Screen::Board => board::screen(),
        Screen::Card { job } => board::card(Guide::of(&job)),
        Screen::Next { job } => board::next(Guide::of(&job)),
        Screen::Waits { job } => ended::elsewhere(Guide::of(&job)),
        _ => ().into_any(),
    }
}
