//! How numbers are shown to this person, and how pictures take and write them.

pub use job::{drawn, gauged, writing};

use job::Shown;
use leptos::prelude::*;

use crate::device::now::{now, utc_offset_minutes};
use crate::parts::Keys;
use crate::prefs::use_prefs;

/// What this person wants to see; followed.
pub fn use_shown() -> Memo<Shown> {
    let (prefs, keys) = (use_prefs(), Keys::here());
    Memo::new(move |_| Shown {
        units: prefs.units(),
        mark: keys.mark.get(),
        utc_offset: utc_offset_minutes(now()),
    })
}
