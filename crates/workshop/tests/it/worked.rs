//! Worked numbers that no other test of this folder reproduces, and the table of all of them,
//! `tests/WORKED.md`. Each was computed apart from this project with the package named beside it.

use measure::{Amount, Unit, round};
use workshop::as568::{Standing, size, sizes};
use workshop::fit::{CAST_ALUMINIUM, Expansion, when_warm};
use workshop::leak::{Entry, Stage, corrected, drop, per_kelvin};
use workshop::pattern::{Advice, Family, Height, Length, Print, Seen, read};
use workshop::press::{Elastic, Press, examine, interference};
use workshop::runout::{self, Turn};
use workshop::{Basis, Limits, Reading};

use crate::{amount, assert_close, assert_figure, exact, sure};

/// Every test that the table names is there.
#[test]
fn the_table_names_tests_that_are_there() {
    const TABLE: &str = include_str!("../WORKED.md");
    const FILES: [(&str, &str); 11] = [
        ("as568", include_str!("as568.rs")),
        ("drag", include_str!("drag.rs")),
        ("fit", include_str!("fit.rs")),
        ("leak", include_str!("leak.rs")),
        ("observed", include_str!("observed.rs")),
        ("oring", include_str!("oring.rs")),
        ("press", include_str!("press.rs")),
        ("runout", include_str!("runout.rs")),
        ("setting", include_str!("setting.rs")),
        ("torque", include_str!("torque.rs")),
        ("worked", include_str!("worked.rs")),
    ];
    const UNITS: &str = include_str!("../../../measure/tests/it/units.rs");
    let named = TABLE.split('`').skip(1).step_by(2).filter_map(|word| word.split_once("::"));
    let mut count = 0;
    for (file, test) in named {
        let source = FILES.iter().find(|(name, _)| *name == file).map(|(_, source)| *source);
        let source = if file == "units" { UNITS } else { source.unwrap_or_default() };
        assert!(source.contains(&format!("fn {test}()")), "{file}::{test}");
        count += 1;
    }
    assert!(count > 40, "{count}");
}

fn turn(readings: &[f64]) -> Turn {
    let step = 360.0 / readings.len() as f64;
    let reading = |(index, value): (usize, &f64)| {
        let decimal = |value| measure::real::to_decimal(value, 12).unwrap();
        let angle = Amount { value: decimal(step * index as f64), unit: Unit::Degree };
        (angle, Reading::exact(decimal(*value), Unit::Millimetre))
    };
    let readings = readings.iter().enumerate().map(reading).collect();
    Turn { readings, closing: None, limits: Limits::default() }
}

/// Case A, 8 steps of 45°, mm: a −0.025685, b 0.020503, the eccentric part of the total 2e 0.065730
/// (numpy 2.4.6 `linalg.lstsq`).
#[test]
fn the_two_sums_of_the_circle() {
    let found =
        runout::examine(&turn(&[0.0, 0.021, 0.045, 0.058, 0.049, 0.030, 0.004, -0.009])).unwrap();
    let off = measure::real::from_decimal(found.off_centre.value);
    let high = measure::real::from_decimal(found.high_spot.unwrap().value).to_radians();
    assert_close(off * high.cos(), -0.025685, 1e-6);
    assert_close(off * high.sin(), 0.020503, 1e-6);
    assert_close(2.0 * off, 0.065730, 1e-6);
}

/// Case C, 4 steps, 0.001 in: 0.5 2.0 3.5 2.0: r0 2.0, e 1.5, 180°, total 3.0 = 2e exactly.
#[test]
fn a_circle_of_four() {
    let found = runout::examine(&turn(&[0.5, 2.0, 3.5, 2.0])).unwrap();
    assert_figure(&found.mean, 2.0, 1e-9);
    assert_figure(&found.off_centre, 1.5, 1e-9);
    assert_figure(&found.high_spot.unwrap(), 180.0, 1e-6);
    assert_figure(&found.total, 3.0, 1e-9);
}

/// A true circle of R 15 off centre by 0.025 mm, read by an indicator: what the straight formula leaves
/// out is e²/(4R) = 1e-5 mm.
#[test]
fn what_the_circle_leaves_out_is_small() {
    let (radius, off) = (15.0f64, 0.025f64);
    let read = |degrees: f64| {
        let angle = degrees.to_radians();
        off * angle.cos() + (radius.powi(2) - (off * angle.sin()).powi(2)).sqrt() - radius
    };
    let readings: Vec<f64> = (0..8).map(|at| read(45.0 * f64::from(at))).collect();
    let found = runout::examine(&turn(&readings)).unwrap();
    assert_figure(&found.mean, -1.04e-5, 1e-7);
    assert_figure(&found.off_centre, off, 1e-7);
}

/// 40 CFR 1065.644 form, ideal gas (run): tight, 168 402.861 Pa absolute at 15 °C reads 2.92214 kPa less;
/// CoolProp 8.0.0 has 168 390.527 Pa for air there, 12.3 Pa less.
#[test]
fn what_cooling_takes_off_a_gauge() {
    let line = |seconds: &str, pascal: &str, celsius: &str| {
        let absolute = amount(pascal, Unit::Kilopascal).value / exact("1000");
        Entry {
            at: amount(seconds, Unit::Second),
            gauge: Reading::exact(absolute - exact("101.325"), Unit::Kilopascal),
            case: sure(celsius, Unit::Celsius),
            barometer: sure("101.325", Unit::Kilopascal),
        }
    };
    let (first, ideal) = (line("0", "171325", "20"), line("600", "168402.861", "15"));
    assert_eq!(first.gauge.amount.value - ideal.gauge.amount.value, exact("2.922139"));
    assert_figure(&drop(Stage::Working, &first, &ideal).unwrap(), 0.0, 1e-6);
    assert_figure(&corrected(Stage::Working, &first, &ideal).unwrap(), 70.0, 1e-6);
    let real = line("600", "168390.527", "15");
    // 12.334 Pa at 15 °C are 12.548 Pa at 20 °C.
    assert_figure(&drop(Stage::Working, &first, &real).unwrap(), 0.012548, 1e-6);
}

/// At 171 325 Pa absolute and 20 °C: 0.0471 psi/°F (run).
#[test]
fn sensitivity_in_the_units_of_the_trade() {
    let (air, room) = (sure("101.325", Unit::Kilopascal), sure("20", Unit::Celsius));
    let change = per_kelvin(&sure("70", Unit::Kilopascal), &air, &room).unwrap();
    let psi = change.amount().unwrap().to(Unit::PoundPerSquareInch).unwrap().value;
    assert_eq!(round(psi * exact("5") / exact("9"), 4), exact("0.0471"));
}

/// Aluminium 356.0 by its coefficient of 11.9e-6/°F, and 6061, 2024, bronze C93200 and ductile iron: W. D.
/// Callister, table B.6. A steel race in each, 72 mm, 60 K warmer (run).
#[test]
fn other_metals_round_a_race() {
    let of = |per_million: &str, unit| Expansion::read(&sure(per_million, unit)).unwrap();
    let steel = Expansion {
        per_million: exact("12.0"),
        standard: 0.0,
        basis: Basis::Derived("from memory"),
    };
    let (over, size) = (sure("0.040", Unit::Millimetre), sure("72", Unit::Millimetre));
    let left = |case: &Expansion| when_warm(&over, &size, case, &steel, exact("60")).unwrap().left;
    assert_figure(&left(&CAST_ALUMINIUM), 0.040 - 0.04104, 1e-9);
    assert_figure(&left(&of("23.6", Unit::PerMillionKelvin)), 0.040 - 0.050112, 1e-9);
    assert_figure(&left(&of("22.9", Unit::PerMillionKelvin)), 0.040 - 0.047088, 1e-9);
    assert_figure(&left(&of("18.0", Unit::PerMillionKelvin)), 0.040 - 0.02592, 1e-9);
    assert_figure(&left(&of("11.2", Unit::PerMillionKelvin)), 0.040 + 0.003456, 1e-9);
    // 11.9 and 21.5 are the same to their last digit.
    assert_figure(&left(&of("11.9", Unit::PerMillionFahrenheit)), 0.040 - 0.04104, 4e-4);
}

/// H7/s6 on 2 in: hole 2.0000–2.0010, shaft 2.0017–2.0023 in (Shigley, 9th ed., example 7-8). The most,
/// 0.0023 in, is the 0.00115 in on the radius of the tutorial; the same numbers taken for diameters give
/// half: 12 937.5 and 3 937.5 psi (finite elements, scipy `solveh_banded`).
#[test]
fn limits_of_a_pressed_shaft() {
    let inch = |text: &str| sure(text, Unit::Inch);
    let over = |shaft: &str, hole: &str| {
        let over = interference(&inch(shaft), &inch(hole)).unwrap();
        round(over.amount().unwrap().to(Unit::Inch).unwrap().value, 9)
    };
    assert_eq!(over("2.0017", "2.0010"), exact("0.000700000"));
    assert_eq!(over("2.0023", "2.0000"), exact("0.002300000"));
    let pounds = amount("30000000", Unit::PoundPerSquareInch).to(Unit::Kilopascal).unwrap();
    let steel = Elastic { modulus: pounds.value / exact("1000000"), poisson: exact("0.3") };
    let psi = |interference: &str| {
        let press = Press {
            interference: inch(interference),
            bore: inch("0"),
            meeting: inch("1"),
            outside: inch("2"),
            length: inch("1"),
            friction: exact("0.15"),
            inner: steel,
            outer: steel,
        };
        let found = examine(&press).unwrap();
        measure::real::from_decimal(found.pressure.value) / 0.006_894_757_293_168
    };
    assert_close(psi("0.00115"), 12_937.5, 0.1);
    assert_close(psi("0.00035"), 3_937.5, 0.1);
}

/// Sections and tolerances of AS568 by hundreds, read on two pages; -325 is where pages contradict each
/// other.
#[test]
fn sections_of_the_ring_series() {
    let read = [(70, 3), (103, 3), (139, 4), (210, 5), (275, 6)];
    for row in sizes() {
        let (section, tolerance) = read[usize::from(row.dash / 100)];
        assert_eq!((row.section_thousandths, row.section_tolerance), (section, tolerance));
    }
    assert_eq!(size(325).unwrap().standing, Standing::SourcesDisagree);
}

/// An independent contact model, moves of 0.1 mm, straight z 13/24 at 20° and spiral at 35°: height on the
/// drive and coast flank as it was and after the pinion moved (run; signs only). Whichever way it was
/// moved, the print says to bring it back.
#[test]
fn the_print_undoes_the_move() {
    const NOMINAL: f64 = 0.05;
    let height = |at: f64| if at > NOMINAL { Height::Tip } else { Height::Root };
    let along = [Length::Toe, Length::Heel, Length::Middle];
    let moved = [
        (Advice::PinionIn, 0.30, 0.30),
        (Advice::PinionOut, -0.23, -0.23),
        (Advice::PinionIn, 0.41, 0.46),
        (Advice::PinionOut, -0.25, -0.32),
    ];
    for (advice, drive, coast) in moved {
        for family in [Family::Tapered, Family::EvenDepth, Family::Unknown] {
            for first in along {
                for second in along {
                    let seen = Seen {
                        family,
                        drive: Print { height: height(drive), length: first },
                        coast: Print { height: height(coast), length: second },
                        used: false,
                    };
                    assert_eq!(read(&seen).advice, advice, "{seen:?}");
                    assert_eq!(read(&Seen { used: true, ..seen }).advice, Advice::AimForOldPrint);
                }
            }
        }
    }
}
