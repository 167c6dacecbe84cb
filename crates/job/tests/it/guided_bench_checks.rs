//! A bench check kept on a step gives the step's record what it read: nothing is typed twice.

use job::guide::*;
use job::instrument::{At, Values, of_record, of_step, place_for, said};
use job::procedure::{Record, RecordKind, Scope};
use job::*;
use measure::Unit;

use crate::guided::*;

fn values(fields: &[(&str, &str)]) -> Values {
    let texts = |text: &str| text.split('|').map(str::to_owned).collect();
    fields.iter().map(|(id, text)| ((*id).to_owned(), texts(text))).collect()
}

fn keep(hand: &mut Hand, step: &str, place: &str, kind: &str, fields: &[(&str, &str)]) {
    let instrument = instrument::instrument(kind).unwrap();
    let values = instrument.kept(&values(fields), Shown::default()).unwrap();
    instrument.answer(&values, Shown::default()).unwrap();
    let (step, place, kind) = (step.to_owned(), place.to_owned(), kind.to_owned());
    hand.write(Guided::BenchChecked { step, place, kind, values });
}

fn log(hand: &Hand) -> GuideLog {
    filled(&Job::fold(&hand.bench.job), &hand.plan())
}

fn words(hand: &Hand, step: &str, label: &str) -> Option<String> {
    log(hand).capture(step, label).map(|kept| kept.value.words())
}

fn says(hand: &Hand, step: &str, label: &str) -> Option<String> {
    let plan = hand.plan();
    let step = plan.step(step).unwrap();
    said(&log(hand), step, step.record(label).unwrap(), Shown::default())
}

const TURN: &str = "0.000|0.021|0.045|0.058|0.049|0.030|0.004|-0.009";

#[test]
fn a_kept_check_is_the_steps_capture() {
    let mut hand = Hand::new(Scope::GearSet);
    let (beside, end) = ("runout beside the seal", "runout at shaft end");
    let course = |hand: &Hand| Course::of(&hand.plan(), &log(hand), &[], &hand.moment());
    let lacks = |hand: &Hand| course(hand).step("b06").unwrap().to_capture.clone();
    assert!(lacks(&hand).contains(&beside.to_owned()));

    keep(&mut hand, "b06", beside, "runout", &[("readings", TURN)]);
    let kept = log(&hand).capture("b06", beside).cloned().unwrap();
    assert_eq!(kept.check.as_deref(), Some("runout"));
    assert_eq!(kept.value.words(), "0.000 0.021 0.045 0.058 0.049 0.030 0.004 -0.009 mm");
    assert_eq!(says(&hand, "b06", beside).as_deref(), Some("Total 0.06700 ± 0.00082 mm"));
    assert!(!lacks(&hand).contains(&beside.to_owned()), "it is captured");
    assert!(lacks(&hand).contains(&end.to_owned()), "the other place is not");

    // Undone, it is wanted again; a capture typed later counts over the check.
    let undone = undo(&hand.bench.job, []);
    hand.bench.record(undone).unwrap();
    assert!(lacks(&hand).contains(&beside.to_owned()));
    keep(&mut hand, "b06", beside, "runout", &[("readings", TURN)]);
    hand.capture("b06", beside, readings(&["0.01"; 8], Unit::Millimetre));
    let kept = log(&hand).capture("b06", beside).cloned().unwrap();
    assert_eq!(
        (kept.check, kept.value.words().as_str()),
        (None, "0.01 0.01 0.01 0.01 0.01 0.01 0.01 0.01 mm")
    );
}

#[test]
fn a_check_fills_what_it_read_and_nothing_else() {
    let mut hand = Hand::new(Scope::GearSet);
    let leak = [
        ("limit", "90"),
        ("pressure", "70"),
        ("time", "10"),
        ("most-lost", "5"),
        ("at", "0|10"),
        ("gauge", "70.0|69.8"),
        ("case", "22.0|22.0"),
        ("barometer", "101.3"),
    ];
    let (low, working) = ("pressure, low stage", "pressure, working stage");
    let stage = |word| [&leak[..], &[("stage", word)]].concat();
    keep(&mut hand, "b05", low, "leak", &stage("working"));
    assert_eq!(words(&hand, "b05", low), None, "another stage than the record's");
    keep(&mut hand, "b05", working, "leak", &stage("working"));
    assert_eq!(words(&hand, "b05", working).as_deref(), Some("70.0 69.8 kPa"));
    let drag = [("torque", "0.45"), ("seals", "in")];
    let turned = |when| [&drag[..], &[("when", when)]].concat();
    keep(&mut hand, "b11b", "", "drag", &turned("break-away"));
    assert_eq!(
        words(&hand, "b11b", "rolling torque, seals in"),
        None,
        "a peak is no rolling torque"
    );
    keep(&mut hand, "b11b", "", "drag", &turned("running"));
    assert_eq!(words(&hand, "b11b", "rolling torque, seals in").as_deref(), Some("0.45 N·m"));
    // What the set-up reckons with is read on its own pad.
    keep(
        &mut hand,
        "b35",
        "",
        "drag",
        &[("torque", "0.45"), ("seals", "out"), ("when", "running")],
    );
    let plan = hand.plan();
    let step = plan.step("b35").unwrap();
    let reads = |record: &&Record| check_of(&plan, step, record).is_some();
    for record in step.records.iter().filter(reads) {
        assert_eq!(words(&hand, "b35", &record.label), None, "{}", record.label);
    }
}

#[test]
fn one_check_for_each_seal_and_one_for_two_records() {
    let mut hand = Hand::new(Scope::GearSet);
    keep(
        &mut hand,
        "b36",
        "S2",
        "seal",
        &[("depth", "1.1|1.2|1.1|1.2"), ("fitted", "to the water")],
    );
    keep(&mut hand, "b36", "S1", "seal", &[("depth", "3.1|3.2|3.3|3.2"), ("fitted", "to the oil")]);
    let label = "depth of each seal in";
    let all = "3.1 3.2 3.3 3.2 1.1 1.2 1.1 1.2 mm";
    assert_eq!(words(&hand, "b36", label).as_deref(), Some(all), "S1, then S2");
    let said = says(&hand, "b36", label).unwrap();
    assert_eq!(said.matches("Deepest less least").count(), 2, "{said}");

    keep(&mut hand, "b24", "", "land", &[("sound", "30.00"), ("worn", "29.90"), ("nail", "yes")]);
    assert_eq!(words(&hand, "b24", "land diameter").as_deref(), Some("30.00 mm"));
    let track = words(&hand, "b24", "groove depth").unwrap();
    assert!(track.starts_with("Depth of the track 0.0500"), "{track}");

    keep(&mut hand, "b25", "", "anode", &[("grade", "2")]);
    assert_eq!(words(&hand, "b25", "corrosion grade").as_deref(), Some("2"));
    keep(&mut hand, "b09", "", "anode", &[("left", "60|40")]);
    assert_eq!(words(&hand, "b09", "anode left").as_deref(), Some("60 40 %"));
}

#[test]
fn what_a_fastener_broke_out_at_is_its_torque() {
    let mut hand = Hand::new(Scope::GearSet);
    let set = [("wanted", "40"), ("wrench", "400"), ("manual", "dry"), ("threads", "dry")];
    keep(&mut hand, "b16", "", "torque", &set);
    assert_eq!(words(&hand, "b16", "pinion nut break-out"), None, "what to set is no break-out");
    let broke = [("broke-out", "85")];
    let head = [("head", "50"), ("angle", "0")];
    keep(&mut hand, "b16", "", "torque", &[&set[..], &broke[..], &head[..]].concat());
    assert_eq!(words(&hand, "b16", "pinion nut break-out"), None, "an offset head between");
    keep(&mut hand, "b16", "", "torque", &[&set[..], &broke[..]].concat());
    assert_eq!(words(&hand, "b16", "pinion nut break-out").as_deref(), Some("85 N·m"));
}

#[test]
fn a_print_answers_only_what_it_came_to() {
    let mut hand = Hand::new(Scope::GearSet);
    let print = |drive, coast, along| {
        [
            ("used", "new"),
            ("drive", drive),
            ("coast", coast),
            ("drive-along", along),
            ("coast-along", along),
        ]
    };
    keep(&mut hand, "b34b", "", "pattern", &print("tip, even depth", "root", "toe"));
    assert_eq!(words(&hand, "b34b", "pattern"), None, "the flanks differ");
    for (drive, coast, along, word) in [
        ("tip, even depth", "tip", "toe", "tip"),
        ("root, depth tapers", "root", "heel", "root"),
        ("middle, depth tapers", "middle", "heel", "heel"),
        ("middle, even depth", "middle", "middle", "centred"),
    ] {
        keep(&mut hand, "b34b", "", "pattern", &print(drive, coast, along));
        assert_eq!(words(&hand, "b34b", "pattern").as_deref(), Some(word));
    }
    assert_eq!(words(&hand, "b34b", "pattern asked by the manual"), None);
}

#[test]
fn every_layout_leads_to_its_instruments() {
    let kinds = |layout: &str| {
        let procedure = crate::procedures::procedure(layout);
        let mut kinds: Vec<&str> =
            procedure.steps.iter().flat_map(of_step).map(|instrument| instrument.kind).collect();
        kinds.sort_unstable();
        kinds.dedup();
        kinds.join(" ")
    };
    for layout in ["a", "b", "c", "d", "e"] {
        let found = kinds(layout);
        for kind in
            ["leak", "runout", "drag", "torque", "oring", "seal", "pattern", "land", "locker"]
        {
            // Layout (d) reads no runout.
            assert!(
                kind == "runout" && layout == "d" || found.split(' ').any(|other| other == kind),
                "{layout}: no {kind} in {found}"
            );
        }
    }
    let shell = Record::parse("meas:depth of each shell|mm|0.1|each").unwrap();
    assert!(of_record(&shell).is_none(), "no lip seal");
    assert_eq!(shell.kind, RecordKind::Measure);
    let procedure = crate::procedures::procedure("b");
    let step = procedure.step("b24").unwrap();
    let place = |label: &str| place_for(step, step.record(label).unwrap());
    assert_eq!((place("land diameter"), place("groove depth")), (None, None));
}

#[test]
fn a_print_names_the_pack_and_its_way_on_this_unit() {
    let print = [("used", "new"), ("drive", "tip, even depth"), ("coast", "tip")];
    let pattern = instrument::instrument("pattern").unwrap();
    let told = |bench: &crate::bench::Bench, fields: &[(&str, &str)]| {
        let (job, sheet, _) = bench.state();
        let answer = pattern.answer(&values(fields), Shown::default()).unwrap();
        pattern.of_unit(&answer, &job, &sheet, Shown::default())
    };
    let mut bench = crate::bench::Bench::demo();
    let says = told(&bench, &print);
    assert_eq!(says[0], "B1: thicker moves the pinion in. How much: from the depth gap.");
    bench.fit_advice();
    bench.read(Check::Depth, &["0.65", "0.65", "0.65", "0.65"]);
    assert_eq!(
        told(&bench, &print)[1],
        "But the depth gap is in band, 0.65 mm: leave B1 until both are read again."
    );
    let middle = [("used", "new"), ("drive", "middle, even depth"), ("coast", "middle")];
    assert!(told(&bench, &middle).is_empty(), "nothing is to be moved");
}

/// A tight case: 70 kPa for ten minutes, turned and moved, without a bubble (made up).
fn stage(hand: &mut Hand, step: &str, word: &str, end: &str) {
    let fields = [
        ("stage", word),
        ("limit", "90"),
        ("pressure", "70"),
        ("time", "10"),
        ("most-lost", "5"),
        ("at", "0|10"),
        ("gauge", end),
        ("case", "20.0|20.0"),
        ("barometer", "101.325"),
        ("acts", "3.17|5.67|7.70"),
        ("soap", "none"),
    ];
    keep(hand, step, "", "leak", &fields);
}

#[test]
fn the_stages_of_one_test_are_kept_side_by_side() {
    let mut hand = Hand::new(Scope::GearSet);
    let leak = instrument::instrument("leak").unwrap();
    let field = leak.fields.iter().find(|asked| asked.id == "stage").unwrap();
    let notes = |hand: &Hand, step: &str| {
        let at = At { sheet: &Sheet::default(), log: &log(hand), step };
        leak.notes(field, &Values::new(), Shown::default(), Some(at))
    };
    assert_eq!(notes(&hand, ""), ["", "", "", ""]);
    stage(&mut hand, "", "low", "70.000|69.900");
    stage(&mut hand, "", "working", "70.000|60.000");
    keep(
        &mut hand,
        "",
        "",
        "leak",
        &[("stage", "not applicable"), ("because", "one-way input seal")],
    );
    assert_eq!(notes(&hand, ""), ["held", "out", "", "reason kept"]);
    assert_eq!(notes(&hand, "b42"), ["", "", "", ""], "another test");
    // The later check of a stage counts.
    stage(&mut hand, "", "working", "70.000|69.800");
    assert_eq!(notes(&hand, ""), ["held", "held", "", "reason kept"]);
    assert_eq!(log(&hand).checks.len(), 3);
}

/// The thermometer that was read last counts for the step, not the way there.
#[test]
fn the_newest_temperature_is_the_steps() {
    let mut hand = Hand::new(Scope::GearSet);
    let plan = hand.plan();
    let step = plan.step("b28").unwrap();
    let is_fit = |record: &&Record| of_record(record).is_some_and(|it| it.kind == "fit");
    let label = step.records.iter().find(is_fit).unwrap().label.clone();
    let fields = [
        ("way", "outer part heated"),
        ("diameter", "72.000"),
        ("interference", "0.050"),
        ("clearance", "0.030"),
        ("outer", "aluminium"),
        ("inner", "steel"),
        ("part", "case"),
        ("room", "20"),
        ("read-at", "2.00|5.50"),
        ("thermometer", "60|90"),
    ];
    keep(&mut hand, "b28", "", "fit", &fields);
    assert_eq!(words(&hand, "b28", &label).as_deref(), Some("90 °C"));
}
