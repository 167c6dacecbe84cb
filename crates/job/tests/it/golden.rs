//! A golden job calculated apart from the product: invented unit one, layout (b), four positions.
//!
//! Its numbers were worked out twice by other programs (standard-library Python, and numpy), which
//! agree to 1e-9. Its inch gauge steps 0.0005 in, while this crate takes the last digit typed, so the
//! forward series is compared by its mean only.

use job::*;

use crate::bench::{Bench, dec, mm, shown};

const SHEET: [(Field, &str); 21] = [
    (Field::PinionTeeth, "13"),
    (Field::Teeth(Mesh::Forward), "24"),
    (Field::Teeth(Mesh::Reverse), "24"),
    (Field::PinionRadius, "22.0"),
    (Field::PressureAngle, "20"),
    (Field::SpiralAngle, "35"),
    // Known to ± 0.5 mm in the golden job: half the last digit typed.
    (Field::ArmRadius, "28"),
    (Field::ArmShaft, "driveshaft"),
    (Field::Low(Check::Depth), "0.62"),
    (Field::High(Check::Depth), "0.68"),
    (Field::DepthSide, "mesh"),
    (Field::Low(Check::FORWARD), "0.24"),
    (Field::High(Check::FORWARD), "0.42"),
    (Field::Radius(Mesh::Forward), "25.4"),
    (Field::Shaft(Mesh::Forward), "driveshaft"),
    (Field::Low(Check::REVERSE), "0.30"),
    (Field::High(Check::REVERSE), "0.60"),
    (Field::Radius(Mesh::Reverse), "40"),
    (Field::Shaft(Mesh::Reverse), "propshaft"),
    (Field::Low(Check::END_PLAY), "0.15"),
    (Field::High(Check::END_PLAY), "0.45"),
];

fn pack(texts: &[&str]) -> Vec<FittedShim> {
    texts.iter().map(|text| FittedShim::Measured(mm(text))).collect()
}

/// The golden job after its first trial.
pub fn first_trial() -> Bench {
    let mut bench = Bench::new();
    let (sheet, job) = (bench.sheet.id().clone(), bench.job.id().clone());
    let opened = Fact::SheetOpened { name: "Invented unit one".into(), layout: "b".into() };
    bench.record(vec![(sheet, opened)]).unwrap();
    bench.type_fields(&SHEET);
    let (boat, complaint) = ("Invented".to_owned(), String::new());
    let opened = Fact::JobOpened { boat, complaint, sheet: "s".into(), number: 1 };
    bench.record(vec![(job, opened)]).unwrap();
    let (state, ..) = bench.state();
    let found = [
        record_found(&state, Slot::B1, pack(&["0.500", "0.1005"])),
        record_found(&state, Slot::B2, pack(&["0.5995"])),
        record_found(&state, Slot::B3, pack(&["0.400", "0.1495"])),
        record_found(&state, Slot::B4, pack(&["1.200"])),
    ];
    bench.record(found.to_vec()).unwrap();
    bench.read(Check::Depth, &["0.74", "0.74", "0.74"]);
    bench.read(Check::FORWARD, &["0,0190 in", "0,0195 in", "0,0195 in", "0,0190 in"]);
    bench.read(Check::REVERSE, &["0.90", "0.90", "0.91", "0.90"]);
    bench.read(Check::END_PLAY, &["0,52", "0,53", "0,52"]);
    bench
}

/// The golden job with the packs of its second trial fitted.
pub fn second_packs() -> Bench {
    let mut bench = first_trial();
    let packs = [(Slot::B1, pack(&["0.500", "0.150"])), (Slot::B3, pack(&["0.400", "0.2505"]))];
    bench.fit(&packs).unwrap();
    bench
}

/// Mean, u to five places, and verdict of a check as it stands.
fn judged(bench: &Bench, check: Check) -> (String, String, CheckState) {
    let judged = bench.check(check).judged.unwrap();
    let u = judged.expanded / dec("2");
    (shown(judged.mean, 6), shown(u, 5), judged.state)
}

fn row(mean: &str, u: &str, state: CheckState) -> (String, String, CheckState) {
    (mean.into(), u.into(), state)
}

#[test]
fn bands_at_the_arm() {
    let bench = first_trial();
    let band = |check| {
        let band = bench.check(check).band.unwrap();
        [shown(band.low(), 6), shown(band.high(), 6)]
    };
    assert_eq!(band(Check::FORWARD), ["0.264567", "0.462992"]);
    assert_eq!(band(Check::REVERSE), ["0.387692", "0.775385"]);
}

#[test]
fn readings_and_verdicts_of_both_trials() {
    let bench = first_trial();
    use CheckState::{NearLimit, Out};
    assert_eq!(judged(&bench, Check::Depth), row("0.740000", "0.00289", Out));
    assert_eq!(judged(&bench, Check::FORWARD).0, "0.488950");
    assert_eq!(judged(&bench, Check::REVERSE), row("0.902500", "0.01006", Out));
    assert_eq!(judged(&bench, Check::END_PLAY), row("0.523333", "0.00441", Out));

    let mut bench = second_packs();
    bench.read(Check::Depth, &["0,68", "0,69", "0,69"]);
    bench.read(Check::FORWARD, &["0.0185 in", "0.0185 in", "0.0185 in", "0.0190 in"]);
    bench.read(Check::REVERSE, &["0,77", "0,79", "0,78", "0,78"]);
    bench.read(Check::END_PLAY, &["0.52", "0.51", "0.52"]);
    assert_eq!(judged(&bench, Check::Depth), row("0.686667", "0.00441", NearLimit));
    assert_eq!(judged(&bench, Check::FORWARD).0, "0.473075");
    assert_eq!(judged(&bench, Check::REVERSE), row("0.780000", "0.00947", NearLimit));
    assert_eq!(judged(&bench, Check::END_PLAY), row("0.516667", "0.00441", Out));
    // None of the four was a surprise.
    let setup = bench.setup();
    assert_eq!(setup.advice.alarm, None);
    assert!(setup.checks.iter().all(|view| !view.disagrees));
}

#[test]
fn the_second_trial_is_forecast_from_the_first() {
    let bench = second_packs();
    let forecast = |check| {
        let predicted = bench.check(check).predicted.unwrap();
        [shown(predicted.mean, 5), shown(predicted.expanded / dec("2"), 5)]
    };
    assert_eq!(forecast(Check::Depth), ["0.69050", "0.00841"]);
    assert_eq!(forecast(Check::FORWARD)[0], "0.46229");
    assert_eq!(forecast(Check::REVERSE), ["0.77539", "0.01633"]);
    let states: Vec<bool> = bench
        .setup()
        .checks
        .iter()
        .map(|view| matches!(view.state, CheckState::Stale { .. }))
        .collect();
    assert_eq!(states, [true, true, true, false], "B1 and B3 do not touch end play");
}

#[test]
fn a_shim_is_worth_what_the_golden_slopes_say() {
    let (_, sheet, _) = first_trial().state();
    let slopes: Vec<String> = expected_slopes(&sheet)
        .into_iter()
        .map(|(slot, check, slope)| format!("{} {} {slope:.6}", slot.tag(), check.id()))
        .collect();
    let mut expected = vec![
        "B1 depth -1.000000",
        "B1 lash-forward -0.538681",
        "B1 lash-reverse -0.538681",
        "B2 lash-forward -0.994489",
        "B3 lash-reverse -0.994489",
        "B4 end-play -1.000000",
    ];
    expected.sort_unstable();
    let mut slopes = slopes;
    slopes.sort_unstable();
    assert_eq!(slopes, expected);
}
