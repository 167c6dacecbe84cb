//! The app on the screen.

pub mod app;
pub mod parts;
pub mod pictures;
pub mod screens;
pub mod storage;
