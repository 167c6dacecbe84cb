//! Lines that make no sense: each is refused with the field's path and one sentence, and the
//! machine never stops.

use serde_json::{Value, json};

use crate::support::{ask, demo};

/// The demo line with one value replaced; a path ending in `-` adds to a list.
fn with(pointer: &str, value: Value) -> Value {
    let mut line = demo();
    let (parent, name) = pointer.rsplit_once('/').unwrap();
    match line.pointer_mut(parent).unwrap() {
        Value::Object(fields) => {
            fields.insert(name.to_owned(), value);
        }
        Value::Array(items) if name == "-" => items.push(value),
        Value::Array(items) => items[name.parse::<usize>().unwrap()] = value,
        other => panic!("{other} holds nothing"),
    }
    line
}

/// Stops unless the line is refused at a path with a sentence that has these words.
#[track_caller]
fn refused(line: &Value, path: &str, words: &str) {
    let answer = ask(line);
    assert_eq!(answer["case"], "demo-1");
    let error = answer["error"].as_str().unwrap_or_else(|| panic!("{answer}"));
    assert!(error.starts_with(&format!("{path}: ")), "{error}");
    assert!(error.contains(words), "{error}");
}

#[test]
fn the_demo_line_is_answered() {
    assert_eq!(ask(&demo())["status"], "fit");
}

#[test]
fn an_id_stands_once() {
    refused(
        &with("/positions/1/id", json!("B1")),
        "positions[1].id",
        "\"B1\", expected an id that no other has",
    );
    refused(&with("/checks/1/id", json!("depth")), "checks[1].id", "\"depth\"");
    refused(&with("/gears/driven/1/id", json!("forward")), "gears.driven[1].id", "no other");
}

#[test]
fn a_member_is_known() {
    refused(&with("/positions/1/moves", json!("forwrad")), "positions[1].moves", "\"forwrad\"");
    refused(&with("/checks/1/mesh", json!("third")), "checks[1].mesh", "forward, reverse");
    refused(&with("/arm/on", json!("third")), "arm.on", "\"third\"");
    refused(&with("/frozen", json!(["B9"])), "frozen[0]", "B1, B2");
    refused(&with("/positions/0/after", json!(["B9"])), "positions[0].after[0]", "\"B9\"");
    refused(&with("/trials/0/packs/B9", json!([])), "trials[0].packs.B9", "B1, B2");
    refused(&with("/trials/0/readings/lsh", json!([])), "trials[0].readings.lsh", "depth, lash");
}

#[test]
fn a_sign_is_minus_one_zero_or_one() {
    for sign in [json!(2), json!("1"), json!(0.5), json!(null), json!(1e300)] {
        refused(&with("/positions/0/mesh_sign", sign), "positions[0].mesh_sign", "-1, 0 or 1");
    }
    refused(&with("/positions/0/setting_sign", json!(-2)), "positions[0].setting_sign", "-2");
}

#[test]
fn a_band_has_its_low_limit_below_its_high_one() {
    refused(
        &with("/checks/1/low", json!("0.50")),
        "checks[1].low",
        "0.50 above the high limit 0.48",
    );
    refused(&with("/checks/1/low", json!("0.48")), "checks[1].low", "0.48 as both limits");
    refused(&with("/checks/0/aim", json!("0.70")), "checks[0].aim", "aim 0.70");
    refused(&with("/checks/1/low", json!("-0.1")), "checks[1].low", "-0.1");
}

#[test]
fn a_thickness_and_a_count_are_not_negative() {
    refused(&with("/stock/0/thickness", json!("-0.10")), "stock[0].thickness", "-0.10");
    refused(&with("/stock/0/thickness", json!("0")), "stock[0].thickness", "above 0");
    refused(&with("/stock/0/count", json!(-1)), "stock[0].count", "found -1");
    refused(&with("/stock/0/count", json!(1.5)), "stock[0].count", "found 1.5");
    refused(&with("/stock/0/count", json!("3")), "stock[0].count", "without quotes");
    refused(&with("/trials/0/packs/B1/0", json!("-1")), "trials[0].packs.B1[0]", "-1");
}

#[test]
fn a_number_is_digits_in_quotes() {
    let odd = [
        "", " ", "NaN", "nan", "inf", "-inf", "1e-3", "1E3", "0x1", "1_0", "0,5", ".5", "5.", "+1",
        "--1", "1.2.3", " 0.5", "0.5 mm", "٣", "½", "0.5\u{0}",
    ];
    for text in odd {
        refused(&with("/checks/1/low", json!(text)), "checks[1].low", "expected a decimal number");
    }
    for value in [json!(0.27), json!(1), json!(true), json!([]), json!(["0.27"]), json!({})] {
        refused(&with("/checks/1/low", value), "checks[1].low", "in quotes");
    }
    let long = format!("0.{}", "1".repeat(40));
    refused(&with("/checks/1/low", json!(long)), "checks[1].low", "28 digits");
    let huge = "9".repeat(100_000);
    refused(&with("/checks/1/low", json!(huge)), "checks[1].low", "28 digits");
}

#[test]
fn a_length_is_one_of_a_gearcase() {
    refused(&with("/gears/pinion_pitch_radius", json!("0")), "gears.pinion_pitch_radius", "0");
    refused(&with("/arm/radius", json!("0")), "arm.radius", "above 0");
    refused(&with("/arm/radius", json!("79228162514264337593543950335")), "arm.radius", "found");
    refused(&with("/checks/1/sigma", json!("-0.1")), "checks[1].sigma", "-0.1");
    refused(&with("/stock/0/thickness", json!("0.1000001")), "stock[0].thickness", "5 decimals");
    refused(
        &with("/trials/0/readings/depth/0", json!("71000")),
        "trials[0].readings.depth[0]",
        "71000",
    );
    refused(&with("/gears/pinion_teeth", json!(0)), "gears.pinion_teeth", "found 0");
    refused(&with("/gears/spiral_angle", json!("90")), "gears.spiral_angle", "90");
    refused(&with("/gears/pinion_teeth", json!(4294967296_u64)), "gears.pinion_teeth", "expected");
}

#[test]
fn a_tin_has_an_end() {
    let line = json!({"family": "pinion", "thickness": "0.10", "count": 1});
    refused(&with("/stock", json!(vec![line; 10_000])), "stock", "10000 lines");
    let sizes =
        |index| json!({"family": "pinion", "thickness": format!("0.{index:05}"), "count": 1});
    let line = with("/stock", (10_000..20_000).map(sizes).collect());
    refused(&line, "stock", "expected");
    let count = with("/stock/0/count", json!(u32::MAX));
    assert_eq!(ask(&count)["status"], "fit");
}

#[test]
fn there_is_at_least_one_build() {
    refused(&with("/trials", json!([])), "trials", "found 0");
    refused(&with("/positions", json!([])), "positions", "found an empty list");
    refused(&with("/checks", json!([])), "checks", "found an empty list");
    refused(&with("/max_shims_in_pack", json!(0)), "max_shims_in_pack", "found 0");
}

#[test]
fn builds_that_contradict_raise_an_alarm() {
    let mut line = demo();
    let mut other = line["trials"][0].clone();
    other["readings"] = json!({"depth": ["0.20"], "lash": ["3.10"]});
    line["trials"].as_array_mut().unwrap().push(other);
    let answer = ask(&line);
    assert_ne!(answer["alarms"], json!([]), "{answer}");
}

#[test]
fn a_check_is_moved_by_a_position() {
    let line = with(
        "/checks/-",
        json!({
            "id": "play", "kind": "end_play", "positions": [], "low": "0.1", "high": "0.2",
        }),
    );
    refused(&line, "checks[2]", "no position changes this reading");
    let line = with(
        "/checks/-",
        json!({
            "id": "play", "kind": "end_play", "positions": ["B1"], "low": "0.1", "high": "0.2",
        }),
    );
    refused(&line, "checks[2]", "no position changes this reading");
}

#[test]
fn a_field_that_is_missing_is_named() {
    for name in ["gears", "arm", "positions", "checks", "trials"] {
        let mut line = demo();
        line.as_object_mut().unwrap().remove(name);
        refused(&line, name, "found nothing, expected");
    }
    let mut line = demo();
    line["trials"][0]["packs"].as_object_mut().unwrap().remove("B2");
    refused(&line, "trials[0].packs.B2", "found nothing");
    refused(&with("/checks/1/band_radius", json!("22")), "checks[1].band_on", "found nothing");
    refused(&with("/checks/1/band_on", json!("pinion")), "checks[1].band_radius", "found nothing");
}

#[test]
fn a_band_elsewhere_has_its_own_names() {
    let mut line = with("/checks/1/band_radius", json!("0"));
    line["checks"][1]["band_on"] = json!("pinion");
    refused(&line, "checks[1].band_radius", "above 0");
    line["checks"][1]["band_radius"] = json!("22");
    line["checks"][1]["band_on"] = json!("third");
    refused(&line, "checks[1].band_on", "\"third\"");
}

#[test]
fn a_field_that_is_not_known_is_named() {
    let places = [
        ("/freezed", "freezed"),
        ("/gears/presure_angle", "gears.presure_angle"),
        ("/gears/driven/0/tooth", "gears.driven[0].tooth"),
        ("/arm/shaft", "arm.shaft"),
        ("/positions/1/minutes", "positions[1].minutes"),
        ("/checks/0/mesh", "checks[0].mesh"),
        ("/checks/1/gauge_side", "checks[1].gauge_side"),
        ("/stock/1/size", "stock[1].size"),
        ("/trials/0/pack", "trials[0].pack"),
    ];
    for (pointer, path) in places {
        refused(&with(pointer, json!("1")), path, "not known here");
    }
}

#[test]
fn a_kind_is_known() {
    refused(&with("/checks/1/kind", json!("lash")), "checks[1].kind", "\"backlash\"");
    refused(&with("/checks/0/gauge_side", json!("above")), "checks[0].gauge_side", "\"behind\"");
    let line = with(
        "/checks/-",
        json!({
            "id": "play", "kind": "end_play", "low": "0.1", "high": "0.2",
        }),
    );
    refused(&line, "checks[2].positions", "found nothing");
}

#[test]
fn a_value_has_the_shape_expected() {
    for pointer in ["/gears", "/arm", "/positions", "/checks", "/trials", "/stock", "/frozen"] {
        let path = &pointer[1..];
        for value in [json!("text"), json!(7), json!(false)] {
            refused(&with(pointer, value), path, "expected");
        }
        for inner in [json!([[]]), json!([7]), json!([null])] {
            let answer = ask(&with(pointer, inner));
            assert!(answer["error"].as_str().unwrap().starts_with(path), "{answer}");
        }
    }
}

#[test]
fn text_that_is_no_case_is_refused() {
    let deep = "[".repeat(100_000);
    let odd =
        ["{", "{}", "[]", "7", "null", "\"text\"", "{\"case\":1}{", "\u{0}", "nonsense", &deep];
    for text in odd {
        let answer = serde_json::to_value(shimwright_cli::answer(text)).unwrap();
        let error = answer["error"].as_str().unwrap();
        assert!(error.contains("expected"), "{error}");
        assert!(error.len() < 300, "{error}");
    }
}

#[test]
fn a_name_stands_once_in_its_object() {
    let text = demo().to_string().replacen("\"low\":", "\"low\":\"0.1\",\"low\":", 1);
    let answer = serde_json::to_value(shimwright_cli::answer(&text)).unwrap();
    assert!(answer["error"].as_str().unwrap().contains("found \"low\" twice in one object"));
}

#[test]
fn any_value_anywhere_is_answered() {
    let odd = [
        json!(null),
        json!(-1),
        json!(1e308),
        json!(""),
        json!("0"),
        json!("-0.000"),
        json!("999"),
        json!("0.00001"),
        json!([]),
        json!({}),
        json!(["0.5", "0.5"]),
        json!(u64::MAX),
        json!("B1"),
        json!("pinion"),
    ];
    let demo = demo();
    let mut places = Vec::new();
    pointers(&demo, String::new(), &mut places);
    for place in &places {
        for value in &odd {
            let answer = ask(&with(place, value.clone()));
            assert!(answer["status"].is_string() || answer["error"].is_string(), "{answer}");
        }
    }
    assert!(places.len() > 60);
}

/// The path of every value inside a value.
fn pointers(value: &Value, path: String, found: &mut Vec<String>) {
    let inner: Vec<(String, &Value)> = match value {
        Value::Object(fields) => fields.iter().map(|(name, value)| (name.clone(), value)).collect(),
        Value::Array(items) => {
            items.iter().enumerate().map(|(index, value)| (index.to_string(), value)).collect()
        }
        _ => Vec::new(),
    };
    for (name, value) in inner {
        let path = format!("{path}/{name}");
        found.push(path.clone());
        pointers(value, path, found);
    }
}
