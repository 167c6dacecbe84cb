//! Layouts (c), (d) and (e): an invented job each, from packs as found to every setting in band.
//!
//! 14/21 teeth, 20° and 35°, pitch radius 24 mm, arm 30 mm on the pinion's shaft, as in the job of
//! layout (b). By the bevel formula k = 2·sin δ·tan α/cos β and the arm 30/24, worked out by hand:
//! a gear pack is worth 0.924 of lash per mm, a pinion pack 0.616.

use job::*;

use crate::bench::{Bench, dec, shown};
use crate::unit::{self, Found, pack};

fn gears(meshes: &[Mesh]) -> Vec<(Field, &'static str)> {
    let mut fields = vec![
        (Field::PinionTeeth, "14"),
        (Field::PinionRadius, "24"),
        (Field::PressureAngle, "20"),
        (Field::SpiralAngle, "35"),
        (Field::ArmRadius, "30.0"),
        (Field::ArmShaft, "driveshaft"),
        (Field::Low(Check::Depth), "0.62"),
        (Field::High(Check::Depth), "0.68"),
        (Field::DepthSide, "mesh"),
    ];
    for mesh in meshes {
        let lash = Check::Lash(*mesh);
        fields.extend([
            (Field::Teeth(*mesh), "21"),
            (Field::Low(lash), "0.20"),
            (Field::High(lash), "0.36"),
            (Field::Radius(*mesh), "30.0"),
            (Field::Shaft(*mesh), "driveshaft"),
        ]);
    }
    fields
}

fn limits(bearings: Bearings, low: &'static str, high: &'static str) -> [(Field, &'static str); 2] {
    let check = Check::Setting(bearings);
    [(Field::Low(check), low), (Field::High(check), high)]
}

fn predicted(bench: &Bench, check: Check) -> String {
    shown(bench.check(check).predicted.unwrap().mean, 3)
}

const FRONT: Check = Check::Lash(Mesh::Front);
const REAR: Check = Check::Lash(Mesh::Rear);
const INNER: Check = Check::Setting(Bearings::InnerShaft);
const OUTER: Check = Check::Setting(Bearings::OuterShaft);

fn twin(tin: &[(&str, &str)]) -> Bench {
    let mut fields = gears(&[Mesh::Front, Mesh::Rear]);
    fields.extend(limits(Bearings::InnerShaft, "0.05", "0.12"));
    fields.extend(limits(Bearings::OuterShaft, "0.02", "0.08"));
    let mut bench = unit::bench("c", &fields, tin);
    let packs: &[(Slot, &[&str])] = &[
        (Slot::C1, &["0.50"]),
        (Slot::C2, &["0.40", "0.10"]),
        (Slot::C3, &["0.60"]),
        (Slot::C4, &["2.10"]),
        (Slot::C5, &["3.00"]),
    ];
    let read: &[(Check, &[&str])] = &[
        (Check::Depth, &["0.65", "0.65", "0.65"]),
        (FRONT, &["0.46", "0.46", "0.47", "0.46"]),
        (INNER, &["0.09", "0.09", "0.09"]),
        (REAR, &["0.28", "0.28", "0.29", "0.28"]),
        (OUTER, &["0.05", "0.05", "0.05"]),
    ];
    unit::found(&mut bench, &Found { packs, read });
    bench
}

#[test]
fn twin_propshafts_have_their_slopes() {
    let expected = [
        "C1 depth -1.000",
        "C1 lash-front -0.616",
        "C1 lash-rear -0.616",
        "C2 inner-setting -1.000",
        "C2 lash-front -0.924",
        "C3 lash-rear -0.924",
        "C3 outer-setting -1.000",
        "C4 inner-setting -1.000",
        "C5 outer-setting 1.000",
    ];
    assert_eq!(unit::slopes(&twin(&[])), expected);
}

#[test]
fn twin_propshafts_move_the_nose_pack_and_its_spacer_together() {
    // Front lash is 0.18 too large: about 0.2 more at C2, and as much less at C4, which shares the
    // inner setting. Nothing else is touched.
    let mut bench =
        twin(&[("front race", "0.30"), ("inner spacer", "1.90"), ("rear race", "0.30")]);
    assert_eq!(unit::changed(&bench), ["C2", "C4"]);
    bench.fit_advice();
    assert_eq!(predicted(&bench, INNER), "0.090");
    assert_eq!(unit::stale(&bench), ["lash-front", "inner-setting"]);
    unit::read(
        &mut bench,
        &[(FRONT, &["0.28", "0.28", "0.28", "0.28"]), (INNER, &["0.09", "0.09", "0.08"])],
    );
    let told = bench.setup();
    assert_eq!(told.advice.status, AdviceStatus::Done);
    assert!(told.gate.is_open, "{}", told.gate.sentence);
}

#[test]
fn a_rear_pack_takes_the_ground_from_the_inner_setting() {
    let mut bench = twin(&[]);
    bench.fit(&[(Slot::C3, pack(&["0.55"]))]).unwrap();
    assert_eq!(unit::stale(&bench), ["inner-setting", "lash-rear", "outer-setting"]);
    let view = bench.check(INNER);
    let CheckState::Stale { why } = view.state else { panic!("stale") };
    assert!(why.contains("C3 changed"), "{why}");
}

const UPPER: Check = Check::Lash(Mesh::Upper);
const LOWER: Check = Check::Lash(Mesh::Lower);
const PAIR: Check = Check::Setting(Bearings::PinionPair);
const VERTICAL: Check = Check::Setting(Bearings::Vertical);

fn upper_unit(vertical: [&'static str; 2], tin: &[(&str, &str)]) -> Bench {
    let mut fields = gears(&[Mesh::Upper, Mesh::Lower]);
    fields.extend(limits(Bearings::PinionPair, "-0.06", "-0.02"));
    fields.extend(limits(Bearings::Vertical, vertical[0], vertical[1]));
    let mut bench = unit::bench("d", &fields, tin);
    let packs: &[(Slot, &[&str])] = &[
        (Slot::D1, &["0.50"]),
        (Slot::D2, &["2.00", "0.30"]),
        (Slot::D3, &["0.60"]),
        (Slot::D4, &["0.70"]),
    ];
    let read: &[(Check, &[&str])] = &[
        (PAIR, &["0.05", "0.05", "0.05"]),
        (Check::Depth, &["0.65", "0.65", "0.65"]),
        (LOWER, &["0.28", "0.28", "0.29", "0.28"]),
        (UPPER, &["0.46", "0.46", "0.46", "0.46"]),
        (VERTICAL, &["0.24", "0.24", "0.24"]),
    ];
    unit::found(&mut bench, &Found { packs, read });
    bench
}

#[test]
fn the_upper_unit_has_its_slopes() {
    let expected = [
        "D1 depth 1.000",
        "D1 lash-lower 0.616",
        "D1 lash-upper 0.616",
        "D2 pinion-setting 1.000",
        "D3 lash-lower -0.924",
        "D4 lash-upper -0.924",
        "D4 vertical-setting -1.000",
    ];
    assert_eq!(unit::slopes(&upper_unit(["0.02", "0.10"], &[])), expected);
}

#[test]
fn one_pack_meets_its_two_targets_and_the_spacer_sets_a_preload() {
    // 0.09 less spacer takes 0.05 of play to 0.04 of preload. 0.19 more at D4 brings upper lash to
    // 0.284 and the vertical play to 0.05: both targets with one pack.
    let tin = [("pinion spacer", "0.21"), ("cap race", "0.89"), ("cap race", "0.80")];
    let mut bench = upper_unit(["0.02", "0.10"], &tin);
    assert_eq!(unit::changed(&bench), ["D2", "D4"]);
    bench.fit_advice();
    assert_eq!(predicted(&bench, UPPER), "0.284");
    assert_eq!(predicted(&bench, VERTICAL), "0.050");
    // The spacer comes before depth and lashes: they are read again.
    assert_eq!(unit::stale(&bench), ["depth", "lash-lower", "lash-upper", "vertical-setting"]);
    let pair = bench.check(PAIR);
    assert_eq!((pair.judged.unwrap().mean, pair.state), (dec("-0.04"), CheckState::InBand));
    unit::read(
        &mut bench,
        &[
            (Check::Depth, &["0.65", "0.65", "0.65"]),
            (LOWER, &["0.28", "0.28", "0.28", "0.28"]),
            (UPPER, &["0.28", "0.28", "0.29", "0.28"]),
            (VERTICAL, &["0.05", "0.05", "0.06"]),
        ],
    );
    let told = bench.setup();
    assert_eq!(told.advice.status, AdviceStatus::Done, "{:?}", told.advice);
    assert!(told.gate.is_open, "{}", told.gate.sentence);
}

#[test]
fn two_targets_of_one_pack_that_do_not_overlap_are_a_conflict() {
    // The vertical play wants at least 0.04 less at D4, depth lets the pinion in by 0.03 at most: upper
    // lash is then 0.46 + 0.037 − 0.018, and 0.36 is its high limit.
    let mut bench = upper_unit(["0.28", "0.34"], &[("cap race", "0.90")]);
    let advice = bench.setup().advice;
    assert_eq!(advice.status, AdviceStatus::Conflict);
    assert_eq!(advice.conflicts.len(), 1);
    let says = "Depth, upper lash and vertical setting cannot be in band together: 0.12 mm";
    assert!(advice.conflicts[0].starts_with(says), "{:?}", advice.conflicts);
    // A second pack on the same line does not help: only the difference of the two counts.
    unit::choose(&mut bench, Slot::D4b, Some("D4b"));
    let packs: &[(Slot, &[&str])] = &[(Slot::D4b, &["0.30"])];
    unit::found(&mut bench, &Found { packs, read: &[] });
    assert_eq!(bench.setup().advice.status, AdviceStatus::Conflict);
}

#[test]
fn a_pack_on_the_same_line_and_a_washer_count_once_they_are_chosen() {
    let mut bench = upper_unit(["0.02", "0.10"], &[]);
    let has = |bench: &Bench, slot| bench.state().1.position(slot).is_some();
    assert!(has(&bench, Slot::D4) && !has(&bench, Slot::D4b) && !has(&bench, Slot::D5));
    unit::choose(&mut bench, Slot::D5, Some("D5"));
    assert!(has(&bench, Slot::D5));
    unit::choose(&mut bench, Slot::D4, None);
    assert!(!has(&bench, Slot::D4));
}

const MAIN: Check = Check::Lash(Mesh::Main);

fn single(tin: &[(&str, &str)]) -> Bench {
    let mut fields = gears(&[Mesh::Main]);
    fields.extend(limits(Bearings::PinionPair, "-0.06", "-0.02"));
    fields.extend(limits(Bearings::Propshaft, "-0.08", "-0.02"));
    let mut bench = unit::bench("e", &fields, tin);
    unit::choose(&mut bench, Slot::E1, Some("E1b"));
    let packs: &[(Slot, &[&str])] = &[
        (Slot::E1, &["0.50"]),
        (Slot::E2, &["2.00", "0.30"]),
        (Slot::E3, &["0.60"]),
        (Slot::E4, &["0.60"]),
    ];
    let read: &[(Check, &[&str])] = &[
        (PAIR, &["0.05", "0.05", "0.05"]),
        (Check::Depth, &["0.65", "0.65", "0.65"]),
        (MAIN, &["0.40", "0.40", "0.40", "0.40"]),
        (Check::END_PLAY, &["0.10", "0.10", "0.10"]),
    ];
    unit::found(&mut bench, &Found { packs, read });
    bench
}

#[test]
fn sum_and_difference_of_two_packs_set_preload_and_lash() {
    let mut bench = single(&[]);
    // E3 up by 0.15, E4 unchanged: play 0.10 becomes 0.05 of preload, half of it taken up on each
    // side, so the gear goes IN 0.15 − 0.025 = 0.125, and lash falls by 0.924 of that.
    bench.fit(&[(Slot::E3, pack(&["0.75"]))]).unwrap();
    assert_eq!(predicted(&bench, MAIN), "0.284");
    let setting = bench.check(Check::END_PLAY);
    assert_eq!((setting.judged.unwrap().mean, setting.state), (dec("-0.05"), CheckState::InBand));
    // The face-side pack alone, within the play: moves no gear, only the play.
    let mut bench = single(&[]);
    bench.fit(&[(Slot::E4, pack(&["0.65"]))]).unwrap();
    assert_eq!(predicted(&bench, MAIN), "0.400");
    assert_eq!(bench.check(Check::END_PLAY).judged.unwrap().mean, dec("0.05"));
}

#[test]
fn a_preloaded_unit_runs_to_an_open_gate() {
    let tin = [
        ("pinion spacer", "0.21"),
        ("gear race, back side", "0.75"),
        ("gear race, face side", "0.75"),
    ];
    let mut bench = single(&tin);
    bench.type_fields(&[
        (Field::Low(Check::Torque), "1.0 N·m"),
        (Field::High(Check::Torque), "2.0 N·m"),
    ]);
    assert_eq!(unit::changed(&bench), ["E2", "E3"]);
    bench.fit_advice();
    assert_eq!(unit::stale(&bench), ["depth", "lash-main"]);
    unit::read(
        &mut bench,
        &[(Check::Depth, &["0.65", "0.65", "0.65"]), (MAIN, &["0.28", "0.28", "0.29", "0.28"])],
    );
    let told = bench.setup();
    assert_eq!(told.advice.status, AdviceStatus::Done, "{:?}", told.advice);
    assert_eq!(told.next, NextAct::Read(Check::Torque));
    bench.read(Check::Torque, &["1.5", "1.5", "1.6"]);
    assert!(bench.setup().gate.is_open);
}
