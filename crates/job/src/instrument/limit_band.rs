//! The figure of an answer against the limits typed, as a small band.

use measure::{Amount, Unit, real, show};
use pictures::band::Band;
use pictures::drawing::Drawing;
use workshop::{Figure, Limits};

use super::shown::Writing;

/// More places than this no limit is written with.
const MOST_PLACES: u32 = 6;

/// The band of a figure, in the unit its high limit was typed in; from nothing where there is no low
/// limit. `None` without a high one: there is no band to draw.
pub(super) fn limit_band(
    name: &str,
    figure: &Figure,
    limits: &Limits,
    writing: &Writing,
) -> Option<Drawing> {
    let high = limits.high?;
    let unit = high.unit;
    let own = |amount: Amount| Some(real::from_decimal(amount.to(unit)?.value));
    let value = Amount { value: figure.value, unit: Unit::parse(figure.unit)? };
    let (low, top, value) = (limits.low.map_or(Some(0.0), own)?, own(high)?, own(value)?);
    if low >= top {
        return None;
    }
    let scale = |amount: Option<Amount>| amount.map_or(0, |it| it.value.normalize().scale());
    let places = scale(Some(high)).max(scale(limits.low)).min(MOST_PLACES);
    let band = Band {
        name: format!("{name}, {unit}"),
        low,
        high: top,
        mean: Some(value),
        ..Band::default()
    };
    let write = |value, places| {
        real::to_decimal(value, places).map(|it| show(it, places, writing.mark)).unwrap_or_default()
    };
    Some(band.small(|value| write(value, places)))
}
