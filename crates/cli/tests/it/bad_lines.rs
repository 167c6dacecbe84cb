//! Lines that make no sense: each gets one sentence with its path, and never stops the rest.

use serde_json::{Value, json};
use shimwright_cli::{advise_lines, answer};

/// A sound line.
fn demo() -> Value {
    json!({
        "case": "demo",
        "gears": {
            "pinion_teeth": 14, "normal_pressure_angle": "20", "spiral_angle": "35",
            "driven": [{"id": "forward", "teeth": 21}, {"id": "reverse", "teeth": 21}],
            "pinion_pitch_radius": "24"
        },
        "arm": {"radius": "30", "on": "pinion"},
        "positions": [
            {"id": "B1", "moves": "pinion", "mesh_sign": 1, "setting_sign": 0, "family": "pinion",
             "open_minutes": 60},
            {"id": "B2", "moves": "forward", "mesh_sign": 1, "setting_sign": 0, "family": "forward",
             "open_minutes": 50},
            {"id": "B3", "moves": "reverse", "mesh_sign": 1, "setting_sign": 0, "family": "reverse",
             "open_minutes": 20}
        ],
        "checks": [
            {"id": "depth", "kind": "depth_gap", "low": "0.62", "high": "0.68", "aim": "0.65"},
            {"id": "lash-forward", "kind": "backlash", "mesh": "forward", "low": "0.27",
             "high": "0.48"},
            {"id": "lash-reverse", "kind": "backlash", "mesh": "reverse", "low": "0.35",
             "high": "0.80"}
        ],
        "stock": [
            {"family": "pinion", "thickness": "0.10", "count": 3},
            {"family": "pinion", "thickness": "0.15", "count": 1}
        ],
        "max_shims_in_pack": 4,
        "trials": [{
            "packs": {"B1": ["0.50", "0.10"], "B2": ["0.60"], "B3": ["0.40", "0.15"]},
            "readings": {
                "depth": ["0.71", "0.72", "0.71"],
                "lash-forward": ["0.45", "0.46", "0.44", "0.45"],
                "lash-reverse": ["0.62", "0.61", "0.63", "0.62"]
            }
        }]
    })
}

fn answered(line: &Value) -> Value {
    serde_json::to_value(answer(&line.to_string())).unwrap()
}

/// The demo line with one field set.
fn with(pointer: &str, value: Value) -> Value {
    let mut line = demo();
    match line.pointer_mut(pointer) {
        Some(field) => *field = value,
        None => {
            let (parent, name) = pointer.rsplit_once('/').unwrap();
            let parent = line.pointer_mut(parent).unwrap().as_object_mut().unwrap();
            parent.insert(name.to_owned(), value);
        }
    }
    line
}

/// The demo line without one field.
fn without(pointer: &str) -> Value {
    let mut line = demo();
    let (parent, name) = pointer.rsplit_once('/').unwrap();
    line.pointer_mut(parent).unwrap().as_object_mut().unwrap().remove(name).unwrap();
    line
}

fn assert_refused(line: &Value, sentence: &str) {
    let answer = answered(line);
    assert_eq!(answer["case"], "demo", "{answer}");
    assert_eq!(answer["error"], sentence);
}

#[test]
fn fields_of_the_wrong_shape() {
    for (line, sentence) in [
        (
            without("/gears"),
            "gears: found nothing, expected an object with the teeth and radius of \
                             the gears",
        ),
        (with("/gears", json!([])), "gears: found an empty list, expected an object in braces"),
        (
            with("/gears/pinion_teeth", json!("14")),
            "gears.pinion_teeth: found \"14\", expected a whole number without quotes, 0 or more, \
          such as 3",
        ),
        (
            with("/gears/pinion_teeth", json!(14.5)),
            "gears.pinion_teeth: found 14.5, expected a whole number without quotes, 0 or more, such \
          as 3",
        ),
        (
            with("/arm/radius", json!(30)),
            "arm.radius: found 30, expected a decimal number in quotes, such as \"0.15\"",
        ),
        (
            with("/arm/radius", json!("30,5")),
            "arm.radius: found \"30,5\", expected a decimal number in quotes, such as \"0.15\"",
        ),
        (
            with("/checks/0/low", json!("NaN")),
            "checks[0].low: found \"NaN\", expected a decimal number in quotes, such as \"0.15\"",
        ),
        (
            with("/checks/0/low", json!("1e-3")),
            "checks[0].low: found \"1e-3\", expected a decimal number in quotes, such as \"0.15\"",
        ),
        (
            with("/checks/0/low", json!("0.6_2")),
            "checks[0].low: found \"0.6_2\", expected a decimal number in quotes, such as \"0.15\"",
        ),
        (
            with("/checks/0/low", json!("0.00000000000000000000000000000001")),
            "checks[0].low: found \"0.00000000000000000000000000000001\", expected a decimal number \
          of at most 28 digits",
        ),
        (
            with("/checks/1/kind", json!("rolling_torque")),
            "checks[1].kind: found \"rolling_torque\", expected \"depth_gap\", \"backlash\" or \
          \"end_play\"",
        ),
        (
            with("/checks/0/gauge_side", json!("left")),
            "checks[0].gauge_side: found \"left\", expected \"front\" or \"behind\"",
        ),
        (
            with("/positions/0/mesh_sign", json!(2)),
            "positions[0].mesh_sign: found 2, expected -1, 0 or 1, without quotes",
        ),
        (
            with("/positions/0/id", json!("")),
            "positions[0].id: found \"\", expected a text in quotes",
        ),
        (
            with("/stock/0/count", json!(-1)),
            "stock[0].count: found -1, expected a whole number without quotes, 0 or more, such as 3",
        ),
        (
            with("/trials/0/packs/B9", json!(["0.10"])),
            "trials[0].packs.B9: found a list, expected no such name; the names are B1, B2, B3",
        ),
        (
            without("/trials/0/packs/B2"),
            "trials[0].packs.B2: found nothing, expected a list of shims, mm; [] for none",
        ),
        (
            with("/trials/0/readings/lash", json!(["0.1"])),
            "trials[0].readings.lash: found a list, expected no such name; the names are depth, \
          lash-forward, lash-reverse",
        ),
        (
            with("/trials/0/readings/depth/1", json!("0.7l")),
            "trials[0].readings.depth[1]: found \"0.7l\", expected a decimal number in quotes, such \
          as \"0.15\"",
        ),
    ] {
        assert_refused(&line, sentence);
    }
}

#[test]
fn fields_that_make_no_sense() {
    for (line, sentence) in [
        (
            with("/gears/pinion_teeth", json!(0)),
            "gears.pinion_teeth: found 0, expected a number from 3 to 500",
        ),
        (
            with("/gears/driven/1/id", json!("forward")),
            "gears.driven[1]: found \"forward\" twice, expected each id once; rename one",
        ),
        (
            with("/gears/spiral_angle", json!("90")),
            "gears.spiral_angle: found 90, expected a number from 0 to 60",
        ),
        (
            with("/gears/pinion_pitch_radius", json!("0")),
            "gears.pinion_pitch_radius: found 0, expected a number above 0",
        ),
        (with("/arm/radius", json!("0.0")), "arm.radius: found 0.0, expected a number above 0"),
        (
            with("/arm/on", json!("upper")),
            "arm.on: found \"upper\", expected one of forward, reverse",
        ),
        (
            with("/positions/1/id", json!("B1")),
            "positions[1]: found \"B1\" twice, expected each id once; rename one",
        ),
        (
            with("/positions/1/moves", json!("frontt")),
            "positions[1].moves: found \"frontt\", expected one of pinion, forward, reverse",
        ),
        (
            with("/positions/1/after", json!(["B7"])),
            "positions[1].after[0]: found \"B7\", expected one of B1, B2, B3",
        ),
        (
            with("/checks/1/mesh", json!("third")),
            "checks[1].mesh: found \"third\", expected one of forward, reverse",
        ),
        (
            with("/checks/0/low", json!("0.70")),
            "checks[0]: found the low limit 0.70 above the high limit 0.68; swap them",
        ),
        (
            with("/checks/0/low", json!("0.68")),
            "checks[0]: found 0.68 as both limits, expected a low and a high one",
        ),
        (
            with("/checks/0/aim", json!("0.7")),
            "checks[0]: found the aim 0.7, expected it from 0.62 to 0.68",
        ),
        (
            with("/checks/0/sigma", json!("-0.01")),
            "checks[0].sigma: found -0.01, expected 0 or more",
        ),
        (
            with("/checks/2/id", json!("depth")),
            "checks[2]: found \"depth\" twice, expected each id once; rename one",
        ),
        (
            with("/positions/0/mesh_sign", json!(0)),
            "checks[0]: no position changes this reading, expected one that does; add it or leave the \
          check out",
        ),
        (
            with("/stock/0/thickness", json!("-0.10")),
            "stock[0].thickness: found -0.10, expected a number above 0",
        ),
        (
            with("/stock/0/thickness", json!("0.1000001")),
            "stock[0].thickness: found 0.1000001, expected at most 5 decimals; round it",
        ),
        (
            with("/max_shims_in_pack", json!(0)),
            "max_shims_in_pack: found 0 shims, expected from 1 to 8",
        ),
        (with("/trials", json!([])), "trials: found 0 trials, expected from 1 to 200"),
        (
            with("/trials/0/packs/B2/0", json!("0")),
            "trials[0].packs.B2[0]: found 0, expected a number above 0",
        ),
        (
            with("/trials/0/readings/depth/0", json!("71000")),
            "trials[0].readings.depth[0]: found 71000, expected a number from -1000 to 1000",
        ),
        (with("/frozen", json!(["B8"])), "frozen[0]: found \"B8\", expected one of B1, B2, B3"),
    ] {
        // The position with no readings to change takes its own names with it.
        let mut line = line;
        if sentence.starts_with("checks[2]: found \"depth\"") {
            line["trials"][0]["readings"].as_object_mut().unwrap().remove("lash-reverse");
        }
        if sentence.starts_with("positions[1]: found \"B1\"") {
            line["trials"][0]["packs"].as_object_mut().unwrap().remove("B2");
        }
        assert_refused(&line, sentence);
    }
}

#[test]
fn ten_thousand_stock_lines_are_refused_at_once() {
    let line = |n: usize| json!({"family": "pinion", "thickness": format!("0.{n:05}"), "count": 1});
    let stock: Vec<Value> = (1..=10_000).map(line).collect();
    assert_refused(
        &with("/stock", json!(stock)),
        "stock: found 10000 lines, expected from 0 to 4000",
    );
}

#[test]
fn a_bad_line_does_not_stop_the_rest() {
    let good = demo().to_string();
    let input = format!(
        "\u{feff}{good}\n\n{{\"case\":\"a\",\n[1,2]\n\"text\"\nnull\n{{\"case\":\"b\"}}\n   \n{good}"
    );
    let mut input = input.into_bytes();
    input.extend(b"\n{\"case\":\"\xff\"}\n");
    let mut output = Vec::new();
    advise_lines(&input[..], &mut output).unwrap();
    let output = String::from_utf8(output).unwrap();
    let answers: Vec<Value> =
        output.lines().map(|line| serde_json::from_str(line).unwrap()).collect();
    assert_eq!(answers.len(), 8);
    for index in [0, 6] {
        assert_eq!(answers[index]["case"], "demo");
        assert_eq!(answers[index]["status"], "fit");
    }
    for index in [1, 2, 3, 4, 5, 7] {
        assert!(answers[index]["error"].is_string(), "{}", answers[index]);
    }
    assert_eq!(answers[5]["case"], "b");
    assert_eq!(answers[2]["error"], "found a list, expected an object in braces");
}

#[test]
fn an_answer_has_the_fields_and_the_order_that_are_promised() {
    let text = serde_json::to_string(&answer(&demo().to_string())).unwrap();
    let start = "{\"case\":\"demo\",\"status\":\"fit\",\"packs\":{\"B1\":[\"0.50\",\"0.15\"],\
                 \"B2\":[\"0.60\"],\"B3\":[\"0.40\",\"0.15\"]},\"opens\":[\"B1\"],\"minutes\":60,\
                 \"predicted\":{\"depth\":{\"mean\":\"0.663333333\",\"sigma\":";
    assert!(text.starts_with(start), "{text}");
    let answer: Value = serde_json::from_str(&text).unwrap();
    assert_eq!(answer["alarms"], json!([]));
    assert_eq!(answer["buy"], json!([]));
    assert!(answer["probability_all_in_band"].as_f64().unwrap() > 0.9);
}

#[test]
fn what_is_missing_is_asked_for() {
    let line = with("/trials/0/readings/lash-reverse", json!([]));
    let answer = answered(&line);
    assert_eq!(answer["status"], "need_reading");
    assert_eq!(answer["need"], json!(["lash-reverse"]));
    assert_eq!(answer["opens"], json!([]));
}

#[test]
fn done_with_its_alarms() {
    let mut line = demo();
    line["trials"][0]["readings"]["depth"] = json!(["0.65", "0.65", "0.65"]);
    let done = answered(&line);
    assert_eq!((&done["status"], &done["alarms"]), (&json!("done"), &json!([])));
    // In band, but within the gauge's uncertainty of the limit.
    line["trials"][0]["readings"]["depth"] = json!(["0.62", "0.62", "0.62"]);
    // One of four readings is below the band, their mean is not.
    line["trials"][0]["readings"]["lash-forward"] = json!(["0.26", "0.36", "0.40", "0.36"]);
    let done = answered(&line);
    assert_eq!(done["status"], "done");
    assert_eq!(done["alarms"][0]["alarm"], "read again");
    assert_eq!(done["alarms"][0]["check"], "depth");
    assert_eq!(done["alarms"][1]["alarm"], "tight spot");
    assert_eq!(done["alarms"][1]["check"], "lash-forward");
}
