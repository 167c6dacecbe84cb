//! Thermal fits. Coefficients: W. D. Callister, Fundamentals of Materials Science and Engineering,
//! 3rd ed., table B.6 (aluminium 356.0: 21.5e-6/°C); bearing steel 12.0e-6 from memory. The worked
//! numbers were run from αDΔT.

use measure::{Decimal, Unit, Verdict};
use workshop::fit::{BEARING_STEEL, CAST_ALUMINIUM, Drop, Expansion, Part, cool, growth, heat};
use workshop::{Basis, Caution, Limits, Reading};

use crate::{amount, assert_close, assert_figure, exact, refused, sure};

fn mm(text: &str) -> Reading {
    sure(text, Unit::Millimetre)
}

fn drop() -> Drop {
    Drop {
        diameter: mm("72"),
        interference: mm("0.05"),
        clearance: mm("0.03"),
        room: sure("20", Unit::Celsius),
        material: CAST_ALUMINIUM,
        part: Part::Case,
        limits: Limits::default(),
        thermometer: None,
    }
}

#[test]
fn free_growth() {
    assert_figure(&growth(&mm("72"), &CAST_ALUMINIUM, Decimal::from(100)).unwrap(), 0.15480, 1e-9);
    assert_figure(&growth(&mm("72"), &BEARING_STEEL, Decimal::from(-50)).unwrap(), -0.04320, 1e-9);
    // An 80 mm bore, round figures 23e-6 and 12e-6: +80 °C opens 0.147, −38 °C shrinks 0.036 (own
    // arithmetic).
    let round = |per_million: i64| Expansion {
        per_million: Decimal::from(per_million),
        standard: 0.0,
        basis: Basis::CommonPractice,
    };
    assert_figure(&growth(&mm("80"), &round(23), Decimal::from(80)).unwrap(), 0.147, 5e-4);
    assert_figure(&growth(&mm("80"), &round(12), Decimal::from(-38)).unwrap(), -0.036, 5e-4);
    // 21.5 ± 0.4 of 0.1548 mm.
    let grown = growth(&mm("72"), &CAST_ALUMINIUM, Decimal::from(100)).unwrap();
    assert_close(grown.standard(), 72.0 * 0.4e-6 * 100.0, 1e-9);
}

/// Interference 0.05 and clearance 0.03 on 72 mm: 51.680 K.
#[test]
fn heat_for_a_race() {
    let found = heat(&drop()).unwrap();
    assert_figure(&found.change, 51.680, 1e-3);
    assert_figure(&found.reach, 71.680, 1e-3);
    assert_eq!(found.reached, None, "a guess is no thermometer");
    assert_eq!(found.cautions, [Caution::HotMetal]);
}

/// Common practice, no source: a case is taken no hotter than 120 °C. That is said, never judged by.
#[test]
fn without_its_makers_limit_there_is_no_verdict() {
    let found = |celsius, part| {
        let thermometer = Some(sure(celsius, Unit::Celsius).within(2.0));
        heat(&Drop { thermometer, part, ..drop() }).unwrap()
    };
    let warm = found("90", Part::Case);
    assert_eq!((warm.allowed, warm.ready), (None, None));
    assert_eq!(warm.common_limit, Some(amount("120", Unit::Celsius)));
    assert_eq!(warm.reached.map(|it| it.verdict), Some(Verdict::InBand));
    assert_eq!(warm.cautions, [Caution::HotMetal]);
    let short = found("60", Part::Case).reached.map(|it| it.verdict);
    assert_eq!(short, Some(Verdict::Out));
    let hot = found("130", Part::Case);
    assert_eq!(hot.ready, None);
    assert_eq!(hot.cautions, [Caution::HotMetal, Caution::BeyondPractice]);
    assert_eq!(
        found("100", Part::WithPolymer).cautions,
        hot.cautions,
        "93 °C for what has polymer"
    );
    // The coldest it stands says nothing of heat.
    let limits = Limits { low: Some(amount("-40", Unit::Celsius)), high: None };
    let thermometer = Some(sure("90", Unit::Celsius));
    assert_eq!(heat(&Drop { limits, thermometer, ..drop() }).unwrap().ready, None);
}

#[test]
fn a_thermometer_proves_it() {
    let ready = |celsius| {
        let thermometer = Some(sure(celsius, Unit::Celsius).within(2.0));
        let limits = Limits::at_most(amount("125", Unit::Celsius));
        let found = heat(&Drop { thermometer, limits, ..drop() }).unwrap();
        (found.ready.map(|ready| ready.verdict), found.cautions.contains(&Caution::BeyondPart))
    };
    assert_eq!(ready("60"), (Some(Verdict::Out), false));
    assert_eq!(ready("72"), (Some(Verdict::NearLimit), false));
    assert_eq!(ready("90"), (Some(Verdict::InBand), false));
    assert_eq!(ready("130"), (Some(Verdict::Out), true), "hotter than its maker allows");
}

/// The race alone by cold: 0.08/(12.0e-6·72) = 92.6 K below 20 °C is colder than rings are taken.
#[test]
fn too_cold_for_the_ring() {
    let ring = Drop { material: BEARING_STEEL, part: Part::Ring, ..drop() };
    let found = cool(&ring).unwrap();
    assert_figure(&found.change, -92.593, 1e-3);
    assert_eq!((found.allowed, found.ready), (None, None));
    assert_eq!(found.cautions, [Caution::ColdMetal, Caution::BeyondPractice]);
    let own = |celsius| Limits { low: Some(amount(celsius, Unit::Celsius)), high: None };
    let found = cool(&Drop { limits: own("-60"), ..ring }).unwrap();
    assert_eq!((found.allowed, found.ready), (Some(false), None));
    assert_eq!(found.cautions, [Caution::ColdMetal, Caution::BeyondPart]);
    // Without clearance wanted 57.9 K is enough.
    let found = cool(&Drop { clearance: mm("0"), limits: own("-60"), ..ring }).unwrap();
    assert_eq!((found.allowed, found.common_limit), (Some(true), None));
}

/// Aluminium 2024: 22.9e-6/K (Callister, table B.6); 0.08/(22.9e-6·72) = 48.520 K (run).
#[test]
fn a_coefficient_of_ones_own() {
    let read = |text, unit| Expansion::read(&sure(text, unit)).unwrap();
    let material = read("22.9", Unit::PerMillionKelvin);
    assert_figure(&heat(&Drop { material, ..drop() }).unwrap().change, 48.520, 1e-3);
    let fahrenheit = read("11.9", Unit::PerMillionFahrenheit);
    assert_eq!(fahrenheit.per_million, exact("21.42"));
}

#[test]
fn what_cannot_be_is_refused() {
    refused(
        heat(&Drop { room: sure("-280", Unit::Celsius), ..drop() }),
        "Room: found -280 °C, expected no less than absolute zero, -273.15 °C; check sign and unit.",
    );
    refused(
        heat(&Drop { room: sure("-500", Unit::Fahrenheit), ..drop() }),
        "Room: found -500 °F, expected no less than absolute zero, -273.15 °C; check sign and unit.",
    );
    refused(
        heat(&Drop { clearance: mm("-0.01"), ..drop() }),
        "Clearance: found -0.01 mm, expected zero or more; read it again.",
    );
    refused(
        heat(&Drop { diameter: mm("0"), ..drop() }),
        "Diameter: found 0 mm, expected more than zero; measure it again.",
    );
    assert_eq!(exact("0.05"), drop().interference.amount.value);
}
