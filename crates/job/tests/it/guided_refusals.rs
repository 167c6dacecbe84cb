//! Bad input in the guided job: one clear sentence, nothing lost, the job still usable.

use job::guide::*;
use job::procedure::{PlanRefusal, Procedure, Record, Scope};
use job::*;
use measure::Unit;

use crate::bench::MINUTE;
use crate::guided::*;

#[test]
fn a_count_that_differs_keeps_the_gate_shut() {
    let mut hand = Hand::new(Scope::GearSet);
    hand.work_to("b29");
    hand.capture("b29", "pinion rollers in", readings(&["17"], Unit::Piece));
    let refused = hand.finish("b29").unwrap_err().to_string();
    assert_eq!(refused, "Gate shut. 17 pinion rollers in, 18 out. Find 1 before you go on.");
    let (plan, log) = (hand.plan(), hand.log());
    let skipped = hand.course().skip(&plan, &log, "b29", "lost it").unwrap_err().to_string();
    assert_eq!(
        skipped,
        "17 pinion rollers in, 18 out. Find 1 before you go on. A count cannot be left out."
    );
    let count = counts(&plan, &log).into_iter().find(|count| count.name == "pinion rollers");
    assert_eq!(count.unwrap().state, CountState::Differ);
    // Found under the bench: the job goes on.
    hand.capture("b29", "pinion rollers in", readings(&["18"], Unit::Piece));
    hand.finish("b29").unwrap();
}

#[test]
fn more_in_than_out_and_two_counts_that_differ() {
    let mut hand = Hand::new(Scope::GearSet);
    hand.work_to("b17");
    hand.capture("b17", "pinion rollers out", readings(&["18", "17"], Unit::Piece));
    let refused = hand.finish("b17").unwrap_err().to_string();
    assert_eq!(
        refused,
        "Gate shut. Pinion rollers out: counted 18 and 17. Count until they agree."
    );
    hand.capture("b17", "pinion rollers out", readings(&["18", "18"], Unit::Piece));
    hand.work_to("b29");
    hand.capture("b29", "pinion rollers in", readings(&["19"], Unit::Piece));
    assert_eq!(hand.missing("b29")[0], "19 pinion rollers in, 18 out. Count both again.");
    hand.capture("b29", "pinion rollers in", readings(&["0"], Unit::Piece));
    let none = "Pinion rollers: none in, 18 out. Find 18 before you go on.";
    assert_eq!(hand.missing("b29")[0], none);
}

#[test]
fn a_shut_gate_is_not_passed_and_a_skip_needs_its_reason() {
    let mut hand = Hand::new(Scope::GearSet);
    hand.work_to("b13");
    let refused = hand.course().finish("b13").unwrap_err().to_string();
    assert_eq!(refused, "Gate shut. Lock parts out: not captured. And 1 more.");
    let refused = hand.course().finish("b13a").unwrap_err().to_string();
    let opens = "Opens when “Find and clear the carrier's lock: tab, screw or wire” is done.";
    assert_eq!(refused, format!("Not yet. {opens}"));
    let (plan, log) = (hand.plan(), hand.log());
    let refused = hand.course().skip(&plan, &log, "b13", " ").unwrap_err().to_string();
    assert_eq!(refused, "No reason given. Say why in a few words.");
    let skip = hand.course().skip(&plan, &log, "b13", "Clip ring, no lock fitted.").unwrap();
    hand.write(skip);
    let StepState::Skipped { reason, .. } = hand.state("b13") else { panic!("left out") };
    assert_eq!(reason, "Clip ring, no lock fitted");
    assert_eq!(hand.state("b13a"), StepState::Open);
    assert_eq!(hand.course().finish("z99").unwrap_err(), GuideRefusal::NoStep);
}

#[test]
fn a_clock_set_back_an_hour_is_said_and_no_wait_ends_early() {
    let mut hand = Hand::new(Scope::GearSet);
    hand.work_to("b28");
    hand.finish("b28").unwrap();
    let marks = vec![60];
    let (clock, step, label) = ("c".to_owned(), "b28".to_owned(), "cooling from".to_owned());
    hand.write(Guided::ClockStarted { clock, step, label, marks });
    let started = hand.bench.at;
    hand.bench.at += 29 * MINUTE;
    hand.write(Guided::ConsentGiven { by: "Owner".into(), what: "gears".into(), limit: "".into() });
    let view = |hand: &Hand| clocks(&hand.log(), &hand.moment()).remove(0);
    assert_eq!((view(&hand).left, clock_warning(&hand.log(), &hand.moment())), (30, None));

    // The phone takes another zone's time: an hour back, before anything else is written.
    hand.bench.at -= 60 * MINUTE;
    let warning = clock_warning(&hand.log(), &hand.moment()).unwrap();
    let last = hour_minute(started + 30 * MINUTE, 0);
    assert_eq!(
        warning,
        format!(
            "This device's clock stands 60 min before the last entry, {last}. Set it right; \
             waits count on from what has surely passed."
        )
    );
    assert_eq!(view(&hand).left, 30, "nothing is taken away");

    // Work goes on by the wrong clock: true half an hour later the wait is over, not before.
    hand.bench.at += 9 * MINUTE;
    hand.write(Guided::ConsentGiven { by: "Owner".into(), what: "seals".into(), limit: "".into() });
    let warning = clock_warning(&hand.log(), &hand.moment()).unwrap();
    assert!(
        warning.starts_with("This device's clock was set back about 50 min after "),
        "{warning}"
    );
    hand.bench.at += 29 * MINUTE;
    assert!(!view(&hand).done);
    hand.bench.at += MINUTE;
    assert!(view(&hand).done, "{:?}", view(&hand));
    assert_eq!(view(&hand).says, "Cooling done.");
}

#[test]
fn what_is_typed_on_a_step_is_held_to_its_record() {
    let record = |text: &str| Record::parse(text).unwrap();
    let lash = record("meas:forward backlash|mm|0.01|4 positions");
    let said = |record: &Record, texts: &[&str]| {
        capture(record, texts, None).map_or_else(|why| why.to_string(), |(value, _)| value.words())
    };
    assert_eq!(said(&lash, &["0.31", "0,32", "0.30", "0.31"]), "0.31 0,32 0.30 0.31 mm");
    assert_eq!(said(&lash, &["0.31", "0.32"]), "2 of 4 positions typed. Type the other 2 too.");
    assert_eq!(said(&lash, &["1"; 5]), "5 values for 4 positions. Keep 4 for each.");
    assert_eq!(
        said(&lash, &["", " "]),
        "Nothing typed for forward backlash. Type it, or say why there is none."
    );
    assert!(said(&lash, &["3 psi", "1", "1", "1"]).starts_with("psi is a pressure."));
    assert_eq!(
        capture(&lash, &["0.3"; 4], None).unwrap().1.as_deref(),
        Some("0.3 mm is coarser than the 0.01 mm asked for. Read it again if you can.")
    );
    let inches = capture(&lash, &["0.012"; 4], Some(Unit::Inch)).unwrap();
    assert_eq!((inches.0.words(), inches.1), ("0.012 0.012 0.012 0.012 in".to_owned(), None));

    let rollers = record("meas:pinion rollers out|pcs|1|2");
    assert_eq!(said(&rollers, &["18", "17.5"]), "17.5 is not a count. Type a whole number.");
    let seals = record("meas:depth of each seal in|mm|0.1|each 4 places");
    assert_eq!(said(&seals, &["3.1"; 6]), "6 of 8 places typed. Type the other 2 too.");
    assert!(capture(&seals, &["3.1"; 8], None).is_ok());
    let sound = record("choice:seat sound, each race|solid/!dull||each");
    assert_eq!(said(&sound, &["solid", "maybe"]), "maybe is not one of solid, dull. Choose one.");
    let found = record("pack:B4 as found|mm|0.01");
    assert_eq!(said(&found, &["none here"]), "none here");
    assert_eq!(said(&found, &["0.30", "0.15"]), "0.30 + 0.15 mm");
    let photo = record("photo:both joint faces");
    assert_eq!(said(&photo, &["x"]), "both joint faces is not typed. Take it on its own button.");
    let cold = record("meas:case temperature|degC|1");
    assert_eq!(said(&cold, &["-4"]), "-4 °C");
}

#[test]
fn a_part_is_bagged_once() {
    let mut hand = Hand::new(Scope::GearSet);
    hand.work_to("b10");
    let refused = bag(&hand.log(), "b09", "trim-tab", "bag 2", "", None).unwrap_err();
    assert_eq!(refused.to_string(), "Trim tab is number 7 already. Change its place there.");
}

#[test]
fn a_file_that_is_no_procedure_is_refused_by_its_line() {
    let refused = |text: &str| Procedure::parse("b", 1, text).unwrap_err().to_string();
    let says = |line, what| {
        format!("Line {line} of the procedure: {what} cannot be read. Load the app again.")
    };
    assert_eq!(refused(""), says(1, "the first step"));
    assert_eq!(refused("<!doctype html>"), says(1, "the object"));
    let first = crate::procedures::text(&Procedure::address("b", 1));
    let first = first.lines().next().unwrap();
    assert_eq!(refused(&format!("{first}\n{first}")), says(2, "its id"));
    assert_eq!(refused(&first.replace("text:owner", "sung:owner")), says(1, "rec"));
    assert_eq!(
        refused(&first.replace("\"needs\":[]", "\"needs\":[\"b99\"]")),
        says(1, "what it needs")
    );
    assert_eq!(
        refused(&first.replace("\"why\"", "\"wherefore\"")),
        says(1, "the order of its keys")
    );
}

#[test]
fn a_book_takes_guided_facts_where_they_belong() {
    let mut hand = Hand::new(Scope::GearSet);
    let mut refused = |book: BookId, fact: Guided| {
        hand.bench.record(vec![(book, fact.into())]).unwrap_err().to_string()
    };
    let job = || BookId::Job("j".into());
    let reason = String::new;
    assert_eq!(
        refused(job(), Guided::StepSkipped { step: "b01".into(), reason: reason() }),
        "Nothing typed for the reason. Type it first."
    );
    assert_eq!(
        refused(BookId::Drawer, Guided::StepDone { step: "b01".into() }),
        "This does not belong in the tool drawer. Write it down in its job or sheet."
    );
    assert_eq!(
        refused(
            BookId::Sheet("s".into()),
            Guided::StepDropped { step: "b34b".into(), reason: "none".into() }
        ),
        "Not begun yet. Give it a name first."
    );
    let value = Capture::Readings(Vec::new());
    assert_eq!(
        refused(job(), Guided::Captured { step: "b01".into(), label: "hours run".into(), value }),
        "Nothing typed for the capture. Type it first."
    );
    let (clock, step, label) = ("c".to_owned(), "b28".to_owned(), "cooling from".to_owned());
    assert_eq!(
        refused(job(), Guided::ClockStarted { clock, step, label, marks: vec![30, 10] }),
        "That does not fit the clock. Type it again."
    );
    assert_eq!(
        PlanRefusal::NoStep { step: "x".into() }.to_string(),
        "Step x is not in this plan. Choose one that is."
    );
}
