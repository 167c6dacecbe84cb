//! The frontier of a position with one check and nothing below it, without working out every
//! probability.

use crate::forest::Node;
use crate::frontier::{Entry, keep};
use crate::reading_model::bit;
use crate::search::{Candidate, Decided, Limits, Outward, Search, Target, positions};

/// Probabilities closer than this part of themselves are the same.
const SAME: f64 = 1.0 + 1e-13;

impl Search<'_> {
    /// The only check of a node that has nothing below it, if its reading is linear in the pack.
    pub fn single_check(&self, node: &Node) -> Option<usize> {
        let &[check] = node.checks.as_slice() else { return None };
        let target = self.targets.get(check).filter(|_| node.branches.is_empty())?;
        target.model.trapped.is_none().then_some(check)
    }

    /// The frontier of a leaf with one check: from the middle of the band outward, a probability is
    /// only worked out where it can still be the best for its number of shims.
    pub fn leaf_frontier(
        &mut self,
        node: &Node,
        check: usize,
        decided: &mut Decided,
    ) -> Vec<Entry> {
        let window = self.window(node, decided);
        let Some(curve) =
            self.targets.get(check).map(|target| Curve::of(target, node.position, decided))
        else {
            return Vec::new();
        };
        let mut best = Best::default();
        let mut frontier = Vec::new();
        let others = self.fewest_of_others(node, decided);
        let candidates = self.candidates(node.position);
        for index in Outward::new(candidates, window, curve.middle()).collect::<Vec<_>>() {
            if self.effort.spend() {
                break;
            }
            let Some(&candidate) = self.candidates(node.position).get(index) else { continue };
            decided.set(node.position, candidate);
            if !candidate.changed {
                self.unchanged(node, candidate, decided, &mut frontier);
                continue;
            }
            let Some(least) = others.map(|others| others + candidate.shims) else { continue };
            let mean = curve.mean(candidate.change);
            if self.in_band && !curve.limits.contain(mean) {
                continue;
            }
            best.nearer(least, curve.limits.off(mean).powi(2));
            if best.settled(least) {
                continue;
            }
            if best.reached(least) * SAME >= curve.most(mean) {
                best.settle(least);
                continue;
            }
            let probability = curve.probability(mean, candidate.change);
            if probability >= curve.floor
                && probability > best.reached(least) * SAME
                && let Some(shims) = self.shims(node, candidate, decided)
            {
                best.raise(shims, probability);
            }
        }
        decided.clear(node.position);
        for entry in best.entries(bit(node.position)) {
            keep(&mut frontier, entry);
        }
        frontier
    }

    /// Adds the packs of a leaf that stay as they are.
    fn unchanged(
        &mut self,
        node: &Node,
        candidate: Candidate,
        decided: &Decided,
        frontier: &mut Vec<Entry>,
    ) {
        let local = self.judge(&node.checks, decided, f64::INFINITY);
        let shims = self.shims(node, candidate, decided);
        if let Some((local, shims)) = local.zip(shims) {
            let (probability, distance) = (local.probability, local.distance);
            keep(frontier, Entry { changed: 0, shims, probability, distance });
        }
    }

    /// The fewest shims of the other members of a shared shelf that a node completes, each by
    /// itself; 0 for other nodes.
    fn fewest_of_others(&self, node: &Node, decided: &Decided) -> Option<usize> {
        let Some(stock) = node.completes.and_then(|shelf| self.stocks.get(shelf)) else {
            return Some(0);
        };
        let others = positions(stock.members & !bit(node.position));
        let fewest = |position: usize| {
            if decided.changed & bit(position) == 0 {
                return self.places.get(position).map(|place| place.last.len());
            }
            stock.totals.fewest(decided.totals.get(position).copied()?)
        };
        others.map(fewest).sum()
    }
}

/// The reading of one check as one pack changes: a straight line with a parabola as variance.
struct Curve {
    limits: Limits,
    floor: f64,
    base: f64,
    slope: f64,
    /// Variance at no change, and its first and second coefficients.
    variance: [f64; 3],
    /// The least standard deviation of any prediction.
    narrowest: f64,
}

impl Curve {
    /// The curve for a changed pack, the other positions as decided.
    fn of(target: &Target, position: usize, decided: &mut Decided) -> Curve {
        let mut variance_at = |change: f64| {
            decided.set(position, Candidate { total: 0, change, changed: true, shims: 0 });
            target.model.variance(&decided.change, decided.changed)
        };
        let [below, here, above] = [-1.0, 0.0, 1.0].map(&mut variance_at);
        decided.clear(position);
        Curve {
            limits: target.limits,
            floor: target.floor,
            base: target.model.mean(&decided.change),
            slope: target.model.slope_at(&decided.change, position),
            variance: [here, (above - below) / 2.0, (above + below) / 2.0 - here],
            narrowest: target.model.next.sqrt(),
        }
    }

    fn mean(&self, change: f64) -> f64 {
        self.base + self.slope * change
    }

    /// The change that brings the mean to the middle of the band.
    fn middle(&self) -> f64 {
        let change = ((self.limits.low + self.limits.high) / 2.0 - self.base) / self.slope;
        if change.is_finite() { change } else { 0.0 }
    }

    fn probability(&self, mean: f64, change: f64) -> f64 {
        let [constant, first, second] = self.variance;
        let variance = constant + change * (first + change * second);
        self.limits.probability(mean, variance.sqrt())
    }

    /// No mean as far from the middle as this one, or farther, is likelier than this: inside the
    /// band a narrower spread is likelier, outside none reaches one half.
    fn most(&self, mean: f64) -> f64 {
        if self.limits.contain(mean) {
            self.limits.probability(mean, self.narrowest).max(0.5)
        } else {
            0.5
        }
    }
}

/// The best probability and least distance for each number of shims.
#[derive(Default)]
struct Best {
    by_shims: Vec<BestOf>,
}

#[derive(Clone, Copy)]
struct BestOf {
    probability: f64,
    distance: f64,
    settled: bool,
}

impl Best {
    fn of(&mut self, shims: usize) -> Option<&mut BestOf> {
        if self.by_shims.len() <= shims {
            let nothing = BestOf { probability: 0.0, distance: f64::INFINITY, settled: false };
            self.by_shims.resize(shims + 1, nothing);
        }
        self.by_shims.get_mut(shims)
    }

    fn nearer(&mut self, shims: usize, distance: f64) {
        if let Some(best) = self.of(shims) {
            best.distance = best.distance.min(distance);
        }
    }

    fn raise(&mut self, shims: usize, probability: f64) {
        if let Some(best) = self.of(shims) {
            best.probability = best.probability.max(probability);
        }
    }

    /// The best probability with so many shims or fewer.
    fn reached(&self, shims: usize) -> f64 {
        self.by_shims.iter().take(shims + 1).map(|best| best.probability).fold(0.0, f64::max)
    }

    /// Whether no candidate still to come can do better with so many shims.
    fn settled(&self, shims: usize) -> bool {
        self.by_shims.get(shims).is_some_and(|best| best.settled)
    }

    fn settle(&mut self, shims: usize) {
        if let Some(best) = self.of(shims) {
            best.settled = true;
        }
    }

    /// The entries that fewer shims do not reach.
    fn entries(&self, changed: u16) -> Vec<Entry> {
        let mut entries = Vec::new();
        let (mut reached, mut distance) = (0.0, f64::INFINITY);
        for (shims, best) in self.by_shims.iter().enumerate() {
            // A candidate may need more shims than it was counted with, so the least distance of
            // fewer shims counts too.
            distance = f64::min(distance, best.distance);
            if best.probability > reached {
                reached = best.probability;
                entries.push(Entry { changed, shims, probability: reached, distance });
            }
        }
        entries
    }
}
