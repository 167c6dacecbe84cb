//! Bad input: one sentence at the field, what was typed stays with the screen, nothing is stored.

use job::*;
use measure::Unit;

use crate::bench::Bench;

/// The sentence for a field of an otherwise empty sheet.
fn refusal(field: Field, text: &str) -> String {
    type_in(&Sheet::default(), field, text, Unit::Millimetre).unwrap_err().to_string()
}

#[test]
fn numbers_that_are_none() {
    let low = |text| refusal(Field::Low(Check::FORWARD), text);
    assert_eq!(low(""), "Nothing typed. Type a number.");
    assert_eq!(low("abc"), "abc does not start with a number. Type digits first, like 0.38.");
    assert_eq!(low("1,250.0"), "Two decimal marks in 1,250.0. Type one.");
    assert_eq!(low("0.3.8"), "Two decimal marks in 0.3.8. Type one.");
    assert_eq!(low("-0.20"), "Minus in -0.20. This field takes zero or more.");
    assert_eq!(low("0"), "0 is not above zero. This field takes more than zero.");
    assert_eq!(low("0.20 kPa"), "kPa is a pressure. This field takes a length: mm or in.");
    assert_eq!(low("1001"), "1001 mm is longer than a metre. Read the page again.");
}

#[test]
fn fields_that_are_no_lengths() {
    let teeth = |text| refusal(Field::PinionTeeth, text);
    assert_eq!(teeth(""), "Nothing typed. Type a number.");
    for text in ["14.5", "2", "-14", "abc"] {
        let sentence =
            format!("{text} is not a number of teeth from 3 to 500. Count them, like 14.");
        assert_eq!(teeth(text), sentence);
    }
    assert_eq!(
        refusal(Field::PressureAngle, "70"),
        "70° is outside 5° to 45°. Read the page again."
    );
    assert_eq!(refusal(Field::ArmShaft, ""), "Nothing chosen. Choose one.");
    assert_eq!(
        refusal(Field::Source(Check::Depth), " "),
        "Nothing typed for the depth source. Type it, like: own manual, p. 118."
    );
}

#[test]
fn an_arm_without_a_radius() {
    let sentence = "The arm radius is 0. Measure it from the middle of the shaft, like 30.0.";
    assert_eq!(refusal(Field::ArmRadius, "0"), sentence);
    assert_eq!(refusal(Field::ArmRadius, "0.0 in"), sentence);
}

#[test]
fn limits_that_make_no_band() {
    let pair = |low, high| {
        let typed = [
            (Field::Low(Check::FORWARD), low, Unit::Millimetre),
            (Field::High(Check::FORWARD), high, Unit::Millimetre),
        ];
        let refusals = read_fields(&Sheet::default(), &typed).unwrap_err();
        assert_eq!(refusals[0].0, Field::High(Check::FORWARD));
        refusals[0].1.to_string()
    };
    assert_eq!(
        pair("0.35", "0.20"),
        "Low 0.35 is above high 0.20. Read the page again, or swap them."
    );
    assert_eq!(
        pair("0.20", "0.20"),
        "Low and high are both 0.20. Type the two limits of the band."
    );
}

#[test]
fn limits_are_held_against_what_the_sheet_has_and_a_band_can_move() {
    let mut bench = Bench::demo();
    let (_, sheet, _) = bench.state();
    let alone = type_in(&sheet, Field::Low(Check::FORWARD), "0.40", Unit::Millimetre).unwrap_err();
    assert_eq!(
        alone.to_string(),
        "Low 0.40 is above high 0.35. Read the page again, or swap them."
    );
    let aim = type_in(&sheet, Field::Aim(Check::Depth), "0.70", Unit::Millimetre).unwrap_err();
    assert_eq!(aim.to_string(), "Aim 0.70 is outside 0.62 to 0.68. Type one inside the band.");
    // In inches the sentence is in inches.
    let inches =
        type_in(&sheet, Field::Low(Check::FORWARD), "0.02", Unit::Inch).unwrap_err().to_string();
    assert!(inches.starts_with("Low 0.02 is above high 0.01377"), "{inches}");
    // Typed together, low may pass the old high.
    bench.type_fields(&[
        (Field::Low(Check::FORWARD), "0.40"),
        (Field::High(Check::FORWARD), "0.50"),
    ]);
    let (_, sheet, _) = bench.state();
    assert_eq!(sheet.band(Check::FORWARD).unwrap().low().to_string(), "0.40");
    // The log itself refuses too.
    let value = FieldValue::Number(crate::bench::mm("0.60"));
    let fact = Fact::FieldTyped { field: Field::Low(Check::FORWARD), value };
    let refused = bench.record(vec![(bench.sheet.id().clone(), fact)]).unwrap_err();
    assert_eq!(
        refused.to_string(),
        "Low 0.60 is above high 0.50. Read the page again, or swap them."
    );
}

#[test]
fn inches_in_a_millimetre_field_are_kept_and_doubted() {
    let typed = [
        (Field::Low(Check::REVERSE), "0.012", Unit::Millimetre),
        (Field::High(Check::REVERSE), "0.024", Unit::Millimetre),
        (Field::ArmRadius, "1.181", Unit::Millimetre),
        (Field::Low(Check::FORWARD), "0.20", Unit::Inch),
        (Field::Low(Check::Depth), "40", Unit::Millimetre),
        (Field::High(Check::Depth), "0.66", Unit::Millimetre),
    ];
    let mut bench = Bench::new();
    let id = bench.sheet.id().clone();
    let opened = Fact::SheetOpened { name: "Invented".into(), layout: "b".into() };
    bench.record(vec![(id.clone(), opened)]).unwrap();
    for one in typed.chunks(1) {
        let Ok(facts) = read_fields(&Sheet::fold(&bench.sheet), one) else { continue };
        bench.record(facts.into_iter().map(|fact| (id.clone(), fact)).collect()).unwrap();
    }
    let (_, sheet, _) = bench.state();
    let doubt = |field| sheet.doubt(field).map(|doubt| doubt.to_string());
    let inches = |found: &str| {
        Some(format!("{found} looks like inches. Switch the unit to in, or read the page again."))
    };
    assert_eq!(doubt(Field::Low(Check::REVERSE)), inches("0.012 mm"));
    assert_eq!(doubt(Field::High(Check::REVERSE)), inches("0.024 mm"));
    assert_eq!(doubt(Field::ArmRadius), inches("1.181 mm"));
    assert_eq!(
        doubt(Field::Low(Check::FORWARD)).as_deref(),
        Some("0.20 in looks like millimetres. Switch the unit to mm, or read the page again.")
    );
    assert_eq!(
        doubt(Field::Low(Check::Depth)).as_deref(),
        Some("40 mm is far from the usual 0.1 to 5 mm. Read the page again.")
    );
    assert!(sheet.to_do().contains(&ToDo::Check(Field::Low(Check::REVERSE))));
}

#[test]
fn readings_that_are_none_stay_at_their_place() {
    let bench = Bench::demo();
    let preview = bench.preview(Check::FORWARD, &["0.45", "-0.4", "1,250.0", "0.018"]);
    let refused: Vec<Option<String>> =
        preview.stops.iter().map(|stop| stop.typing.refused.clone()).collect();
    assert_eq!(refused[0], None);
    assert_eq!(refused[1].as_deref(), Some("Minus in -0.4. This field takes zero or more."));
    assert_eq!(refused[2].as_deref(), Some("Two decimal marks in 1,250.0. Type one."));
    assert_eq!(
        preview.stops[3].typing.doubt.as_ref().map(ToString::to_string).as_deref(),
        Some("0.018 mm looks like inches. Switch the unit to in, or read the page again.")
    );
    assert_eq!(preview.dock.words(), "Type 90° again");
    assert_eq!(preview.fact, None);
}

#[test]
fn a_reading_that_stands_apart_is_named_and_kept() {
    let bench = Bench::demo();
    let preview = bench.preview(Check::FORWARD, &["0.45", "0.54", "0.45", "0.45"]);
    // Grubbs, two-sided 5 %, n = 4: beyond 1.481 standard deviations (NIST/SEMATECH 1.3.5.17.1,
    // table value from memory). 0.54 lies 0.0675 from the mean 0.4725, s = 0.045: 1.50; with the
    // gauge's step of 0.01 added to the scatter, 1.497.
    let says = "90° stands apart, though 4 readings show little. Read it again.";
    assert_eq!(preview.apart.as_deref(), Some(says));
    assert!(preview.fact.is_some());
    assert_eq!(bench.preview(Check::FORWARD, &["0.45", "0.46", "0.44", "0.45"]).apart, None);
}

#[test]
fn thicker_than_any_shim() {
    let (job, ..) = Bench::demo().state();
    let typed = pack_preview(&job, Slot::B1, &["0.50", "60"], Unit::Millimetre, Shown::default());
    assert_eq!(typed.shims[1].refused.as_deref(), Some("60 mm is over 50 mm. Measure it again."));
    assert_eq!((typed.words.as_str(), typed.fact), ("Type shim 2 again", None));
}

#[test]
fn an_arm_of_zero_at_the_reading() {
    let (job, sheet, tin) = Bench::demo().state();
    let preview = preview(
        (&job, &sheet, &tin),
        Check::FORWARD,
        &["0.45"; 4],
        Unit::Millimetre,
        Some("0"),
        Shown::default(),
    );
    assert_eq!(
        preview.arm_refused.map(|refused| refused.to_string()).as_deref(),
        Some("The arm radius is 0. Measure it from the middle of the shaft, like 30.0.")
    );
    assert_eq!(preview.dock.words(), "Type the arm radius first");
    assert_eq!(preview.fact, None);
}

#[test]
fn a_sheet_without_the_fields_a_check_needs() {
    let mut bench = Bench::new();
    let id = bench.sheet.id().clone();
    let opened = Fact::SheetOpened { name: "Invented".into(), layout: "b".into() };
    bench.record(vec![(id, opened)]).unwrap();
    bench.type_fields(&[(Field::Low(Check::Depth), "0.62"), (Field::High(Check::Depth), "0.68")]);
    let (_, sheet, _) = bench.state();
    let missing = sheet.missing(Check::Depth).unwrap();
    assert_eq!(
        missing.sentence,
        "Pinion depth gap cannot be judged without depth gauge side. Type it on the unit sheet."
    );
    assert_eq!(missing.fields, [Field::DepthSide]);
    let missing = sheet.missing(Check::FORWARD).unwrap();
    assert_eq!(missing.fields[0], Field::PinionTeeth);
    assert!(missing.sentence.ends_with(
        "forward low limit, forward high limit, forward radius and forward shaft. Type them on \
         the unit sheet."
    ));
    let setup = bench.setup();
    assert_eq!(setup.advice.status, AdviceStatus::SheetIncomplete);
    assert_eq!(setup.checks[0].state, CheckState::NoBand);
    assert_eq!(setup.checks[0].says, sheet.missing(Check::Depth).unwrap().sentence);
    assert_eq!(setup.next, NextAct::TypeField(Field::DepthSide));
    // Readings are taken all the same: nothing is lost.
    assert!(bench.preview(Check::Depth, &["0.71", "0.72", "0.71"]).fact.is_some());
}

#[test]
fn the_log_admits_no_half_series_and_nothing_unopened() {
    let mut bench = Bench::demo();
    let id = bench.job.id().clone();
    let values = vec![crate::bench::mm("0.45"); 3];
    let half = Fact::ReadingTaken { check: Check::FORWARD, values, arm: None, on: None };
    let before = bench.job.clone();
    let refused = bench.record(vec![(id.clone(), half)]).unwrap_err();
    assert_eq!(refused.to_string(), "3 of 4 read. Read 270° too.");
    let values = vec![crate::bench::mm("0.45"); 4];
    let no_arm = Fact::ReadingTaken { check: Check::FORWARD, values, arm: None, on: None };
    let refused = bench.record(vec![(id.clone(), no_arm)]).unwrap_err();
    assert_eq!(
        refused.to_string(),
        "Forward backlash without an arm radius. Type the radius first."
    );
    let nothing = Fact::PackFitted { slot: Slot::B1, shims: vec![], as_found: true };
    let refused = bench.record(vec![(id, nothing)]).unwrap_err();
    assert_eq!(refused.to_string(), "Nothing typed for the pack. Type it first.");
    assert_eq!(bench.job, before, "nothing is stored");

    let mut empty = Bench::new();
    let note = Fact::NoteWritten { text: "hello".into() };
    let refused = empty.record(vec![(empty.job.id().clone(), note)]).unwrap_err();
    assert_eq!(refused.to_string(), "Not begun yet. Give it a name first.");
    let layout = Fact::SheetOpened { name: "Invented".into(), layout: "f".into() };
    let refused = empty.record(vec![(empty.sheet.id().clone(), layout)]).unwrap_err();
    assert_eq!(refused.to_string(), "f is not known here. Choose from the sketches.");
}
