//! Which shims to buy or borrow: the fewest that do, of the size that does best.

use std::cell::Cell;

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
/// Searches after which looking for a purchase ends without one.
const MOST_SEARCHES: u32 = 1000;
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

/// What a purchase has to reach.
#[derive(Debug)]
struct Ask {
    probability: f64,
    /// Every mean inside its band.
    in_band: bool,
    /// Searches made so far.
    searches: Cell<u32>,
}

impl Ask {
    fn new(probability: f64, in_band: bool) -> Ask {
        Ask { probability, in_band, searches: Cell::new(0) }
    }
}

/// The fewest shims with which some packs put every mean into its band; empty if a few do not help.
pub(crate) fn fewest(case: &Case, model: &Model) -> Result<Vec<StockLine>, CaseError> {
    let ask = Ask::new(0.0, true);
    let families = families(case);
    for count in 1..=MOST {
        let mut found = Vec::new();
        for choice in choices(&families, count) {
            found.extend(purchase(case, model, &choice, &ask)?);
        }
        if let Some(best) = likeliest(found) {
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
    let ask = Ask::new(probability + WORTH_IT, false);
    let mut found = Vec::new();
    for family in families(case) {
        found.extend(purchase(case, model, &[family], &ask)?);
    }
    Ok(likeliest(found).map_or_else(Vec::new, |best| lines(&best.shims)))
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

/// One shim from each family of a choice, one size after the other: the size that does best as long
/// as the families still to come may have any thickness whatever; `None` if none does.
fn purchase(
    case: &Case,
    model: &Model,
    choice: &[String],
    ask: &Ask,
) -> Result<Option<Purchase>, CaseError> {
    let Some(reached) = reached(case, model, choice, ask)? else { return Ok(None) };
    let Some((family, rest)) = choice.split_first() else {
        return Ok(Some(Purchase { shims: Vec::new(), probability: reached }));
    };
    let mut offers = Vec::new();
    for hundredths in THINNEST..=thickest(case, family) {
        let thickness = Decimal::new(hundredths, 2);
        if let Some(probability) = self::reached(&with(case, family, thickness), model, rest, ask)?
        {
            offers.push((thickness, probability));
        }
    }
    let best = offers.iter().map(|(_, probability)| *probability).fold(0.0, f64::max);
    offers.sort_by_key(|(thickness, probability)| preference(*thickness, *probability, best));
    for (thickness, _) in offers {
        let mut found = purchase(&with(case, family, thickness), model, rest, ask)?;
        if let Some(purchase) = &mut found {
            purchase.shims.insert(0, (family.clone(), thickness));
            return Ok(found);
        }
    }
    Ok(None)
}

/// The best probability if the positions of some families may have any thickness.
fn reached(
    case: &Case,
    model: &Model,
    families: &[String],
    ask: &Ask,
) -> Result<Option<f64>, CaseError> {
    let &Ask { probability, in_band, ref searches } = ask;
    searches.set(searches.get() + 1);
    if searches.get() > MOST_SEARCHES {
        return Ok(None);
    }
    let free = case.positions.iter().enumerate().fold(0, |mask, (index, position)| {
        let free = families.contains(&position.family) && !case.frozen.contains(&position.id);
        if free { mask | bit(index) } else { mask }
    });
    let reached = best_probability(case, model, Wanted { probability, in_band, free })?;
    Ok(reached.filter(|reached| *reached >= probability))
}

/// The case with one more shim in the tin.
fn with(case: &Case, family: &str, thickness: Decimal) -> Case {
    let mut case = case.clone();
    case.stock.push(StockLine { family: family.to_owned(), thickness, count: 1 });
    case
}

/// Less is better: sizes nearly as good as the best, those in steps of 0.05 first, which are the
/// easiest to get (common practice, no source), thin before thick; then the others, likely before
/// unlikely.
fn preference(thickness: Decimal, probability: f64, best: f64) -> (bool, u64, bool, Decimal) {
    let good = probability >= NEARLY_BEST * best;
    let unlikely = if good { 0 } else { ((1.0 - probability) * 1e9) as u64 };
    (!good, unlikely, !(thickness % Decimal::new(5, 2)).is_zero(), thickness)
}

/// The thickest shim to look for, hundredths of a millimetre.
fn thickest(case: &Case, family: &str) -> i64 {
    let of_family = case.stock.iter().filter(|line| line.family == family);
    let thickest = of_family.map(|line| line.thickness).max().unwrap_or_default();
    let hundredths = i64::try_from((thickest * Decimal::ONE_HUNDRED).trunc()).unwrap_or(0);
    THICKEST.max(hundredths + BEYOND)
}

/// The purchase that does best, an earlier one where two do the same.
fn likeliest(found: Vec<Purchase>) -> Option<Purchase> {
    found.into_iter().rev().max_by(|a, b| a.probability.total_cmp(&b.probability))
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
