//! The texts of the procedures, as the app shows them: each text whole.

use std::path::Path;

use serde_json::Value;

use crate::gather::{Unread, read};

/// Texts and lists of texts of a step, or of a part that is judged.
const TEXTS: [&str; 11] =
    ["t", "why", "warn", "tools", "cons", "gate", "name", "reject", "watch", "reuse", "note"];

/// Every text, with the step that has it.
///
/// # Errors
/// Where a procedure cannot be read.
pub fn texts(root: &Path) -> Result<Vec<(String, String)>, Unread> {
    let folder = root.join("public/procedures");
    let unread = |why: std::io::Error| Unread(folder.clone(), why.to_string());
    let mut files = Vec::new();
    for entry in std::fs::read_dir(&folder).map_err(unread)? {
        files.push(entry.map_err(unread)?.path());
    }
    files.sort();
    let mut found = Vec::new();
    for path in files {
        for line in read(&path)?.lines() {
            let step: Value =
                serde_json::from_str(line).map_err(|why| Unread(path.clone(), why.to_string()))?;
            let id = step.get("id").and_then(Value::as_str).unwrap_or_default().to_owned();
            let texts = of_step(&step).into_iter().filter(|text| has_letters(text));
            found.extend(texts.map(|text| (text, id.clone())));
            if step.get("reject").is_some() {
                found.push((id.replace('-', " "), id));
            }
        }
    }
    Ok(found)
}

fn of_step(step: &Value) -> Vec<String> {
    let mut texts: Vec<String> =
        TEXTS.iter().filter_map(|key| step.get(key)).flat_map(strings).collect();
    texts.extend(step.get("order").into_iter().flat_map(strings));
    for record in step.get("rec").into_iter().flat_map(strings) {
        texts.extend(of_record(&record));
    }
    let parts = step.get("part").and_then(Value::as_object);
    let parts = parts.into_iter().flat_map(|acts| acts.values()).flat_map(strings);
    texts.extend(parts.map(|part| part.replace('-', " ")));
    texts
}

/// The label of a record, the options of a choice, and how often it is taken.
fn of_record(record: &str) -> Vec<String> {
    let Some((kind, rest)) = record.split_once(':') else { return Vec::new() };
    let mut fields = rest.split('|');
    let label = fields.next().unwrap_or_default();
    let (unit, repeats) = (fields.next().unwrap_or_default(), fields.nth(1).unwrap_or_default());
    let mut texts = Vec::new();
    if kind != "sign" {
        texts.push(label.to_owned());
    }
    if kind == "meas" {
        // What was counted out is named again where it is counted in.
        texts.extend(label.strip_suffix(" out").map(str::to_owned));
    }
    if kind == "time" {
        texts.extend(label.strip_suffix(" from").map(str::to_owned));
    }
    if kind == "choice" {
        texts.extend(unit.split('/').map(|option| option.trim_start_matches('!').to_owned()));
    }
    texts.push(repeats.to_owned());
    texts
}

fn strings(value: &Value) -> Vec<String> {
    match value {
        Value::String(text) => vec![text.clone()],
        Value::Array(list) => list.iter().flat_map(strings).collect(),
        _ => Vec::new(),
    }
}

fn has_letters(text: &str) -> bool {
    text.chars().any(char::is_alphabetic)
}
