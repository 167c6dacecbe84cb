//! A job: its book folded.

use std::collections::{BTreeMap, BTreeSet};

use measure::{Decimal, Typed, Unit};

use crate::guide::GuideLog;
use crate::{ArmShaft, Book, BookId, Check, Fact, FittedShim, PartMark, Slot};

/// A job as it stands.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Job {
    /// Id of its book.
    pub id: String,
    /// Boat or customer's name for it; empty while the job has not been opened.
    pub boat: String,
    /// The complaint, in the owner's words.
    pub complaint: String,
    /// Id of the unit sheet.
    pub sheet: String,
    /// Number on the bench.
    pub number: u32,
    /// When it was opened, milliseconds since 1970.
    pub opened_at: i64,
    /// When the last entry was written.
    pub last_at: i64,
    /// The pack found at each place.
    pub found: BTreeMap<Slot, PackFit>,
    /// The packs fitted, in order.
    pub fits: Vec<PackFit>,
    /// The readings that count, in order.
    pub readings: Vec<Reading>,
    /// Packs that must stay as they are.
    pub held: BTreeSet<Slot>,
    /// Changes of parts, in order.
    pub parts: Vec<PartsChange>,
    /// Words to find it by.
    pub tags: BTreeSet<String>,
    /// It is off the bench and the board.
    pub archived: bool,
    /// Photos that left a device, with the time of the backup that has them.
    pub freed: BTreeMap<String, i64>,
    /// Remarks, in order.
    pub notes: Vec<String>,
    /// Every entry that counts as a sentence, with its time.
    pub history: Vec<(i64, String)>,
    /// What was done of the guided job.
    pub guide: GuideLog,
    /// Entries this version does not understand.
    pub unread: usize,
}

/// A pack put in, or found.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PackFit {
    /// Where.
    pub slot: Slot,
    /// Its shims.
    pub shims: Vec<FittedShim>,
    /// When.
    pub at: i64,
    /// Its place in the order of the job's entries.
    pub(crate) order: usize,
}

/// New parts that a pack must make up for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PartsChange {
    /// The pack.
    pub slot: Slot,
    /// Marks and heights, old and new.
    pub marks: Vec<PartMark>,
    /// When.
    pub at: i64,
    /// Its place in the order of the job's entries.
    pub(crate) order: usize,
}

/// A series of readings.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Reading {
    /// Id of its entry.
    pub entry: String,
    /// Of what.
    pub check: Check,
    /// As typed, in the order of the stops.
    pub values: Vec<Typed>,
    /// The arm's radius as typed.
    pub arm: Option<Typed>,
    /// The shaft it was on.
    pub on: Option<ArmShaft>,
    /// When.
    pub at: i64,
    /// Its place in the order of the job's entries.
    pub(crate) order: usize,
}

impl Job {
    /// Folds a book. Total: what does not belong in a job is passed over.
    pub fn fold(book: &Book) -> Job {
        let mut job = Job { unread: book.unread(), ..Job::default() };
        if let BookId::Job(id) = book.id() {
            job.id.clone_from(id);
        }
        for (order, entry) in book.live().into_iter().enumerate() {
            job.last_at = entry.at;
            job.guide.take(entry, order);
            job.history.push((entry.at, entry.sentence()));
            match &entry.fact {
                Fact::JobOpened { boat, complaint, sheet, number } => {
                    job.boat.clone_from(boat);
                    job.complaint.clone_from(complaint);
                    job.sheet.clone_from(sheet);
                    job.number = *number;
                    job.opened_at = entry.at;
                }
                Fact::PackFitted { slot, shims, as_found } => {
                    let fit = PackFit { slot: *slot, shims: shims.clone(), at: entry.at, order };
                    if *as_found {
                        // Written down late or corrected, it was there from the start.
                        job.found.insert(*slot, fit);
                    } else {
                        job.fits.push(fit);
                    }
                }
                Fact::ReadingTaken { check, values, arm, on } => job.readings.push(Reading {
                    entry: entry.id.clone(),
                    check: *check,
                    values: values.clone(),
                    arm: arm.clone(),
                    on: *on,
                    at: entry.at,
                    order,
                }),
                Fact::PackHeld { slot, held: true } => drop(job.held.insert(*slot)),
                Fact::PackHeld { slot, held: false } => drop(job.held.remove(slot)),
                Fact::PartsChanged { slot, marks } => job.parts.push(PartsChange {
                    slot: *slot,
                    marks: marks.clone(),
                    at: entry.at,
                    order,
                }),
                Fact::JobTagged { tag, tagged: true } => drop(job.tags.insert(tag.clone())),
                Fact::JobTagged { tag, tagged: false } => drop(job.tags.remove(tag)),
                Fact::JobArchived { archived } => job.archived = *archived,
                Fact::PhotosFreed { photos, backup } => {
                    job.freed.extend(photos.iter().map(|photo| (photo.clone(), *backup)));
                }
                Fact::NoteWritten { text } => job.notes.push(text.clone()),
                _ => {}
            }
        }
        job
    }

    /// Whether the job has been opened.
    pub fn is_open(&self) -> bool {
        !self.boat.is_empty()
    }

    /// The pack that lies at a place now; `None` while it is not known.
    pub fn pack(&self, slot: Slot) -> Option<&PackFit> {
        self.pack_before(slot, usize::MAX)
    }

    /// The pack that lay at a place at a point of the order.
    pub(crate) fn pack_before(&self, slot: Slot, order: usize) -> Option<&PackFit> {
        self.fits
            .iter()
            .rev()
            .find(|fit| fit.slot == slot && fit.order < order)
            .or_else(|| self.found.get(&slot))
    }

    /// The last series of a check.
    pub fn last_reading(&self, check: Check) -> Option<&Reading> {
        self.readings.iter().rev().find(|reading| reading.check == check)
    }

    /// The last series of a check that was read before any pack was changed: as found.
    pub fn reading_as_found(&self, check: Check) -> Option<&Reading> {
        let first_fit = self.fits.first().map_or(usize::MAX, |fit| fit.order);
        self.readings.iter().rfind(|reading| reading.check == check && reading.order < first_fit)
    }
}

impl PackFit {
    /// Thickness of the pack, mm.
    pub fn total(&self) -> Decimal {
        self.shims.iter().map(FittedShim::net).sum()
    }

    /// Net thicknesses of its shims, mm, in the order they lie.
    pub fn nets(&self) -> Vec<Decimal> {
        self.shims.iter().map(FittedShim::net).collect()
    }
}

impl Reading {
    /// The readings, mm.
    pub fn millimetres(&self) -> Vec<Decimal> {
        self.values.iter().map(|value| value.in_unit(Unit::Millimetre)).collect()
    }
}
