//! A value in a unit, converted exactly where the factor is exact.

use crate::{Decimal, Unit};

/// A value and its unit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Amount {
    /// The number.
    pub value: Decimal,
    /// What it counts.
    pub unit: Unit,
}

/// How a unit is made of its quantity's base unit: base = (value + offset) · numerator / denominator.
struct Scale {
    offset: Decimal,
    numerator: Decimal,
    denominator: Decimal,
}

impl Amount {
    /// The same amount in another unit of the same quantity.
    ///
    /// One division, at the end: a result that a [`Decimal`] can hold is exact, any other is rounded
    /// once, in its 28th digit or decimal. This holds for every number of up to 12 digits, which is
    /// all that can be typed; a longer one may be rounded once more before the division.
    ///
    /// `None` where the quantities differ, or where the result is too large to hold.
    ///
    /// ```
    /// use measure::{Amount, Decimal, Unit};
    /// // 1 in = 25.4 mm exactly, so 0.005 in = 0.127 mm.
    /// let lash = Amount { value: Decimal::new(5, 3), unit: Unit::Inch };
    /// assert_eq!(lash.to(Unit::Millimetre).map(|a| a.value), Some(Decimal::new(127, 3)));
    /// assert_eq!(lash.to(Unit::Kilopascal), None);
    /// ```
    pub fn to(self, unit: Unit) -> Option<Amount> {
        if self.unit.quantity() != unit.quantity() {
            return None;
        }
        if self.unit == unit {
            return Some(self);
        }
        let (from, into) = (scale(self.unit), scale(unit));
        let up = from.numerator.checked_mul(into.denominator)?;
        let down = from.denominator.checked_mul(into.numerator)?;
        let raised = self.value.checked_add(from.offset)?.checked_mul(up)?;
        let value = raised.checked_sub(into.offset.checked_mul(down)?)?.checked_div(down)?;
        Some(Amount { value, unit })
    }
}

/// The scale of a unit, from the definitions of the units (NIST SP 811, appendix B).
fn scale(unit: Unit) -> Scale {
    let times = |numerator| Scale { offset: Decimal::ZERO, numerator, denominator: Decimal::ONE };
    let ratio = |numerator, denominator| Scale { offset: Decimal::ZERO, numerator, denominator };
    let point = |offset, numerator, denominator| Scale { offset, numerator, denominator };
    let whole = |number| Decimal::new(number, 0);
    match unit {
        Unit::Millimetre
        | Unit::Degree
        | Unit::NewtonMetre
        | Unit::Newton
        | Unit::Kilopascal
        | Unit::Kelvin
        | Unit::Millilitre
        | Unit::Second
        | Unit::Piece
        | Unit::Percent
        | Unit::Volt
        | Unit::PerMillionKelvin
        | Unit::Turn => times(Decimal::ONE),
        Unit::Millivolt => times(Decimal::new(1, 3)),
        Unit::Inch => times(Decimal::new(254, 1)),
        Unit::ArcMinute => ratio(Decimal::ONE, whole(60)),
        // 180/π has no last digit; nineteen digits of it, so a turn is right to 1e-16 of a degree.
        Unit::Radian => times(Decimal::new(5_729_577_951_308_232_088, 17)),
        // 1 lbf = 0.45359237 kg × 9.80665 m/s², both exact; × 0.0254 m and × 0.3048 m.
        Unit::PoundForce => times(Decimal::new(44_482_216_152_605, 13)),
        Unit::PoundForceInch => times(Decimal::new(1_129_848_290_276_167, 16)),
        Unit::PoundForceFoot => times(Decimal::new(13_558_179_483_314_004, 16)),
        Unit::KilogramForce | Unit::KilogramForceMetre => times(Decimal::new(980_665, 5)),
        Unit::Bar => times(whole(100)),
        // 1 lbf over (25.4 mm)² = 645.16 mm²; in kPa that is lbf in newtons ÷ 0.64516.
        Unit::PoundPerSquareInch => {
            ratio(Decimal::new(44_482_216_152_605, 13), Decimal::new(64_516, 5))
        }
        // A convention: mercury's density depends on temperature (SP 811 B.8: 3.386 389 E+03 Pa).
        Unit::InchOfMercury => times(Decimal::new(3_386_389, 6)),
        Unit::Celsius => point(Decimal::new(27_315, 2), Decimal::ONE, Decimal::ONE),
        Unit::Fahrenheit => point(Decimal::new(45_967, 2), whole(5), whole(9)),
        Unit::PerMillionFahrenheit => ratio(whole(9), whole(5)),
        Unit::Litre => times(whole(1000)),
        Unit::UsFluidOunce => times(Decimal::new(295_735_295_625, 10)),
        Unit::ImperialFluidOunce => times(Decimal::new(284_130_625, 7)),
        Unit::Minute => times(whole(60)),
        Unit::Hour => times(whole(3600)),
        Unit::Day => times(whole(86_400)),
    }
}
