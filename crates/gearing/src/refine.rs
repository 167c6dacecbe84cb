//! From the frontier to the packs: the fixed order that settles every tie.
//!
//! Among packs that are likely enough, open as little and use as few shims as the frontier says is
//! possible, these come first: nearest to the aims (sum of squares in half bands, rounded to 0.01),
//! then the looser backlash and lighter preload, then the fewest packs with a shim under 0.10 mm on
//! the outside, then the thicker shims, in the order of the positions.

use std::cmp::Ordering;
use std::rc::Rc;

use measure::Decimal;

use crate::forest::Node;
use crate::frontier::{Entry, combine};
use crate::reading_model::bit;
use crate::search::{Decided, Local, Outward, Search, positions};
use crate::shelf::Pack;

/// A shim thinner than this does not belong on the outside of a pack, mm (common practice, no
/// source).
const THIN: Decimal = Decimal::from_parts(10, 0, 0, false, 2);

/// More than rounding adds to a distance.
const ROUNDING: f64 = 1e-9;

/// What the packs must reach.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Goal {
    /// Positions whose pack changes.
    pub changed: u16,
    /// Shims of all packs.
    pub shims: usize,
    /// The least probability.
    pub probability: f64,
}

/// Packs that reach a goal, and how they rank.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Best {
    /// Probability that every check lands.
    pub probability: f64,
    /// Distance from the aims in hundredths.
    distance: i64,
    /// How loose, in billionths of half a band.
    looseness: i64,
    /// Packs with a thin shim outside.
    thin: usize,
    /// The packs by the places of their shims, thick to thin.
    pub packs: Vec<Pack>,
    /// The thicknesses of the same packs.
    thicknesses: Vec<Vec<Decimal>>,
}

impl Best {
    /// Less is better.
    fn order(&self, other: &Best) -> Ordering {
        self.distance
            .cmp(&other.distance)
            .then(other.looseness.cmp(&self.looseness))
            .then(self.thin.cmp(&other.thin))
            .then(other.thicknesses.cmp(&self.thicknesses))
    }
}

/// A tree still to be decided, with what it can reach.
type Open<'n> = (&'n Node, Rc<Vec<Entry>>);

/// The first packs in the fixed order among those that reach one of the goals.
pub(crate) fn refine(search: &mut Search, forest: &[Node], goals: &[Goal]) -> Option<Best> {
    let start = search.unmoved()?;
    let mut decided = search.undecided();
    let mut open: Vec<Open> = Vec::with_capacity(forest.len());
    for node in forest {
        open.push((node, search.frontier(node, &mut decided)));
    }
    let mut best = None;
    for &goal in goals {
        descend(search, &open, goal, start, &mut decided, &mut best);
    }
    best
}

fn descend(
    search: &mut Search,
    open: &[Open],
    left: Goal,
    so_far: Local,
    decided: &mut Decided,
    best: &mut Option<Best>,
) {
    let Some(((node, _), rest)) = open.split_first() else {
        if left.changed == 0 && left.shims == 0 {
            settle(search, so_far, decided, best);
        }
        return;
    };
    let beside = rest
        .iter()
        .fold(vec![Entry::NOTHING], |together, (_, frontier)| combine(&together, frontier));
    let own = bit(node.position);
    let window = search.window(node, decided);
    let from = search.aim(node, decided).unwrap_or(0.0);
    let candidates = search.candidates(node.position);
    for index in Outward::new(candidates, window, from).collect::<Vec<_>>() {
        if search.effort.spend() {
            break;
        }
        let Some(&candidate) = search.candidates(node.position).get(index) else { continue };
        if candidate.changed != (left.changed & own != 0) {
            continue;
        }
        decided.set(node.position, candidate);
        let farthest = best.as_ref().map_or(f64::INFINITY, |best| {
            (best.distance as f64 + 0.5) / 100.0 - so_far.distance + ROUNDING
        });
        let Some(local) = search.judge(&node.checks, decided, farthest) else { continue };
        let Some(shims) = search.shims(node, candidate, decided) else { continue };
        let Some(shims) = left.shims.checked_sub(shims) else { continue };
        let left = Goal { changed: left.changed & !own, shims, ..left };
        let so_far = Local {
            probability: so_far.probability * local.probability,
            distance: so_far.distance + local.distance,
            looseness: so_far.looseness + local.looseness,
        };
        let below = search.below(node, index, decided);
        if !reachable(&below, &beside, left, so_far, best.as_ref()) {
            continue;
        }
        let mut next: Vec<Open> = Vec::with_capacity(node.branches.len() + rest.len());
        for branch in &node.branches {
            next.push((branch, search.frontier(branch, decided)));
        }
        next.extend(rest.iter().cloned());
        descend(search, &next, left, so_far, decided, best);
    }
    decided.clear(node.position);
}

/// Whether what is still open, below and beside, can reach the goal and does not have to fall
/// behind the best.
fn reachable(
    below: &[Entry],
    beside: &[Entry],
    left: Goal,
    so_far: Local,
    best: Option<&Best>,
) -> bool {
    below.iter().any(|a| {
        beside.iter().any(|b| {
            a.changed | b.changed == left.changed
                && a.shims + b.shims == left.shims
                && so_far.probability * (a.probability * b.probability) >= left.probability
                && best.is_none_or(|best| {
                    hundredths(so_far.distance + a.distance + b.distance - ROUNDING)
                        <= best.distance
                })
        })
    })
}

/// Takes the packs of a decided case if they come before the best so far.
fn settle(search: &mut Search, so_far: Local, decided: &Decided, best: &mut Option<Best>) {
    let distance = hundredths(so_far.distance);
    let looseness = (so_far.looseness * 1e9).round() as i64;
    let behind = |best: &Best| {
        distance.cmp(&best.distance).then(best.looseness.cmp(&looseness)) == Ordering::Greater
    };
    if best.as_ref().is_some_and(behind) {
        return;
    }
    let mut packs: Vec<Pack> = vec![Pack::new(); search.places.len()];
    let (mut thin, mut thicknesses) = (0, vec![Vec::new(); search.places.len()]);
    for shelf in 0..search.stocks.len() {
        let Some(choice) = first_packs(search, shelf, decided) else { return };
        thin += choice.thin;
        for ((position, pack), sizes) in choice.packs.into_iter().zip(choice.thicknesses) {
            if let Some((slot, size)) = packs.get_mut(position).zip(thicknesses.get_mut(position)) {
                *slot = pack;
                *size = sizes;
            }
        }
    }
    let found =
        Best { probability: so_far.probability, distance, looseness, thin, packs, thicknesses };
    if best.as_ref().is_none_or(|best| found.order(best) == Ordering::Less) {
        *best = Some(found);
    }
}

/// The packs of one shelf's members.
struct ShelfChoice {
    thin: usize,
    packs: Vec<(usize, Pack)>,
    thicknesses: Vec<Vec<Decimal>>,
}

/// The first packs of one shelf with the decided totals and the fewest shims.
fn first_packs(search: &mut Search, shelf: usize, decided: &Decided) -> Option<ShelfChoice> {
    let fewest = search.fewest_shared(shelf, decided)?;
    let stock = search.stocks.get(shelf)?;
    let mut first: Option<ShelfChoice> = None;
    search.shared_packs(shelf, decided, fewest, &mut |packs| {
        let sizes = |pack: &Pack| -> Vec<Decimal> {
            let sizes = pack.iter().filter_map(|&place| stock.shelf.sizes.get(place));
            sizes.map(|size| size.thickness).collect()
        };
        let thicknesses: Vec<Vec<Decimal>> = packs.iter().map(sizes).collect();
        let thin = thicknesses.iter().filter(|pack| thin_outside(pack)).count();
        let before = first.as_ref().is_none_or(|first| {
            thin.cmp(&first.thin).then(first.thicknesses.cmp(&thicknesses)) == Ordering::Less
        });
        if before {
            let packs = positions(stock.members).zip(packs.iter().cloned()).collect();
            first = Some(ShelfChoice { thin, packs, thicknesses });
        }
        false
    });
    first
}

/// Whether a pack, thick to thin, has a thin shim outside: its two thickest stand there.
fn thin_outside(pack: &[Decimal]) -> bool {
    pack.get(1).or(pack.first()).is_some_and(|outside| *outside < THIN)
}

fn hundredths(distance: f64) -> i64 {
    (distance * 100.0).round() as i64
}
