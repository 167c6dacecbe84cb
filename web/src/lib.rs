//! The app on the screen.

pub mod address;
pub mod app;
pub mod bench;
pub mod code;
pub mod device;
mod door;
pub mod draft;
pub mod guide;
pub mod help;
pub mod instruments;
mod language;
pub mod lock;
mod page;
pub mod paper;
pub mod parts;
pub mod pictures;
pub mod place;
pub mod practice;
pub mod prefs;
pub mod scratch;
mod screen;
pub mod screens;
pub mod shown;
pub mod start;
pub mod storage;
