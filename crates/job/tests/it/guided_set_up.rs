//! What the set-up knows need not be typed again on a step, and what is seen at teardown stands
//! beside the step that puts it back.

use job::guide::*;
use job::procedure::Scope;
use job::*;
use measure::Unit;

use crate::bench::Bench;
use crate::guided::*;

#[test]
fn packs_and_readings_of_the_set_up_stand_in_the_steps_records() {
    let mut bench = Bench::demo();
    bench.fit_advice();
    bench.read(Check::FORWARD, &["0.31", "0.32", "0.31", "0.32"]);
    let hand = Hand::on(bench, Scope::GearSet);
    let job = Job::fold(&hand.bench.job);
    let plan = hand.plan();
    let log = filled(&job, &plan);
    let words = |step: &str, label: &str| log.capture(step, label).map(|kept| kept.value.words());
    assert_eq!(words("b32", "forward backlash").as_deref(), Some("0.31 0.32 0.31 0.32 mm"));
    assert_eq!(words("b35", "forward backlash"), words("b32", "forward backlash"));
    assert!(words("b32", "arm radius").is_some());
    assert!(words("b18", "B1 as found").is_some());
    assert_eq!(words("b41", "closing forward backlash"), None, "closing is read again");
    assert_eq!(words("b29", "driveshaft end play"), None, "another shaft");

    // A value captured later on the step counts, and one read later in the set-up counts again.
    let mut hand = hand;
    hand.capture("b32", "forward backlash", readings(&["0.4"; 4], Unit::Millimetre));
    let now = |hand: &Hand| {
        let log = filled(&Job::fold(&hand.bench.job), &hand.plan());
        log.capture("b32", "forward backlash").unwrap().value.words()
    };
    assert_eq!(now(&hand), "0.4 0.4 0.4 0.4 mm");
    hand.bench.read(Check::FORWARD, &["0.33"; 4]);
    assert_eq!(now(&hand), "0.33 0.33 0.33 0.33 mm");
}

#[test]
fn the_gate_hears_what_the_set_up_says_of_its_check() {
    let mut bench = Bench::demo();
    bench.read(Check::FORWARD, &["0.90"; 4]);
    let mut hand = Hand::on(bench, Scope::GearSet);
    let (job, sheet, _) = hand.bench.state();
    hand.told = told(&job, &sheet, Shown::default());
    let forward = hand.told.iter().find(|told| told.check == "forward backlash").unwrap();
    assert_eq!((forward.in_band, forward.words.as_str()), (false, "Out"));
    let log = filled(&job, &hand.plan());
    let course = Course::of(&hand.plan(), &log, &hand.told, &hand.moment());
    let gate = course.step("b32").unwrap().gate.clone().unwrap();
    assert_eq!(gate.missing, ["Forward backlash: out."]);
}

#[test]
fn a_pack_found_on_a_step_is_the_set_ups_too() {
    let mut hand = Hand::new(Scope::GearSet);
    let plan = hand.plan();
    let record = plan.step("b14").unwrap().record("B3 as found").unwrap();
    let (value, _) = capture(record, &["0.30", "0.15"], None).unwrap();
    let fact = for_set_up(&Job::fold(&hand.bench.job), record, &value).unwrap();
    let book = hand.bench.job.id().clone();
    hand.bench.record(vec![(book, fact)]).unwrap();
    let job = Job::fold(&hand.bench.job);
    assert_eq!(job.found.len(), 1);
    assert_eq!(filled(&job, &plan).capture("b14", "B3 as found").unwrap().value, value);
    assert_eq!(for_set_up(&job, record, &Capture::None("none here".into())), None);
    // A trial pack typed on its step is the pack that lies in the unit, as if fitted on the set-up.
    let trial = plan.step("b33").unwrap().record("B3 trial").unwrap();
    assert_eq!(for_set_up(&job, trial, &value), None, "it lies there already");
    let other = capture(trial, &["0.30", "0.20"], None).unwrap().0;
    let fitted = for_set_up(&job, trial, &other);
    let Some(Fact::PackFitted { slot, as_found: false, .. }) = fitted else {
        panic!("the set-up is not told")
    };
    assert_eq!(slot.tag(), "B3");
    let listed = plan.step("b27").unwrap().record("B3 listed").unwrap();
    assert_eq!(for_set_up(&job, listed, &value), None);
    let step = plan.step("b33").unwrap();
    let record = step.record("reverse backlash").unwrap();
    assert_eq!(check_of(&plan, step, record), Some(Check::REVERSE));
}

#[test]
fn what_was_seen_stands_beside_the_step_that_puts_it_back() {
    let mut hand = Hand::new(Scope::GearSet);
    hand.work_to("b39");
    let shown = beside(&hand.plan(), &hand.log(), "b39");
    let find = |name: &str| shown.iter().find(|beside| beside.name == name).unwrap();
    let carrier = shown.iter().find(|beside| beside.name.ends_with(" Carrier")).unwrap();
    assert_eq!((carrier.words.as_str(), carrier.photo.as_deref()), ("as it lay", Some("p")));
    assert_eq!(find("Carrier as it leaves").step, "b14");
    assert_eq!(find("Key, up mark, thrust washer faces").words, "as found");
    assert_eq!(find("B3 frozen").words, "0.40 + 0.05 mm");
}

#[test]
fn the_stages_say_how_far_each_is() {
    let mut hand = Hand::new(Scope::GearSet);
    hand.work_to("b28");
    let stages = guide_stages(&hand.plan(), &hand.course());
    let names: Vec<&str> = stages.iter().map(|stage| stage.name).collect();
    assert_eq!(names, ["Look", "Strip", "Judge", "Shim", "Close", "Prove"]);
    let here: Vec<bool> = stages.iter().map(|stage| stage.here).collect();
    assert_eq!(here, [false, false, false, true, false, false]);
    assert_eq!(stages[0].settled, stages[0].steps.len());
    assert_eq!((stages[0].minutes, stages[4].settled), (0, 0));
    let all: usize = stages.iter().map(|stage| stage.steps.len()).sum();
    assert_eq!(all, hand.plan().steps.len());
}
