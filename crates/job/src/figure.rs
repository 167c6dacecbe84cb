//! How a number stands on the screen.

use measure::{Amount, Decimal, Mark, Unit, show};

use crate::{Check, Units};

/// What the person wants to see; nothing that is stored depends on it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Shown {
    /// Unit of each quantity.
    pub units: Units,
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
    /// A torque: 1.25 N·m, 11.1 lbf·in, 0.92 lbf·ft.
    Torque,
}

impl Check {
    /// How its readings and limits are shown.
    pub fn figure(self) -> Figure {
        if self == Check::Torque { Figure::Torque } else { Figure::Reading }
    }

    /// The unit they are shown in.
    pub fn shown_unit(self, shown: Shown) -> Unit {
        shown.units.of(self.unit())
    }
}

impl Figure {
    /// The unit that values come in.
    fn base(self) -> Unit {
        if self == Figure::Torque { Unit::NewtonMetre } else { Unit::Millimetre }
    }

    /// The value as it is shown, not rounded yet.
    pub(crate) fn converted(self, value: Decimal, shown: Shown) -> Decimal {
        let amount = Amount { value, unit: self.base() };
        amount.to(shown.units.of(self.base())).map_or(value, |amount| amount.value)
    }

    /// The value that is shown as `value`.
    pub(crate) fn meant(self, value: Decimal, shown: Shown) -> Decimal {
        let amount = Amount { value, unit: shown.units.of(self.base()) };
        amount.to(self.base()).map_or(value, |amount| amount.value)
    }

    /// As many places as show the last digit of the gauge, and no more: a hundredth of a millimetre
    /// is 0.0004 in, a hundredth of a newton metre 0.09 lbf·in or 0.007 lbf·ft.
    fn places(self, unit: Unit) -> u32 {
        match (self, unit) {
            (Figure::Reading | Figure::Shim, Unit::Inch) => 4,
            (Figure::Radius, Unit::Inch) | (Figure::Shim, _) => 3,
            (Figure::Radius, _) | (Figure::Torque, Unit::PoundForceInch) => 1,
            (Figure::Reading | Figure::Torque, _) => 2,
        }
    }
}

/// A length of `value` mm, or a torque in N·m, in the unit shown, without it: "0.38".
pub fn figure(value: Decimal, kind: Figure, shown: Shown) -> String {
    let places = kind.places(shown.units.of(kind.base()));
    show(kind.converted(value, shown), places, shown.mark)
}

/// The same with its unit: "0.38 mm".
pub(crate) fn with_unit(value: Decimal, kind: Figure, shown: Shown) -> String {
    format!("{} {}", figure(value, kind, shown), shown.units.of(kind.base()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_figure_stands_in_the_unit_chosen_with_the_places_that_fit() {
        // 1 in = 25.4 mm exactly; 1 lbf·in = 0.1129848 N·m, 1 lbf·ft = 1.355818 N·m (NIST SP 811,
        // appendix B.8, from memory; exact by definition in the tests of `measure`).
        let shows = |value: &str, kind, unit: Unit, expected: &str| {
            let shown = Shown { units: Units::default().with(unit), ..Shown::default() };
            let value: Decimal = value.parse().unwrap();
            assert_eq!(figure(value, kind, shown), expected);
            let back = kind.meant(kind.converted(value, shown), shown);
            assert_eq!(measure::round(back, 20), value, "there and back");
        };
        shows("0.381", Figure::Reading, Unit::Inch, "0.0150");
        shows("0.381", Figure::Reading, Unit::Millimetre, "0.38");
        shows("0.5", Figure::Shim, Unit::Inch, "0.0197");
        shows("30", Figure::Radius, Unit::Inch, "1.181");
        shows("1.25", Figure::Torque, Unit::NewtonMetre, "1.25");
        shows("1.25", Figure::Torque, Unit::PoundForceInch, "11.1");
        shows("1.25", Figure::Torque, Unit::PoundForceFoot, "0.92");
        // A unit that is no torque leaves torques alone.
        shows("1.25", Figure::Torque, Unit::Inch, "1.25");
    }
}
