//! What the gauge cannot see: bubbles.

use std::f64::consts::PI;
use words::key;

use measure::{Decimal, Unit};

use crate::formula::evaluate;
use crate::{Figure, Given, Reading, Refusal};

/// Volume of one bubble, cm³.
fn bubble(diameter_mm: f64) -> f64 {
    PI / 6.0 * (diameter_mm / 10.0).powi(3)
}

/// How many bubbles of a diameter a flow makes each second, at the pressure the flow is counted at.
///
/// # Errors
/// [`Refusal`] for a diameter of zero or less.
///
/// ```
/// use measure::{Decimal, Unit, round};
/// use workshop::{Figure, Reading, leak::bubbles_a_second};
/// // 13.6 cm³/min is sixteen 3 mm bubbles a second (own arithmetic).
/// let flow = Figure { value: Decimal::new(136, 1), unit: "cm³/min", uncertainty: Default::default() };
/// let three = Reading::exact(Decimal::from(3), Unit::Millimetre);
/// assert_eq!(round(bubbles_a_second(&flow, &three).unwrap().value, 0), Decimal::from(16));
/// ```
pub fn bubbles_a_second(flow: &Figure, diameter: &Reading) -> Result<Figure, Refusal> {
    let given = [flow.given(key!("flow")), diameter.above_zero(key!("bubble"), Unit::Millimetre)?];
    evaluate(key!("bubbles"), "1/s", &given, &|[flow, diameter]| flow / 60.0 / bubble(diameter))
}

/// What one 3 mm bubble every ten seconds takes off the gauge while the case is held, kPa.
///
/// Soap or a dunk tank shows it at once; compare it with the gauge's own step.
///
/// # Errors
/// [`Refusal`] for a volume, time or barometer of zero or less.
///
/// ```
/// use measure::{Amount, Decimal, Unit, round};
/// use workshop::{Reading, leak::one_bubble_in_ten_seconds};
/// // 2 L for 10 min: 0.006 psi (own arithmetic, air at 101.325 kPa outside).
/// let lost = one_bubble_in_ten_seconds(
///     &Reading::exact(Decimal::TWO, Unit::Litre),
///     &Reading::exact(Decimal::TEN, Unit::Minute),
///     &Reading::exact(Decimal::new(101_325, 3), Unit::Kilopascal),
/// ).unwrap();
/// let psi = lost.amount().unwrap().to(Unit::PoundPerSquareInch).unwrap();
/// assert_eq!(round(psi.value, 3), Decimal::new(6, 3));
/// ```
pub fn one_bubble_in_ten_seconds(
    volume: &Reading,
    time: &Reading,
    barometer: &Reading,
) -> Result<Figure, Refusal> {
    let given = [
        volume.above_zero("volume of air", Unit::Litre)?,
        time.above_zero(key!("time"), Unit::Second)?,
        barometer.above_zero(key!("barometer"), Unit::Kilopascal)?,
        Given { name: key!("bubble"), value: Decimal::from(3), unit: "mm", standard: 0.0 },
    ];
    evaluate("loss to one bubble", "kPa", &given, &|[litres, seconds, barometer, diameter]| {
        barometer * seconds / 10.0 * bubble(diameter) / 1000.0 / litres
    })
}
