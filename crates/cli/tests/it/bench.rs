//! The bench checks as lines.

use serde_json::Value;
use shimwright_cli::{bench, bench_lines};

fn figure(answer: &Value, name: &str) -> f64 {
    let text = answer["figures"][name]["value"].as_str();
    text.unwrap_or_else(|| panic!("{name} in {answer}")).parse().unwrap()
}

/// One line for each check; the numbers are those of `crates/workshop/tests`, with their sources there.
#[test]
fn every_check_answers() {
    let lines = [
        (
            r#"{"bench":"leak","stage":"working","volume":"1.2 L",
               "first":{"at":"0 s","gauge":"70.0 kPa","case":"22.0 °C","barometer":"101.325 kPa"},
               "later":{"at":"10 min","gauge":"68.2 kPa","case":"20.5 °C","barometer":"101.150 kPa"}}"#,
            "rate",
            2.219_879e-3,
        ),
        (
            r#"{"bench":"runout","limit":"0.13 mm","readings":[
               {"angle":"0","reading":"0.50"},{"angle":"90","reading":"2.00"},
               {"angle":"180","reading":"3.50"},{"angle":"270","reading":"2.00"}]}"#,
            "off_centre",
            1.5,
        ),
        (
            r#"{"bench":"torque","torque":"80 N·m","wrench":"400 mm","head":"50 mm","angle":"180"}"#,
            "set",
            91.428_571,
        ),
        (
            r#"{"bench":"drag","pull":"2.5 lbf","drum":"2.000 in","cord":"0 mm"}"#,
            "torque",
            0.282_462,
        ),
        (
            r#"{"bench":"heat","diameter":"72 mm","interference":"0.05","clearance":"0.03",
               "room":"68 °F","material":"aluminium"}"#,
            "change",
            51.679_587,
        ),
        (
            r#"{"bench":"warm","diameter":"72","interference":"0.040","rise":"60"}"#,
            "left",
            -0.001_04,
        ),
        (
            r#"{"bench":"press","interference":"0.04","bore":"60","meeting":"72","outside":"96",
               "length":"18","friction":"0.15","inner":"steel","outer":"aluminium"}"#,
            "pressure",
            6.915_2,
        ),
        (
            r#"{"bench":"ring","section":"3.53","inside":"24.99","bottom":"25.50","depth":"2.85",
               "width":"4.75"}"#,
            "fill",
            72.294,
        ),
        // 15 inHg of 3.386389 kPa each (NIST SP 811, B.8, from memory).
        (r#"{"bench":"convert","amount":"15 inHg","into":"kPa"}"#, "amount", 50.795_835),
    ];
    for (line, name, expected) in lines {
        let answer = bench(&line.replace('\n', " "));
        let found = figure(&answer, name);
        assert!((found / expected - 1.0).abs() < 1e-4, "{found} for {expected} in {answer}");
        assert_eq!(answer.get("error"), None);
    }
}

#[test]
fn an_uncertainty_is_the_last_digits_or_as_given() {
    let line = |torque: &str| {
        let line = format!(r#"{{"bench":"torque","torque":{torque}}}"#);
        bench(&line)["figures"]["set"]["u"].as_str().unwrap().parse::<f64>().unwrap()
    };
    assert!((line(r#""80.0 N·m""#) - 0.1 / 12f64.sqrt()).abs() < 1e-9);
    assert!((line(r#"{"read":"80.0 N·m","u":"2"}"#) - 2.0).abs() < 1e-9);
}

#[test]
fn what_cannot_be_is_said() {
    let refusals = [
        (
            r#"{"bench":"torque","torque":"80 N·m","wrench":"50","head":"60","angle":"180"}"#,
            "Lever: found L + E·cos a = -10 mm, expected more than zero; turn the head forward or take a longer wrench.",
        ),
        (
            r#"{"bench":"torque","torque":"80 mm"}"#,
            "torque: mm is a length. This field takes a torque: N·m, lbf·in, lbf·ft or kgf·m.",
        ),
        (
            r#"{"bench":"tork"}"#,
            "bench: found \"tork\", expected leak, runout, torque, drag, heat, warm, press, ring, rolling, convert",
        ),
        (
            r#"{"bench":"convert","amount":"15 inHg","into":"mm"}"#,
            "amount: inHg is a pressure. This field takes a length: mm or in.",
        ),
        (
            r#"{"bench":"torque"}"#,
            "torque: found nothing, expected a torque as it is typed, such as \"0.38 N·m\"",
        ),
    ];
    for (line, sentence) in refusals {
        assert_eq!(bench(line)["error"], sentence);
    }
    let mut out = Vec::new();
    bench_lines(&b"\n{\n{\"bench\":\"torque\",\"torque\":\"1 N m\"}\n"[..], &mut out).unwrap();
    let text = String::from_utf8(out).unwrap();
    let lines: Vec<&str> = text.lines().collect();
    assert_eq!(lines.len(), 2, "{text}");
    assert!(lines[0].contains("\"error\":\"column "), "{text}");
    assert!(lines[1].contains("\"value\":\"1\""), "{text}");
}

/// By hand: 0.8 N·m over 0.05 mm; from 1.6 down to 1.2 is half of that back. 16 N·m/mm × 0.5.
#[test]
fn rolling_torque_is_learnt_from_builds() {
    let line = |builds: &str| {
        bench(&format!(r#"{{"bench":"rolling","low":"1.0","high":"1.4 N·m","builds":[{builds}]}}"#))
    };
    let build =
        |tightening, torque| format!(r#"{{"tightening":"{tightening}","torque":"{torque}"}}"#);
    let two = line(&[build("0.50", "0.80"), build("0.55", "1.60")].join(","));
    assert!((figure(&two, "slope") - 16.0).abs() < 1e-6, "{two}");
    assert!((figure(&two, "tighter") + 0.025).abs() < 1e-6, "{two}");
    let one = line(&build("0.50", "0.80"));
    let refused = one["error"].as_str().unwrap();
    assert!(refused.contains("found one setting, expected two builds"), "{refused}");
}
