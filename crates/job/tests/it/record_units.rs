//! The record in the units of whoever reads it, with what was typed beside it.
//!
//! 1 in = 25.4 mm exactly, 1 psi = 6.894757 kPa, 1 lbf·ft = 1.355818 N·m (NIST SP 811, appendix B.8,
//! from memory); the readings are invented.

use job::procedure::Scope;
use job::*;
use measure::{Mark, Unit};

use crate::guided::*;
use crate::record::done;

fn read_in(hand: &Hand, units: &[Unit]) -> Record {
    let (job, sheet, _) = hand.bench.state();
    let units = units.iter().fold(Units::default(), |units, unit| units.with(*unit));
    let shown = Shown { units, mark: Mark::Point, utc_offset: 0 };
    record(&job, &sheet, Some(&hand.plan()), shown)
}

fn check(kind: &str, values: &[(&str, &[&str])]) -> Guided {
    let texts = |texts: &[&str]| texts.iter().map(|text| (*text).to_owned()).collect();
    Guided::BenchChecked {
        step: String::new(),
        place: String::new(),
        kind: kind.into(),
        values: values.iter().map(|(id, all)| ((*id).to_owned(), texts(all))).collect(),
    }
}

fn much<'a>(bench: &'a RecordBench, what: &str) -> &'a str {
    let of_that = |it: &&(String, String)| it.0 == what;
    bench.figures.iter().find(of_that).map_or("", |it| it.1.as_str())
}

fn number(text: &str) -> f64 {
    text.split(' ').next().unwrap().parse().unwrap()
}

#[test]
fn a_bench_check_is_told_in_the_readers_units_and_kept_as_typed() {
    let mut hand = Hand::new(Scope::Reseal);
    // Nothing but the case leaks: warmth and weather stand still.
    hand.write(check(
        "leak",
        &[
            ("stage", &["working"]),
            ("limit", &["110 kPa"]),
            ("pressure", &["84 kPa"]),
            ("time", &["10 min"]),
            ("most-lost", &["7 kPa"]),
            ("at", &["0 min", "5 min", "10 min"]),
            ("gauge", &["86.0 kPa", "84.0 kPa", "82.0 kPa"]),
            ("case", &["20.0 °C", "20.0 °C", "20.0 °C"]),
            ("barometer", &["101.3 kPa"]),
            ("turned", &["yes"]),
            ("moved", &["yes"]),
            ("soap", &["none"]),
            ("hose", &["tight"]),
        ],
    ));
    hand.write(check(
        "runout",
        &[
            ("readings", &["0.000 mm", "0.021 mm", "0.045 mm", "0.058 mm", "0.049 mm", "0.030 mm"]),
            ("limit", &["0.13 mm"]),
        ],
    ));
    let usual = read_in(&hand, &[]);
    let told = read_in(&hand, &[Unit::PoundPerSquareInch, Unit::Inch]);
    assert_eq!(usual.bench[0].given, told.bench[0].given, "as typed");
    assert_eq!(usual.bench[0].state, told.bench[0].state);

    let lost = |told: &Record| much(&told.bench[0], "Lost, corrected").to_owned();
    assert!((number(&lost(&usual)) - 4.0).abs() < 0.02, "{}", lost(&usual));
    assert!(lost(&usual).ends_with(" kPa, of 7 kPa allowed"), "{}", lost(&usual));
    assert!((number(&lost(&told)) - 4.0 / 6.894757).abs() < 0.003, "{}", lost(&told));
    assert!(lost(&told).ends_with(" psi, of 1.02 psi allowed"), "{}", lost(&told));
    let label = &told.bench[0].picture.as_ref().unwrap().label;
    assert!(label.contains("psi") && !label.contains("kPa"), "{label}");

    let total = |told: &Record| much(&told.bench[1], "Total").to_owned();
    assert!(total(&usual).ends_with(" mm, limit 0.13 mm"), "{}", total(&usual));
    assert!(total(&told).ends_with(" in, limit 0.00512 in"), "{}", total(&told));
    assert!((number(&total(&told)) * 25.4 - number(&total(&usual))).abs() < 0.0005);
}

#[test]
fn a_torque_and_a_reading_stand_in_both_units() {
    let hand = done();
    let told = read_in(&hand, &[Unit::PoundForceFoot, Unit::Inch]);
    let nut = told.torques.iter().find(|torque| torque.label == "Pinion nut").unwrap();
    assert_eq!(nut.asked, "100 N·m = 73.8 lbf·ft");
    assert_eq!(nut.values, "95 N·m = 70.1 lbf·ft");
    assert_eq!(
        nut.how, "Wrench set to 95 N·m = 70.1 lbf·ft, offset 40 mm = 1.575 in, dry",
        "40 mm are 1.5748 in"
    );
    let freeze = told.captured.iter().find(|step| step.step == "Freeze the packs").unwrap();
    let value = |label: &str| freeze.values.iter().find(|(own, _)| own == label).unwrap().1.clone();
    assert_eq!(value("B1 frozen"), "0.40 + 0.05 mm = 0.0177 in");
    assert_eq!(value("Forward backlash"), "18 18 18 18 mm = 0.709 0.709 0.709 0.709 in");
}
