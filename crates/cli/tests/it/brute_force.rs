//! The choice against every multiset of shims, tried one by one, on small random cases.
//!
//! The search and the counting are this file's own; the probability of given packs comes from
//! `gearing::evaluate`, which the golden ties check apart from the product.

use std::collections::BTreeMap;

use measure::{Decimal, real};
use serde_json::{Value, json};

use crate::packs::{self, family, last, sorted, tin};
use crate::support::{Packs, ask, in_order, near, packs};

const CASES: u64 = 2000;
/// Below this the engine calls every choice equally hopeless.
const HOPELESS: f64 = 1e-29;
/// Cases with more packs than this are left out, to be done in seconds.
const MOST_PACKS: usize = 800;

/// A stream of numbers that look random: Knuth's 64-bit linear congruential constants (from
/// memory), upper half.
struct Dice(u64);

impl Dice {
    fn below(&mut self, end: u64) -> u64 {
        self.0 = self.0.wrapping_mul(6364136223846793005).wrapping_add(1442695040888963407);
        (self.0 >> 33) % end
    }

    /// A thickness or reading in hundredths of a millimetre, from `low` up, below `end`.
    fn hundredths(&mut self, low: u64, end: u64) -> String {
        let hundredths = i64::try_from(low + self.below(end - low)).unwrap();
        Decimal::new(hundredths, 2).to_string()
    }
}

/// Packs, the probability of each, and whether it is predicted in band.
struct Tried {
    packs: Packs,
    probability: f64,
    in_band: bool,
}

#[test]
fn the_choice_is_the_best_of_all_multisets() {
    let mut seen = BTreeMap::new();
    for seed in 0..CASES {
        let line = random_case(seed);
        let answer = ask(&line);
        let status = answer["status"].as_str().unwrap_or_else(|| panic!("{answer}")).to_owned();
        if status == "done" {
            continue;
        }
        let Some(every) = every(&line) else { continue };
        let tried = try_all(&line, every);
        assert_eq!(status == "fit", tried.iter().any(|tried| tried.in_band), "{status}: {line}");
        if status != "conflict" {
            assert_best(&line, &answer, &tried);
            assert_same_from_reversed_tin(&line, &answer);
        }
        *seen.entry(status).or_insert(0) += 1;
    }
    println!("{seen:?}");
    assert!(seen["fit"] + seen["stock_short"] >= 500, "{seen:?}");
}

fn try_all(line: &Value, every: Vec<Packs>) -> Vec<Tried> {
    let case = shimwright_cli::read_case(line).unwrap();
    let bands = gearing::bands(&case).unwrap();
    let judge = |packs: Packs| {
        let choice = gearing::evaluate(&case, &in_order(&case, &packs)).unwrap();
        let in_band = choice.predicted.iter().zip(&bands).all(|(prediction, band)| {
            let (low, high) = (real::from_decimal(band.low()), real::from_decimal(band.high()));
            (low..=high).contains(&prediction.unwrap().mean)
        });
        Tried { packs, probability: choice.probability, in_band }
    };
    every.into_iter().map(judge).collect()
}

fn assert_best(line: &Value, answer: &Value, tried: &[Tried]) {
    let best = tried.iter().map(|tried| tried.probability).fold(0.0, f64::max);
    let cost = |packs: &Packs| (packs::minutes(line, packs), packs::shims(packs));
    // A hair of slack, so that rounding decides nothing.
    let least = |slack: f64| {
        let kept = tried.iter().filter(|one| one.probability >= 0.99 * best * (1.0 + slack));
        kept.map(|one| cost(&one.packs)).min().unwrap_or((u64::MAX, u64::MAX))
    };
    let chosen = packs(&answer["packs"]);
    let own = tried
        .iter()
        .find(|one| one.packs.iter().all(|(id, pack)| sorted(pack) == sorted(&chosen[id])))
        .unwrap_or_else(|| panic!("{chosen:?} cannot be made: {line}"));
    if best < HOPELESS {
        return;
    }
    let p = answer["probability_all_in_band"].as_f64().unwrap();
    near(p, own.probability, 1e-12, "probability");
    assert!(p >= 0.99 * best * (1.0 - 1e-9), "{p} of {best}: {line}");
    let found = cost(&chosen);
    assert!(least(-1e-9) <= found && found <= least(1e-9), "{found:?} {:?}: {line}", least(0.0));
    assert_eq!(answer["minutes"], found.0);
}

/// The order of the tin must not matter.
fn assert_same_from_reversed_tin(line: &Value, answer: &Value) {
    let mut line = line.clone();
    line["stock"].as_array_mut().unwrap().reverse();
    assert_eq!(&ask(&line), answer);
}

/// Every legal set of packs, unless there are too many.
fn every(line: &Value) -> Option<Vec<Packs>> {
    let last = last(line);
    let most = usize::try_from(line["max_shims_in_pack"].as_u64().unwrap()).unwrap();
    let mut sets = vec![(tin(line, &last), Packs::new())];
    for position in line["positions"].as_array().unwrap() {
        let id = position["id"].as_str().unwrap();
        let frozen = line["frozen"].as_array().unwrap().iter().any(|frozen| frozen == id);
        let mut longer = Vec::new();
        for (left, packs) in sets {
            let sizes: Vec<(Decimal, i64)> = left
                .iter()
                .filter(|((of, _), _)| *of == family(position))
                .map(|((_, size), count)| (*size, *count))
                .collect();
            for pack in multisets(&sizes, most) {
                if pack.is_empty() || frozen && sorted(&pack) != sorted(&last[id]) {
                    continue;
                }
                if longer.len() == MOST_PACKS {
                    return None;
                }
                let (mut left, mut packs) = (left.clone(), packs.clone());
                for &shim in &pack {
                    *left.get_mut(&(family(position), shim)).unwrap() -= 1;
                }
                packs.insert(id.to_owned(), pack);
                longer.push((left, packs));
            }
        }
        sets = longer;
    }
    Some(sets.into_iter().map(|(_, packs)| packs).collect())
}

/// Every multiset of at most so many shims, the empty one too.
fn multisets(sizes: &[(Decimal, i64)], most: usize) -> Vec<Vec<Decimal>> {
    let Some((&(size, count), others)) = sizes.split_first() else { return vec![Vec::new()] };
    let mut all = Vec::new();
    for taken in 0..=usize::try_from(count).unwrap().min(most) {
        for other in multisets(others, most - taken) {
            all.push([vec![size; taken], other].concat());
        }
    }
    all
}

/// A case of layout (a): a pinion, a gear and a stack behind it that shares its family at times.
fn random_case(seed: u64) -> Value {
    let mut dice = Dice(seed.wrapping_mul(0x9E37_79B9_7F4A_7C15) + 1);
    for _ in 0..4 {
        dice.below(2);
    }
    let pinion_sign = if dice.below(2) == 0 { 1 } else { -1 };
    let stack = if dice.below(3) == 0 { "nose" } else { "stack" };
    let mut stock = Vec::new();
    for family in ["pinion", "nose", stack] {
        for _ in 0..1 + dice.below(3) {
            stock.push(json!({
                "family": family,
                "thickness": dice.hundredths(3, 40),
                "count": 1 + dice.below(2),
            }));
        }
    }
    let middle = |dice: &mut Dice, low, end| dice.hundredths(low, end);
    let mut gears = json!({
        "pinion_teeth": 12 + dice.below(5),
        "driven": [{"id": "driven", "teeth": 20 + dice.below(8)}],
        "pinion_pitch_radius": "22",
    });
    if dice.below(2) == 0 {
        gears["normal_pressure_angle"] = json!("20");
        gears["spiral_angle"] = json!("30");
    }
    let after = if dice.below(2) == 0 { json!(["A3"]) } else { json!([]) };
    let frozen = if dice.below(5) == 0 { json!(["A3"]) } else { json!([]) };
    json!({
        "case": format!("random-{seed}"),
        "gears": gears,
        "arm": {"radius": "30", "on": if dice.below(2) == 0 { "pinion" } else { "driven" }},
        "positions": [
            {"id": "A1", "moves": "pinion", "mesh_sign": pinion_sign, "setting_sign": 0,
             "family": "pinion", "open_minutes": 60},
            {"id": "A2", "moves": "driven", "mesh_sign": 1, "setting_sign": 1,
             "family": "nose", "open_minutes": 50, "after": after},
            {"id": "A3", "moves": "shaft", "mesh_sign": 0, "setting_sign": 1,
             "family": stack, "open_minutes": 15},
        ],
        "checks": [
            {"id": "depth", "kind": "depth_gap", "low": "0.60", "high": "0.70"},
            {"id": "lash", "kind": "backlash", "mesh": "driven", "low": "0.25", "high": "0.50"},
            {"id": "play", "kind": "end_play", "positions": ["A2", "A3"], "low": "0.02",
             "high": "0.20"},
        ],
        "stock": stock,
        "max_shims_in_pack": 2 + dice.below(2),
        "frozen": frozen,
        "trials": [{
            "packs": {
                "A1": [dice.hundredths(40, 60), dice.hundredths(5, 20)],
                "A2": [dice.hundredths(40, 60)],
                "A3": [dice.hundredths(40, 60), dice.hundredths(5, 20)],
            },
            "readings": {
                "depth": [middle(&mut dice, 50, 80), middle(&mut dice, 50, 80)],
                "lash": [middle(&mut dice, 20, 60)],
                "play": [middle(&mut dice, 2, 30)],
            },
        }],
    })
}
