//! What there is and what packs cost, counted here and not by the engine.

use std::collections::{BTreeMap, BTreeSet};

use measure::Decimal;
use serde_json::Value;

use crate::support::{Packs, packs};

/// Shims by family and size.
type Tin = BTreeMap<(String, Decimal), i64>;

/// Minutes to fit these packs, each position counted once with those that come apart before it.
pub fn minutes(line: &Value, chosen: &Packs) -> u64 {
    let positions = line["positions"].as_array().unwrap();
    let last = last(line);
    let mut open: BTreeSet<&str> = BTreeSet::new();
    let mut next: Vec<&str> = chosen
        .iter()
        .filter(|(id, pack)| sorted(pack) != sorted(&last[*id]))
        .map(|(id, _)| id.as_str())
        .collect();
    while let Some(id) = next.pop() {
        if open.insert(id) {
            let position = positions.iter().find(|position| position["id"] == id).unwrap();
            next.extend(
                position["after"].as_array().into_iter().flatten().map(|id| id.as_str().unwrap()),
            );
        }
    }
    positions
        .iter()
        .filter(|position| open.contains(position["id"].as_str().unwrap()))
        .map(|position| position["open_minutes"].as_u64().unwrap())
        .sum()
}

/// Shims in all packs together.
pub fn shims(chosen: &Packs) -> u64 {
    chosen.values().map(|pack| pack.len() as u64).sum()
}

/// The packs of the last trial.
pub fn last(line: &Value) -> Packs {
    packs(&line["trials"].as_array().unwrap().last().unwrap()["packs"])
}

/// The tin and what is in the case.
pub fn tin(line: &Value, last: &Packs) -> Tin {
    let mut tin = Tin::new();
    for stock in line["stock"].as_array().into_iter().flatten() {
        *tin.entry((family(stock), decimal(&stock["thickness"]))).or_default() +=
            stock["count"].as_i64().unwrap();
    }
    for position in line["positions"].as_array().unwrap() {
        for &shim in &last[position["id"].as_str().unwrap()] {
            *tin.entry((family(position), shim)).or_default() += 1;
        }
    }
    tin
}

pub fn sorted(pack: &[Decimal]) -> Vec<Decimal> {
    let mut pack = pack.to_vec();
    pack.sort();
    pack
}

pub fn family(value: &Value) -> String {
    value["family"].as_str().unwrap().to_owned()
}

pub fn decimal(value: &Value) -> Decimal {
    Decimal::from_str_exact(value.as_str().unwrap()).unwrap()
}
