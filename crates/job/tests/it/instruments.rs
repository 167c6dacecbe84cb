//! The bench instruments from typed text to answer.

use job::Shown;
use job::instrument::{NoAnswer, Values, instrument};
use measure::Verdict;

pub(crate) fn values(fields: &[(&str, &[&str])]) -> Values {
    let texts = |texts: &[&str]| texts.iter().map(|text| (*text).to_owned()).collect();
    fields.iter().map(|(id, it)| ((*id).to_owned(), texts(it))).collect()
}

pub(crate) fn answer(kind: &str, values: &Values) -> Result<job::instrument::Answer, NoAnswer> {
    instrument(kind).unwrap().answer(values, Shown::default())
}

pub(crate) fn figure(kind: &str, values: &Values, name: &str) -> String {
    let answer = answer(kind, values).unwrap();
    answer.figures.iter().find(|figure| figure.0 == name).map(|it| it.1.clone()).unwrap()
}

pub(crate) fn refusal(kind: &str, values: &Values) -> String {
    let refused = answer(kind, values).unwrap_err().refused;
    refused.iter().map(|it| format!("{}: {}", it.field, it.says)).collect::<Vec<_>>().join("\n")
}

/// 8 steps of 45°: e 0.032865 mm at 141.401°, total 0.067, u(e) 0.000597. NIST/SEMATECH e-Handbook
/// 2.3.4.4; run with numpy 2.4.6 `linalg.lstsq`.
#[test]
fn runout_worked_case() {
    let turn = ["0.000", "0.021", "0.045", "0.058", "0.049", "0.030", "0.004", "-0.009"];
    let typed = values(&[("readings", &turn), ("limit", &["0.13"])]);
    assert_eq!(figure("runout", &typed, "Off centre"), "0.0329 ± 0.0012 mm");
    assert_eq!(figure("runout", &typed, "High spot"), "4:30");
    let answer = answer("runout", &typed).unwrap();
    assert_eq!(answer.verdict, Some(Verdict::InBand));
    assert!(answer.picture.unwrap().label.contains("8 readings"));
}

/// 0.001 in: 0.5 2.0 3.5 2.0 at quarter turns: e 1.5, high at 6 o'clock (by hand).
#[test]
fn runout_in_inches_is_shown_in_inches() {
    let turn = ["0.0005 in", "", "0.0020 in", "", "0.0035 in", "", "0.0020 in", ""];
    let typed = values(&[("readings", &turn)]);
    assert!(figure("runout", &typed, "Off centre").starts_with("0.00150"));
    assert_eq!(figure("runout", &typed, "High spot"), "6 h");
}

#[test]
fn runout_refuses_at_the_field() {
    let few = values(&[("readings", &["0.1", "0.2", "0.1"])]);
    assert!(refusal("runout", &few).starts_with("readings: "));
    let wrong = values(&[("readings", &["0.1", "0.2.3", "0.1", "0.1"])]);
    assert_eq!(refusal("runout", &wrong), "readings: Two decimal marks in 0.2.3. Type one.");
    let nothing = answer("runout", &values(&[])).unwrap_err();
    assert_eq!(nothing.wanted, ["Readings round one turn"]);
}

pub fn held(more: &[(&str, &[&str])]) -> Values {
    let mut typed = values(&[
        ("stage", &["working"]),
        ("limit", &["90"]),
        ("pressure", &["70"]),
        ("time", &["10"]),
        ("most-lost", &["5"]),
        ("at", &["0", "10"]),
        ("gauge", &["70.000", "68.200"]),
        ("case", &["22.00", "20.50"]),
        ("barometer", &["101.325", "101.150"]),
        ("volume", &["1.200 L"]),
    ]);
    typed.extend(values(more));
    typed
}

const DONE: [(&str, &[&str]); 3] = [("turned", &["yes"]), ("moved", &["yes"]), ("soap", &["none"])];

/// 70.0 → 68.2 kPa, 101.325 → 101.150 kPa, 22 → 20.5 °C, 600 s, 1.2 L: 1.10994 kPa lost,
/// 2.219879e-3 Pa·m³/s. 40 CFR 1065.644, ideal gas (run).
#[test]
fn leak_worked_case() {
    let typed = held(&DONE);
    let lost = answer("leak", &typed).unwrap().headline.unwrap();
    let number: f64 = lost.number.parse().unwrap();
    assert!((number - 1.10994).abs() < 0.001 && lost.unit.ends_with(" kPa"), "{lost:?}");
    assert_eq!((lost.title, lost.note.as_str()), ("Lost, corrected", "of 5 kPa allowed"));
    assert!(figure("leak", &typed, "Leak rate").starts_with("0.0022"));
    assert!(figure("leak", &typed, "The same").ends_with("at 101.325 kPa and 0 °C"));
    assert_eq!(answer("leak", &typed).unwrap().verdict, Some(Verdict::InBand));
}

#[test]
fn the_clock_runs_to_the_time_of_the_plan() {
    let leak = instrument("leak").unwrap();
    assert_eq!(leak.runs_to(&held(&[])).as_deref(), Some("of 10 min"));
    assert_eq!(leak.runs_to(&values(&[("time", &["600 s"])])).as_deref(), Some("of 600 s"));
    assert_eq!(leak.runs_to(&values(&[("time", &["long"])])), None);
    let lube = instrument("lube").unwrap();
    assert_eq!(lube.runs_to(&values(&[("rest", &["30"])])).as_deref(), Some("of 30 min"));
}

#[test]
fn leak_without_turning_has_no_verdict() {
    let answer = answer("leak", &held(&[])).unwrap();
    assert_eq!(answer.verdict, None);
    let waits = answer.waits.unwrap();
    assert!(waits.starts_with("Turn the shafts. Move the shift rod."), "{waits}");
}

/// A tap is its own time, on the clock of the log, and stands on the curve.
#[test]
fn turning_is_tapped_with_its_time() {
    let tapped = |acts: &[&str]| held(&[("acts", acts), ("soap", &["none"])]);
    let waits = |acts: &[&str]| answer("leak", &tapped(acts)).unwrap().waits.unwrap_or_default();
    assert_eq!(waits(&["3.17", "5.67", "7.70"]), "");
    assert!(waits(&["3.17"]).starts_with("Turn the drive shaft too. Move the shift rod."));
    assert!(waits(&["", "5.67", "7.70"]).starts_with("Turn the prop shaft too."));
    let picture = answer("leak", &tapped(&["3.17", "", "7.70"])).unwrap().picture.unwrap();
    assert!(picture.label.ends_with(" Prop at 3.2 min. Rod at 7.7 min."), "{}", picture.label);
    // This unit has no rod; and what an earlier version kept, a word without its time, counts as it did.
    let mut no_rod = tapped(&["3.17", "5.67"]);
    no_rod.extend(values(&[("moved", &["none here"])]));
    assert_eq!(answer("leak", &no_rod).unwrap().verdict, Some(Verdict::InBand));
    assert_eq!(answer("leak", &held(&DONE)).unwrap().verdict, Some(Verdict::InBand));
    // The curve begins at its first line, and so do its flags.
    let mut late = tapped(&["5"]);
    late.extend(values(&[("at", &["2", "12"])]));
    let picture = answer("leak", &late).unwrap().picture.unwrap();
    assert!(picture.label.ends_with(" Prop at 3.0 min."), "{}", picture.label);
    let mut early = tapped(&["0.50"]);
    early.extend(values(&[("at", &["1", "11"])]));
    let says = "acts: Prop shaft turned: found 0.50 min, expected no less than the first line, 1 min. Do \
                it under pressure.";
    assert_eq!(refusal("leak", &early), says);
}

#[test]
fn leak_refuses_what_cannot_be() {
    let over = refusal("leak", &held(&[("pressure", &["95"])]));
    assert!(over.starts_with("pressure: ") && over.contains("90"), "{over}");
    let alarm = |typed: &Values| match answer("leak", typed) {
        Ok(answer) => answer.alarm.unwrap(),
        Err(lacks) => lacks.alarm.unwrap(),
    };
    let stop = ("Stay out of line with plugs.", "Hand pump only. Stop at 90 kPa.".to_owned());
    assert_eq!(alarm(&values(&[("stage", &["working"]), ("limit", &["90"])])), stop);
    assert_eq!(alarm(&held(&DONE)), stop);
    assert_eq!(alarm(&held(&[("gauge", &["70", "92"])])).0, "Too much pressure.");
    let cold = refusal("leak", &held(&[("case", &["-300", "20"])]));
    assert!(cold.starts_with("case: ") && cold.contains("absolute zero"), "{cold}");
    let back = refusal("leak", &held(&[("at", &["10", "0"])]));
    assert!(back.starts_with("at: Time: found 0 s, expected more than the line before"), "{back}");
    let not = values(&[("stage", &["not applicable"]), ("because", &["one-way input seal"])]);
    assert_eq!(answer("leak", &not).unwrap().says, ["Not done: one-way input seal."]);
}

/// 15 inHg of vacuum at 20 °C cooled 5 K reads 15.2545 inHg: cooling hides a leak (ideal gas, run).
/// In inches of mercury and degrees Fahrenheit, as the gauges read.
#[test]
fn leak_in_the_units_of_the_gauge() {
    let mut typed = held(&DONE);
    typed.extend(values(&[
        ("unit", &["inHg"]),
        ("degrees", &["°F"]),
        ("stage", &["vacuum"]),
        ("limit", &["20"]),
        ("pressure", &["15"]),
        ("most-lost", &["1"]),
        ("gauge", &["15.0000", "15.2545"]),
        ("case", &["68.000", "59.000"]),
        ("barometer", &["101.325 kPa"]),
    ]));
    let lost = answer("leak", &typed).unwrap().headline.unwrap();
    let number: f64 = lost.number.parse().unwrap();
    // The barometer may have moved by 0.1 kPa since it was read once, and that is its doubt.
    assert!(number.abs() < 0.001 && lost.unit.ends_with(" inHg"), "{lost:?}");
}

#[test]
fn a_hose_that_leaks_into_a_blank_is_not_the_case() {
    let blank = |end: &str| {
        let mut typed = held(&DONE);
        typed.extend(values(&[
            ("gauge", &["70.000", "55.000"]),
            ("blank-gauge", &["70.0", end]),
            ("blank-time", &["10"]),
        ]));
        answer("leak", &typed).unwrap().says[0].clone()
    };
    assert_eq!(blank("56.0"), "The hose leaks: mend it and start over.");
    assert!(
        blank("69.9").starts_with("It leaks: more was lost than allowed, and the hose is tight.")
    );
    // 5 kPa in 10 min is 1 kPa in 2 min: 1.4 kPa in that time is a hose that leaks.
    let mut short = held(&DONE);
    short.extend(values(&[
        ("gauge", &["70.000", "55.000"]),
        ("blank-gauge", &["70.0", "68.6"]),
        ("blank-time", &["2"]),
    ]));
    let found = answer("leak", &short).unwrap();
    assert_eq!(found.says[0], "The hose leaks: mend it and start over.");
    let lost = figure("leak", &short, "Hose and blank lost");
    assert!(lost.ends_with(" of 1 kPa allowed in that time"), "{lost}");
    let half = answer("leak", &held(&[("blank-gauge", &["70", "69"])])).unwrap_err();
    assert_eq!(half.wanted, ["Blank held for"]);
}

/// 14 N on a 50 mm drum with a 2 mm cord: 0.36 N·m = 3.2 lbf·in (own arithmetic).
#[test]
fn drag_by_cord_and_scale() {
    let typed = values(&[
        ("when", &["running"]),
        ("pull", &["14.0"]),
        ("drum", &["50.0"]),
        ("cord", &["2.0"]),
        ("seals", &["out"]),
        ("high", &["5.0 lbf·in"]),
    ]);
    assert!(figure("drag", &typed, "As read").starts_with("3.2"), "{typed:?}");
    assert_eq!(answer("drag", &typed).unwrap().verdict, Some(Verdict::InBand));
}

/// 1000 mL from 20 to 60 °C grows 28 mL: 0.07 %/K (common practice, no source).
#[test]
fn lube_share_and_growth() {
    let typed = values(&[
        ("volume", &["1000"]),
        ("rated", &["1000"]),
        ("within", &["5"]),
        ("rested", &["20"]),
        ("rest", &["15"]),
        ("cold", &["20.0"]),
        ("warm", &["60.0"]),
        ("water", &["milky"]),
    ]);
    let growth = figure("lube", &typed, "Grows when warm, common practice, no source");
    assert!(growth.starts_with("28"), "{growth}");
    let answer = answer("lube", &typed).unwrap();
    assert_eq!(answer.verdict, Some(Verdict::InBand));
    assert!(answer.says[1].starts_with("Water comes in"));
}

#[test]
fn what_is_kept_is_what_was_typed_with_its_unit() {
    let typed = values(&[("readings", &["0,07", "", "0.0020 in"]), ("limit", &[" "])]);
    let kept = instrument("runout").unwrap().kept(&typed, Shown::default()).unwrap();
    assert_eq!(kept, values(&[("readings", &["0,07 mm", "", "0.0020 in"])]));
}

#[test]
fn pressure_is_warned_of_before_anything_is_typed() {
    let said: Vec<String> =
        instrument("leak").unwrap().cautions.iter().map(ToString::to_string).collect();
    assert!(said.iter().any(|caution| caution.starts_with("Air under pressure throws plugs.")));
    let answer = answer("leak", &held(&DONE)).unwrap();
    assert!(answer.cautions.iter().all(|caution| !said.contains(caution)), "said once");
}

/// The form keeps a place and the unit of lengths beside the fields, under names of its own.
#[test]
fn no_two_fields_of_a_form_share_a_name() {
    for instrument in job::instrument::ALL {
        let mut names: Vec<&str> = instrument.fields.iter().map(|asked| asked.id).collect();
        names.extend(["place", "lengths in", "clock"]);
        let count = names.len();
        names.sort_unstable();
        names.dedup();
        assert_eq!(names.len(), count, "{}", instrument.kind);
    }
}
