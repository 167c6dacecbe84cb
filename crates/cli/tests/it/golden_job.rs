//! The two golden jobs of `tests/golden`, calculated apart from the product: what the second build
//! was to read, the next packs, and six builds that surprise.

use serde_json::{Value, json};

use crate::support::{ask, in_order, near, packs};

const JOBS: [&str; 2] = [
    include_str!("../../../../tests/golden/g1.json"),
    include_str!("../../../../tests/golden/g2.json"),
];

fn jobs() -> Vec<Value> {
    JOBS.iter().map(|text| serde_json::from_str(text).unwrap()).collect()
}

#[test]
fn the_second_build_was_foretold() {
    for job in jobs() {
        let mut line = job["advise"].clone();
        let second = line["trials"].as_array_mut().unwrap().pop().unwrap();
        let case = shimwright_cli::read_case(&line).unwrap();
        let found = gearing::predict(&case, &in_order(&case, &packs(&second["packs"]))).unwrap();
        for (check, found) in case.checks.iter().zip(found) {
            let expected = &job["expect"]["forecast_of_trial_2"][&check.id];
            near(found.unwrap().mean, expected["mean"].as_f64().unwrap(), 1e-6, &check.id);
            near(found.unwrap().sigma, expected["sigma"].as_f64().unwrap(), 1e-6, &check.id);
        }
    }
}

#[test]
fn the_pick_reads_as_predicted() {
    for job in jobs() {
        let pick = &job["expect"]["pick"];
        let case = shimwright_cli::read_case(&job["advise"]).unwrap();
        let choice = gearing::evaluate(&case, &in_order(&case, &packs(&pick["packs"]))).unwrap();
        near(choice.probability, pick["probability"].as_f64().unwrap(), 1e-9, "probability");
        assert_eq!(choice.minutes, pick["minutes"]);
        assert_eq!(choice.shims, pick["shims"]);
        for (check, found) in case.checks.iter().zip(&choice.predicted) {
            let expected = &pick["predicted"][&check.id];
            near(found.unwrap().mean, expected["mean"].as_f64().unwrap(), 1e-6, &check.id);
            near(found.unwrap().sigma, expected["sigma"].as_f64().unwrap(), 1e-6, &check.id);
        }
    }
}

#[test]
fn a_surprise_is_explained() {
    let mut surprises = 0;
    for job in jobs() {
        for expected in job["expect"]["alarms"].as_array().unwrap() {
            let mut line = job["advise"].clone();
            line["trials"].as_array_mut().unwrap().push(json!({
                "packs": job["expect"]["choice"]["ties"][0]["packs"],
                "readings": corrected(&job, &expected["readings"]),
            }));
            let answer = ask(&line);
            let alarms = answer["alarms"].as_array().unwrap_or_else(|| panic!("{answer}"));
            let alarm = alarms.iter().find(|alarm| alarm["alarm"] == "not as predicted");
            let alarm = alarm.unwrap_or_else(|| panic!("{} {answer}", expected["true_cause"]));
            for (check, z) in expected["z"].as_object().unwrap() {
                let off: f64 = alarm["sigmas_off"][check].as_str().unwrap().parse().unwrap();
                near(off, z.as_f64().unwrap(), 1e-4, check);
            }
            for (found, expected) in causes(alarm).zip(expected["causes"].as_array().unwrap()) {
                near(
                    found,
                    expected["share"].as_f64().unwrap(),
                    1e-6,
                    &expected["cause"].to_string(),
                );
            }
            assert!(
                named(&alarm["causes"][0], expected["true_cause"].as_str().unwrap()),
                "{alarm}"
            );
            surprises += 1;
        }
    }
    assert_eq!(surprises, 6);
}

/// Readings in mm, corrected for the indicator's angle as a person's entry would be.
fn corrected(job: &Value, readings: &Value) -> Value {
    let angle: f64 = job["job"]["arm"]["angle"].as_str().unwrap().parse().unwrap();
    let mut series = serde_json::Map::new();
    for check in job["job"]["checks"].as_array().unwrap() {
        let id = check["id"].as_str().unwrap();
        let unit = if readings[id]["unit"] == "in" { 25.4 } else { 1.0 };
        let square = if check["kind"] == "backlash" { angle.to_radians().cos() } else { 1.0 };
        let typed = readings[id]["typed"].as_array().unwrap().iter();
        let millimetres = typed.map(|typed| {
            let digits: f64 = typed.as_str().unwrap().replace(',', ".").parse().unwrap();
            format!("{:.6}", digits * unit * square)
        });
        series.insert(id.to_owned(), millimetres.collect());
    }
    series.into()
}

fn causes(alarm: &Value) -> impl Iterator<Item = f64> {
    alarm["causes"].as_array().unwrap().iter().map(|cause| cause["share"].as_f64().unwrap())
}

/// Whether a cause is the one that the golden job names in words.
fn named(cause: &Value, words: &str) -> bool {
    let (kind, place) = match cause["cause"].as_str().unwrap() {
        "sign the other way" => ("sign of ", &cause["position"]),
        "packs swapped" => ("packs of ", &cause["positions"][0]),
        "slip of unit or decimal" => ("unit or decimal slip in ", &cause["check"]),
        _ => return false,
    };
    words.starts_with(&format!("{kind}{}", place.as_str().unwrap()))
}
