//! One file, or folder, for each screen.

mod archive;
mod bench;
mod bring_in;
mod entries;
mod find;
mod first;
pub(crate) mod frame;
mod influence;
mod new_job;
mod pin;
mod reading;
mod send;
mod settings;
mod setup;
mod sheet;
pub(crate) mod shop;
mod shut;
mod states;
mod tin;
pub(crate) mod told;

pub use bench::{Asked, BenchScreen, Practice};
pub use first::{FirstScreen, PracticeDoor};
pub use influence::InfluenceScreen;
pub use new_job::NewJobScreen;
pub use reading::ReadingScreen;
pub use setup::SetupScreen;
pub use sheet::SheetScreen;
pub use shut::ShutScreen;
pub use states::states;
pub use tin::TinScreen;

use leptos::prelude::*;

use crate::address::Screen;

/// Settings, and the screens of files.
pub fn keep(screen: Screen) -> AnyView {
    match screen {
        Screen::Find => find::FindScreen().into_any(),
        Screen::Archive { job } => archive::screen(&job),
        Screen::BringIn => bring_in::BringInScreen().into_any(),
        Screen::SendJob { job } => send::job(&job),
        Screen::SendSheet { sheet } => send::sheet(&sheet),
        Screen::Locked { job } => pin::locked(job),
        _ => settings::SettingsScreen().into_any(),
    }
}
