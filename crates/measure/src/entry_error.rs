//! Why an entry was refused, in the words shown at the field.

use std::fmt;
use words::{say, t};

use crate::grammar::MOST_DIGITS;
use crate::{Quantity, Sign, Unit};

/// Why an entry was refused; `Display` is the sentence shown at the field.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum EntryError {
    /// Nothing was typed.
    Empty,
    /// A sign or a mark, and no digit.
    NoDigits {
        /// What was typed.
        found: String,
    },
    /// It starts with something else than a number.
    NotANumber {
        /// What was typed.
        found: String,
    },
    /// More than one decimal mark.
    Marks {
        /// What was typed.
        found: String,
        /// How many marks are in it, points and commas together.
        marks: usize,
    },
    /// More digits than are kept.
    TooManyDigits {
        /// What was typed.
        found: String,
        /// How many digits are in it.
        digits: usize,
    },
    /// Two signs in a row.
    TwoSigns {
        /// What was typed.
        found: String,
    },
    /// A sign, or a zero, that this field has no use for.
    Sign {
        /// What was typed.
        found: String,
        /// What the field takes.
        wanted: Sign,
    },
    /// A power of ten, as calculators write it.
    Exponent {
        /// What was typed.
        found: String,
    },
    /// A blank or another character between digits.
    Separator {
        /// What was typed.
        found: String,
    },
    /// A fraction such as 1/32.
    Fraction {
        /// What was typed.
        found: String,
        /// What to type in its place, where the decimal has an end within reason.
        instead: Option<String>,
    },
    /// Two numbers in one field.
    TwoNumbers {
        /// What was typed.
        found: String,
    },
    /// Letters after the number that name no unit known here.
    UnknownUnit {
        /// What stands where the unit should be.
        found: String,
        /// What the field takes.
        takes: Quantity,
    },
    /// A unit of another quantity.
    OtherQuantity {
        /// The unit as typed.
        found: String,
        /// What that unit measures.
        measures: Quantity,
        /// What the field takes.
        takes: Quantity,
    },
    /// A fluid ounce that may be the US or the imperial one.
    WhichOunce {
        /// The unit as typed.
        found: String,
    },
}

impl fmt::Display for EntryError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Empty => f.write_str(t("Nothing typed. Type a number.")),
            Self::NoDigits { found } => {
                f.write_str(&say!("Only {found} typed. Type digits too, like 0.38."))
            }
            Self::NotANumber { found } => f.write_str(&say!(
                "{found} does not start with a number. Type digits first, like 0.38."
            )),
            Self::Marks { found, marks: 2 } => {
                f.write_str(&say!("Two decimal marks in {found}. Type one."))
            }
            Self::Marks { found, marks } => {
                f.write_str(&say!("{marks} decimal marks in {found}. Type one."))
            }
            Self::TooManyDigits { found, digits } => {
                f.write_str(&say!("{found} has {digits} digits. Type {MOST_DIGITS} at most."))
            }
            Self::TwoSigns { found } => f.write_str(&say!("Two signs in {found}. Type one.")),
            Self::Sign { found, wanted: Sign::Positive } => {
                f.write_str(&say!("{found} is not above zero. This field takes more than zero."))
            }
            Self::Sign { found, .. } => {
                f.write_str(&say!("Minus in {found}. This field takes zero or more."))
            }
            Self::Exponent { found } => {
                f.write_str(&say!("Power of ten in {found}. Type all the digits, like 0.001."))
            }
            Self::Separator { found } => {
                f.write_str(&say!("Gap between the digits of {found}. Type them without it."))
            }
            Self::Fraction { found, instead: Some(instead) } => {
                f.write_str(&say!("{found} is a fraction. Type {instead} instead."))
            }
            Self::Fraction { found, instead: None } => {
                f.write_str(&say!("{found} is a fraction. Type it as a decimal, like 0.38."))
            }
            Self::TwoNumbers { found } => f.write_str(&say!("Two numbers in {found}. Type one.")),
            Self::UnknownUnit { found, takes } => f.write_str(&say!(
                "{found} is not a unit of {}. Type {}.",
                bare(*takes),
                choices(*takes)
            )),
            Self::OtherQuantity { found, measures, takes } => f.write_str(&say!(
                "{found} is {measures}. This field takes {takes}: {}.",
                choices(*takes)
            )),
            Self::WhichOunce { found } => {
                f.write_str(&say!("{found} may be US or imperial. Type US fl oz or imp fl oz."))
            }
        }
    }
}

impl std::error::Error for EntryError {}

/// The quantity without its article.
fn bare(quantity: Quantity) -> String {
    let text = quantity.to_string();
    text.split_once(' ').map_or(text.clone(), |(_, bare)| bare.to_owned())
}

/// The units a field may be answered in: "mm or in".
fn choices(quantity: Quantity) -> String {
    let symbols: Vec<_> = Unit::all_of(quantity).map(Unit::symbol).collect();
    match symbols.split_last() {
        Some((last, [])) => (*last).to_owned(),
        Some((last, others)) => say!("{before} or {last}", before = others.join(", ")),
        None => String::new(),
    }
}

/// Enough of what was typed to know it again.
pub(crate) fn shorten(text: &str) -> String {
    const MOST: usize = 24;
    match text.char_indices().nth(MOST) {
        Some((end, _)) => format!("{}…", text.get(..end).unwrap_or(text)),
        None => text.to_owned(),
    }
}
