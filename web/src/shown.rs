//! How numbers are shown to this person, and how pictures take and write them.

use job::{Check, Figure, Shown, figure};
use leptos::prelude::*;
use measure::{Amount, Decimal, Unit, real};

use crate::device::now::{now, utc_offset_minutes};
use crate::parts::Keys;
use crate::prefs::use_prefs;

/// What this person wants to see; followed.
pub fn use_shown() -> Memo<Shown> {
    let (prefs, keys) = (use_prefs(), Keys::here());
    Memo::new(move |_| Shown {
        unit: prefs.unit(),
        mark: keys.mark.get(),
        utc_offset: utc_offset_minutes(now()),
    })
}

/// A number of a check as pictures take it: a length in the unit that is shown, a torque as it is.
pub fn gauged(value: Decimal, check: Check, shown: Shown) -> f64 {
    match check.figure() {
        Figure::Torque => real::from_decimal(value),
        _ => drawn(value, shown),
    }
}

/// A length of `millimetres` as pictures take it: in the unit that is shown.
pub fn drawn(millimetres: Decimal, shown: Shown) -> f64 {
    let amount = Amount { value: millimetres, unit: Unit::Millimetre };
    real::from_decimal(amount.to(shown.unit).map_or(millimetres, |amount| amount.value))
}

/// How a picture writes such a length.
pub fn writing(kind: Figure, shown: Shown) -> impl Fn(f64) -> String + Copy {
    move |value| {
        let value = real::to_decimal(value, 9).unwrap_or_default();
        if kind == Figure::Torque {
            return figure(value, kind, shown);
        }
        let length = Amount { value, unit: shown.unit }.to(Unit::Millimetre);
        figure(length.map_or(value, |length| length.value), kind, shown)
    }
}
