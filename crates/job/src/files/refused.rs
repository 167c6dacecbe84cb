//! Why a file is not taken in, in a sentence.

use std::fmt;
use words::{say, t};

/// Why a file is not taken in. Nothing of it was kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Refused {
    /// It holds no line at all.
    Empty,
    /// Its first line is neither a backup's nor an entry.
    NotOurs {
        /// How it begins.
        found: String,
    },
    /// It was written in a later format.
    Newer {
        /// Which.
        format: i64,
    },
    /// It has more bytes than a file of this app ever has.
    TooLarge,
    /// A line has more bytes than a line of this app ever has.
    LongLine {
        /// Which, from 1.
        line: usize,
    },
    /// A line is nested deeper than any of this app.
    Deep {
        /// Which, from 1.
        line: usize,
    },
    /// A line is no text.
    NotText {
        /// Which, from 1.
        line: usize,
    },
    /// An entry claims a place in the order that no bench comes to.
    Counter {
        /// Which line, from 1.
        line: usize,
        /// The place.
        found: u64,
    },
}

impl fmt::Display for Refused {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Refused::Empty => {
                f.write_str(t("The file is empty. Choose a backup of this app, or make it again."))
            }
            Refused::NotOurs { found } => f.write_str(&say!(
                "The file begins with “{found}”, and a backup of this app does not. \
                 Choose a file whose name begins with shimwright."
            )),
            Refused::Newer { format } => f.write_str(&say!(
                "The file is of format {format}, and this version reads format 1. \
                 Update the app, then bring it in again."
            )),
            Refused::TooLarge => f
                .write_str(t("The file is over 192 MB, and this app writes none so large. \
                 Choose a backup of this app.")),
            Refused::LongLine { line } => f.write_str(&say!(
                "Line {line} is longer than any this app writes. \
                 The file is damaged or of another program: choose another copy."
            )),
            Refused::Deep { line } => f.write_str(&say!(
                "Line {line} is nested deeper than any this app writes. \
                 The file is of another program: choose a backup of this app."
            )),
            Refused::NotText { line } => f.write_str(&say!(
                "Line {line} is no UTF-8 text. \
                 The file is damaged or of another program: choose another copy."
            )),
            Refused::Counter { line, found } => f.write_str(&say!(
                "Line {line} claims place {found} in its book, and no bench comes to 1000000000. \
                 The file was changed by hand or by another program: choose another copy."
            )),
        }
    }
}

impl std::error::Error for Refused {}
