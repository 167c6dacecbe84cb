//! How pictures take numbers and write them.

use measure::{Band, Decimal, real};

use crate::{Check, Figure, Judged, Shown, figure};

/// A number of a check as pictures take it: in the unit that is shown.
pub fn gauged(value: Decimal, check: Check, shown: Shown) -> f64 {
    real::from_decimal(check.figure().converted(value, shown))
}

/// A length of `millimetres` as pictures take it: in the unit that is shown.
pub fn drawn(millimetres: Decimal, shown: Shown) -> f64 {
    real::from_decimal(Figure::Reading.converted(millimetres, shown))
}

/// How a picture writes such a number.
pub fn writing(kind: Figure, shown: Shown) -> impl Fn(f64) -> String + Copy {
    move |value| {
        let value = real::to_decimal(value, 9).unwrap_or_default();
        figure(kind.meant(value, shown), kind, shown)
    }
}

/// The limits of a check as a picture, with the zone in which a mean is not proven.
pub fn limits(
    check: Check,
    band: Band,
    judged: Option<&Judged>,
    shown: Shown,
) -> pictures::band::Band {
    let draw = |value| gauged(value, check, shown);
    pictures::band::Band {
        low: draw(band.low()),
        high: draw(band.high()),
        near: judged.map_or(0.0, |judged| draw(judged.near)),
        ..pictures::band::Band::default()
    }
}
