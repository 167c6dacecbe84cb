//! Golden pack choices, conflicts and shortages: `tests/golden/`, calculated apart from this code.

use gearing::advice::{Advice, Status};
use gearing::case::Case;
use measure::{Decimal, real};
use serde_json::Value;
use shimwright_cli::read_case;

/// A file of `tests/golden/`.
pub fn file(name: &str) -> String {
    let path = format!("{}/../../tests/golden/{name}", env!("CARGO_MANIFEST_DIR"));
    std::fs::read_to_string(path).unwrap()
}

fn lines(name: &str) -> Vec<(Case, Value)> {
    let line = |line: &str| {
        let mut value: Value = serde_json::from_str(line).unwrap();
        (read_case(&value["line"]).unwrap(), value["expect"].take())
    };
    file(name).lines().map(line).collect()
}

pub fn near(found: f64, expected: f64, within: f64) {
    assert!((found - expected).abs() <= within, "found {found}, expected {expected}");
}

pub fn near_relative(found: f64, expected: f64, within: f64) {
    near(found, expected, within * expected.abs());
}

pub fn check(case: &Case, id: &str) -> usize {
    case.checks.iter().position(|check| check.id == id).unwrap()
}

pub fn position(case: &Case, id: &str) -> usize {
    case.positions.iter().position(|position| position.id == id).unwrap()
}

fn decimal(value: &Value) -> Decimal {
    Decimal::from_str_exact(value.as_str().unwrap()).unwrap()
}

/// The packs of `{"B1": ["0.50", …], …}` in the order of the case.
pub fn packs(case: &Case, value: &Value) -> Vec<Vec<Decimal>> {
    let pack = |id: &str| value[id].as_array().unwrap().iter().map(decimal).collect();
    case.positions.iter().map(|position| pack(&position.id)).collect()
}

fn shims(packs: &[Vec<Decimal>]) -> usize {
    packs.iter().map(Vec::len).sum()
}

/// Whether packs can be taken from the tin and what is in the case.
pub fn assert_legal(case: &Case, packs: &[Vec<Decimal>]) {
    let last = &case.trials.last().unwrap().packs;
    for (pack, position) in packs.iter().zip(&case.positions) {
        assert!(!pack.is_empty() && pack.len() <= case.max_shims, "{}: {pack:?}", position.id);
        for size in pack {
            let family = |other: usize| case.positions[other].family == position.family;
            let of = |packs: &[Vec<Decimal>]| {
                let members = packs.iter().enumerate().filter(|(other, _)| family(*other));
                members.flat_map(|(_, pack)| pack).filter(|shim| *shim == size).count()
            };
            let tin = case.stock.iter().filter(|l| l.family == position.family);
            let tin: u32 = tin.filter(|line| line.thickness == *size).map(|line| line.count).sum();
            assert!(of(packs) <= of(last) + tin as usize, "{size} at {}", position.id);
        }
    }
}

/// That advice reaches the objective: legal, the minutes and shims of the reference, and packs that
/// the reference lists as a tie with the same probability.
pub fn assert_reaches(case: &Case, advice: &Advice, expect: &Value) {
    assert_eq!(advice.status, Status::Fit);
    assert_legal(case, &advice.packs);
    assert_eq!(u64::from(advice.minutes), expect["minutes"].as_u64().unwrap());
    assert_eq!(shims(&advice.packs) as u64, expect["shims"].as_u64().unwrap());
    let totals: Vec<Decimal> = advice.packs.iter().map(|pack| pack.iter().sum()).collect();
    let tie = expect["ties"].as_array().unwrap().iter().find(|tie| {
        let total = |id: &str| decimal(&tie["totals"][id]);
        case.positions.iter().zip(&totals).all(|(position, found)| total(&position.id) == *found)
    });
    let tie = tie.unwrap_or_else(|| panic!("{totals:?} is no tie of the reference"));
    near(advice.probability, tie["probability"].as_f64().unwrap(), 1e-9);
    let best = expect["p_best"].as_f64().unwrap();
    assert!(advice.probability >= 0.99 * best - 1e-9);
}

#[test]
fn thirty_pack_choices() {
    let lines = lines("packs.jsonl");
    assert_eq!(lines.len(), 30);
    for (case, expect) in lines {
        assert_reaches(&case, &gearing::advise(&case).unwrap(), &expect);

        let first = &expect["ties"][0];
        let choice = gearing::evaluate(&case, &packs(&case, &first["packs"][0])).unwrap();
        near(choice.probability, first["probability"].as_f64().unwrap(), 1e-9);
        for (id, predicted) in expect["predicted_of_first"].as_object().unwrap() {
            let found = choice.predicted[check(&case, id)].unwrap();
            near(found.mean, predicted["mean"].as_f64().unwrap(), 1e-6);
            near(found.sigma, predicted["sigma"].as_f64().unwrap(), 1e-6);
        }

        let influences = gearing::influences(&case).unwrap();
        for (id, slopes) in expect["slopes"].as_object().unwrap() {
            for (at, slope) in slopes.as_object().unwrap() {
                let (check, position) = (check(&case, id), position(&case, at));
                let found = influences
                    .iter()
                    .find(|influence| influence.check == check && influence.position == position);
                near_relative(found.unwrap().slope, slope.as_f64().unwrap(), 1e-6);
            }
        }
        let bands = gearing::bands(&case).unwrap();
        for (id, band) in expect["band_at_arm"].as_object().unwrap() {
            let found = &bands[check(&case, id)];
            near(real::from_decimal(found.low()), band[0].as_f64().unwrap(), 1e-8);
            near(real::from_decimal(found.high()), band[1].as_f64().unwrap(), 1e-8);
        }
    }
}

/// Every tie the reference lists has the probability the reference gives it.
#[test]
fn every_listed_tie() {
    let mut ties = 0;
    for (case, expect) in lines("packs.jsonl").into_iter().chain(lines("jobs.jsonl")) {
        for tie in expect["ties"].as_array().unwrap() {
            for listed in tie["packs"].as_array().unwrap() {
                let choice = gearing::evaluate(&case, &packs(&case, listed)).unwrap();
                near(choice.probability, tie["probability"].as_f64().unwrap(), 1e-9);
                assert_eq!(u64::from(choice.minutes), expect["minutes"].as_u64().unwrap());
                assert_eq!(choice.shims as u64, expect["shims"].as_u64().unwrap());
                ties += 1;
            }
        }
    }
    assert!(ties > 150, "{ties}");
}

#[test]
fn two_jobs() {
    let lines = lines("jobs.jsonl");
    assert_eq!(lines.len(), 2);
    for (case, expect) in lines {
        assert_reaches(&case, &gearing::advise(&case).unwrap(), &expect);
    }
}

#[test]
fn three_conflicts() {
    let lines = lines("conflict-and-shortage.jsonl");
    let conflicts: Vec<_> =
        lines.into_iter().filter(|(_, expect)| expect["status"] == "conflict").collect();
    assert_eq!(conflicts.len(), 3);
    for (case, expect) in conflicts {
        let advice = gearing::advise(&case).unwrap();
        assert_eq!(advice.status, Status::Conflict);
        let ids = |checks: &[usize]| -> Vec<&str> {
            checks.iter().map(|&index| case.checks[index].id.as_str()).collect()
        };
        let found: Vec<_> = advice.conflicts.iter().map(|one| ids(&one.checks)).collect();
        let expected: Vec<Vec<&str>> =
            serde_json::from_value::<Vec<Vec<String>>>(expect["conflicts"].clone())
                .unwrap()
                .iter()
                .map(|set| set.iter().map(|id| case.checks[check(&case, id)].id.as_str()).collect())
                .collect();
        assert_eq!(found, expected);
        let excesses = expect["excess_by_set"].as_array().unwrap();
        for (conflict, excess) in advice.conflicts.iter().zip(excesses) {
            near(conflict.excess, excess.as_f64().unwrap(), 1e-6);
        }
        for (id, level) in expect["level"].as_object().unwrap() {
            let unchanged = advice.predicted[check(&case, id)].unwrap();
            near(unchanged.mean, level.as_f64().unwrap(), 1e-6);
        }
    }
}

#[test]
fn three_shortages() {
    let lines = lines("conflict-and-shortage.jsonl");
    let short: Vec<_> =
        lines.into_iter().filter(|(_, expect)| expect["status"] == "stock_short").collect();
    assert_eq!(short.len(), 3);
    for (case, expect) in short {
        let advice = gearing::advise(&case).unwrap();
        assert_eq!(advice.status, Status::StockShort);
        assert_legal(&case, &advice.packs);
        near(advice.probability, expect["p_best_from_stock"].as_f64().unwrap(), 1e-9);
        assert_eq!(u64::from(advice.minutes), expect["minutes"].as_u64().unwrap());
        assert_eq!(shims(&advice.packs) as u64, expect["shims"].as_u64().unwrap());

        let count: u32 = advice.buy.iter().map(|line| line.count).sum();
        assert_eq!(u64::from(count), expect["buy_count"].as_u64().unwrap());
        let buy = &advice.buy[0];
        let families = expect["buy_any_of"].as_array().unwrap();
        let family = families.iter().find(|family| family["family"] == buy.family.as_str());
        let sizes = family.unwrap()["sizes"].as_array().unwrap();
        let size = sizes.iter().find(|size| decimal(&size[0]) == buy.thickness);
        let then = size.unwrap()[1].as_f64().unwrap();
        assert!(then >= 0.99 * expect["buy_best"]["p_best_then"].as_f64().unwrap());

        // With the shim bought, the same case has packs of that probability.
        let mut bought = case.clone();
        bought.stock.push(buy.clone());
        let advice = gearing::advise(&bought).unwrap();
        assert_eq!(advice.status, Status::Fit);
        assert!(advice.probability >= 0.99 * then - 1e-9);
    }
}
