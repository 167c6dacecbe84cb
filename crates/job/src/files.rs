//! Files that outlive the app: backups, what comes in from one, readings for a spreadsheet, and
//! a unit sheet small enough to be shown as a code.
//!
//! The form of a backup is described in WIRE.md, "A backup". Nothing here reads or writes a file:
//! bytes come in as they are read, lines go out as they are made.

mod backup;
mod beside;
mod card;
mod changes;
mod incoming;
mod picture;
mod readings;
mod refused;
mod since;
mod table;

pub use backup::{Backup, Head, MOST_BYTES, parts};
pub use beside::{Beside, Stands};
pub use card::{Card, CardRefused};
pub use changes::{BookChange, Changes, Coming};
pub use incoming::{Incoming, Parcel, Whole};
pub use picture::{Picture, photos_named};
pub use readings::{csv, text};
pub use refused::Refused;
pub use since::{SinceBackup, since_backup};
pub(crate) use table::{Cell, csv_line, plain};
