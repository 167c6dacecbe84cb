//! How a number stands on the screen.

use measure::{Amount, Decimal, Mark, Unit, show};

use crate::Check;

/// What the person wants to see; nothing that is stored depends on it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Shown {
    /// Unit of lengths: mm or in.
    pub unit: Unit,
    /// Decimal mark.
    pub mark: Mark,
    /// Minutes that local time is ahead of UTC.
    pub utc_offset: i32,
}

/// Kinds of figure, by how many places they are shown with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Figure {
    /// A reading, limit or prediction: 0.38 mm, 0.0150 in.
    Reading,
    /// A shim or a pack: 0.498 mm, 0.0196 in.
    Shim,
    /// A radius: 30.0 mm, 1.181 in.
    Radius,
    /// A torque in N·m, shown so: 1.25.
    Torque,
}

impl Default for Shown {
    fn default() -> Self {
        Shown { unit: Unit::Millimetre, mark: Mark::Point, utc_offset: 0 }
    }
}

impl Check {
    /// How its readings and limits are shown.
    pub fn figure(self) -> Figure {
        if self == Check::Torque { Figure::Torque } else { Figure::Reading }
    }

    /// The unit they are shown in.
    pub fn shown_unit(self, shown: Shown) -> Unit {
        if self == Check::Torque { self.unit() } else { shown.unit }
    }
}

/// A length of `millimetres`, or a torque in N·m, without its unit: "0.38".
pub fn figure(millimetres: Decimal, kind: Figure, shown: Shown) -> String {
    if kind == Figure::Torque {
        return show(millimetres, 2, shown.mark);
    }
    let amount = Amount { value: millimetres, unit: Unit::Millimetre };
    let value = amount.to(shown.unit).map_or(millimetres, |amount| amount.value);
    let places = match (kind, shown.unit) {
        (Figure::Reading, Unit::Inch) | (Figure::Shim, Unit::Inch) => 4,
        (Figure::Radius, Unit::Inch) | (Figure::Shim, _) => 3,
        (Figure::Reading | Figure::Torque, _) => 2,
        (Figure::Radius, _) => 1,
    };
    show(value, places, shown.mark)
}

/// The same with its unit: "0.38 mm".
pub(crate) fn with_unit(millimetres: Decimal, kind: Figure, shown: Shown) -> String {
    format!("{} {}", figure(millimetres, kind, shown), shown.unit)
}
