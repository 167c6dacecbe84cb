//! What puts the drawings of the `pictures` crate on the screen.

pub mod gallery;
mod gallery_checks;
pub mod influence;
mod picture;

pub use ::pictures::{band, drawing, gauge, layouts, section, tin, trials};
pub use picture::{Picture, PictureDefs};
