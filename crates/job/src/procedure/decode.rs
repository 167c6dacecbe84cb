//! Reading a procedure from its file.

use std::fmt;
use words::{say, t};

use super::{Act, Gate, PartAct, Phase, Procedure, Proof, Record, Scope, Step};
use crate::json::{Json, Keys};

/// A line that does not follow the grammar; `Display` is the sentence to show.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ProcedureError {
    /// Counted from 1.
    pub line: usize,
    /// What does not fit: "needs".
    pub what: String,
}

impl fmt::Display for ProcedureError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let ProcedureError { line, what } = self;
        f.write_str(&say!(
            "Line {line} of the procedure: {what} cannot be read. Load the app again."
        ))
    }
}

impl std::error::Error for ProcedureError {}

const KEYS: [&str; 16] = [
    "id",
    "ph",
    "t",
    "why",
    "tools",
    "warn",
    "needs",
    "rec",
    "cons",
    "gate",
    "proof",
    "scope",
    "pos",
    "part",
    "minutes",
    "meanwhile",
];

pub(super) fn procedure(
    layout: &str,
    revision: u32,
    text: &str,
) -> Result<Procedure, ProcedureError> {
    let mut steps: Vec<Step> = Vec::new();
    for (number, line) in (1usize..).zip(text.lines()) {
        let refused = |what: &str| ProcedureError { line: number, what: what.to_owned() };
        let Ok(Json::Map(mut keys)) = serde_json::from_str::<Json>(line) else {
            return Err(refused(t("the object")));
        };
        let order: Vec<_> = keys.names().map(|key| KEYS.iter().position(|k| *k == key)).collect();
        if !order.is_sorted() || order.contains(&None) {
            return Err(refused(t("the order of its keys")));
        }
        let step = step(&mut keys).map_err(refused)?;
        let is_known = |id: &String| steps.iter().any(|step| step.id == *id);
        if !step.id.starts_with(layout) || is_known(&step.id) {
            return Err(refused(t("its id")));
        }
        if !step.needs.iter().all(is_known) {
            return Err(refused(t("what it needs")));
        }
        steps.push(step);
    }
    if steps.is_empty() {
        return Err(ProcedureError { line: 1, what: t("the first step").to_owned() });
    }
    Ok(Procedure { layout: layout.to_owned(), revision, steps })
}

/// One step; the refusal is the key that does not fit.
fn step(keys: &mut Keys) -> Result<Step, &'static str> {
    let mut text =
        |key: &'static str| keys.text(key).filter(|text| !text.trim().is_empty()).ok_or(key);
    let (id, phase) = (text("id")?, text("ph")?);
    let (title, why, caution) = (text("t")?, text("why")?, text("warn")?);
    let phase = Phase::named(&phase).ok_or("ph")?;
    let records: Option<Vec<Record>> =
        keys.texts("rec").ok_or("rec")?.iter().map(|text| Record::parse(text)).collect();
    let gate = match (keys.take("gate"), keys.take("proof")) {
        (None, None) => None,
        (Some(Json::Text(words)), Some(proof)) => {
            let proof = proof.into_list(Json::into_text).ok_or("proof")?;
            Some(Gate { words, proof: proof.iter().map(|label| proof_of(label)).collect() })
        }
        _ => return Err("gate"),
    };
    let scopes: Option<Vec<Scope>> =
        keys.texts("scope").ok_or("scope")?.iter().map(|name| Scope::named(name)).collect();
    let step = Step {
        id,
        phase,
        title: t(&title).to_owned(),
        why: t(&why).to_owned(),
        caution: t(&caution).to_owned(),
        tools: keys.texts("tools").ok_or("tools")?,
        needs: keys.texts("needs").ok_or("needs")?,
        records: records.ok_or("rec")?,
        consumables: optional(keys, "cons")?,
        gate,
        scopes: scopes.ok_or("scope")?,
        positions: optional(keys, "pos")?,
        parts: parts(keys)?,
        minutes: keys.count("minutes").ok_or("minutes")?,
        meanwhile: match keys.take("meanwhile") {
            None => false,
            Some(Json::Flag(true)) => true,
            Some(_) => return Err("meanwhile"),
        },
        own: false,
    };
    if keys.is_empty() { Ok(step) } else { Err(t("a key twice")) }
}

fn optional(keys: &mut Keys, key: &'static str) -> Result<Vec<String>, &'static str> {
    match keys.take(key) {
        None => Ok(Vec::new()),
        Some(list) => list.into_list(Json::into_text).ok_or(key),
    }
}

fn parts(keys: &mut Keys) -> Result<Vec<PartAct>, &'static str> {
    let mut acts = match keys.take("part") {
        None => return Ok(Vec::new()),
        Some(Json::Map(acts)) => acts,
        Some(_) => return Err("part"),
    };
    let mut parts = Vec::new();
    for (act, name) in Act::ALL {
        let ids = optional(&mut acts, name)?;
        parts.extend(ids.into_iter().map(|part| PartAct { act, part }));
    }
    if acts.is_empty() { Ok(parts) } else { Err("part") }
}

/// `b17:pinion rollers out`, or a label of the step itself. No label holds a colon.
fn proof_of(text: &str) -> Proof {
    match text.split_once(':') {
        Some((step, label)) => Proof { step: Some(step.to_owned()), label: label.to_owned() },
        None => Proof { step: None, label: text.to_owned() },
    }
}
