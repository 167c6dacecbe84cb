//! Runout: NIST/SEMATECH e-Handbook 2.3.4.4 (least-squares circle from equally spaced angles); the
//! worked numbers were run with numpy 2.4.6, `linalg.lstsq` and `fft.rfft`, which agree to 1e-15.

use measure::{Decimal, Unit, Verdict};
use workshop::runout::{Along, Cause, Face, Turn, examine, tell_apart};
use workshop::{Caution, Limits};

use crate::{amount, assert_close, assert_figure, exact, refused, sure};

fn turn(readings: &[&str]) -> Turn {
    let step = 360.0 / readings.len() as f64;
    let reading = |(index, text): (usize, &&str)| {
        let degrees = measure::real::to_decimal(step * index as f64, 3).unwrap();
        let angle = measure::Amount { value: degrees, unit: Unit::Degree };
        (angle, sure(text, Unit::Millimetre).within(0.000_289))
    };
    let readings = readings.iter().enumerate().map(reading).collect();
    Turn { readings, closing: None, limits: Limits::default() }
}

/// Case A: 8 steps of 45°, mm.
const A: [&str; 8] = ["0.000", "0.021", "0.045", "0.058", "0.049", "0.030", "0.004", "-0.009"];

#[test]
fn worked_case() {
    let found = examine(&turn(&A)).unwrap();
    assert_figure(&found.mean, 0.02475, 1e-8);
    assert_figure(&found.off_centre, 0.032865, 1e-6);
    assert_figure(found.high_spot.as_ref().unwrap(), 141.401, 1e-3);
    assert_eq!(found.total.value, exact("0.067"));
    assert_close(found.off_centre.standard(), 0.000597, 1e-6);
    // s = 0.001193 from 8 − 3 degrees of freedom.
    let squares: f64 =
        found.left.iter().map(|left| measure::real::from_decimal(*left).powi(2)).sum();
    assert_close((squares / 5.0).sqrt(), 0.001193, 1e-6);
    assert_eq!(found.left.len(), 8);
}

/// The circle does not mind where the readings lie, as long as they go round.
#[test]
fn angles_need_not_be_equal() {
    let height = |degrees: f64| 0.03 + 0.02 * (degrees - 70.0).to_radians().cos();
    let readings = [10.0, 65.0, 140.0, 200.0, 305.0].map(|degrees: f64| {
        let text = measure::real::to_decimal(height(degrees), 9).unwrap().to_string();
        (amount(&degrees.to_string(), Unit::Degree), sure(&text, Unit::Millimetre))
    });
    let found = examine(&Turn { readings: readings.to_vec(), ..turn(&A) }).unwrap();
    assert_figure(&found.off_centre, 0.02, 1e-7);
    assert_figure(&found.high_spot.unwrap(), 70.0, 1e-4);
}

#[test]
fn the_limit_is_the_users() {
    let verdict = |limit: &str| {
        let limits = Limits::at_most(amount(limit, Unit::Millimetre));
        let judged = examine(&Turn { limits, ..turn(&A) }).unwrap().judgement;
        judged.map(|judged| judged.verdict)
    };
    assert_eq!(examine(&turn(&A)).unwrap().judgement, None);
    assert_eq!(verdict("0.13"), Some(Verdict::InBand));
    assert_eq!(verdict("0.0671"), Some(Verdict::NearLimit));
    assert_eq!(verdict("0.05"), Some(Verdict::Out));
}

/// An oval of ±0.02 on a centred land: no high spot, two humps; and the readings of noise say nothing.
#[test]
fn form_is_told_from_off_centre() {
    let oval = ["0.020", "0.000", "-0.020", "0.000", "0.0205", "0.000", "-0.020", "0.0005"];
    let found = examine(&turn(&oval)).unwrap();
    assert_eq!(found.high_spot, None);
    assert_figure(found.two_lobes.as_ref().unwrap(), 0.02, 5e-4);
    let causes: Vec<_> = tell_apart(&found, None, None).unwrap();
    assert_eq!(causes.iter().map(|found| found.cause).collect::<Vec<_>>(), [Cause::OutOfRound]);
    let noise = ["0.001", "0.000", "0.001", "0.001", "0.000", "0.001", "0.000", "0.000"];
    assert_eq!(tell_apart(&examine(&turn(&noise)).unwrap(), None, None).unwrap(), []);
}

#[test]
fn a_second_place_tells_bent_from_off_centre() {
    let land = examine(&turn(&A)).unwrap();
    let alone = tell_apart(&land, None, None).unwrap();
    assert_eq!(alone[0].cause, Cause::BentOrOffCentre);
    let distance = sure("80", Unit::Millimetre).within(0.5);
    let same = tell_apart(&land, Some(Along { turn: &land, distance }), None).unwrap();
    assert_eq!(same[0].cause, Cause::OffCentre);
    assert_figure(&same[0].size, 0.032865, 1e-6);
    let straight = examine(&turn(&["0"; 8])).unwrap();
    let bent = tell_apart(&land, Some(Along { turn: &straight, distance }), None).unwrap();
    assert_eq!(bent[0].cause, Cause::Bent);
    assert_figure(&bent[0].size, 100.0 * 0.032865 / 80.0, 1e-5);
    let face = Face { turn: &land, radius: sure("30", Unit::Millimetre) };
    let cocked = tell_apart(&straight, None, Some(face)).unwrap();
    assert_eq!(cocked[0].cause, Cause::Cocked);
    assert_figure(&cocked[0].size, 100.0 * 0.032865 / 30.0, 1e-4);
    assert!(cocked[0].size.standard() > 0.0);
}

#[test]
fn an_indicator_that_does_not_come_back_is_named() {
    let closing = |text| Some(sure(text, Unit::Millimetre).within(0.000_289));
    let moved = examine(&Turn { closing: closing("0.004"), ..turn(&A) }).unwrap();
    assert_eq!(moved.cautions, [Caution::ZeroMoved]);
    assert_eq!(moved.drift.unwrap().value, exact("0.004"));
    assert_eq!(examine(&Turn { closing: closing("0"), ..turn(&A) }).unwrap().cautions, []);
}

#[test]
fn what_cannot_be_fitted_is_refused() {
    refused(examine(&turn(&A[..3])), "Angles: found 3, expected 4 to 12; read that many.");
    refused(examine(&turn(&["0"; 13])), "Angles: found 13, expected 4 to 12; read that many.");
    let mut twice = turn(&A);
    twice.readings[3].0 = amount("405", Unit::Degree);
    refused(
        examine(&twice),
        "Angles: found 45 ° twice, expected each angle once; take one of them out.",
    );
    let mut near = turn(&A[..4]);
    for (index, (angle, _)) in near.readings.iter_mut().enumerate() {
        angle.value = Decimal::from(index);
    }
    refused(
        examine(&near),
        "Angles: found 357 ° without a reading, expected 180 ° at most; read all round the turn.",
    );
}
