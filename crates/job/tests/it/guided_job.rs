//! A whole job of layout (b), from the phone call to the paper, folded from its facts.

use job::guide::*;
use job::procedure::*;
use job::*;
use measure::Unit;

use crate::bench::MINUTE;
use crate::guided::*;
use crate::procedures;

fn start(hand: &mut Hand, clock: &str, step: &str, label: &str, marks: &[u32]) {
    hand.write(Guided::ClockStarted {
        clock: clock.into(),
        step: step.into(),
        label: label.into(),
        marks: marks.to_vec(),
    });
}

#[test]
fn from_the_phone_call_to_the_paper() {
    let mut hand = Hand::new(Scope::GearSet);
    assert_eq!(hand.next().as_deref(), Some("b01"));
    assert_eq!(hand.course().percent(&hand.plan()), 0);
    let opens = "Opens when “Identify the unit, the complaint and who may authorise” is done.";
    assert_eq!(hand.state("b02"), StepState::Locked { opens: opens.into() });

    // Three waits run together: jar, cooling, and later the compound.
    hand.work_to("b04");
    hand.finish("b04").unwrap();
    start(&mut hand, "jar", "b04", "jar stands from", &[30]);
    hand.work_to("b28");
    hand.finish("b28").unwrap();
    start(&mut hand, "cool", "b28", "cooling from", &[60]);
    let course = hand.course();
    let waits = &course.step("b29").unwrap().waits;
    assert!(waits[0].starts_with("Case cools until "), "{waits:?}");
    let meanwhile: Vec<&str> = course.meanwhile().map(|view| view.id.as_str()).collect();
    assert_eq!(meanwhile, ["b28a", "b28b"]);

    // A pack changes after both backlashes were read: a stale chain, with its reason.
    hand.work_to("b34");
    hand.capture("b30", "B1 trial", pack(&["0.40", "0.10"]));
    let changed = hand.bench.at;
    let StepState::Stale { why } = hand.state("b32") else { panic!("{:?}", hand.state("b32")) };
    let time = hour_minute(changed, 0);
    assert!(why.ends_with(&format!("B1 changed {time}, so read it again.")), "{why}");
    assert!(matches!(hand.state("b33"), StepState::Stale { .. }));
    assert!(matches!(hand.state("b28"), StepState::Stale { .. }), "the pack is seated again");
    assert!(matches!(hand.state("b28a"), StepState::Done { .. }), "B3 was not touched");
    let opens = "Opens when “Load to reverse, read reverse backlash, correct B3” is done again.";
    assert_eq!(hand.state("b34"), StepState::Locked { opens: opens.into() });
    assert_eq!(hand.next().as_deref(), Some("b28"), "what is stale comes first");
    hand.work_to("b34");
    assert!(matches!(hand.state("b33"), StepState::Done { .. }));

    // From here on every pack is what it was.
    hand.work_to("b35");
    hand.capture("b35", "B1 frozen", pack(&["0.40", "0.10"]));
    hand.work_to("b37");
    hand.capture("b37", "B1 fitted", pack(&["0.45"]));
    let refused = hand.finish("b37").unwrap_err().to_string();
    assert_eq!(
        refused,
        "Gate shut. B1 fitted is 0.450 mm, frozen was 0.500 mm. Fit the frozen pack. And 2 more."
    );
    hand.capture("b37", "B1 fitted", pack(&["0.50"]));
    hand.work_to("b42");
    start(&mut hand, "cure", "b41a", "cure from", &[10, 1440]);
    let running = clocks(&hand.log(), &hand.moment());
    assert_eq!(running.len(), 3);
    let waits = hand.course().step("b42").unwrap().waits.clone();
    assert!(waits[0].starts_with("Compound cures until "), "{waits:?}");

    // The working test fails: bubbles. The seals are done again, and all that needs them.
    hand.work_to("b43");
    hand.capture("b43", "bubbles", Capture::Chosen(vec!["seen".into()]));
    let refused = hand.finish("b43").unwrap_err().to_string();
    assert_eq!(refused, "Gate shut. Bubbles: seen. Put it right, then answer again.");
    hand.write(Guided::StepReopened {
        step: "b36".into(),
        reason: "lip cut at the splines".into(),
    });
    let StepState::Stale { why } = hand.state("b36") else { panic!("opened again") };
    assert!(why.starts_with("Opened again "), "{why}");
    assert!(why.ends_with(": lip cut at the splines."), "{why}");
    for step in ["b39", "b39a", "b40", "b41", "b41a", "b42"] {
        let StepState::Stale { why } = hand.state(step) else { panic!("{step}") };
        assert!(why.starts_with("“Fit the seals: propshaft, driveshaft, shift rod” was"), "{why}");
    }
    assert!(matches!(hand.state("b38"), StepState::Done { .. }), "the clutch is not touched");
    assert_eq!(hand.next().as_deref(), Some("b36"));
    hand.work_to("b43");
    hand.capture("b43", "bubbles", Capture::Chosen(vec!["none".into()]));

    // A restart in mid-step: the book is read again from its lines, and wakes where it stopped.
    let lines: Vec<String> = hand.bench.job.lines().map(str::to_owned).collect();
    let read = Book::from_lines(hand.bench.job.id().clone(), lines.iter().map(String::as_str));
    assert_eq!(read, hand.bench.job);
    hand.bench.job = read;
    let woken = wake(&hand.course(), &hand.log(), &hand.moment());
    assert_eq!(woken.step.as_deref(), Some("b43"));
    assert!(woken.says.starts_with("You stopped at “Working-pressure test, turning”, "));

    hand.work_to("");
    let course = hand.course();
    assert_eq!((course.next, course.settled), (None, course.steps.len()));
    assert!(counts(&hand.plan(), &hand.log()).iter().all(|c| c.state == CountState::Agree));
    let ladder = ladder(&hand.plan(), &hand.log());
    assert_eq!((ladder.fitted, ladder.missing.len()), (ladder.rungs.len(), 0));
    assert_eq!(wake(&course, &hand.log(), &hand.moment()).says, "Every step of this job is done.");
    every_kind_of_capture_was_taken(&hand);
}

fn every_kind_of_capture_was_taken(hand: &Hand) {
    let log = hand.log();
    let has = |kind: fn(&Capture) -> bool| log.captures.values().any(|kept| kind(&kept.value));
    assert!(has(|value| matches!(value, Capture::Readings(_))));
    assert!(has(|value| matches!(value, Capture::Pack(_))));
    assert!(has(|value| matches!(value, Capture::Photo(_))));
    assert!(has(|value| matches!(value, Capture::Facing { .. })));
    assert!(has(|value| matches!(value, Capture::Chosen(_))));
    assert!(has(|value| matches!(value, Capture::Torque { .. })));
    assert!(has(|value| matches!(value, Capture::Time(_))));
    assert!(has(|value| matches!(value, Capture::Text(_))));
    assert!(has(|value| matches!(value, Capture::SignSeen)));
}

#[test]
fn every_scope_of_every_layout_can_be_worked_through() {
    for layout in procedures::LAYOUTS {
        // New bearings and a new gear set have the same steps.
        for scope in [Scope::Reseal, Scope::GearSet, Scope::Exchange] {
            let mut hand = Hand::new(scope);
            hand.procedure = procedures::procedure(layout);
            hand.work_to("");
            let course = hand.course();
            assert_eq!(course.settled, course.steps.len(), "{layout} {}", scope.name());
            let counts = counts(&hand.plan(), &hand.log());
            assert!(counts.iter().all(|count| count.state == CountState::Agree), "{counts:?}");
            let ladder = ladder(&hand.plan(), &hand.log());
            assert_eq!(ladder.fitted, ladder.rungs.len(), "{layout} {}", scope.name());
        }
    }
    // A reseal keeps its packs and still proves the backlash.
    let reseal = Hand::new(Scope::Reseal);
    assert!(reseal.plan().step("b41").is_some() && reseal.plan().step("b32").is_none());
    assert!(Scope::Reseal.rule().contains("Backlash is still proved"));
}

#[test]
fn a_wider_scope_keeps_what_is_done() {
    let mut hand = Hand::new(Scope::Reseal);
    hand.work_to("b26");
    let settled = hand.course().settled;
    let reason = "etched bearings".into();
    hand.write(Guided::ScopeChosen { scope: Scope::Bearings, reason });
    hand.scope = hand.log().scope.unwrap();
    let course = hand.course();
    assert_eq!(course.settled, settled, "what is done stays done");
    assert_eq!(hand.next().as_deref(), Some("b15"), "what the reseal left out comes now");
}

#[test]
fn a_gate_told_by_the_set_up_asks_nobody() {
    let mut hand = Hand::new(Scope::GearSet);
    hand.work_to("b32");
    hand.capture_all("b32");
    let asks = hand.course().finish("b32").unwrap_err();
    assert!(matches!(asks, GuideRefusal::Asks { .. }), "{asks}");
    let told = |in_band, words: &str| Told {
        check: "forward backlash".into(),
        in_band,
        words: words.into(),
    };
    hand.told = vec![told(false, "Out")];
    assert_eq!(hand.missing("b32"), ["Forward backlash: out."]);
    hand.told = vec![told(true, "In band")];
    assert!(hand.course().finish("b32").is_ok());
}

#[test]
fn a_yes_to_a_gate_falls_with_the_reading_it_was_said_to() {
    let mut hand = Hand::new(Scope::GearSet);
    hand.work_to("b34");
    hand.capture_all("b34");
    let (step, by) = ("b34".to_owned(), "JK".to_owned());
    hand.write(Guided::GateJudged { step, passed: true, by, reason: String::new() });
    assert!(hand.course().finish("b34").is_ok());
    hand.bench.at += MINUTE;
    hand.capture("b34", "end play", readings(&["0.9", "0.9", "0.9"], Unit::Millimetre));
    assert!(matches!(hand.course().finish("b34"), Err(GuideRefusal::Asks { .. })));
}

#[test]
fn a_failed_gate_opens_its_step_and_what_needs_it() {
    let mut hand = Hand::new(Scope::GearSet);
    hand.work_to("b42");
    let reason = "lash differs from the set-up".to_owned();
    let (step, by) = ("b41".to_owned(), "JK".to_owned());
    hand.write(Guided::GateJudged { step, passed: false, by, reason });
    assert!(matches!(hand.state("b41"), StepState::Stale { .. }));
    assert!(matches!(hand.state("b41a"), StepState::Stale { .. }));
    assert!(hand.missing("b41")[0].contains("captured before this was opened again"));
    hand.work_to("b42");
    assert!(matches!(hand.state("b41a"), StepState::Done { .. }));
}

#[test]
fn a_lane_says_where_a_job_stands_and_what_it_waits_for() {
    let mut hand = Hand::new(Scope::GearSet);
    let lane = |hand: &Hand| {
        let clocks = clocks(&hand.log(), &hand.moment());
        job::guide::lane(&hand.plan(), &hand.log(), &hand.course(), &clocks)
    };
    let first = lane(&hand);
    let steps = hand.plan().steps.len();
    assert_eq!(first.line, format!("Look · 0 of {steps}"));
    assert_eq!(first.step.as_deref(), Some("b01"));
    assert_eq!((first.stands.words().as_str(), first.parts.as_str()), ("To do", "No parts due"));
    assert!(first.gate.is_some());

    // A pack changed after what was read on it: said first.
    hand.work_to("b34");
    hand.capture("b30", "B1 trial", pack(&["0.40", "0.10"]));
    let Stands::Stale(stale) = lane(&hand).stands else { panic!("{:?}", lane(&hand).stands) };
    assert!(stale >= 3, "{stale}");

    hand.write(Guided::ToolReadied {
        tool: "cone".into(),
        how: Readied::Ordered,
        from: "Friday".into(),
    });
    assert_eq!(lane(&hand).parts, "1 on order");
}

#[test]
fn a_lane_sends_back_to_a_gate_that_fell_shut_behind_a_step_that_is_done() {
    let mut hand = crate::record::done();
    let lane = |hand: &Hand| job::guide::lane(&hand.plan(), &hand.log(), &hand.course(), &[]);
    let whole = lane(&hand);
    assert_eq!((whole.stands, whole.gate, whole.step), (Stands::Done, None, None));
    // Eighteen rollers came out.
    hand.capture("b29", "pinion rollers in", readings(&["17"], measure::Unit::Piece));
    let short = lane(&hand);
    assert_eq!((short.stands, short.step.as_deref()), (Stands::Open, Some("b29")));
    let (title, missing) = short.gate.unwrap();
    assert_eq!(
        (title, missing.as_str()),
        (short.next, "17 pinion rollers in, 18 out. Find 1 before you go on.")
    );
}

/// Where nothing else can be done, the wait is what the job stands on.
#[test]
fn a_lane_names_the_wait_that_holds_everything_up() {
    let mut hand = Hand::new(Scope::GearSet);
    let stands = |hand: &Hand| {
        let clocks = clocks(&hand.log(), &hand.moment());
        job::guide::lane(&hand.plan(), &hand.log(), &hand.course(), &clocks).stands
    };
    hand.work_to("b28");
    hand.finish("b28").unwrap();
    start(&mut hand, "cool", "b28", "cooling from", &[60]);
    assert_eq!(stands(&hand), Stands::Open, "two other races can be seated meanwhile");
    for step in ["b28a", "b28b"] {
        hand.capture_all(step);
        hand.finish(step).unwrap();
    }
    let name = clocks(&hand.log(), &hand.moment())[0].name.clone();
    assert_eq!(stands(&hand), Stands::Waits(name));
}
