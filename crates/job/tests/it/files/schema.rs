//! The JSON Schema against a validator of its own: every golden line fits it, what is not read
//! does not.

use std::collections::BTreeSet;

use boon::{Compiler, SchemaIndex, Schemas};
use serde_json::Value;

const SCHEMA: &str = include_str!("../../../../../public/schema/line.json");
const GOLDEN: [&str; 8] = [
    include_str!("../../../../../tests/wire/entries-v1.jsonl"),
    include_str!("../../../../../tests/wire/entries-v1-layouts.jsonl"),
    include_str!("../../../../../tests/wire/entries-v1-archive.jsonl"),
    include_str!("../../../../../tests/wire/entries-v1-leak.jsonl"),
    include_str!("../../../../../tests/wire/entries-v2.jsonl"),
    include_str!("../../../../../tests/wire/entries-v2-consent.jsonl"),
    include_str!("../../../../../tests/wire/entries-v2-reason.jsonl"),
    include_str!("../../../../../tests/wire/backup-v1.jsonl"),
];
const UNREAD: &str = include_str!("../../../../../tests/wire/unread.jsonl");

fn compiled() -> (Schemas, SchemaIndex) {
    let (mut schemas, mut compiler) = (Schemas::new(), Compiler::new());
    let schema: Value = serde_json::from_str(SCHEMA).unwrap();
    compiler.add_resource("https://shimwright.example/schema/line.json", schema).unwrap();
    let index = compiler.compile("https://shimwright.example/schema/line.json", &mut schemas);
    (schemas, index.unwrap())
}

fn lines() -> impl Iterator<Item = Value> {
    let lines = GOLDEN.iter().flat_map(|file| file.lines());
    let parsed = lines.map(|line| serde_json::from_str::<Value>(line).unwrap());
    // The golden backup holds one line of a version to come.
    parsed.filter(|line| line["v"] != 99)
}

#[test]
fn every_golden_line_fits() {
    let (schemas, index) = compiled();
    for line in lines() {
        if let Err(why) = schemas.validate(&line, index) {
            panic!("{line}\n{why:#}");
        }
    }
}

#[test]
fn every_kind_of_fact_is_in_the_schema_and_has_a_golden_line() {
    let schema: Value = serde_json::from_str(SCHEMA).unwrap();
    let keys = |place: &str| -> BTreeSet<String> {
        schema["$defs"][place]["properties"].as_object().unwrap().keys().cloned().collect()
    };
    let named: BTreeSet<String> = keys("fact-1").union(&keys("fact-2")).cloned().collect();
    let shown: BTreeSet<String> =
        lines().filter_map(|line| line["fact"].as_object()?.keys().next().cloned()).collect();
    assert_eq!(named, shown);
}

#[test]
fn what_is_not_read_does_not_fit() {
    let (schemas, index) = compiled();
    for line in UNREAD.lines() {
        let Ok(line) = serde_json::from_str::<Value>(line) else { continue };
        // Of another book, it is sound in itself.
        if line["book"] != "job:other" {
            assert!(schemas.validate(&line, index).is_err(), "{line}");
        }
    }
}
