//! What an answer looks like.

use measure::Decimal;
use serde_json::{Value, json};

use crate::golden::file;
use crate::support::{ask, demo, jsonl};

#[test]
fn an_answer_has_the_fields_and_the_order_that_are_promised() {
    let text = serde_json::to_string(&shimwright_cli::answer(&demo().to_string())).unwrap();
    let start = "{\"case\":\"demo-1\",\"status\":\"fit\",\"packs\":{\"B1\":[\"0.50\",\"0.15\"],\
                 \"B2\":[\"0.60\"]},\"opens\":[\"B1\"],\"minutes\":60,\"predicted\":{\"depth\":{\
                 \"mean\":\"0.663333333\",\"sigma\":\"";
    assert!(text.starts_with(start), "{text}");
    assert!(text.ends_with("\"alarms\":[],\"buy\":[]}"), "{text}");
    let answer: Value = serde_json::from_str(&text).unwrap();
    assert!(answer["probability_all_in_band"].as_f64().unwrap() > 0.9);
}

#[test]
fn every_golden_line_is_answered_with_the_advice_it_gets() {
    let mut lines = 0;
    for name in ["jobs.jsonl", "packs.jsonl", "conflict-and-shortage.jsonl"] {
        for golden in jsonl(&file(name)) {
            let answer = ask(&golden["line"]);
            let case = shimwright_cli::read_case(&golden["line"]).unwrap();
            let advice = gearing::advise(&case).unwrap();
            assert_eq!(answer["case"], golden["line"]["case"]);
            assert_eq!(answer["status"], golden["expect"]["status"]);
            assert_eq!(answer["minutes"], advice.minutes);
            assert_eq!(answer["probability_all_in_band"], advice.probability);
            for (position, pack) in case.positions.iter().zip(&advice.packs) {
                assert_eq!(answer["packs"][&position.id], json!(pack));
            }
            for (check, prediction) in case.checks.iter().zip(&advice.predicted) {
                let written = &answer["predicted"][&check.id];
                for (name, exact) in
                    [("mean", prediction.unwrap().mean), ("sigma", prediction.unwrap().sigma)]
                {
                    let number: f64 = written[name].as_str().unwrap().parse().unwrap();
                    assert!((number - exact).abs() <= 1e-9, "{}", check.id);
                }
            }
            let conflicts = answer["conflicts"].as_array().map_or(0, Vec::len);
            assert_eq!(conflicts, advice.conflicts.len());
            assert_eq!(answer["buy"].as_array().unwrap().len(), advice.buy.len());
            lines += 1;
        }
    }
    assert_eq!(lines, 38);
}

#[test]
fn a_conflict_names_its_checks_and_the_excess() {
    let golden = jsonl(&file("conflict-and-shortage.jsonl"));
    let conflict = &ask(&golden[0]["line"])["conflicts"][0];
    assert_eq!(conflict["checks"], json!(["depth", "lash-upper", "end-play"]));
    let excess: Decimal = serde_json::from_value(conflict["excess_mm"].clone()).unwrap();
    assert_eq!(excess.round_dp(6).to_string(), "0.093403");
}

#[test]
fn a_shortage_says_what_to_buy() {
    let golden = jsonl(&file("conflict-and-shortage.jsonl"));
    let buy = &ask(&golden[3]["line"])["buy"][0];
    assert_eq!((&buy["family"], &buy["count"]), (&json!("reverse"), &json!(1)));
    assert!(buy["thickness"].is_string());
}

#[test]
fn what_is_missing_is_asked_for() {
    let mut line = demo();
    line["trials"][0]["readings"].as_object_mut().unwrap().remove("lash");
    let answer = ask(&line);
    assert_eq!(answer["status"], "need_reading");
    assert_eq!(answer["need"], json!(["lash"]));
    assert_eq!(answer["opens"], json!([]));
    assert_eq!(answer["probability_all_in_band"], Value::Null);
}

#[test]
fn done_with_its_alarms() {
    let mut line = demo();
    line["trials"][0]["readings"]["depth"] = json!(["0.65", "0.65", "0.65"]);
    let done = ask(&line);
    assert_eq!((&done["status"], &done["alarms"]), (&json!("done"), &json!([])));
    // In band, but within the gauge's uncertainty of the limit.
    line["trials"][0]["readings"]["depth"] = json!(["0.62", "0.62", "0.62"]);
    // One of four readings is below the band, their mean is not.
    line["trials"][0]["readings"]["lash"] = json!(["0.26", "0.36", "0.40", "0.36"]);
    let done = ask(&line);
    assert_eq!(done["status"], "done");
    assert_eq!(done["alarms"][0]["alarm"], "read again");
    assert_eq!(done["alarms"][0]["check"], "depth");
    assert_eq!(done["alarms"][1]["alarm"], "tight spot");
    assert_eq!(done["alarms"][1]["check"], "lash");
}
