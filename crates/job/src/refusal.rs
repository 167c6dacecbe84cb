//! Why the log does not admit a fact.

use std::fmt;
use words::{say, t};

use crate::{BookId, Check, type_in};

/// Why a fact was not admitted; `Display` is the sentence to show.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Refusal {
    /// Facts of another kind of book.
    WrongBook {
        /// The book.
        book: BookId,
    },
    /// The book has not been opened.
    NotOpened,
    /// The book was opened before.
    OpenedBefore,
    /// Nothing was written where something must be.
    Nothing {
        /// What is missing: "the unit's name".
        what: &'static str,
    },
    /// A value that its field does not take.
    WrongValue {
        /// The field in words.
        field: &'static str,
    },
    /// A layout or position this version does not have.
    Unknown {
        /// As found.
        found: String,
    },
    /// A field or pack that gearcases of this layout do not have.
    NotOfLayout {
        /// The field or the pack in words.
        what: String,
    },
    /// A band from a preload to an end play.
    PlayAndPreload,
    /// Low, high and aim do not make a band.
    Band(measure::BandError),
    /// Too few or too many readings.
    Count {
        /// Of what.
        check: Check,
        /// Readings found.
        found: usize,
    },
    /// A backlash without its arm.
    NoArm {
        /// Of what.
        check: Check,
    },
    /// A shim that is not in the tin's book.
    NoSuchShim,
    /// A shim of that name is in the tin's book.
    ShimNameTaken,
    /// More shims than there are.
    TooFew {
        /// Net thickness as shown.
        shim: String,
        /// How many are in the tin.
        left: u32,
        /// How many were asked for.
        asked: u32,
    },
    /// A shim that is in a case, or in a job, cannot go.
    InUse,
    /// The entry is not here, or does not count any more, or opened the book.
    NotRetractable,
}

impl fmt::Display for Refusal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Refusal::WrongBook { book: BookId::Tin } => f.write_str(t(
                "This does not belong in the tin. Write it down in its job or sheet.",
            )),
            Refusal::WrongBook { book: BookId::Drawer } => f.write_str(t(
                "This does not belong in the tool drawer. Write it down in its job or sheet.",
            )),
            Refusal::WrongBook { book: BookId::Sheet(_) } => {
                f.write_str(t("This does not belong on a unit sheet. Write it down in its job."))
            }
            Refusal::WrongBook { book: BookId::Job(_) } => {
                f.write_str(t("This does not belong in a job. Write it down in the tin or sheet."))
            }
            Refusal::NotOpened => f.write_str(t("Not begun yet. Give it a name first.")),
            Refusal::OpenedBefore => f.write_str(t("Begun already. Open it from the bench.")),
            Refusal::Nothing { what } => {
                f.write_str(&say!("Nothing typed for {what}. Type it first."))
            }
            Refusal::WrongValue { field } => {
                f.write_str(&say!("That does not fit the {field}. Type it again."))
            }
            Refusal::Unknown { found } => {
                f.write_str(&say!("{found} is not known here. Choose from the sketches."))
            }
            Refusal::NotOfLayout { what } => f.write_str(&say!(
                "A gearcase built like this one has no {what}. Begin a sheet of the other layout."
            )),
            Refusal::PlayAndPreload => type_in::FieldRefusal::PlayAndPreload.fmt(f),
            Refusal::Band(band) => band.fmt(f),
            Refusal::Count { check, found } => {
                let wanted = check.stops().len();
                match check.stops().get(*found) {
                    Some(stop) => {
                        let stop = t(stop);
                        f.write_str(&say!("{found} of {wanted} read. Read {stop} too."))
                    }
                    None => {
                        f.write_str(&say!("{found} readings for {wanted} places. Keep {wanted}."))
                    }
                }
            }
            Refusal::NoArm { check } => {
                f.write_str(&say!("{} without an arm radius. Type the radius first.", check.name()))
            }
            Refusal::NoSuchShim => f.write_str(t("That shim is not in the tin. Put it in first.")),
            Refusal::ShimNameTaken => {
                f.write_str(t("That shim is in the tin already. Count it up instead."))
            }
            Refusal::TooFew { shim, left: 0, asked: _ } => {
                f.write_str(&say!("No {shim} left in the tin. Fit another, or count the tin."))
            }
            Refusal::TooFew { shim, left, asked } => f.write_str(&say!(
                "{asked} of {shim} asked for, {left} in the tin. Fit another, or count the tin."
            )),
            Refusal::InUse => f.write_str(t(
                "Some of these shims are in a case. Take them out of the case first.",
            )),
            Refusal::NotRetractable => {
                f.write_str(t("That entry cannot be taken back. Write a new one."))
            }
        }
    }
}

impl std::error::Error for Refusal {}
