//! Pressure and vacuum decay.
//!
//! Worked with the ideal gas law; CoolProp 8.0.0 (`PropsSI('P','D',rho,'T',288.15,'Air')`) agrees
//! with it to 0.007 % for a change of 5 K; `tests/external` goes further. The form of the correction is that of 40 CFR 1065.644.

use measure::{Decimal, Unit};
use workshop::leak::{
    Answer, Entry, Hold, Hose, Missing, Outcome, Reference, Stage, Test, blank, corrected, drop,
    examine, molar_flow, per_kelvin, rate, standard_flow,
};
use workshop::{Caution, Reading};

use crate::{amount, assert_figure, exact, refused, sure};

fn line(seconds: &str, kilopascal: &str, celsius: &str, barometer: &str) -> Entry {
    Entry {
        at: amount(seconds, Unit::Second),
        gauge: sure(kilopascal, Unit::Kilopascal),
        case: sure(celsius, Unit::Celsius),
        barometer: sure(barometer, Unit::Kilopascal),
    }
}

/// 70.000 kPa at 20 °C, barometer 101.325, cooled to 15 °C without a leak: 67.07786 kPa on the gauge.
#[test]
fn cooling_alone_is_no_leak() {
    let (first, later) =
        (line("0", "70", "20", "101.325"), line("600", "67.07786", "15", "101.325"));
    assert_figure(&drop(Stage::Working, &first, &later).unwrap(), 0.0, 1e-5);
    assert_figure(&corrected(Stage::Working, &first, &later).unwrap(), 70.0, 1e-5);
}

/// 70.0 → 68.2 kPa, barometer 101.325 → 101.150, 22 → 20.5 °C, 600 s, 1.2 L.
#[test]
fn a_leak_under_changing_weather() {
    let (first, later) = (line("0", "70", "22", "101.325"), line("600", "68.2", "20.5", "101.150"));
    let volume = sure("1.2", Unit::Litre);
    assert_figure(&drop(Stage::Working, &first, &later).unwrap(), 1.109940, 1e-6);
    let leak = rate(Stage::Working, &volume, &first, &later).unwrap();
    assert_figure(&leak, 2.219879e-3, 1e-9);
    assert_eq!(leak.unit, "Pa·m³/s");
    let moles = molar_flow(Stage::Working, &volume, &first, &later).unwrap();
    assert_figure(&moles, 9.045912e-7, 1e-12);
}

/// 1.2 L, 0.5 kPa in 300 s: 2.000e-3 Pa·m³/s = 1.184308 cm³/min at the gas's own 20 °C, 1.103509 at 0 °C.
#[test]
fn standard_flow_states_its_reference() {
    let (first, later) = (line("0", "70", "20", "101.325"), line("300", "69.5", "20", "101.325"));
    let leak = rate(Stage::Working, &sure("1.2", Unit::Litre), &first, &later).unwrap();
    assert_figure(&leak, 2e-3, 1e-12);
    let flow = |reference| standard_flow(&leak, &first.case, reference).unwrap();
    assert_figure(&flow(Reference::AsItIs), 1.184308, 1e-6);
    assert_figure(&flow(Reference::ZeroCelsius), 1.103509, 1e-6);
    assert!(flow(Reference::ZeroCelsius).unit.ends_with("at 101.325 kPa and 0 °C"));
}

/// 584.428 Pa/K at 171 325 Pa absolute, 20 °C; at 10 psi 0.0468 psi/°F.
#[test]
fn sensitivity_to_temperature() {
    let (air, room) = (sure("101.325", Unit::Kilopascal), sure("20", Unit::Celsius));
    let change = per_kelvin(&sure("70", Unit::Kilopascal), &air, &room).unwrap();
    assert_figure(&change, 0.584428, 1e-6);
    let change = per_kelvin(&sure("10", Unit::PoundPerSquareInch), &air, &room).unwrap();
    let psi = change.amount().unwrap().to(Unit::PoundPerSquareInch).unwrap().value;
    assert_eq!(measure::round(psi * exact("5") / exact("9"), 4), exact("0.0468"));
    // 0.58 kPa for each degree at 10 psi, 0.70 at 15 psi, 0.068 inHg at 10 inHg of vacuum (own
    // arithmetic).
    assert_figure(&change, 0.58, 0.005);
    let change = per_kelvin(&sure("15", Unit::PoundPerSquareInch), &air, &room).unwrap();
    assert_figure(&change, 0.70, 0.005);
    let change = per_kelvin(&sure("-10", Unit::InchOfMercury), &air, &room).unwrap();
    let inches = change.amount().unwrap().to(Unit::InchOfMercury).unwrap().value;
    assert_eq!(measure::round(inches, 3), exact("0.068"));
}

/// 15 inHg of vacuum at 20 °C cooled 5 K reads 15.2545 inHg: no loss, and the leak it would hide.
#[test]
fn cooling_hides_a_vacuum_leak() {
    let vacuum = |seconds, inches, celsius| Entry {
        gauge: sure(inches, Unit::InchOfMercury),
        ..line(seconds, "0", celsius, "101.325")
    };
    let first = vacuum("0", "15", "20");
    let tight = drop(Stage::Vacuum, &first, &vacuum("600", "15.2545", "15")).unwrap();
    assert_figure(&tight, 0.0, 2e-4);
    let hidden = drop(Stage::Vacuum, &first, &vacuum("600", "15", "15")).unwrap();
    assert!(hidden.value > exact("0.8"), "still 15 inHg after cooling is a leak");
}

#[test]
fn no_less_than_nothing() {
    let vacuum = line("0", "102", "20", "101.325");
    refused(
        drop(Stage::Vacuum, &vacuum, &vacuum),
        "Barometer at first: found 101.325 kPa, expected more than the vacuum, 102 kPa; read both again, for there is no less than nothing.",
    );
}

fn working(log: Vec<Entry>) -> Test {
    Test {
        hold: Hold {
            stage: Stage::Working,
            pressure: amount("84", Unit::Kilopascal),
            time: amount("10", Unit::Minute),
            most_lost: amount("7", Unit::Kilopascal),
            limit: amount("90", Unit::Kilopascal),
        },
        log,
        volume: Some(sure("1.2", Unit::Litre)),
        turned: Some(true),
        moved: Some(true),
        bubbles: Some(false),
        hose: Hose::NotTested,
    }
}

/// A made-up log: 84.0 → 79.8 kPa while the case cools from 24.0 to 20.6 °C.
fn log() -> Vec<Entry> {
    [("0", "84.0", "24.0"), ("300", "81.5", "22.0"), ("600", "79.8", "20.6")]
        .map(|(at, kilopascal, celsius)| {
            let mut line = line(at, kilopascal, celsius, "101.3");
            line.gauge = line.gauge.within(0.1);
            line.case = line.case.within(0.2);
            line.barometer = line.barometer.within(0.05);
            line
        })
        .to_vec()
}

#[test]
fn a_pass_needs_everything() {
    let outcome = |test: Test| examine(&test).unwrap().outcome;
    assert_eq!(outcome(working(log())), Outcome::Pass);
    let still = Test { turned: Some(false), moved: Some(false), bubbles: None, ..working(log()) };
    let missing = vec![Missing::Turned, Missing::Moved, Missing::Soap];
    assert_eq!(outcome(still), Outcome::NotYet(missing));
    let short = working(log()[..2].to_vec());
    assert_eq!(outcome(short), Outcome::NotYet(vec![Missing::Time]));
    // A unit without a rod has nothing to move.
    assert_eq!(outcome(Test { moved: None, ..working(log()) }), Outcome::Pass);
    // Bubbles need no clock.
    assert_eq!(outcome(Test { bubbles: Some(true), ..working(vec![log()[0]]) }), Outcome::Bubbles);
}

#[test]
fn a_loss_is_the_hose_until_the_hose_is_tight() {
    let lossy = |hose| {
        let mut test = Test { hose, ..working(log()) };
        test.hold.most_lost = amount("1", Unit::Kilopascal);
        examine(&test).unwrap().outcome
    };
    assert_eq!(lossy(Hose::NotTested), Outcome::TestTheHose);
    assert_eq!(lossy(Hose::Leaks), Outcome::MendTheHose);
    assert_eq!(lossy(Hose::Tight), Outcome::Leaks);
    let mut near = working(log());
    near.hold.most_lost = amount("2.3", Unit::Kilopascal);
    assert_eq!(examine(&near).unwrap().outcome, Outcome::ReadAgain);
    let hold = |minutes, allowed| Hold {
        time: amount(minutes, Unit::Minute),
        most_lost: amount(allowed, Unit::Kilopascal),
        ..near.hold
    };
    let found = blank(&hold("10", "5"), &log()).unwrap();
    assert_eq!(found.hose, Hose::Tight);
    assert_figure(&found.lost, 2.2, 0.1);
    let found = blank(&hold("10", "5"), &log()[..1]).unwrap();
    assert_eq!(found.hose, Hose::Leaks, "one line proves nothing");
    // Held 10 min of 30: a third of what the stage allows, 5/3 kPa.
    let found = blank(&hold("30", "5"), &log()).unwrap();
    assert_eq!(measure::round(found.allowed.value, 4), exact("1.6667"));
    assert_eq!(found.hose, Hose::Leaks, "2.2 of 1.7 kPa in its own time");
}

#[test]
fn the_answer_explains_itself() {
    let Answer { curve, lost, rate, least_seen, cautions, explanation, .. } =
        examine(&working(log())).unwrap();
    assert_eq!(curve.len(), 3);
    assert_eq!((curve[2].seconds, curve[2].raw), (Decimal::from(600), exact("79.8")));
    assert!(curve[2].corrected.value > exact("81.5"));
    assert!(lost.standard() > 0.1 && lost.standard() < 0.3, "{}", lost.standard());
    assert!(rate.unwrap().value > Decimal::ZERO && least_seen.unwrap().value > Decimal::ZERO);
    assert!(cautions.contains(&Caution::StoredPressure));
    assert_eq!(explanation.given.len(), 6);
}

#[test]
fn what_cannot_be_is_refused() {
    let over = |kilopascal| {
        let mut test = working(log());
        test.log[2].gauge = sure(kilopascal, Unit::Kilopascal);
        examine(&test)
    };
    assert!(over("90").is_ok());
    refused(
        over("95"),
        "Pressure: found 95 kPa, expected 90 kPa at most; stand clear of plugs and let it down now.",
    );
    let mut plan = working(log());
    plan.hold.pressure = amount("20", Unit::PoundPerSquareInch);
    refused(
        examine(&plan),
        "Pressure: found 20 psi, expected 90 kPa at most; stand clear of plugs and let it down now.",
    );
    let mut cold = working(log());
    cold.log[1].case = sure("-300", Unit::Celsius);
    refused(
        examine(&cold),
        "Case now: found -300 °C, expected no less than absolute zero, -273.15 °C; check sign and unit.",
    );
    let mut backwards = working(log());
    backwards.log.swap(1, 2);
    refused(
        examine(&backwards),
        "Time: found 300 s, expected more than the line before it, 600 s; log each line after the one before.",
    );
    refused(
        examine(&working(vec![])),
        "Lines of the log: found 0, expected 1 to 1000; read that many.",
    );
    let length = Reading::exact(Decimal::ONE, Unit::Inch);
    let mut wrong = working(log());
    wrong.volume = Some(length);
    refused(examine(&wrong), "Volume of air: found in, expected a volume; choose a unit of that.");
}
