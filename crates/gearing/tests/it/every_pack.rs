//! The choice against every combination of packs, tried one by one.
//!
//! The counting and the order of preference are this file's own; what given packs are worth comes
//! from `gearing::evaluate`, which the golden jobs check apart from this code.

use std::cmp::Ordering;

use gearing::advice::{Choice, Status};
use gearing::case::{Case, Member, StockLine, Trial};
use measure::{Decimal, real};

use crate::cases::{
    Dice, check, depth, driven, end_play, gears, hundredths, lash, position, random,
};

const CASES: u64 = 1300;
/// More combinations than this take too long.
const MOST: usize = 900;
/// The same for four packs in a ring: each is one of six.
const MOST_IN_RING: usize = 1296;

/// Every pack of at most so many shims out of these, as sorted lists.
fn multisets(shims: &[Decimal], most: usize) -> Vec<Vec<Decimal>> {
    let mut packs: Vec<Vec<Decimal>> = vec![Vec::new()];
    for &shim in shims {
        let longer = packs.clone().into_iter().filter(|pack| pack.len() < most).map(|mut pack| {
            pack.push(shim);
            pack
        });
        packs.extend(longer.collect::<Vec<_>>());
    }
    for pack in &mut packs {
        pack.sort();
    }
    packs.sort();
    packs.dedup();
    packs.retain(|pack| !pack.is_empty());
    packs
}

/// What a family has: the tin and the last packs of its positions that are not frozen.
fn shims_of(case: &Case, family: &str) -> Vec<Decimal> {
    let tin = case.stock.iter().filter(|line| line.family == family);
    let tin = tin.flat_map(|line| std::iter::repeat_n(line.thickness, line.count as usize));
    let last = case.positions.iter().zip(&case.trials.last().unwrap().packs);
    let last = last.filter(|(p, _)| p.family == family && !case.frozen.contains(&p.id));
    tin.chain(last.flat_map(|(_, pack)| pack.iter().copied())).collect()
}

/// Every legal combination of packs.
fn every(case: &Case) -> Vec<Vec<Vec<Decimal>>> {
    let last = &case.trials.last().unwrap().packs;
    let mut all: Vec<Vec<Vec<Decimal>>> = vec![Vec::new()];
    for (index, position) in case.positions.iter().enumerate() {
        let mut packs = if case.frozen.contains(&position.id) {
            Vec::new()
        } else {
            multisets(&shims_of(case, &position.family), case.max_shims)
        };
        packs.retain(|pack| *pack != sorted(&last[index]));
        packs.push(last[index].clone());
        all = all
            .iter()
            .flat_map(|before| {
                packs.iter().map(|pack| [before.as_slice(), std::slice::from_ref(pack)].concat())
            })
            .collect();
    }
    all.retain(|packs| legal(case, packs));
    all
}

fn legal(case: &Case, packs: &[Vec<Decimal>]) -> bool {
    case.positions.iter().all(|position| {
        let mut left = shims_of(case, &position.family);
        let members = case.positions.iter().zip(packs);
        let mut members = members
            .filter(|(p, _)| p.family == position.family && !case.frozen.contains(&p.id))
            .flat_map(|(_, pack)| pack);
        members.all(|shim| {
            left.iter().position(|other| other == shim).map(|at| left.swap_remove(at)).is_some()
        })
    })
}

fn sorted(pack: &[Decimal]) -> Vec<Decimal> {
    let mut pack = pack.to_vec();
    pack.sort();
    pack
}

/// How packs rank among equally cheap ones: distance from the aims in hundredths, looseness, packs
/// with a thin shim outside, thicknesses.
fn rank(case: &Case, choice: &Choice) -> (i64, i64, usize, Vec<Vec<Decimal>>) {
    let bands = gearing::bands(case).unwrap();
    let (mut distance, mut looseness) = (0.0, 0.0);
    for ((prediction, band), check) in choice.predicted.iter().zip(&bands).zip(&case.checks) {
        let [low, high, aim] = [band.low(), band.high(), band.aim()].map(real::from_decimal);
        let off = (prediction.unwrap().mean - aim) / ((high - low) / 2.0);
        distance += off * off;
        if check.id != "depth" {
            looseness += off;
        }
    }
    let thick_to_thin: Vec<Vec<Decimal>> = choice
        .packs
        .iter()
        .map(|pack| {
            let mut pack = sorted(pack);
            pack.reverse();
            pack
        })
        .collect();
    let outside = |pack: &&Vec<Decimal>| *pack.get(1).unwrap_or(&pack[0]) < hundredths(10);
    let thin = thick_to_thin.iter().filter(outside).count();
    let distance = (distance * 100.0).round() as i64;
    (distance, (looseness * 1e9).round() as i64, thin, thick_to_thin)
}

fn order(
    a: &(i64, i64, usize, Vec<Vec<Decimal>>),
    b: &(i64, i64, usize, Vec<Vec<Decimal>>),
) -> Ordering {
    (a.0.cmp(&b.0)).then(b.1.cmp(&a.1)).then(a.2.cmp(&b.2)).then(b.3.cmp(&a.3))
}

/// Advises a case, and holds the answer against every combination of packs; the status with how
/// many there are, `None` where they are too many to try or nothing is to be chosen.
fn tried(case: &Case, seed: u64, most: usize) -> Option<(Status, usize)> {
    let advice = gearing::advise(case).unwrap();
    if !matches!(advice.status, Status::Fit | Status::StockShort) {
        return None;
    }
    let all = every(case);
    if all.len() > most {
        return None;
    }
    let all: Vec<Choice> =
        all.iter().map(|packs| gearing::evaluate(case, packs).unwrap()).collect();
    let best = all.iter().map(|choice| choice.probability).fold(0.0, f64::max);
    if best < 1e-30 {
        return Some((advice.status, all.len()));
    }
    let enough = 0.99 * best;
    let cost = |choice: &&Choice| (choice.minutes, choice.shims);
    let likely = || all.iter().filter(|choice| choice.probability >= enough * (1.0 - 1e-11));
    let least = likely().map(|choice| cost(&choice)).min().unwrap();
    assert!(advice.probability >= enough * (1.0 - 1e-11), "seed {seed}: {advice:?} {best}");
    let shims: usize = advice.packs.iter().map(Vec::len).sum();
    assert_eq!((advice.minutes, shims), least, "seed {seed}");
    assert!(legal(case, &advice.packs), "seed {seed}");

    let found = gearing::evaluate(case, &advice.packs).unwrap();
    let found = rank(case, &found);
    let first = likely()
        .filter(|choice| cost(choice) == least)
        .map(|choice| rank(case, choice))
        .min_by(order)
        .unwrap();
    // A distance on the edge of a hundredth may round either way.
    assert!(order(&found, &first) != Ordering::Greater, "seed {seed}: {found:?} {first:?}");

    let bands = gearing::bands(case).unwrap();
    let in_band = |choice: &Choice| {
        choice.predicted.iter().zip(&bands).all(|(p, band)| {
            let [low, high] = [band.low(), band.high()].map(real::from_decimal);
            (low..=high).contains(&p.unwrap().mean)
        })
    };
    assert_eq!(all.iter().any(in_band), advice.status == Status::Fit, "seed {seed}");
    Some((advice.status, all.len()))
}

#[test]
fn the_choice_is_the_best_of_all() {
    let (mut fits, mut short, mut combinations) = (0, 0, 0);
    for seed in 0..CASES {
        let Some((status, of)) = tried(&random(seed), seed, MOST) else { continue };
        combinations += of;
        match status {
            Status::Fit => fits += 1,
            _ => short += 1,
        }
    }
    println!("{fits} fits, {short} short, {combinations} combinations");
    assert!(fits > 300 && short > 150, "{fits} fits, {short} short");
}

/// Twin shafts: the packs of both gears and a spacer set one end play, so that all four hang
/// together in a ring.
#[test]
fn four_packs_in_a_ring_too() {
    let (mut fits, mut all) = (0, 0);
    for seed in 0..150 {
        let mut dice = Dice(seed + 77);
        let positions = vec![
            position("P", Member::Pinion, dice.pick(&[1, -1]), 0),
            position("F", driven("forward"), 1, 1),
            position("R", driven("reverse"), -1, -1),
            position("W", Member::Other("spacer".into()), 0, 1),
        ];
        let checks = vec![
            check("depth", depth(), 60, 70),
            check("lash-forward", lash("forward"), 27, 48),
            check("lash-reverse", lash("reverse"), 35, 70),
            check("play", end_play(&["F", "R", "W"]), 5, 22),
        ];
        let stock = positions.iter().map(|position| StockLine {
            family: position.family.clone(),
            thickness: hundredths(dice.between(3, 15)),
            count: 1,
        });
        let stock = stock.collect();
        let readings = [65, 38, 52, 13].map(|middle| {
            let reading = hundredths(middle + dice.between(-12, 12));
            vec![reading, reading]
        });
        let packs = positions.iter().map(|_| vec![hundredths(50), hundredths(dice.between(3, 15))]);
        let trials = vec![Trial { packs: packs.collect(), readings: readings.to_vec() }];
        let gears = gears(dice.chance(60));
        let case = Case { gears, positions, checks, stock, trials, max_shims: 2, ..random(0) };
        let case = Case { frozen: Vec::new(), ..case };
        let tried = tried(&case, seed, MOST_IN_RING);
        all += usize::from(tried.is_some());
        fits += usize::from(tried.is_some_and(|(status, _)| status == Status::Fit));
    }
    assert!(fits > 25 && all > 60, "{fits} fits of {all}");
}
