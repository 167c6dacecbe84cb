//! Lines to ask with, and answers as JSON.

use std::collections::BTreeMap;

use measure::Decimal;
use serde_json::{Value, json};

/// A small case that can be answered; data invented.
pub fn demo() -> Value {
    json!({
        "case": "demo-1",
        "gears": {
            "pinion_teeth": 14, "normal_pressure_angle": "20", "spiral_angle": "35",
            "driven": [{"id": "forward", "teeth": 21}, {"id": "reverse", "teeth": 21}],
            "pinion_pitch_radius": "24",
        },
        "arm": {"radius": "30", "on": "pinion"},
        "positions": [
            {"id": "B1", "moves": "pinion", "mesh_sign": 1, "setting_sign": 0, "family": "pinion",
             "open_minutes": 60},
            {"id": "B2", "moves": "forward", "mesh_sign": 1, "setting_sign": 0,
             "family": "forward", "open_minutes": 50},
        ],
        "checks": [
            {"id": "depth", "kind": "depth_gap", "low": "0.62", "high": "0.68", "aim": "0.65"},
            {"id": "lash", "kind": "backlash", "mesh": "forward", "low": "0.27", "high": "0.48"},
        ],
        "stock": [
            {"family": "pinion", "thickness": "0.10", "count": 3},
            {"family": "pinion", "thickness": "0.15", "count": 1},
        ],
        "max_shims_in_pack": 4,
        "trials": [{
            "packs": {"B1": ["0.50", "0.10"], "B2": ["0.60"]},
            "readings": {"depth": ["0.71", "0.72", "0.71"], "lash": ["0.45", "0.46", "0.44"]},
        }],
    })
}

/// What the command answers to one line.
pub fn ask(line: &Value) -> Value {
    serde_json::to_value(shimwright_cli::answer(&line.to_string())).unwrap()
}

/// The lines of a text as JSON.
pub fn jsonl(text: &str) -> Vec<Value> {
    text.lines().map(|line| serde_json::from_str(line).unwrap()).collect()
}

/// A pack for each position, by name.
pub type Packs = BTreeMap<String, Vec<Decimal>>;

/// Packs written as lists of decimal strings.
pub fn packs(value: &Value) -> Packs {
    serde_json::from_value(value.clone()).unwrap()
}

/// The packs in the order of the case's positions.
pub fn in_order(case: &gearing::case::Case, packs: &Packs) -> Vec<Vec<Decimal>> {
    case.positions.iter().map(|position| packs[&position.id].clone()).collect()
}

#[track_caller]
pub fn near(found: f64, expected: f64, tolerance: f64, what: &str) {
    assert!(
        (found - expected).abs() <= tolerance,
        "{what}: found {found}, expected {expected} within {tolerance}"
    );
}
