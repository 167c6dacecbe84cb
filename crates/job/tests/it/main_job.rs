//! The main job from an empty bench to a printed record, on an invented unit.
//!
//! The unit is 14/21 teeth, 20° and 35°, pinion pitch radius 24 mm, arm 30 mm on the driveshaft.
//! Expected numbers are worked out by hand from the tooth geometry of a bevel pair,
//! k = 2·sin δ·tan α/cos β, and by `tests/e2e/hand_check.py`, which shares no code with this crate.

use job::*;
use measure::Unit;

use crate::bench::{Bench, MINUTE, dec, shown};

const SHEET: [(Field, &str); 19] = [
    (Field::PinionTeeth, "14"),
    (Field::Teeth(Mesh::Forward), "21"),
    (Field::Teeth(Mesh::Reverse), "21"),
    (Field::PinionRadius, "24"),
    (Field::PressureAngle, "20"),
    (Field::SpiralAngle, "35"),
    (Field::ArmRadius, "30.0"),
    (Field::ArmShaft, "driveshaft"),
    (Field::Low(Check::Depth), "0.62"),
    (Field::High(Check::Depth), "0.68"),
    (Field::DepthSide, "mesh"),
    (Field::Low(Check::FORWARD), "0.20"),
    (Field::High(Check::FORWARD), "0.35"),
    (Field::Radius(Mesh::Forward), "22"),
    (Field::Shaft(Mesh::Forward), "driveshaft"),
    (Field::Low(Check::REVERSE), "0.30"),
    (Field::High(Check::REVERSE), "0.55"),
    (Field::Radius(Mesh::Reverse), "22"),
    (Field::Shaft(Mesh::Reverse), "driveshaft"),
];

const SHIMS: [(&str, &str, &str); 12] = [
    ("driveshaft", "0.152", "0.154"),
    ("driveshaft", "0.202", "0.202"),
    ("driveshaft", "0.053", "0.053"),
    ("driveshaft", "0.302", "0.302"),
    ("forward race", "0.252", "0.252"),
    ("forward race", "0.303", "0.301"),
    ("forward race", "0.203", "0.203"),
    ("forward race", "0.102", "0.102"),
    ("reverse", "0.152", "0.152"),
    ("reverse", "0.252", "0.252"),
    ("reverse", "0.102", "0.104"),
    ("reverse", "0.052", "0.052"),
];

/// The bench with the sheet typed, the tin filled and the packs written down.
pub fn ready() -> Bench {
    let mut bench = Bench::new();
    let sheet = bench.sheet.id().clone();
    let opened = Fact::SheetOpened { name: "Invented 14/21".into(), layout: "b".into() };
    bench.record(vec![(sheet, opened)]).unwrap();
    bench.type_fields(&SHEET);
    for (number, (family, one, other)) in SHIMS.into_iter().enumerate() {
        let texts = ShimTexts { places: [one, other], zero: "0.002", marked: "" };
        let name = format!("shim-{number}");
        let unit = Unit::Millimetre;
        let preview = shim_preview(texts, unit, (&name, family, 1), Shown::default());
        bench.record(vec![(BookId::Tin, preview.fact.unwrap())]).unwrap();
    }
    let id = bench.job.id().clone();
    let opened = Fact::JobOpened {
        boat: "Grey Heron".into(),
        complaint: "Whines ahead".into(),
        sheet: "s".into(),
        number: 27,
    };
    bench.record(vec![(id, opened)]).unwrap();
    for (slot, texts) in
        [(Slot::B1, ["0.50", "0.10"]), (Slot::B2, ["0.40", "0.15"]), (Slot::B3, ["0.30", "0.20"])]
    {
        let (job, ..) = bench.state();
        let preview = pack_preview(&job, slot, &texts, Unit::Millimetre, Shown::default());
        bench.record(vec![preview.fact.unwrap()]).unwrap();
    }
    bench
}

/// The bench with everything read as found; forward in inches, with a comma.
pub fn read() -> Bench {
    let mut bench = ready();
    bench.read(Check::Depth, &["0.71", "0.72", "0.71"]);
    bench.read(Check::FORWARD, &["0,0220 in", "0,0225 in", "0,0220 in", "0,0220 in"]);
    bench.read(Check::REVERSE, &["0.72", "0.71", "0.73", "0.72"]);
    bench
}

#[test]
fn the_bands_are_carried_to_the_arm() {
    let (_, sheet, _) = ready().state();
    let at_arm = |check| {
        let band = sheet.band_at_arm(check).unwrap();
        [shown(band.low(), 3), shown(band.high(), 3)]
    };
    // 0.20 · 30/22 = 0.2727, 0.35 · 30/22 = 0.4773; 0.30 · 30/22 = 0.4091, 0.55 · 30/22 = 0.75.
    assert_eq!(at_arm(Check::FORWARD), ["0.273", "0.477"]);
    assert_eq!(at_arm(Check::REVERSE), ["0.409", "0.750"]);
    assert_eq!(at_arm(Check::Depth), ["0.620", "0.680"]);
}

#[test]
fn a_shim_is_worth_what_the_tooth_geometry_says() {
    let (_, sheet, _) = ready().state();
    let slopes = expected_slopes(&sheet);
    let slope = |slot, check| {
        let found = slopes.iter().find(|(s, c, _)| (*s, *c) == (slot, check));
        format!("{:.4}", found.unwrap().2)
    };
    // k gear 0.7394, k pinion 0.4929, times 30/24; a thicker pack closes the mesh.
    assert_eq!(slope(Slot::B2, Check::FORWARD), "-0.9243");
    assert_eq!(slope(Slot::B1, Check::FORWARD), "-0.6162");
    assert_eq!(slope(Slot::B1, Check::Depth), "-1.0000");
    assert_eq!(
        expected_says(&sheet, Shown::default()),
        "Expected lash per mm of shim at 30.0 mm: 0.62 at B1, 0.92 at B2 and 0.92 at B3."
    );
    let (job, sheet, tin) = ready().state();
    let says = |slot, by| what_if((&job, &sheet, &tin), slot, dec(by), Shown::default()).says;
    assert_eq!(says(Slot::B2, "0.095"), "gear aft 0.095, lash falls 0.09");
    assert_eq!(says(Slot::B2, "-0.10"), "gear forward 0.100, lash grows 0.09");
    assert_eq!(
        says(Slot::B1, "0.10"),
        "pinion down 0.100, depth gap closes 0.10, both lashes fall 0.06"
    );
    assert_eq!(says(Slot::B3, "0"), "as it lies");
}

#[test]
fn each_shim_is_the_mean_of_two_places_less_the_zero() {
    let (.., tin) = ready().state();
    let nets: Vec<String> = tin.rows("driveshaft").iter().map(|row| shown(row.net, 4)).collect();
    assert_eq!(nets, ["0.3000", "0.2000", "0.1510", "0.0510"]);
    assert_eq!(tin.count(), 12);
    assert_eq!(tin.last_zero().map(ToString::to_string).as_deref(), Some("0.002 mm"));
}

#[test]
fn the_reading_screen_waits_and_then_judges() {
    let bench = ready();
    let words = |texts: &[&str]| bench.preview(Check::Depth, texts).dock.words();
    assert_eq!(words(&[]), "Read 0° first");
    assert_eq!(words(&["0.65"]), "Read 120° first");
    assert_eq!(words(&["0.65", "", "0.66"]), "Read 120° first");
    assert_eq!(words(&["0.65", "0.6.6", "0.66"]), "Type 120° again");
    assert_eq!(words(&["0.65", "0.65", "0.66"]), "Keep these 3 readings");
    assert_eq!(words(&["0.68", "0.68", "0.67"]), "Near limit: read again");
    assert_eq!(words(&["0.71", "0.72", "0.71"]), "Keep and see what to fit");

    let lash = bench.preview(Check::FORWARD, &["0.38", "0.40", "0.37", "0.38"]);
    let judged = lash.judged.unwrap();
    // The golden jobs' rule for u (R1.2). Mean 1.53/4 = 0.3825; s² = (0.0025² + 0.0175² + 0.0125² + 0.0025²)/3 = 0.00015833;
    // u² = s²/4 + 0.01²/12 + (0.3825 · 0.05/√3/30)² → 2u = 0.013854.
    assert_eq!((judged.mean, judged.spread), (dec("0.3825"), dec("0.03")));
    assert_eq!(shown(judged.expanded, 4), "0.0139");
    assert_eq!(judged.state, CheckState::InBand);
    assert_eq!(lash.band_says, "Band 0.20–0.35 at 22.0 mm from your sheet, shown at your arm.");
    assert_eq!(lash.predicted, None);
    // The smallest place is under 0.2727 while the mean is not.
    let tight = bench.preview(Check::FORWARD, &["0.26", "0.40", "0.40", "0.40"]);
    assert_eq!(tight.judged.unwrap().state, CheckState::TightSpot);
}

#[test]
fn an_arm_typed_at_the_reading_moves_the_band() {
    let (job, sheet, tin) = ready().state();
    let texts = ["0.30"; 4];
    let unit = Unit::Millimetre;
    let at = |arm| {
        preview((&job, &sheet, &tin), Check::FORWARD, &texts, unit, Some(arm), Shown::default())
    };
    // At the sheet's own radius the band is the sheet's.
    let band = at("22").band.unwrap();
    assert_eq!((band.low(), band.high()), (dec("0.20"), dec("0.35")));
    assert_eq!(at("0").dock, Dock::TypeArm);
}

#[test]
fn as_found_depth_is_out_and_the_advice_is_the_hand_checked_one() {
    let bench = read();
    let setup = bench.setup();
    let states: Vec<String> = setup.checks.iter().map(|view| view.state.to_string()).collect();
    // Forward: 0.0220 in and three like it are 0.5588 to 0.5715 mm, above 0.4773.
    assert_eq!(states, ["Out", "Out", "In band"]);
    let advice = &setup.advice;
    assert_eq!(advice.status, AdviceStatus::Fit);
    assert_eq!(advice.headline, "Fit next: B1, B2 and B3");
    assert_eq!(advice.minutes, 70);
    let packs: Vec<Vec<String>> = advice
        .packs
        .iter()
        .map(|pack| {
            let mut nets: Vec<_> = pack.shims.iter().map(|shim| shim.net).collect();
            nets.sort();
            nets.into_iter().rev().map(|net| shown(net, 3)).collect()
        })
        .collect();
    assert_eq!(packs, [["0.500", "0.151"], ["0.400", "0.300"], ["0.300", "0.250"]]);
    assert!((advice.probability.unwrap() - 0.966596).abs() < 1e-6);
    let predicted: Vec<[String; 2]> = advice
        .predicted
        .iter()
        .map(|it| [shown(it.mean, 4), shown(it.expanded / dec("2"), 4)])
        .collect();
    assert_eq!(predicted, [["0.6623", "0.0096"], ["0.3919", "0.0169"], ["0.6424", "0.0164"]]);
    let first = &advice.packs[0];
    assert_eq!(first.says, "Take out 0.100. Put in 0.151, in the tin.");
    let counts: Vec<&str> = first.shims.iter().map(|shim| shim.count.as_str()).collect();
    assert!(counts.contains(&"1 of 1") && counts.contains(&"in the case"), "{counts:?}");
    assert_eq!(advice.reopens_says, "Reopens: depth, forward lash and reverse lash.");
    // 0.6623 is 0.0177 from 0.68; forward 0.4773 − 0.3919 = 0.0854, ± 0.0338.
    assert_eq!(advice.predicted[0].says, "Margin 0.02 to the nearest limit, less than the ±.");
    assert_eq!(advice.predicted[1].says, "Margin 0.09 to the nearest limit, 2 times the ±.");
    assert_eq!(setup.next.words(), "B1, B2 and B3 are fitted. Read depth");
    assert!(!setup.gate.is_open);
    assert_eq!(
        setup.gate.sentence,
        "Depth, forward lash and reverse lash all in band in one assembly. 1 of 3 now."
    );
}

#[test]
fn fitting_takes_from_the_tin_puts_back_and_makes_stale() {
    let mut bench = read();
    bench.fit_advice();
    let (job, sheet, tin) = bench.state();
    // Three shims went out and three came back.
    assert_eq!(tin.count(), 12);
    assert_eq!(tin.in_stock("driveshaft", dec("0.151")), 0);
    assert_eq!(tin.in_stock("driveshaft", dec("0.10")), 1);
    assert_eq!(tin.in_stock("forward race", dec("0.15")), 1);
    assert_eq!(job.pack(Slot::B1).unwrap().total(), dec("0.651"));
    let setup = bench.setup();
    let fitted_at = hour_minute(bench.at, 0);
    let read_at = hour_minute(bench.at - 3 * MINUTE, 0);
    assert_eq!(
        setup.checks[0].state,
        CheckState::Stale {
            why: format!("Read {read_at}. B1 changed {fitted_at}, so read it again.")
        }
    );
    assert!(setup.checks.iter().all(|view| matches!(view.state, CheckState::Stale { .. })));
    assert_eq!(setup.advice.headline, "Read depth first");
    assert_eq!(setup.advice.says, "Then forward lash and reverse lash.");
    assert_eq!(setup.next.words(), "Read depth again");
    assert!(setup.gate.is_stale);
    let card = bench_card(&job, &sheet, bench.at, Shown::default());
    assert_eq!(
        (card.line.as_str(), card.trouble.as_str()),
        ("Shim, 0 of 3 in band", "3 readings stale")
    );
    assert_eq!(card.stages[3], Stage { name: "Shim", state: StageState::Stale });
    assert_eq!(card.stages[0].state, StageState::NotRecorded);
    let draft = record(&job, &sheet, None, Shown::default()).draft;
    assert_eq!(draft.len(), 3);
    assert!(draft[0].starts_with("Pinion depth gap is stale. Read "), "{}", draft[0]);
}

#[test]
fn the_next_readings_agree_and_the_record_is_final() {
    let mut bench = read();
    bench.fit_advice();
    // Hidden until the series is full, then the engine's 0.6623 ± 0.0192.
    assert_eq!(bench.preview(Check::Depth, &["0.66", "0.66"]).predicted, None);
    let full = bench.preview(Check::Depth, &["0.66", "0.66", "0.66"]);
    assert_eq!(shown(full.predicted.unwrap().mean, 4), "0.6623");
    assert_eq!(full.dock.words(), "Keep these 3 readings");
    bench.read(Check::Depth, &["0.66", "0.66", "0.66"]);
    assert_eq!(bench.setup().next.words(), "Read forward lash again");
    bench.read(Check::FORWARD, &["0,0155 in", "0,0155 in", "0,0155 in", "0,0150 in"]);
    bench.read(Check::REVERSE, &["0.64", "0.65", "0.64", "0.64"]);

    let setup = bench.setup();
    assert!(setup.checks.iter().all(|view| view.state == CheckState::InBand));
    assert!(setup.checks.iter().all(|view| !view.disagrees));
    assert_eq!(setup.advice.status, AdviceStatus::Done);
    assert_eq!(setup.advice.headline, "Leave the packs");
    assert!(setup.gate.is_open);
    assert_eq!(setup.next, NextAct::PrintRecord);

    let (job, sheet, _) = bench.state();
    let record = record(&job, &sheet, None, Shown::default());
    assert_eq!(record.draft, [] as [String; 0]);
    let forward = &record.checks[1];
    assert_eq!(shown(forward.found.as_ref().unwrap().mean, 2), "0.56");
    assert_eq!(shown(forward.left.as_ref().unwrap().mean, 2), "0.39");
    assert_eq!(record.packs[1].found, [dec("0.40"), dec("0.15")]);
    assert_eq!(record.packs[1].total, dec("0.70"));
    assert_eq!(
        record.arm_says,
        "Backlash read at a 30.0 mm arm on the driveshaft, mean of 4 positions."
    );
    assert_eq!(record.not_recorded, "Not recorded here: Look, Strip, Judge, Close and Prove.");
    let said: Vec<&str> = record.history.iter().map(|(_, said)| said.as_str()).collect();
    assert!(
        said.contains(&"Forward backlash read 0,0220 0,0225 0,0220 0,0220 in at the 30.0 mm arm.")
    );
    assert!(said.contains(&"B1 found: 0.50 + 0.10 = 0.600 mm."));
    let trials = &setup.trials[1];
    let points: Vec<[String; 2]> =
        trials.points.iter().map(|it| [shown(it.pack, 3), shown(it.reading, 2)]).collect();
    assert_eq!(points, [["0.550", "0.56"], ["0.700", "0.39"]]);
    assert_eq!(trials.says, "The last two trials say nothing about this pack alone.");
}
