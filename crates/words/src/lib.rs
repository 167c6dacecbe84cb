//! The words of the app, in the language that was chosen.
//!
//! English stands where it is used and is its own key: [`t`] turns a whole text, [`say!`] one with
//! places in it. What the device has learnt ([`learn`]) is a catalogue in the PO form of gettext;
//! without one, or for a text it has not, English comes back. The language is chosen once, before
//! anything is shown; a change starts the app again.
//!
//! What is written down is never turned: books hold the English word of a choice, and it is turned
//! where it is shown, so a job reads in every language and joins with what comes from another.

mod catalogue;
mod fill;
mod po;

pub use catalogue::{language, learn, t};
pub use fill::fill;
pub use po::{Entry, Torn, read};
pub use words_macro::say;

/// Marks a text that is kept in a table and turned with [`t`] where it is shown: it stays as it
/// is, and the catalogue has it.
#[macro_export]
macro_rules! key {
    ($text:literal) => {
        $text
    };
}
