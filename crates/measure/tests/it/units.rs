//! Conversions against the definitions of the units.
//!
//! Exact factors: the international inch and pound (1 in = 25.4 mm, 1 lb = 0.45359237 kg), standard
//! gravity 9.80665 m/s², the US gallon of 231 cubic inches and the imperial one of 4.54609 L. They
//! agree with scipy.constants 1.17.1 and pint 0.25.3; NIST SP 811, B.8, prints them rounded.

use measure::{Amount, Unit, round};

use crate::exact;

#[track_caller]
fn converts(value: &str, from: Unit, to: Unit, expected: &str) {
    let found = Amount { value: exact(value), unit: from }.to(to).unwrap();
    assert_eq!(found, Amount { value: exact(expected), unit: to }, "{value} {from} in {to}");
}

/// As [`converts`], rounded to as many places as `expected` has.
#[track_caller]
fn rounds(value: &str, from: Unit, to: Unit, expected: &str) {
    let found = Amount { value: exact(value), unit: from }.to(to).unwrap().value;
    let expected = exact(expected);
    assert_eq!(round(found, expected.scale()), expected, "{value} {from} in {to}");
}

#[test]
fn exact_definitions() {
    converts("1", Unit::Inch, Unit::Millimetre, "25.4");
    converts("1", Unit::PoundForce, Unit::Newton, "4.4482216152605");
    converts("1", Unit::KilogramForce, Unit::Newton, "9.80665");
    converts("1", Unit::KilogramForceMetre, Unit::NewtonMetre, "9.80665");
    // 4.4482216152605 × 0.0254 and × 0.3048, every digit.
    converts("1", Unit::PoundForceInch, Unit::NewtonMetre, "0.1129848290276167");
    converts("1", Unit::PoundForceFoot, Unit::NewtonMetre, "1.3558179483314004");
    converts("1", Unit::PoundForceFoot, Unit::PoundForceInch, "12");
    // Twelve digits, the most that can be typed, through the longest factors.
    converts("999999999999", Unit::PoundForceFoot, Unit::PoundForceInch, "11999999999988");
    converts("0.000000000012", Unit::PoundForceInch, Unit::PoundForceFoot, "0.000000000001");
    converts("1", Unit::UsFluidOunce, Unit::Millilitre, "29.5735295625");
    converts("128", Unit::UsFluidOunce, Unit::Litre, "3.785411784");
    converts("1", Unit::ImperialFluidOunce, Unit::Millilitre, "28.4130625");
    converts("160", Unit::ImperialFluidOunce, Unit::Litre, "4.54609");
    converts("1", Unit::Bar, Unit::Kilopascal, "100");
    // SI prefix.
    converts("1", Unit::Volt, Unit::Millivolt, "1000");
    converts("1", Unit::Day, Unit::Second, "86400");
    // A kelvin is 9/5 of a degree Fahrenheit: 11.9 for 21.42 (356.0 in W. D. Callister, Fundamentals of
    // Materials Science and Engineering, 3rd ed., table B.6, rounded to 21.5).
    converts("11.9", Unit::PerMillionFahrenheit, Unit::PerMillionKelvin, "21.42");
    converts("90", Unit::Second, Unit::Minute, "1.5");
    converts("9.9", Unit::ArcMinute, Unit::Degree, "0.165");
    rounds("1", Unit::PoundPerSquareInch, Unit::Kilopascal, "6.894757293168361");
}

/// A convention, since mercury's density depends on temperature (NIST SP 811, B.8, from memory).
#[test]
fn conventional_inch_of_mercury() {
    converts("1", Unit::InchOfMercury, Unit::Kilopascal, "3.386389");
    converts("15", Unit::InchOfMercury, Unit::Kilopascal, "50.795835");
}

/// Spot values computed with scipy.constants 1.17.1.
#[test]
fn spot_values() {
    converts("0.005", Unit::Inch, Unit::Millimetre, "0.127");
    rounds("0.15", Unit::Millimetre, Unit::Inch, "0.00590551");
    rounds("25", Unit::PoundForceFoot, Unit::NewtonMetre, "33.895449");
    rounds("10", Unit::PoundPerSquareInch, Unit::Kilopascal, "68.947573");
    rounds("22.5", Unit::UsFluidOunce, Unit::Millilitre, "665.404415");
    rounds("2.5", Unit::PoundForceInch, Unit::NewtonMetre, "0.282462");
    rounds("0.384", Unit::NewtonMetre, Unit::PoundForceInch, "3.398686");
    rounds("0.16528", Unit::Degree, Unit::ArcMinute, "9.9168");
    rounds("1", Unit::Radian, Unit::Degree, "57.2957795130823");
    rounds("180", Unit::Degree, Unit::Radian, "3.14159265358979");
}

/// NIST SP 811, B.8, from memory, rounded there to seven digits; and what tells the two ounces apart.
#[test]
fn rounded_factors_of_the_tables() {
    rounds("1", Unit::PoundPerSquareInch, Unit::Kilopascal, "6.894757");
    rounds("1", Unit::PoundForceInch, Unit::NewtonMetre, "0.1129848");
    rounds("1", Unit::PoundForceFoot, Unit::NewtonMetre, "1.355818");
    rounds("1", Unit::InchOfMercury, Unit::Kilopascal, "3.386389");
    rounds("1", Unit::UsFluidOunce, Unit::Millilitre, "29.57353");
    rounds("1", Unit::ImperialFluidOunce, Unit::UsFluidOunce, "0.96");
}

/// The fixed points by definition: 0 °C = 273.15 K, 32 °F; 100 °C = 212 °F; both meet at −40.
#[test]
fn temperatures() {
    converts("32", Unit::Fahrenheit, Unit::Celsius, "0");
    converts("212", Unit::Fahrenheit, Unit::Celsius, "100");
    converts("-40", Unit::Celsius, Unit::Fahrenheit, "-40");
    converts("-459.67", Unit::Fahrenheit, Unit::Kelvin, "0");
    converts("0", Unit::Celsius, Unit::Kelvin, "273.15");
    converts("37.5", Unit::Celsius, Unit::Fahrenheit, "99.5");
    rounds("0", Unit::Fahrenheit, Unit::Celsius, "-17.7777777777777777777778");
}

#[test]
fn another_quantity_is_not_converted() {
    let depth = Amount { value: exact("1"), unit: Unit::Millimetre };
    assert_eq!(depth.to(Unit::NewtonMetre), None);
    let too_large = Amount { value: exact("79228162514264337593543950335"), unit: Unit::Inch };
    assert_eq!(too_large.to(Unit::Millimetre), None);
}
