//! Pictures: numbers go in, a [`drawing::Drawing`] with its spoken sentence comes out, and
//! [`Picture`] puts it on the screen. No picture judges a number; verdicts come from the core.

pub mod band;
pub mod drawing;
pub mod gallery;
pub mod gauge;
pub mod influence;
pub mod layouts;
mod picture;
pub mod scale;
pub mod section;
pub mod tin;
pub mod trials;

pub use picture::{Picture, PictureDefs};
