//! What the influence screen, "Why this?" and the first guess are told.
//!
//! Slopes are those of golden job G1 (`tests/golden/`, calculated apart from the product): a gear
//! pack 0.994489 of lash per mm at the arm, the pinion pack 0.538681. The first guess is worked out
//! by hand.

use job::*;

use crate::bench::{Bench, dec, shown};
use crate::golden::{first_trial, second_packs};
use crate::unit::pack;

fn view(bench: &Bench) -> InfluenceView {
    let (job, sheet, tin) = bench.state();
    influence_view((&job, &sheet, &tin), Shown::default())
}

fn rows(view: &InfluenceView) -> Vec<String> {
    let row = |row: &InfluenceRow| {
        let cells = row.cells.iter().map(|cell| format!("{}{}", cell.way, cell.number));
        format!("{}: {}", row.slot.tag(), cells.collect::<Vec<_>>().join(", "))
    };
    view.rows.iter().map(row).collect()
}

#[test]
fn each_pack_disturbs_only_what_comes_after_it() {
    let bench = first_trial();
    let view = view(&bench);
    let expected = [
        "B1: falls0.10, falls0.05, falls0.05, no effect",
        "B2: no effect, falls0.10, no effect, no effect",
        "B3: no effect, no effect, falls0.10, no effect",
        "B4: no effect, no effect, no effect, falls0.10",
    ];
    assert_eq!(rows(&view), expected);
    let own: Vec<usize> =
        view.rows.iter().map(|row| row.cells.iter().position(|it| it.is_own).unwrap()).collect();
    assert_eq!(own, [0, 1, 2, 3], "the order of work");
    assert_eq!(
        view.rows[0].says,
        "pinion down 0.100, depth gap closes 0.10, both lashes fall 0.05"
    );
    assert_eq!(view.rows[0].rereads, [Check::Depth, Check::FORWARD, Check::REVERSE]);
    // B2 alone: its own 20, B3 20 and B4 10 on the way.
    assert_eq!(view.rows.iter().map(|row| row.minutes).collect::<Vec<_>>(), [60, 50, 20, 30]);
    assert_eq!(view.rows[1].cells[1].known, Known::Formula);
    assert!((view.rows[0].cells[1].strength - 0.538681).abs() < 1e-6);
    assert_eq!(view.says, "B1, B2 and B3 by the gear shape, ± 20 %.");
}

#[test]
fn it_can_be_seen_before_any_pack_is_known() {
    let mut bench = first_trial();
    bench.job = Book::new(BookId::Job("j".into()));
    assert_eq!(rows(&view(&bench))[1], "B2: no effect, falls0.10, no effect, no effect");
}

#[test]
fn without_angles_a_slope_is_a_guess_until_it_is_learnt() {
    let mut bench = first_trial();
    let cleared = [Field::PressureAngle, Field::SpiralAngle]
        .map(|field| (bench.sheet.id().clone(), Fact::FieldCleared { field }));
    bench.record(cleared.to_vec()).unwrap();
    assert_eq!(view(&bench).rows[1].cells[1].known, Known::Guess);
    bench.fit(&[(Slot::B2, pack(&["0.90"]))]).unwrap();
    bench.read(Check::FORWARD, &["0.19", "0.19", "0.19", "0.19"]);
    let view = view(&bench);
    assert_eq!(view.rows[1].cells[1].known, Known::Learnt);
    assert!(
        view.says.contains("B2 learnt from 2 trials: 1.00 of forward lash per mm"),
        "{}",
        view.says
    );
}

#[test]
fn every_number_of_an_advice_says_where_it_comes_from() {
    let mut bench = second_packs();
    bench.read(Check::Depth, &["0,68", "0,69", "0,69"]);
    bench.read(Check::FORWARD, &["0.0185 in", "0.0185 in", "0.0185 in", "0.0190 in"]);
    bench.read(Check::REVERSE, &["0,77", "0,79", "0,78", "0,78"]);
    bench.read(Check::END_PLAY, &["0.52", "0.51", "0.52"]);
    let (job, sheet, tin) = bench.state();
    let told = bench.setup();
    let all = why(&told, (&job, &sheet, &tin), Shown::default());
    let find = |what: &str| all.iter().find(|why| why.what == what).unwrap();
    let chance = find("All in band at the next build");
    assert_eq!(chance.inputs.len(), 4);
    // The product of the parts is the whole.
    let product: f64 = told.advice.predicted.iter().map(|it| it.probability).product();
    assert!((product - told.advice.probability.unwrap()).abs() < 1e-9);
    let slope = find("Forward backlash per mm at B2");
    assert_eq!(slope.formula, "−s · 2 · sin δ · tan α / cos β · R/r");
    let inputs: Vec<String> =
        slope.inputs.iter().map(|it| format!("{} {}", it.name, it.value)).collect();
    // δ = 90° − atan(13/24), tan 20°/cos 35°, 28/22: by hand.
    assert_eq!(inputs, ["s +1", "δ 61.56°", "tan α / cos β 0.444", "R/r 1.273"]);
    assert_eq!(slope.value, "-0.99 ± 0.10 mm per mm");
    let band = find("Reverse backlash at your arm");
    assert_eq!(band.value, "0.39 to 0.78 mm");
    assert_eq!(band.inputs[1].value, "40.0 mm on the propshaft");
    assert_eq!(find("Pinion depth gap per mm at B1").value, "-1.00 mm per mm");
}

#[test]
fn every_number_worked_out_has_the_decimal_mark_chosen() {
    let mut bench = second_packs();
    bench.read(Check::Depth, &["0.68", "0.69", "0.69"]);
    bench.read(Check::FORWARD, &["0.46", "0.47", "0.47", "0.48"]);
    bench.read(Check::REVERSE, &["0.77", "0.79", "0.78", "0.78"]);
    bench.read(Check::END_PLAY, &["0.52", "0.51", "0.52"]);
    let (job, sheet, tin) = bench.state();
    let comma = Shown { mark: measure::Mark::Comma, ..Shown::default() };
    let told = setup(&job, &sheet, &tin, comma);
    let whys = why(&told, (&job, &sheet, &tin), comma);
    // What a pack is made of is told as it was typed.
    let worked_out = whys.iter().filter(|why| !why.what.starts_with("Pack "));
    let mut said: Vec<String> = worked_out
        .flat_map(|why| why.inputs.iter().map(|it| &it.value).chain([&why.value, &why.source]))
        // A source is quoted as it stands.
        .map(|text| text.replace("to 0.25 %", ""))
        .collect();
    said.extend(told.trials.iter().map(|trials| trials.says.clone()));
    let view = influence_view((&job, &sheet, &tin), comma);
    said.push(view.says);
    said.extend(view.rows.into_iter().map(|row| row.says));
    let point = |text: &&String| {
        let digits: Vec<char> = text.chars().collect();
        digits.windows(3).any(|it| it[1] == '.' && it[0].is_ascii_digit() && it[2].is_ascii_digit())
    };
    assert_eq!(said.iter().filter(point).collect::<Vec<_>>(), [] as [&String; 0]);
    assert!(said.iter().any(|text| text.contains("mm per mm") && text.contains(',')), "{said:?}");
    assert!(said.iter().any(|text| text.starts_with("From 1 to 2: 1,08 mm")), "{said:?}");
}

#[test]
fn a_reading_to_come_is_its_level_and_what_the_packs_change() {
    let bench = Bench::demo();
    let (job, sheet, tin) = bench.state();
    let told = bench.setup();
    let all = why(&told, (&job, &sheet, &tin), Shown::default());
    let find = |what: &str| all.iter().find(|why| why.what == what).unwrap();
    let forward = find("Forward backlash at the next build");
    assert_eq!(forward.inputs[0].value, "0.45 mm", "one trial: the mean of its four readings");
    // Worked out from the words alone: level and every slope times change.
    let mut sum = 0.45;
    for input in &forward.inputs[1..] {
        let (slope, change) = input.value.split_once(" · ").unwrap();
        let change = change.strip_suffix(" mm").unwrap();
        sum += slope.parse::<f64>().unwrap() * change.parse::<f64>().unwrap();
    }
    let mean: f64 = forward.value.split(' ').next().unwrap().parse().unwrap();
    assert!((sum - mean).abs() < 0.006, "{sum} {mean}");
    let pack = all.iter().find(|why| why.what.starts_with("Pack ")).unwrap();
    assert!(pack.inputs.iter().any(|input| input.value.contains(", zero 0.002 mm")), "{pack:?}");
}

#[test]
fn new_parts_are_answered_with_a_first_guess_and_make_readings_stale() {
    let mut bench = first_trial();
    bench.fit(&[(Slot::B2, pack(&["0.62"]))]).unwrap();
    bench.read(Check::FORWARD, &["0.46", "0.46", "0.46", "0.46"]);
    let mark = |kind, texts, unit| PartMark::read(kind, texts, unit, Plus::More).unwrap();
    let marks = vec![
        mark(MarkKind::BearingHeight, ["14.96", "15.02"], MarkUnit::Millimetre),
        mark(MarkKind::MountingDistance, ["-1", "+2"], MarkUnit::Hundredth),
    ];
    let changed = Fact::PartsChanged { slot: Slot::B2, marks };
    bench.record(vec![(bench.job.id().clone(), changed)]).unwrap();
    let told = bench.setup();
    // 0.62 − 0.06 − 0.03.
    let guess = &told.first_guesses[0];
    assert_eq!((guess.slot, guess.old, guess.guess), (Slot::B2, dec("0.62"), dec("0.53")));
    assert_eq!(
        guess.says,
        "Begin B2 with 0.530 ± 0.10 mm, then read. It is a trial, not a result."
    );
    assert_eq!(guess.why.inputs[2].value, "0.060 mm");
    let view = bench.check(Check::FORWARD);
    let CheckState::Stale { why } = &view.state else { panic!("stale") };
    assert!(why.contains("Parts at B2 changed"), "{why}");
    // The old readings teach nothing about the new parts.
    assert_eq!(told.advice.status, AdviceStatus::ReadFirst);
    bench.fit(&[(Slot::B2, pack(&["0.53"]))]).unwrap();
    assert!(bench.setup().first_guesses.is_empty());
    bench.read(Check::FORWARD, &["0.40", "0.40", "0.40", "0.40"]);
    assert_eq!(bench.setup().advice.alarm, None);
    assert!(!matches!(bench.check(Check::FORWARD).state, CheckState::Stale { .. }));
}

#[test]
fn the_zero_of_the_micrometer_counts_once_for_each_shim() {
    let bench = Bench::demo();
    let (_, _, tin) = bench.state();
    let shims: Vec<FittedShim> = tin.shims().take(4).map(Shim::for_pack).collect();
    // Places and zero to 0.001: 2·√(4·0.001²/12/2 + (4·0.001/√12)²), by hand.
    assert_eq!(shown(pack_spread(&tin, &shims), 6), "0.002449");
}

#[test]
fn a_turned_sign_is_shown_with_its_reason() {
    let mut bench = first_trial();
    let fact = Fact::SignOverridden { position: "B3".into(), reason: "seat is aft".into() };
    bench.record(vec![(bench.sheet.id().clone(), fact)]).unwrap();
    let cautions = bench.setup().cautions;
    let says = "B3 is taken to push the other way than usual: seat is aft.";
    assert!(cautions.iter().any(|it| it == says), "{cautions:?}");
    assert_eq!(rows(&view(&bench))[2], "B3: no effect, no effect, grows0.10, no effect");
}

#[test]
fn a_held_pack_stays_and_others_are_told_with_what_they_reach() {
    let mut bench = Bench::demo();
    assert!(crate::unit::changed(&bench).contains(&"B1"));
    let (job, sheet, tin) = bench.state();
    let others = other_packs((&job, &sheet, &tin), Shown::default());
    for other in &others {
        let advised = bench.setup().advice;
        let mut changed = other.packs.iter().filter(|pack| pack.act == PackAct::Fit);
        assert!(changed.all(|pack| other.opens.contains(&pack.slot)));
        assert!(other.probability <= advised.probability.unwrap() / 0.99);
        assert!(other.says.contains(" of 100, about "), "{}", other.says);
    }
    let held = Fact::PackHeld { slot: Slot::B1, held: true };
    bench.record(vec![(bench.job.id().clone(), held)]).unwrap();
    assert!(!crate::unit::changed(&bench).contains(&"B1"));
    assert!(bench.setup().advice.packs[0].held);
}
