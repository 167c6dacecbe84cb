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
    assert!(found.allowed && found.limits_are_common_practice);
    assert_eq!(found.ready, None, "a guess is no thermometer");
    assert_eq!(found.cautions, [Caution::HotMetal]);
}

#[test]
fn a_thermometer_proves_it() {
    let ready = |celsius| {
        let thermometer = Some(sure(celsius, Unit::Celsius).within(2.0));
        heat(&Drop { thermometer, ..drop() }).unwrap().ready.map(|ready| ready.verdict)
    };
    assert_eq!(ready("60"), Some(Verdict::Out));
    assert_eq!(ready("72"), Some(Verdict::NearLimit));
    assert_eq!(ready("90"), Some(Verdict::InBand));
    assert_eq!(ready("130"), Some(Verdict::Out), "hotter than the case commonly stands");
}

/// The race alone by cold: 0.08/(12.0e-6·72) = 92.6 K below 20 °C is colder than rings are taken.
#[test]
fn too_cold_for_the_ring() {
    let ring = Drop { material: BEARING_STEEL, part: Part::Ring, ..drop() };
    let found = cool(&ring).unwrap();
    assert_figure(&found.change, -92.593, 1e-3);
    assert!(!found.allowed && found.ready.is_none());
    assert_eq!(found.cautions, [Caution::ColdMetal, Caution::BeyondPart]);
    // Without clearance wanted 57.9 K is enough, and the maker allows −60 °C.
    let own = Limits { low: Some(amount("-60", Unit::Celsius)), high: None };
    let found = cool(&Drop { clearance: mm("0"), limits: own, ..ring }).unwrap();
    assert!(found.allowed && !found.limits_are_common_practice);
}

#[test]
fn cages_and_seals_stand_less() {
    let hot = Drop { interference: mm("0.10"), ..drop() };
    assert!(heat(&hot).unwrap().allowed);
    let polymer = heat(&Drop { part: Part::WithPolymer, ..hot }).unwrap();
    assert!(!polymer.allowed);
    assert!(polymer.cautions.contains(&Caution::BeyondPart));
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
