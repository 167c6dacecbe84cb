//! Fits by heat, cold and press from typed text to answer.
//!
//! Coefficients: W. D. Callister, Fundamentals of Materials Science and Engineering, 3rd ed., table B.6
//! (aluminium 356.0: 21.5e-6/°C); bearing steel 12.0e-6 from memory. Press: Budynas & Nisbett, Shigley's
//! Mechanical Engineering Design, section 3-16. The numbers were run from the formulae.

use job::instrument::{Headline, Values};
use measure::Verdict;

use crate::instruments::{answer, figure, refusal, values};

pub fn race(more: &[(&str, &[&str])]) -> Values {
    let mut typed = values(&[
        ("way", &["outer part heated"]),
        ("diameter", &["72.000"]),
        ("interference", &["0.050"]),
        ("clearance", &["0.030"]),
        ("outer", &["aluminium"]),
        ("inner", &["steel"]),
        ("part", &["case"]),
        ("room", &["20"]),
    ]);
    typed.extend(values(more));
    typed
}

fn headline(kind: &str, typed: &Values) -> Headline {
    answer(kind, typed).unwrap().headline.unwrap()
}

fn number(text: &str) -> f64 {
    text.split(' ').next().unwrap().parse().unwrap()
}

/// 0.05 and 0.03 mm on 72 mm: 51.680 K, from 20 °C to 71.68 °C = 161.02 °F.
#[test]
fn heat_for_a_race() {
    let typed = race(&[]);
    let found = headline("fit", &typed);
    assert!((number(&found.number) - 71.680).abs() < 0.06, "{found:?}");
    assert!((number(&figure("fit", &typed, "Change needed")) - 51.680).abs() < 0.06);
    assert!(number(&figure("fit", &typed, "Gap on the diameter then")) > 0.0299);
    let found = answer("fit", &typed).unwrap();
    assert_eq!(found.verdict, None, "a guess is no thermometer");
    assert!(found.says[0].starts_with("No verdict: type what its maker allows"));
    assert!(found.cautions.iter().any(|it| it.starts_with("Hot metal burns")));
    let typed = race(&[("hottest", &["125"])]);
    assert_eq!(figure("fit", &typed, "The part stands"), "up to 125 °C, its maker");
    let says = &answer("fit", &typed).unwrap().says[0];
    assert!(says.starts_with("Read a thermometer on the part itself"), "{says}");
    let fahrenheit = race(&[("unit", &["°F"]), ("room", &["68"])]);
    assert!((number(&headline("fit", &fahrenheit).number) - 161.02).abs() < 0.2);
    // 51.680 K are 93.02 °F.
    let change = figure("fit", &fahrenheit, "Change needed");
    assert!((number(&change) - 93.02).abs() < 0.1 && change.ends_with(" °F"), "{change}");
}

#[test]
fn a_thermometer_is_read_not_guessed() {
    let at = |celsius| {
        let typed = race(&[("hottest", &["125"]), ("thermometer", &[celsius])]);
        let found = answer("fit", &typed).unwrap();
        (found.verdict, found.says[0].clone())
    };
    assert_eq!(at("60"), (Some(Verdict::Out), "Not there yet.".into()));
    let ready = "The thermometer proves it: drop it in now.";
    assert_eq!(at("90"), (Some(Verdict::InBand), ready.into()));
    let beyond = "Beyond what the part stands: let it come back.";
    assert_eq!(at("130"), (Some(Verdict::Out), beyond.into()));
    // 356.0, 72 mm, 100 K: 0.15480 mm, less 0.05.
    let hot = race(&[("thermometer", &["120"])]);
    assert!((number(&figure("fit", &hot, "Gap on the diameter then")) - 0.1048).abs() < 0.0006);
}

/// Common practice, no source: a case is taken no hotter than 120 °C.
#[test]
fn without_its_makers_limit_there_is_no_verdict() {
    let said = |celsius| {
        let found = answer("fit", &race(&[("thermometer", &[celsius])])).unwrap();
        assert_eq!(found.verdict, None, "{celsius}");
        (found.says[0].clone(), found.cautions.join(" "))
    };
    let commonly = "Common practice, no source: such a part is taken no hotter than 120 °C.";
    let beyond = "That is beyond common practice, which has no source.";
    let (says, cautions) = said("90");
    assert!(says.starts_with("The thermometer is past the temperature to reach. No verdict:"));
    assert!(cautions.contains(commonly) && !cautions.contains(beyond), "{cautions}");
    assert!(said("60").0.starts_with("Not there yet. No verdict:"));
    let (_, cautions) = said("130");
    assert!(cautions.contains(commonly) && cautions.contains(beyond), "{cautions}");
    let own = race(&[("hottest", &["125"]), ("thermometer", &["90"])]);
    let cautions = answer("fit", &own).unwrap().cautions.join(" ");
    assert!(!cautions.contains("Common practice"), "{cautions}");
}

#[test]
fn the_newest_of_several_readings_is_judged() {
    let log = |times: &[&str], readings: &[&str]| {
        race(&[("hottest", &["125"]), ("read-at", times), ("thermometer", readings)])
    };
    let heating = log(&["2.00", "5.50"], &["60", "90"]);
    assert_eq!(answer("fit", &heating).unwrap().verdict, Some(Verdict::InBand));
    assert_eq!(figure("fit", &heating, "Thermometer"), "90 °C at 5.50 min");
    let cooled = log(&["2", "5", "9"], &["60", "90", "65"]);
    assert_eq!(answer("fit", &cooled).unwrap().verdict, Some(Verdict::Out));
    let gap = log(&["2", "", "9"], &["60", "90", "65"]);
    let says = "read-at: Reading 2 lacks its time. Tap the clock, or type it.";
    assert_eq!(refusal("fit", &gap), says);
    let says = "read-at: Reading 2: found 1 min, expected more than 2 min, the one before. Log each \
                reading after the one before.";
    assert_eq!(refusal("fit", &log(&["2", "1"], &["60", "90"])), says);
}

/// Aluminium 2024: 22.9e-6/K (Callister, table B.6); 0.08/(22.9e-6·72) = 48.520 K (run).
#[test]
fn an_expansion_of_ones_own_is_typed_with_its_unit() {
    let own = |more: &[(&str, &[&str])]| {
        let mut typed = race(&[("outer", &["own"])]);
        typed.extend(values(more));
        typed
    };
    let change = figure("fit", &own(&[("outer-own", &["22.9"])]), "Change needed");
    assert!((number(&change) - 48.520).abs() < 0.06, "{change}");
    // 12.722 in a degree Fahrenheit are 22.9 in a kelvin.
    let typed = own(&[("growth", &["µin/in·°F"]), ("outer-own", &["12.722"])]);
    assert!((number(&figure("fit", &typed, "Change needed")) - 48.520).abs() < 0.06);
    assert_eq!(answer("fit", &own(&[])).unwrap_err().wanted, ["Outer part: its own expansion"]);
    let fit = job::instrument::instrument("fit").unwrap();
    let asks = |id: &str, typed: &Values| {
        fit.asks(fit.fields.iter().find(|asked| asked.id == id).unwrap(), typed)
    };
    assert!(asks("outer-own", &own(&[])) && !asks("inner-own", &own(&[])));
    assert!(asks("inner-own", &own(&[("inner-own", &["12"])])), "what is typed is not hidden");
    assert!(asks("outer", &race(&[])));
    let both = refusal("fit", &race(&[("outer-own", &["22.9"])]));
    let says = "outer-own: Found a number here and aluminium chosen above.";
    assert!(both.starts_with(says), "{both}");
}

/// Aluminium and steel, 72 mm, 60 K warmer: 0.04104 mm is lost, a fit of 0.040 mm is gone.
#[test]
fn what_is_left_when_it_runs() {
    let typed = race(&[("interference", &["0.040"]), ("running", &["80"])]);
    let left = number(&figure("fit", &typed, "Interference left, running"));
    assert!((left + 0.00104).abs() < 0.0006, "{left}");
    let found = answer("fit", &typed).unwrap();
    assert!(
        found.cautions.iter().any(|it| it.starts_with("At running temperature the race has no"))
    );
    let label = found.picture.unwrap().label;
    assert!(
        label.contains("20 °C: overlap 0.040 mm.") && label.contains("80 °C: gap 0.001 mm."),
        "{label}"
    );
}

/// The race alone by cold: 0.08/(12.0e-6·72) = 92.6 K below 20 °C is colder than rings are taken.
#[test]
fn too_cold_for_the_ring() {
    let typed = race(&[("way", &["inner part cooled"]), ("part", &["bare ring"])]);
    assert!((number(&headline("fit", &typed).number) + 72.6).abs() < 0.6);
    let found = answer("fit", &typed).unwrap();
    assert!(found.cautions.iter().any(|it| it.starts_with("That is beyond common practice")));
    let warm =
        race(&[("way", &["inner part cooled"]), ("part", &["bare ring"]), ("coldest", &["-60"])]);
    let found = answer("fit", &warm).unwrap();
    assert!(found.says[0].starts_with("No: the part does not stand it."));
    assert!(found.cautions.iter().any(|it| it.starts_with("That is outside what the part stands")));
    let own = race(&[
        ("way", &["inner part cooled"]),
        ("part", &["bare ring"]),
        ("coldest", &["-90"]),
        ("thermometer", &["-80"]),
    ]);
    assert_eq!(answer("fit", &own).unwrap().verdict, Some(Verdict::InBand));
}

#[test]
fn a_fit_refuses_what_cannot_be() {
    let cold = refusal("fit", &race(&[("room", &["-280"])]));
    assert!(cold.starts_with("room: ") && cold.contains("absolute zero"), "{cold}");
    assert!(refusal("fit", &race(&[("thermometer", &["warm"])])).starts_with("thermometer: "));
    for field in ["thermometer", "coldest", "hottest", "running"] {
        let colder = refusal("fit", &race(&[(field, &["-300"])]));
        assert!(colder.starts_with(field) && colder.contains("absolute zero"), "{colder}");
    }
    let wanted = answer("fit", &values(&[])).unwrap_err().wanted;
    assert_eq!(wanted.len(), 8, "{wanted:?}");
}

fn pressed(more: &[(&str, &[&str])]) -> Values {
    let mut typed = values(&[
        ("outside", &["72.0400"]),
        ("hole", &["72.0000"]),
        ("inside", &["60.000"]),
        ("around", &["96.000"]),
        ("length", &["18.000"]),
        ("inner", &["steel"]),
        ("outer", &["aluminium"]),
        ("friction", &["0.15"]),
    ]);
    typed.extend(values(more));
    typed
}

/// Race 60/72 steel in aluminium of 96 mm, 0.04 mm: 6.9152 MPa, hub 24.697 MPa, 4223.3 N over 18 mm
/// with friction 0.15. A one-dimensional finite element agrees to 1e-8.
#[test]
fn a_race_under_the_press() {
    let typed = pressed(&[]);
    let found = headline("press", &typed);
    assert!((number(&found.number) - 4223.3).abs() < 1.0, "{found:?}");
    assert!((number(&figure("press", &typed, "Pressure between them")) - 6.9152).abs() < 0.001);
    assert!((number(&figure("press", &typed, "Pull in the metal round it")) - 24.697).abs() < 0.01);
    assert_eq!(found.note, "for 0.040 mm on the diameter");
    // 4223.3 N = 949.4 lbf.
    let pounds = headline("press", &pressed(&[("unit", &["lbf"])]));
    assert!(
        (number(&pounds.number) - 949.4).abs() < 1.0 && pounds.unit.ends_with("lbf"),
        "{pounds:?}"
    );
}

#[test]
fn rings_must_fit_round_each_other() {
    let loose = refusal("press", &pressed(&[("outside", &["71.98"])]));
    assert!(loose.starts_with("hole: Outside of the inner part: found 71.98 mm"), "{loose}");
    let thin = refusal("press", &pressed(&[("around", &["70"])]));
    assert!(thin.starts_with("around: "), "{thin}");
}
