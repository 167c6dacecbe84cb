//! The packs to fit: likeliest first, then the least to open, then the fewest shims.

use measure::Decimal;

use crate::advice::Choice;
use crate::case::Case;
use crate::case_error::CaseError;
use crate::forest::Node;
use crate::frontier::{Entry, combine};
use crate::model::{Model, minutes};
use crate::problem::{Wanted, problem};
use crate::reading_model::bit;
use crate::refine::{Goal, refine};
use crate::search::{Outward, Search, positions};

/// Packs are as good as the best down to this part of its probability.
const NEARLY_BEST: f64 = 0.99;
/// A hair of room for rounding when probabilities are compared.
const HAIR: f64 = 1.0 - 1e-12;
/// Candidates of a root to start with.
const FEW: usize = 6;
/// Searches for packs with at least these probabilities, the next if the one before finds none: the
/// likelier the packs asked for, the fewer have to be looked at, and none is missed.
const LIKELY: [f64; 2] = [0.51, 1e-3];
/// The same where the tin is short.
const UNLIKELY: [f64; 2] = [1e-9, 1e-30];

/// The packs to fit from the tin; `None` if none has a probability of a thousandth.
///
/// # Errors
/// [`CaseError`] for a tin with too many packs to search.
pub(crate) fn choose(case: &Case, model: &Model) -> Result<Option<Choice>, CaseError> {
    let unchanged = choice(case, model, model.last.clone());
    if unchanged.probability >= NEARLY_BEST && opening_costs(case) {
        // Nothing can be so much likelier that opening the unit for it would be preferred.
        return Ok(Some(unchanged));
    }
    for probability in LIKELY {
        let chosen = choose_above(case, model, probability)?;
        if chosen.is_some() {
            return Ok(chosen);
        }
    }
    Ok(None)
}

/// Whether changing any pack takes time.
fn opening_costs(case: &Case) -> bool {
    (0..case.positions.len()).all(|position| minutes(case, bit(position)) > 0)
}

/// The best packs of a tin that is short, however unlikely; the last trial's where none has a
/// probability worth a name.
pub(crate) fn choose_unlikely(case: &Case, model: &Model) -> Choice {
    UNLIKELY
        .into_iter()
        .find_map(|probability| choose_above(case, model, probability).ok().flatten())
        .unwrap_or_else(|| choice(case, model, model.last.clone()))
}

/// The packs to fit, if the best have at least a probability.
fn choose_above(case: &Case, model: &Model, probability: f64) -> Result<Option<Choice>, CaseError> {
    let wanted = Wanted { probability: NEARLY_BEST * probability, in_band: false, free: 0 };
    let mut search = problem(case, model, wanted)?;
    let forest = search.forest();
    let frontier = whole_frontier(&mut search, &forest);
    let frontier = frontier.filter(|frontier| likeliest(frontier) >= probability);
    let chosen =
        frontier.and_then(|frontier| choose_from(case, model, &mut search, &forest, &frontier));
    search.effort.check()?;
    Ok(chosen)
}

/// Whether some packs from the tin put every mean inside its band.
pub(crate) fn fits(case: &Case, model: &Model) -> Result<bool, CaseError> {
    let wanted = Wanted { probability: 0.0, in_band: true, free: 0 };
    Ok(best_probability(case, model, wanted)?.is_some())
}

/// The best probability of packs that are wanted; `None` if there are none.
pub(crate) fn best_probability(
    case: &Case,
    model: &Model,
    wanted: Wanted,
) -> Result<Option<f64>, CaseError> {
    let mut search = problem(case, model, wanted)?;
    let forest = search.forest();
    let best = whole_frontier(&mut search, &forest).map(|frontier| likeliest(&frontier));
    search.effort.check()?;
    Ok(best)
}

/// The highest probability on a frontier.
fn likeliest(frontier: &[Entry]) -> f64 {
    frontier.iter().map(|entry| entry.probability).fold(0.0, f64::max)
}

/// What all positions together can reach; `None` for nothing.
fn whole_frontier(search: &mut Search, forest: &[Node]) -> Option<Vec<Entry>> {
    let unmoved = search.unmoved()?;
    let (probability, distance) = (unmoved.probability, unmoved.distance);
    let mut frontier = vec![Entry { probability, distance, ..Entry::NOTHING }];
    let sketched = probability * sketch(search, forest);
    if sketched > 0.0 {
        search.raise_floors(NEARLY_BEST * sketched * HAIR);
    }
    let mut decided = search.undecided();
    for node in forest {
        frontier = combine(&frontier, &search.frontier(node, &mut decided));
    }
    (!frontier.is_empty()).then_some(frontier)
}

/// A probability that can be reached, from a few candidates of each root: a start that lets most
/// others go unlooked at.
fn sketch(search: &mut Search, forest: &[Node]) -> f64 {
    let mut decided = search.undecided();
    let mut reached = 1.0;
    for node in forest.iter().filter(|node| !node.branches.is_empty()) {
        let window = search.window(node, &mut decided);
        let few: Vec<usize> = match search.aim(node, &mut decided) {
            Some(aim) => {
                Outward::new(search.candidates(node.position), window, aim).take(FEW).collect()
            }
            None => {
                let step = (window.len() / (2 * FEW)).max(1);
                window.step_by(step).collect()
            }
        };
        reached *= likeliest(&search.frontier_of(node, few.into_iter(), &mut decided));
    }
    for node in forest.iter().filter(|node| node.branches.is_empty()) {
        reached *= likeliest(&search.frontier(node, &mut decided));
    }
    reached
}

/// The packs to prefer among the entries of a frontier.
fn choose_from(
    case: &Case,
    model: &Model,
    search: &mut Search,
    forest: &[Node],
    frontier: &[Entry],
) -> Option<Choice> {
    let probability = NEARLY_BEST * likeliest(frontier) * HAIR;
    let likely = || frontier.iter().filter(|entry| entry.probability >= probability);
    let cost = |entry: &Entry| (minutes(case, entry.changed), entry.shims);
    let least = likely().map(cost).min()?;
    let goals: Vec<Goal> = likely()
        .filter(|entry| cost(entry) == least)
        .map(|entry| Goal { changed: entry.changed, shims: entry.shims, probability })
        .collect();
    search.raise_floors(probability);
    let found = refine(search, forest, &goals)?;
    Some(choice(case, model, packs(search, model, &found.packs)))
}

/// The thicknesses of packs, thin shims inside; unchanged packs as they were.
fn packs(search: &Search, model: &Model, packs: &[Vec<usize>]) -> Vec<Vec<Decimal>> {
    let thicknesses = |(position, pack): (usize, &Vec<usize>)| {
        let place = search.places.get(position)?;
        if *pack == place.last {
            return model.last.get(position).cloned();
        }
        Some(search.stocks.get(place.shelf)?.shelf.thin_inside(pack))
    };
    packs.iter().enumerate().filter_map(thicknesses).collect()
}

/// What some packs would give.
pub(crate) fn choice(case: &Case, model: &Model, packs: Vec<Vec<Decimal>>) -> Choice {
    let (change, changed) = model.change(&packs);
    let predicted = model.predict_change(&change, changed);
    let probability = predicted.iter().flatten().map(|p| p.probability).product();
    Choice {
        opens: positions(changed).collect(),
        minutes: minutes(case, changed),
        shims: packs.iter().map(Vec::len).sum(),
        predicted,
        probability,
        packs,
    }
}
