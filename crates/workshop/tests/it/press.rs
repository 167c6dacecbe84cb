//! Press fits: Lamé, as in Budynas & Nisbett, Shigley's Mechanical Engineering Design, section 3-16.
//! A one-dimensional axisymmetric finite element (4000 elements a ring, scipy 1.17.1
//! `solveh_banded`) agrees with each number to 1e-8.

use measure::{Decimal, Unit};
use workshop::press::{ALUMINIUM, Elastic, Press, STEEL, examine};
use workshop::{Caution, Reading};

use crate::{amount, assert_close, assert_figure, exact, refused, sure};

fn mm(text: &str) -> Reading {
    sure(text, Unit::Millimetre)
}

/// Race 60/72 steel in aluminium of 96 mm, 0.04 mm on the diameter, 18 mm long, friction 0.15.
fn race() -> Press {
    Press {
        interference: mm("0.04"),
        bore: mm("60"),
        meeting: mm("72"),
        outside: mm("96"),
        length: mm("18"),
        friction: exact("0.15"),
        inner: STEEL,
        outer: ALUMINIUM,
    }
}

#[test]
fn a_race_in_aluminium() {
    let found = examine(&race()).unwrap();
    assert_figure(&found.pressure, 6.9152, 1e-4);
    assert_figure(&found.hub_stress, 24.697, 1e-3);
    assert_figure(&found.force, 4223.3, 0.1);
    assert_figure(&found.slip_torque, 4223.3 * 0.036, 0.01);
    assert!(found.cautions.contains(&Caution::DiametralInterference));
}

/// Solid shaft R 0.5 in, hub 1.0 in, E 30e6 psi, 0.00115 in on the radius: 25 875.0 psi at the
/// interface, 43 125 psi in the hub (a textbook tutorial gives 25.9 kpsi, from memory).
#[test]
fn a_textbook_shaft() {
    let inch = |text| sure(text, Unit::Inch);
    let pounds = amount("30000000", Unit::PoundPerSquareInch).to(Unit::Kilopascal).unwrap();
    let steel = Elastic { modulus: pounds.value / Decimal::from(1_000_000), poisson: exact("0.3") };
    let found = examine(&Press {
        interference: inch("0.0023"),
        bore: inch("0"),
        meeting: inch("1"),
        outside: inch("2"),
        length: inch("1"),
        inner: steel,
        outer: steel,
        ..race()
    })
    .unwrap();
    let psi = |figure: &workshop::Figure| {
        measure::real::from_decimal(figure.value) / 0.006_894_757_293_168
    };
    assert_close(psi(&found.pressure), 25_875.0, 0.1);
    assert_close(psi(&found.hub_stress), 43_125.0, 0.1);
}

/// The factor-2 trap: 55/30 mm aluminium, 0.10 mm is 80.785 MPa on the diameter and 161.570 on the
/// radius, E 69 GPa, on a solid shaft of the same metal.
#[test]
fn diametral_is_not_radial() {
    let aluminium = Elastic { modulus: Decimal::from(69), poisson: exact("0.33") };
    let gear = |interference| Press {
        interference: mm(interference),
        bore: mm("0"),
        meeting: mm("30"),
        outside: mm("55"),
        inner: aluminium,
        outer: aluminium,
        ..race()
    };
    assert_figure(&examine(&gear("0.10")).unwrap().pressure, 80.785, 1e-3);
    assert_figure(&examine(&gear("0.20")).unwrap().pressure, 161.570, 1e-3);
}

#[test]
fn rings_must_fit_round_each_other() {
    refused(
        examine(&Press { outside: mm("70"), ..race() }),
        "Outside diameter: found 70 mm, expected more than the diameter, 72 mm; measure both again.",
    );
    refused(
        examine(&Press { bore: mm("72"), ..race() }),
        "Diameter: found 72 mm, expected more than the bore, 72 mm; measure both again.",
    );
    refused(
        examine(&Press { friction: exact("1.5"), ..race() }),
        "Friction: found 1.5, expected 0.01 to 1; read it again.",
    );
}
