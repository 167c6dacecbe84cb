//! Which shims to buy or borrow: the fewest that do, of the size that does best.

use measure::Decimal;

use crate::case::{Case, StockLine};
use crate::case_error::CaseError;
use crate::choose::best_probability;
use crate::model::Model;
use crate::problem::Wanted;
use crate::reading_model::bit;

/// Thinnest shim to look for, hundredths of a millimetre.
const THINNEST: i64 = 3;
/// Thickest shim to look for in any case, hundredths of a millimetre.
const THICKEST: i64 = 120;
/// How far beyond the family's thickest to look, hundredths of a millimetre.
const BEYOND: i64 = 30;
/// More shims than this are a new tin, not a purchase.
const MOST: usize = 3;
/// A size is as good as the best down to this part of its probability.
const NEARLY_BEST: f64 = 0.99;
/// A size worth buying raises the probability by this much.
const WORTH_IT: f64 = 0.05;

/// Shims that bring every mean into band, and the probability then.
#[derive(Clone, Debug)]
struct Purchase {
    shims: Vec<(String, Decimal)>,
    probability: f64,
}

/// The fewest shims with which some packs put every mean into its band; empty if a few do not help.
pub(crate) fn fewest(case: &Case, model: &Model) -> Result<Vec<StockLine>, CaseError> {
    let families = families(case);
    for count in 1..=MOST {
        let mut found = Vec::new();
        for choice in choices(&families, count) {
            found.extend(sizes(case, model, &choice, 0.0, true)?);
        }
        if let Some(best) = preferred(found) {
            return Ok(lines(&best.shims));
        }
    }
    Ok(Vec::new())
}

/// The one shim that raises a probability most, if one is worth buying.
pub(crate) fn one_better(
    case: &Case,
    model: &Model,
    probability: f64,
) -> Result<Vec<StockLine>, CaseError> {
    let mut found = Vec::new();
    for family in families(case) {
        found.extend(sizes(case, model, &[family], probability + WORTH_IT, false)?);
    }
    Ok(preferred(found).map_or_else(Vec::new, |best| lines(&best.shims)))
}

/// Families of the positions that may change.
fn families(case: &Case) -> Vec<String> {
    let mut families: Vec<String> = Vec::new();
    for position in case.positions.iter().filter(|p| !case.frozen.contains(&p.id)) {
        if !families.contains(&position.family) {
            families.push(position.family.clone());
        }
    }
    families
}

/// Every choice of some families, each as often as wanted, in order.
fn choices(families: &[String], count: usize) -> Vec<Vec<String>> {
    let Some((first, rest)) = families.split_first().filter(|_| count > 0) else {
        return if count == 0 { vec![Vec::new()] } else { Vec::new() };
    };
    let with = choices(families, count - 1).into_iter().map(|mut choice| {
        choice.insert(0, first.clone());
        choice
    });
    with.chain(choices(rest, count)).collect()
}

/// Purchases of one shim from each family of a choice with at least a probability.
///
/// As long as no thickness whatever at the positions of the choice would do, no size has to be
/// tried.
fn sizes(
    case: &Case,
    model: &Model,
    choice: &[String],
    probability: f64,
    in_band: bool,
) -> Result<Vec<Purchase>, CaseError> {
    let free = case.positions.iter().enumerate().fold(0, |mask, (index, position)| {
        let free = choice.contains(&position.family) && !case.frozen.contains(&position.id);
        if free { mask | bit(index) } else { mask }
    });
    let reached = best_probability(case, model, Wanted { probability, in_band, free })?;
    let Some(reached) = reached.filter(|reached| *reached >= probability) else {
        return Ok(Vec::new());
    };
    let Some((family, rest)) = choice.split_first() else {
        return Ok(vec![Purchase { shims: Vec::new(), probability: reached }]);
    };
    let mut found = Vec::new();
    for hundredths in THINNEST..=thickest(case, family) {
        let thickness = Decimal::new(hundredths, 2);
        let mut with = case.clone();
        with.stock.push(StockLine { family: family.clone(), thickness, count: 1 });
        for mut purchase in sizes(&with, model, rest, probability, in_band)? {
            purchase.shims.insert(0, (family.clone(), thickness));
            found.push(purchase);
        }
        // Of several shims together any sizes that do are good enough.
        if !rest.is_empty() && !found.is_empty() {
            break;
        }
    }
    Ok(found)
}

/// The thickest shim to look for, hundredths of a millimetre.
fn thickest(case: &Case, family: &str) -> i64 {
    let of_family = case.stock.iter().filter(|line| line.family == family);
    let thickest = of_family.map(|line| line.thickness).max().unwrap_or_default();
    let hundredths = i64::try_from((thickest * Decimal::ONE_HUNDRED).trunc()).unwrap_or(0);
    THICKEST.max(hundredths + BEYOND)
}

/// Among purchases nearly as good as the best: sizes in steps of 0.05, which are the easiest to get
/// (common practice, no source), then the thinnest.
fn preferred(found: Vec<Purchase>) -> Option<Purchase> {
    let best = found.iter().map(|purchase| purchase.probability).fold(0.0, f64::max);
    let odd = |purchase: &Purchase| {
        let step = Decimal::new(5, 2);
        purchase.shims.iter().filter(|(_, size)| !(size % step).is_zero()).count()
    };
    let total = |purchase: &Purchase| purchase.shims.iter().map(|(_, size)| size).sum::<Decimal>();
    found
        .into_iter()
        .filter(|purchase| purchase.probability >= NEARLY_BEST * best)
        .min_by_key(|purchase| (odd(purchase), total(purchase)))
}

/// The shims as lines, equal ones together.
fn lines(shims: &[(String, Decimal)]) -> Vec<StockLine> {
    let mut lines: Vec<StockLine> = Vec::new();
    for (family, thickness) in shims {
        let same =
            lines.iter_mut().find(|line| line.family == *family && line.thickness == *thickness);
        match same {
            Some(line) => line.count += 1,
            None => {
                lines.push(StockLine { family: family.clone(), thickness: *thickness, count: 1 })
            }
        }
    }
    lines
}
