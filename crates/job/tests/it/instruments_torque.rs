//! Torque from typed text to answer. Worked numbers: US Army TM 9-254, general maintenance procedures,
//! torque wrenches, figure 46 (T·L/(L + E·cos a)); units: scipy.constants 1.17.1.

use job::Shown;
use job::instrument::{Headline, Progress, Values, instrument};
use measure::{Mark, Unit};

use crate::instruments::{answer, figure, refusal, values};

const DRY: [(&str, &[&str]); 2] = [("manual", &["dry"]), ("threads", &["dry"])];

fn tool(wanted: &str, wrench: &str, head: &str, angle: &str) -> Values {
    let mut typed = values(&[
        ("wanted", &[wanted]),
        ("wrench", &[wrench]),
        ("head", &[head]),
        ("angle", &[angle]),
    ]);
    typed.extend(values(&DRY));
    typed
}

fn headline(typed: &Values) -> Headline {
    answer("torque", typed).unwrap().headline.unwrap()
}

fn set(typed: &Values) -> f64 {
    headline(typed).number.parse().unwrap()
}

/// (80, 400, 50): 71.1111 at 0°, 73.5032 at 45°, 80 at 90°, 87.7567 at 135°, 91.4286 at 180°;
/// (100, 180, 60, 0°): 75.
#[test]
fn worked_angles() {
    for (wanted, wrench, head, angle, expected) in [
        ("80", "400", "50", "0", 71.1111),
        ("80", "400", "50", "45", 73.5032),
        ("80", "400", "50", "90", 80.0),
        ("80", "400", "50", "135", 87.7567),
        ("80", "400", "50", "180", 91.4286),
        ("100", "180", "60", "0", 75.0),
    ] {
        let found = set(&tool(wanted, wrench, head, angle));
        // Shown to the second digit of its doubt.
        assert!((found - expected).abs() < 0.006, "{angle}° {found}");
    }
}

/// 400 and 60 mm: 87.0 at 0°, 90.4 at 45°, 100 at 90°, 117.6 at 180° for 100 (own arithmetic).
#[test]
fn the_same_head_at_the_usual_angles_stands_under_them() {
    let torque = instrument("torque").unwrap();
    let angle = torque.fields.iter().find(|asked| asked.id == "angle").unwrap();
    let notes = |typed: &Values| torque.notes(angle, typed, Shown::default(), None);
    assert_eq!(notes(&tool("100", "400", "60", "")), ["87", "90", "100", "118"]);
    assert!(notes(&tool("", "400", "60", "45")).is_empty(), "nothing to set yet");
    let says = answer("torque", &tool("100", "400", "60", "45")).unwrap().says.join(" ");
    assert!(says.contains("At 90° it changes nothing."), "{says}");
}

/// 60, 120 and 200 N·m with 400 and 60 mm at 45°: 54.2, 108.5, 180.8 (own arithmetic).
fn three_stages(ticks: &[&str]) -> Values {
    let mut typed = tool("", "400", "60", "45");
    typed.extend(values(&[("wanted", &["60", "120", "200", ""]), ("done", ticks)]));
    typed
}

fn progress(typed: &Values) -> Vec<Progress> {
    let stages = answer("torque", typed).unwrap().stages;
    stages.iter().map(|stage| stage.progress).collect()
}

#[test]
fn stages_have_their_own_value() {
    let mut typed = three_stages(&[]);
    let stages = answer("torque", &typed).unwrap().stages;
    let says: Vec<_> = stages.iter().map(|it| (it.asked.as_str(), it.how.as_str())).collect();
    assert_eq!(says[0].0, "60 N·m at the fastener");
    assert!(says[0].1.starts_with("wrench 54.2") && says[0].1.ends_with(" N·m"), "{says:?}");
    assert!(says[2].1.starts_with("wrench 180.8"), "{says:?}");
    // To the wrench's own lines, what is set and what that makes.
    typed.extend(values(&[("line", &["1"])]));
    let stages = answer("torque", &typed).unwrap().stages;
    assert!(stages[1].how.ends_with(" N·m, set 108 N·m"), "{}", stages[1].how);
    assert_eq!(stages[1].act, "Stage 2 clicked at 108 N·m");
    typed.extend(values(&[("wanted", &["120", "60"])]));
    assert!(refusal("torque", &typed).contains("write the stages in rising order"));
    // One stage alone is no sequence.
    assert!(answer("torque", &tool("80", "400", "50", "0")).unwrap().stages.is_empty());
}

#[test]
fn stages_are_done_now_and_next_and_the_figure_is_of_the_one_that_is_now() {
    use Progress::{Done, Next, Now};
    assert_eq!(progress(&three_stages(&[])), [Now, Next, Next]);
    let first = headline(&three_stages(&[]));
    assert_eq!((first.title, &first.number[..4]), ("Stage 1: set the wrench to", "54.2"));
    // Each tick is what the stage asked.
    let mut ticks: Vec<String> = Vec::new();
    for expected in [[Done, Now, Next], [Done, Done, Now], [Done, Done, Done]] {
        let said: Vec<&str> = ticks.iter().map(String::as_str).collect();
        let answer = answer("torque", &three_stages(&said)).unwrap();
        let (at, now) = answer.stage_now().unwrap();
        assert_eq!(at, ticks.len());
        ticks.push(now.tick.clone());
        let said: Vec<&str> = ticks.iter().map(String::as_str).collect();
        assert_eq!(progress(&three_stages(&said)), expected);
    }
    let said: Vec<&str> = ticks.iter().map(String::as_str).collect();
    let all = answer("torque", &three_stages(&said)).unwrap();
    assert_eq!(all.stage_now(), None);
    let last = all.headline.unwrap();
    assert_eq!((last.title, &last.number[..5]), ("Set the wrench to", "180.8"));
    // They are kept, and a comma or another unit reads alike: 54.237 N·m = 40.0 lbf·ft.
    let torque = instrument("torque").unwrap();
    let kept = torque.kept(&three_stages(&said), Shown::default()).unwrap();
    assert_eq!(kept["done"], ticks);
    assert_eq!(progress(&three_stages(&["54,2 N·m"])), [Done, Now, Next]);
    assert_eq!(progress(&three_stages(&["40.0 lbf·ft"])), [Done, Now, Next]);
}

#[test]
fn a_stage_ticked_at_another_number_is_to_be_done_again_and_what_follows_with_it() {
    use Progress::{Next, Now};
    let mut typed = three_stages(&["54.2 N·m", "108.5 N·m"]);
    typed.extend(values(&[("wanted", &["80", "120", "200", ""])]));
    let stages = answer("torque", &typed).unwrap().stages;
    assert_eq!(progress(&typed), [Now, Next, Next]);
    let again = stages[0].again.as_deref().unwrap();
    // 80·400/(400 + 60·cos 45°) = 72.3 (own arithmetic).
    assert!(again.starts_with("Ticked at 54.2 N·m, asked now is 72.3"), "{again}");
    assert!(stages[1..].iter().all(|stage| stage.again.is_none()));
    // What no wrench tells apart is the same: a hundredth. A turn is no torque.
    assert_eq!(progress(&three_stages(&["54.7 N·m"]))[0], Progress::Done);
    assert_eq!(progress(&three_stages(&["54.9 N·m"]))[0], Now);
    assert_eq!(progress(&three_stages(&["54.2 °"]))[0], Now);
    assert_eq!(progress(&three_stages(&["done"]))[0], Now);
}

/// 25 lbf·ft = 33.895449 N·m = 300 lbf·in; without a head the wrench is set to it.
#[test]
fn units_are_chosen_or_typed() {
    let mut typed = values(&[("unit", &["lbf·ft"]), ("wanted", &["25"])]);
    typed.extend(values(&DRY));
    let found = headline(&typed);
    assert_eq!((found.number.as_str(), found.unit.as_str()), ("25.00", "lbf·ft"));
    assert_eq!(answer("torque", &typed).unwrap().picture, None);
    let kept = instrument("torque").unwrap().kept(&typed, Shown::default()).unwrap();
    assert_eq!(kept["wanted"], ["25 lbf·ft"]);
    typed.extend(values(&[("broke-out", &["33.895449 N·m"])]));
    let share = figure("torque", &typed, "Of what is asked");
    assert!(share.starts_with("100.0"), "{share}");
}

/// A head in inches on a wrench in millimetres: 2 in straight ahead of 400 mm, 80 N·m: 70.985 (own
/// arithmetic), with a comma for the decimal mark.
#[test]
fn inches_and_a_comma() {
    let typed = tool("80", "400 mm", "2,00", "0");
    let shown = Shown {
        units: job::Units::default().with(Unit::Inch),
        mark: Mark::Comma,
        ..Shown::default()
    };
    let found = instrument("torque").unwrap().answer(&typed, shown).unwrap().headline.unwrap();
    assert!(found.number.starts_with("70,985"), "{found:?}");
}

#[test]
fn wet_threads_are_warned_of_and_change_nothing() {
    let mut typed = tool("80", "400", "50", "0");
    let before = headline(&typed);
    typed.extend(values(&[("threads", &["oil"])]));
    let found = answer("torque", &typed).unwrap();
    assert!(found.cautions.iter().any(|it| it.starts_with("Wet threads clamp harder")));
    assert_eq!(found.headline.unwrap(), before);
}

#[test]
fn no_lever_is_refused_at_the_angle() {
    let found = refusal("torque", &tool("80", "50", "60", "180"));
    assert!(found.starts_with("angle: Lever: found L + E·cos a = -10 mm"), "{found}");
    assert!(refusal("torque", &tool("80", "400", "60", "200")).starts_with("angle: Head angle"));
    let half = values(&[
        ("wanted", &["80"]),
        ("manual", &["dry"]),
        ("threads", &["dry"]),
        ("head", &["60"]),
    ]);
    assert_eq!(answer("torque", &half).unwrap_err().wanted, ["L, E and the angle of the head"]);
}

#[test]
fn snug_then_degrees() {
    let mut typed = tool("40", "400", "50", "0");
    typed.extend(values(&[("turn", &["40", "40", ""])]));
    assert_eq!(figure("torque", &typed, "Marks past snug"), "40°, 80°");
    let found = answer("torque", &typed).unwrap();
    assert!(found.below.unwrap().label.ends_with("Turn to 40°, then 80° past snug."));
    assert!(found.cautions.iter().any(|it| it.starts_with("Snug first")));
}

#[test]
fn the_turn_is_ticked_after_the_stages() {
    let mut typed = tool("40", "400", "50", "0");
    typed.extend(values(&[("turn", &["40", "40", ""]), ("done", &["35.56 N·m"])]));
    let found = answer("torque", &typed).unwrap();
    // 40·400/450 = 35.56 (own arithmetic); one stage on the wrench needs no number before it.
    assert_eq!(progress(&typed), [Progress::Done, Progress::Now, Progress::Next]);
    let (_, now) = found.stage_now().unwrap();
    assert_eq!((now.asked.as_str(), now.act.as_str()), ("40° past snug", "Turned to 40°"));
    let turn = found.headline.unwrap();
    assert_eq!((turn.title, turn.number.as_str()), ("Turn to the mark", "40"));
    typed.extend(values(&[("done", &["35.56 N·m", "40 °", "80 °"])]));
    assert_eq!(answer("torque", &typed).unwrap().stage_now(), None);
    typed.extend(values(&[("done", &[])]));
    assert_eq!(headline(&typed).title, "Set the wrench to");
}

#[test]
fn digits_alone_are_in_the_unit_this_person_reads_unless_the_form_names_another() {
    let torque = instrument("torque").unwrap();
    let wanted = torque.fields.iter().find(|asked| asked.id == "wanted").unwrap();
    let reads = |units: job::Units, values: &Values| {
        let shown = Shown { units, ..Shown::default() };
        torque.unit_of(wanted, values, shown).unwrap()
    };
    let feet = job::Units::default().with(Unit::PoundForceFoot);
    let nothing = Values::new();
    assert_eq!(reads(job::Units::default(), &nothing), Unit::NewtonMetre);
    assert_eq!(reads(feet, &nothing), Unit::PoundForceFoot);
    let chosen: Values = [("unit".to_owned(), vec!["lbf·in".to_owned()])].into();
    assert_eq!(reads(feet, &chosen), Unit::PoundForceInch);
    // Kept with their units: nobody's choice later changes what they mean.
    let typed: Values =
        [(wanted.id.to_owned(), vec!["88,5".to_owned(), "97 Nm".to_owned()])].into();
    let shown = Shown { units: feet, ..Shown::default() };
    let kept = torque.kept(&typed, shown).unwrap();
    assert_eq!(kept[wanted.id], ["88,5 lbf·ft", "97 N·m"]);
    assert_eq!(torque.kept(&kept, Shown::default()).unwrap(), kept);
}
