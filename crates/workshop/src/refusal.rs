//! Why an instrument gives no answer: what was found, what was expected, what to do.

use std::fmt;

use measure::{Amount, BandError, Decimal, Quantity, Unit};
use words::{say, t};

/// Why there is no answer; `Display` is the sentence to show, and turns the names in it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Refusal {
    /// A unit of another quantity.
    Quantity {
        /// Which input.
        what: &'static str,
        /// Its unit.
        found: Unit,
        /// What it measures.
        takes: Quantity,
    },
    /// An uncertainty that is negative or no number.
    Doubt {
        /// Which input.
        what: &'static str,
    },
    /// Zero or less where only more makes sense.
    NotAboveZero {
        /// Which input.
        what: &'static str,
        /// As found.
        found: Amount,
    },
    /// Less than zero.
    BelowZero {
        /// Which input.
        what: &'static str,
        /// As found.
        found: Amount,
    },
    /// Colder than anything can be.
    BelowAbsoluteZero {
        /// Which input.
        what: &'static str,
        /// As found.
        found: Amount,
    },
    /// More pressure or vacuum than the unit's own limit.
    OverPressure {
        /// As found.
        found: Amount,
        /// From the unit sheet.
        limit: Amount,
    },
    /// A plain number outside what is possible.
    Range {
        /// Which input.
        what: &'static str,
        /// As found.
        found: Decimal,
        /// Least possible.
        least: Decimal,
        /// Most possible.
        most: Decimal,
        /// Its unit's symbol.
        unit: &'static str,
    },
    /// Too few or too many.
    Count {
        /// What is counted.
        what: &'static str,
        /// How many there are.
        found: usize,
        /// Fewest possible.
        least: usize,
        /// Most possible.
        most: usize,
    },
    /// Two readings at one angle.
    SameAngle {
        /// The angle, degrees from 0 up to 360.
        angle: Decimal,
    },
    /// Readings on one side of the turn only.
    Gap {
        /// Largest angle without a reading, degrees.
        found: Decimal,
    },
    /// One size that must be above another, and is not.
    NotMore {
        /// The size that should be larger.
        what: &'static str,
        /// As found.
        found: Decimal,
        /// The size that should be smaller.
        than: &'static str,
        /// As found.
        least: Decimal,
        /// Unit of both.
        unit: &'static str,
        /// What to do.
        act: &'static str,
    },
    /// An adapter turned back so far that no lever is left.
    NoLever {
        /// L + E·cos a, mm.
        found: Decimal,
    },
    /// Limits that make no band.
    Limits {
        /// Of what.
        what: &'static str,
        /// Why.
        why: BandError,
    },
    /// A result too large to write down.
    TooLarge {
        /// Which input or result.
        what: &'static str,
    },
}

impl fmt::Display for Refusal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Refusal::Quantity { what, found, takes } => f.write_str(&say!("{}: found {found}, expected {takes}; choose a unit of that.",
                Capital(t(what))
            )),
            Refusal::Doubt { what } => f.write_str(&say!("{}: found an uncertainty that is negative or no number, expected 0 or more; type it again.",
                Capital(t(what))
            )),
            Refusal::NotAboveZero { what, found } => f.write_str(&say!("{}: found {}, expected more than zero; measure it again.",
                Capital(t(what)),
                plain(*found)
            )),
            Refusal::BelowZero { what, found } => f.write_str(&say!("{}: found {}, expected zero or more; read it again.",
                Capital(t(what)),
                plain(*found)
            )),
            Refusal::BelowAbsoluteZero { what, found } => f.write_str(&say!("{}: found {}, expected no less than absolute zero, -273.15 °C; check sign and unit.",
                Capital(t(what)),
                plain(*found)
            )),
            Refusal::OverPressure { found, limit } => f.write_str(&say!("Pressure: found {}, expected {} at most; stand clear of plugs and let it down now.",
                plain(*found),
                plain(*limit)
            )),
            Refusal::Range { what, found, least, most, unit } => {
                let gap = if unit.is_empty() { "" } else { " " };
                f.write_str(&say!("{}: found {}{gap}{unit}, expected {} to {}{gap}{unit}; read it again.",
                    Capital(t(what)),
                    found.normalize(),
                    least.normalize(),
                    most.normalize()
                ))
            }
            Refusal::Count { what, found, least, most } if least == most => {
                f.write_str(&say!("{}: found {found}, expected {least}; read that many.", Capital(t(what))))
            }
            Refusal::Count { what, found, least, most } => f.write_str(&say!("{}: found {found}, expected {least} to {most}; read that many.",
                Capital(t(what))
            )),
            Refusal::SameAngle { angle } => f.write_str(&say!("Angles: found {} ° twice, expected each angle once; take one of them out.",
                angle.normalize()
            )),
            Refusal::Gap { found } => f.write_str(&say!("Angles: found {} ° without a reading, expected 180 ° at most; read all round the turn.",
                found.normalize()
            )),
            Refusal::NotMore { what, found, than, least, unit, act } => f.write_str(&say!("{}: found {} {unit}, expected more than the {than}, {} {unit}; {act}.",
                Capital(t(what)),
                found.normalize(),
                least.normalize(),
                than = t(than),
                act = t(act)
            )),
            Refusal::NoLever { found } => f.write_str(&say!("Lever: found L + E·cos a = {} mm, expected more than zero; turn the head forward or take a longer wrench.",
                measure::round(*found, 3).normalize()
            )),
            Refusal::Limits { what, why } => {
                // The band says found, expected and what to do itself.
                write!(f, "{}: {why}", Capital(t(what)))
            }
            Refusal::TooLarge { what } => f.write_str(&say!("{}: found a number too large to hold, expected one a gauge can show; look for a slip of unit or zeros.",
                Capital(t(what))
            )),
        }
    }
}

impl std::error::Error for Refusal {}

/// Digits without useless zeros, and the unit.
fn plain(amount: Amount) -> String {
    format!("{} {}", amount.value.normalize(), amount.unit)
}

/// A name with its first letter as a capital.
struct Capital<'a>(&'a str);

impl fmt::Display for Capital<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let mut letters = self.0.chars();
        if let Some(first) = letters.next() {
            write!(f, "{}", first.to_uppercase())?;
        }
        f.write_str(letters.as_str())
    }
}
