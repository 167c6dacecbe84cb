//! One backlash, four ways to say it: at the tooth, at an arm, and as an angle of either shaft.
//!
//! At the tooth means along the mean pitch circle. An arm of radius R on a shaft whose gear has
//! the pitch radius r reads R/r times as much. `None` where a radius is not above zero, a gear is
//! not known, or a number is too large to hold.

use measure::{Decimal, real};

use crate::case::{Arm, Gears, Shaft};

/// Mean pitch radius of the gear on a shaft, mm; a driven gear's is the pinion's times the ratio
/// of the teeth.
pub fn pitch_radius(gears: &Gears, shaft: &Shaft) -> Option<Decimal> {
    gears
        .pinion_pitch_radius
        .checked_mul(teeth(gears, shaft)?)?
        .checked_div(Decimal::from(gears.pinion_teeth))
        .filter(|radius| *radius > Decimal::ZERO)
}

/// What an arm reads for a backlash at the tooth.
///
/// ```
/// use gearing::{backlash, case::{Arm, Driven, Gears, Shaft}};
/// use measure::Decimal;
/// // An invented unit, 14/21 teeth, pitch radii 24 and 36 mm, arm of 30 mm on the pinion shaft.
/// let gears = Gears {
///     pinion_teeth: 14,
///     pinion_pitch_radius: Decimal::from(24),
///     driven: vec![Driven { id: "forward".into(), teeth: 21 }],
///     normal_pressure_angle: Some(Decimal::from(20)),
///     spiral_angle: Some(Decimal::from(35)),
///     shaft_angle: Decimal::from(90),
/// };
/// let arm = Arm { radius: Decimal::from(30), on: Shaft::Pinion };
/// let tooth = backlash::at_tooth(Decimal::new(45, 2), &gears, &arm).unwrap();
/// assert_eq!(tooth, Decimal::new(36, 2));
/// assert_eq!(backlash::at_arm(tooth, &gears, &arm), Some(Decimal::new(45, 2)));
/// let pinion = backlash::degrees(tooth, &gears, &Shaft::Pinion).unwrap();
/// assert!((pinion - 0.859).abs() < 0.0005);
/// ```
pub fn at_arm(tooth: Decimal, gears: &Gears, arm: &Arm) -> Option<Decimal> {
    tooth.checked_mul(positive(arm.radius)?)?.checked_div(pitch_radius(gears, &arm.on)?)
}

/// The backlash at the tooth that an arm reads as `reading`.
pub fn at_tooth(reading: Decimal, gears: &Gears, arm: &Arm) -> Option<Decimal> {
    reading.checked_mul(pitch_radius(gears, &arm.on)?)?.checked_div(positive(arm.radius)?)
}

/// What one arm reads where another reads `reading`; exact but for one division.
///
/// ```
/// # use gearing::{backlash, case::{Arm, Driven, Gears, Shaft}};
/// # use measure::Decimal;
/// # let gears = Gears { pinion_teeth: 14, pinion_pitch_radius: Decimal::from(24),
/// #     driven: vec![Driven { id: "forward".into(), teeth: 21 }], normal_pressure_angle: None,
/// #     spiral_angle: None, shaft_angle: Decimal::from(90) };
/// // A band of 0.20 at 22 mm is 0.273 at 30 mm.
/// let sheet = Arm { radius: Decimal::from(22), on: Shaft::Pinion };
/// let arm = Arm { radius: Decimal::from(30), on: Shaft::Pinion };
/// let low = backlash::carried(Decimal::new(20, 2), &gears, &sheet, &arm).unwrap();
/// assert_eq!(measure::round(low, 3), Decimal::new(273, 3));
/// ```
pub fn carried(reading: Decimal, gears: &Gears, from: &Arm, to: &Arm) -> Option<Decimal> {
    let over = positive(to.radius)?.checked_mul(teeth(gears, &from.on)?)?;
    let under = positive(from.radius)?.checked_mul(teeth(gears, &to.on)?)?;
    reading.checked_mul(over)?.checked_div(under)
}

/// The angle a shaft turns within the backlash, degrees.
pub fn degrees(tooth: Decimal, gears: &Gears, shaft: &Shaft) -> Option<f64> {
    let radius = real::from_decimal(pitch_radius(gears, shaft)?);
    Some((real::from_decimal(tooth) / radius).to_degrees())
}

/// The backlash at the tooth within which a shaft turns by this angle, mm.
pub fn from_degrees(degrees: f64, gears: &Gears, shaft: &Shaft) -> Option<f64> {
    Some(degrees.to_radians() * real::from_decimal(pitch_radius(gears, shaft)?))
}

/// Teeth of the gear on a shaft.
fn teeth(gears: &Gears, shaft: &Shaft) -> Option<Decimal> {
    let teeth = match shaft {
        Shaft::Pinion => gears.pinion_teeth,
        Shaft::Driven(id) => gears.driven.iter().find(|gear| gear.id == *id)?.teeth,
    };
    positive(Decimal::from(teeth))
}

/// The number, if it is above zero.
fn positive(number: Decimal) -> Option<Decimal> {
    Some(number).filter(|number| *number > Decimal::ZERO)
}
