//! The app on the screen.

pub mod app;
pub mod device;
pub mod draft;
pub mod parts;
pub mod pictures;
pub mod place;
pub mod prefs;
pub mod scratch;
pub mod screens;
pub mod storage;
