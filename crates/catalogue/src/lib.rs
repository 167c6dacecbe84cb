//! The catalogues of other languages, made from the sources: every text that the app shows, once,
//! with the place it was first found in.
//!
//! `cargo xtask words` writes them anew and says what has no translation yet; a test holds that
//! nothing is missing, that no translation lost a place, and that every literal that looks like
//! words is either in the catalogue or said to be none (`not-words.txt`).

mod gather;
mod literal;
mod page;
mod po;
mod sound;
mod source;
mod steps;

pub use gather::{Gathered, Key, Part, Unread, gather};
pub use po::{Catalogue, known, write};
pub use sound::lacks;

/// The languages besides English, as their files are named.
pub const LANGUAGES: [&str; 1] = ["es"];
