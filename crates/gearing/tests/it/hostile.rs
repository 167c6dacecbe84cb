//! Cases nobody has: the engine answers or refuses, and never stops or runs away.

use std::time::{Duration, Instant};

use gearing::case::{Case, Member, StockLine, Trial};
use measure::Decimal;

use crate::cases::{Dice, check, depth, driven, end_play, hundredths, lash, position, random};

/// Far more than any case may take, even on a busy machine that does not optimise.
const LIMIT: Duration = Duration::from_secs(30);

fn answered(case: &Case) -> Result<gearing::advice::Advice, gearing::CaseError> {
    let start = Instant::now();
    let answer = gearing::advise(case);
    assert!(start.elapsed() < LIMIT, "{:?} for {case:?}", start.elapsed());
    if let Ok(advice) = &answer {
        assert!((0.0..=1.0 + 1e-9).contains(&advice.probability), "{}", advice.probability);
        for prediction in advice.predicted.iter().flatten() {
            assert!(prediction.mean.is_finite() && prediction.sigma > 0.0);
        }
    }
    answer
}

/// One field of a sound case set to something extreme.
fn twisted(seed: u64) -> Case {
    let mut case = random(seed);
    let mut dice = Dice(seed.wrapping_mul(104_729));
    for _ in 0..dice.between(1, 3) {
        let number = dice.pick(&[
            Decimal::ZERO,
            Decimal::new(1, 5),
            Decimal::new(-7, 2),
            Decimal::new(12_345, 5),
            Decimal::from(49),
            Decimal::from(1000),
            Decimal::MAX,
            Decimal::MIN,
            Decimal::new(1, 28),
        ]);
        let last = case.trials.len() - 1;
        match dice.below(16) {
            0 => case.arm.radius = number,
            1 => case.gears.pinion_pitch_radius = number,
            2 => case.gears.spiral_angle = Some(number),
            3 => case.gears.shaft_angle = number,
            4 => case.checks[0].low = number,
            5 => case.checks[0].high = number,
            6 => case.checks[1].sigma = Some(number),
            7 => case.checks[1].aim = Some(number),
            8 => case.stock[0].thickness = number,
            9 => case.stock[0].count = dice.pick(&[0, 1, u32::MAX]),
            10 => case.trials[last].packs[0] = vec![number],
            11 => case.trials[0].readings[0] = vec![number, Decimal::ONE],
            12 => case.max_shims = dice.pick(&[0, 1, 8, usize::MAX]),
            13 => case.positions[0].open_minutes = u32::MAX,
            14 => case.gears.driven[0].teeth = dice.pick(&[0, 1, u32::MAX]),
            _ => {
                case.trials[last].packs.pop();
            }
        }
    }
    case
}

#[test]
fn extreme_numbers() {
    let mut refused = 0;
    for seed in 0..4000 {
        refused += usize::from(answered(&twisted(seed)).is_err());
    }
    assert!((1000..3500).contains(&refused), "{refused}");
}

/// A change that makes a case senseless.
type Spoil = fn(&mut Case);

/// What makes no sense, and the start of the sentence that says so.
const SENSELESS: [(Spoil, &str); 19] = [
    (|case| case.positions[1].id = "P".into(), "positions[1].id: found \"P\" twice"),
    (|case| case.checks[1].id = "depth".into(), "checks[1].id: found \"depth\" twice"),
    (
        |case| case.gears.driven[1].id = "forward".into(),
        "gears.driven[1].id: found \"forward\" twice",
    ),
    (|case| case.positions[1].moves = driven("third"), "positions[1].moves: found \"third\""),
    (|case| case.checks[1].kind = lash("third"), "checks[1].mesh: found \"third\""),
    (|case| case.positions[0].after = vec!["Q".into()], "positions[0].after[0]: found \"Q\""),
    (|case| case.frozen = vec!["Q".into()], "frozen[0]: found \"Q\""),
    (
        |case| case.positions[0].mesh_sign = 2,
        "positions[0].mesh_sign: found 2, expected -1, 0 or 1",
    ),
    (|case| case.positions[0].setting_sign = -2, "positions[0].setting_sign: found -2"),
    (|case| case.checks[1].low = hundredths(49), "checks[1].low: found the low limit 0.49 above"),
    (|case| case.checks[1].low = hundredths(48), "checks[1].low: found 0.48 as both limits"),
    (|case| case.checks[1].aim = Some(hundredths(50)), "checks[1].aim: found the aim 0.50"),
    (|case| case.checks[1].low = hundredths(-1), "checks[1].low: found -0.01, expected 0 or more"),
    (|case| case.checks[1].sigma = Some(hundredths(-1)), "checks[1].sigma: found -0.01"),
    (|case| case.stock[0].thickness = hundredths(-10), "stock[0].thickness: found -0.10"),
    (|case| case.trials.clear(), "trials: found 0 trials"),
    (|case| case.trials[0].packs[0] = vec![hundredths(-5)], "trials[0].packs.P[0]: found -0.05"),
    (|case| case.checks[1].kind = end_play(&[]), "checks[1]: no position changes this reading"),
    (
        |case| case.stock = vec![case.stock[0].clone(); 10_000],
        "stock: found 10000 lines, expected from 0 to 4000",
    ),
];

#[test]
fn what_makes_no_sense_is_refused_at_its_place() {
    for (spoil, sentence) in SENSELESS {
        let mut case = random(0);
        answered(&case).unwrap();
        spoil(&mut case);
        let refused = answered(&case).unwrap_err().to_string();
        assert!(refused.starts_with(sentence), "{refused:?}, expected {sentence:?}");
    }
}

/// The same packs, readings that cannot both be right: an answer, and a word of warning.
#[test]
fn trials_that_contradict() {
    for off in [10, 50, 300] {
        let mut case = random(0);
        let mut again = case.trials[0].clone();
        for series in &mut again.readings {
            for reading in series {
                *reading += hundredths(off);
            }
        }
        case.trials = vec![case.trials[0].clone(), again];
        assert!(!answered(&case).unwrap().alarms.is_empty(), "{off}");
    }
}

/// A tin of many sizes that have no step in common.
fn tin(family: &str, sizes: i64, places: u32) -> Vec<StockLine> {
    let line = |n: i64| StockLine {
        family: family.into(),
        thickness: Decimal::new(3 + n * 7 + n * n % 5, places),
        count: 3,
    };
    (1..=sizes).map(line).collect()
}

#[test]
fn tins_too_large_to_search() {
    for (sizes, places, max_shims) in [(190, 3, 8), (190, 4, 8), (40, 5, 8), (150, 2, 4)] {
        for seed in 0..5 {
            let mut case = random(seed);
            case.max_shims = max_shims;
            for position in &case.positions {
                let known = case.stock.iter().filter(|l| l.family == position.family).count();
                if known < 10 {
                    let lines = tin(&position.family, sizes, places);
                    case.stock.extend(lines);
                }
            }
            case.stock.truncate(4000);
            match answered(&case) {
                Ok(_) => {}
                Err(refused) => assert!(refused.to_string().contains("to search"), "{refused}"),
            }
        }
    }
}

/// Twelve packs that all move the same gear: nothing separates them.
#[test]
fn twelve_packs_on_one_gear() {
    let mut case = random(0);
    case.positions = (0..12)
        .map(|n| {
            let mut position = position(&format!("P{n}"), driven("forward"), 1, 0);
            if n == 0 {
                position.moves = Member::Pinion;
            }
            position
        })
        .collect();
    case.checks = vec![check("depth", depth(), 62, 68), check("lash", lash("forward"), 27, 48)];
    case.stock = (0..12).flat_map(|n| tin(&format!("P{n}"), 20, 2)).collect();
    case.frozen.clear();
    case.trials = vec![Trial {
        packs: vec![vec![hundredths(50)]; 12],
        readings: vec![vec![hundredths(70)], vec![hundredths(90)]],
    }];
    let refused = answered(&case).unwrap_err().to_string();
    assert!(refused.contains("more combinations of packs"), "{refused}");
}

/// Two packs of which only the difference counts, each from a full tin.
#[test]
fn two_packs_against_each_other() {
    let mut case = random(3);
    case.frozen.clear();
    case.checks =
        vec![check("lash", lash("forward"), 27, 48), check("play", end_play(&["U", "V"]), 2, 20)];
    for family in ["U", "V"] {
        case.stock.extend(tin(family, 40, 3));
    }
    case.max_shims = 4;
    answered(&case).unwrap();
}
