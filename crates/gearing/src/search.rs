//! Exact search over the totals of all packs together: what it works on.
//!
//! The probability is a product over the checks, and a check depends on a few positions only. So
//! the positions stand in a forest ([`crate::forest`]): once a position and those above it are
//! decided, the branches below it have nothing in common and are searched apart.

use std::collections::HashMap;
use std::ops::Range;
use std::rc::Rc;

use measure::normal;

use crate::effort::Effort;
use crate::forest::Node;
use crate::frontier::{Entry, Key};
use crate::reading_model::{ReadingModel, bit};
use crate::shelf::{Pack, Shelf, Totals};
use crate::together::Known;

/// A check as the search sees it.
pub(crate) struct Target<'a> {
    /// Its place in the case.
    pub check: usize,
    pub model: &'a ReadingModel,
    pub limits: Limits,
    /// Whether a higher reading is the looser, safer one: backlash and end play.
    pub loose_high: bool,
    /// Positions that change it.
    pub scope: u16,
    /// The least probability a candidate may have for this check.
    pub floor: f64,
    /// How far outside the band a mean may lie and still reach that; inside where negative.
    pub reach: f64,
}

/// A band, mm at the arm used.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Limits {
    pub low: f64,
    pub high: f64,
    pub aim: f64,
}

impl Limits {
    /// Whether a mean lies in the band.
    pub fn contain(&self, mean: f64) -> bool {
        (self.low..=self.high).contains(&mean)
    }

    /// Distance of a mean from the aim in half bands.
    pub fn off(&self, mean: f64) -> f64 {
        (mean - self.aim) / ((self.high - self.low) / 2.0)
    }

    /// Probability that a reading lands in the band.
    pub fn probability(&self, mean: f64, sigma: f64) -> f64 {
        normal::interval((self.low - mean) / sigma, (self.high - mean) / sigma)
    }
}

/// One pack total of one position.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Candidate {
    /// Total, steps of the shelf.
    pub total: usize,
    /// Change from the last trial, mm.
    pub change: f64,
    /// Whether it is another pack than the last trial's.
    pub changed: bool,
    /// Fewest shims.
    pub shims: usize,
}

/// A position as the search sees it.
pub(crate) struct Place {
    /// Totals that can matter, thin to thick.
    pub candidates: Vec<Candidate>,
    /// Its family's shelf.
    pub shelf: usize,
    /// The pack of the last trial.
    pub last: Pack,
}

/// A shelf with its totals and the positions that share it.
pub(crate) struct Stock {
    pub shelf: Shelf,
    pub totals: Totals,
    /// Positions that draw on it.
    pub members: u16,
    /// How many of each size there are, those in the packs of its members too.
    pub available: Vec<usize>,
}

impl Stock {
    /// Whether more than one position draws on it.
    pub fn shared(&self) -> bool {
        self.members.count_ones() > 1
    }
}

/// The positions decided so far.
#[derive(Clone, Debug)]
pub(crate) struct Decided {
    /// Changes from the last trial, mm.
    pub change: Vec<f64>,
    /// Positions whose pack is another one.
    pub changed: u16,
    /// Totals, steps.
    pub totals: Vec<usize>,
}

impl Decided {
    /// Sets a candidate of a position.
    pub fn set(&mut self, position: usize, candidate: Candidate) {
        self.clear(position);
        if candidate.changed {
            self.changed |= bit(position);
        }
        if let Some((change, total)) =
            self.change.get_mut(position).zip(self.totals.get_mut(position))
        {
            (*change, *total) = (candidate.change, candidate.total);
        }
    }

    /// Forgets a position's candidate.
    pub fn clear(&mut self, position: usize) {
        self.changed &= !bit(position);
        if let Some(change) = self.change.get_mut(position) {
            *change = 0.0;
        }
    }
}

/// Everything a search needs.
pub(crate) struct Search<'a> {
    pub targets: Vec<Target<'a>>,
    pub places: Vec<Place>,
    pub stocks: Vec<Stock>,
    /// How far each position's pack can change, mm.
    pub spans: Vec<[f64; 2]>,
    /// Only means inside their bands count.
    pub in_band: bool,
    /// Most shims in a pack.
    pub most: usize,
    /// Steps taken.
    pub effort: Rc<Effort>,
    /// Fewest shims of shared shelves for totals already asked.
    pub shared: HashMap<(usize, u16, Vec<usize>), Option<usize>>,
    /// What is left to make from shared shelves, by the shelf and the packs that change.
    pub together: HashMap<(usize, u16), Known>,
    /// What candidates add, where that does not depend on all that is decided before them.
    pub judged: HashMap<Key, Rc<Vec<(usize, Entry)>>>,
    /// Frontiers of trees that do not depend on all that is decided before them.
    pub known: HashMap<Key, Rc<Vec<Entry>>>,
    /// Frontiers below the candidates of the forest's roots.
    pub below: HashMap<(usize, usize), Rc<Vec<Entry>>>,
}

/// What the checks completed by one candidate come to.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Local {
    pub probability: f64,
    pub distance: f64,
    pub looseness: f64,
}

impl Search<'_> {
    /// No position decided.
    pub fn undecided(&self) -> Decided {
        let places = self.places.len();
        Decided { change: vec![0.0; places], changed: 0, totals: vec![0; places] }
    }

    /// The candidates of a position.
    pub fn candidates(&self, position: usize) -> &[Candidate] {
        self.places.get(position).map_or(&[], |place| &place.candidates)
    }

    /// The shelf of a position.
    pub fn stock(&self, position: usize) -> Option<&Stock> {
        self.stocks.get(self.places.get(position)?.shelf)
    }

    /// The candidates of a node that the checks it completes leave possible.
    pub fn window(&self, node: &Node, decided: &mut Decided) -> Range<usize> {
        decided.clear(node.position);
        let (mut low, mut high) = (f64::NEG_INFINITY, f64::INFINITY);
        for target in node.checks.iter().filter_map(|&check| self.targets.get(check)) {
            if target.model.trapped.is_some() {
                continue;
            }
            let slope = target.model.slope_at(&decided.change, node.position);
            let base = target.model.mean(&decided.change);
            let Limits { low: least, high: most, .. } = target.limits;
            let ends =
                [least - target.reach - base, most + target.reach - base].map(|end| end / slope);
            if slope != 0.0 {
                low = low.max(ends[0].min(ends[1]));
                high = high.min(ends[0].max(ends[1]));
            }
        }
        // A hair wider, so that rounding excludes nothing.
        let (low, high) = (low - 1e-9, high + 1e-9);
        let candidates = self.candidates(node.position);
        let start = candidates.partition_point(|candidate| candidate.change < low);
        let end = candidates.partition_point(|candidate| candidate.change <= high);
        start..end.max(start)
    }

    /// The change of a node's pack that brings the first check it completes to its aim, mm.
    pub fn aim(&self, node: &Node, decided: &mut Decided) -> Option<f64> {
        decided.clear(node.position);
        let target = self.targets.get(*node.checks.first()?)?;
        let slope = target.model.slope_at(&decided.change, node.position);
        (slope != 0.0).then(|| (target.limits.aim - target.model.mean(&decided.change)) / slope)
    }

    /// Probability and distances of some checks, all their positions decided; `None` where one
    /// rules the candidate out, or all are farther from the aims than `farthest`.
    pub fn judge(&self, checks: &[usize], decided: &Decided, farthest: f64) -> Option<Local> {
        let mut local = Local { probability: 1.0, distance: 0.0, looseness: 0.0 };
        let targets = || checks.iter().filter_map(|&check| self.targets.get(check));
        for target in targets() {
            let mean = target.model.mean(&decided.change);
            if self.in_band && !target.limits.contain(mean) {
                return None;
            }
            let off = target.limits.off(mean);
            local.distance += off * off;
            if target.loose_high {
                local.looseness += off;
            }
        }
        if local.distance > farthest {
            return None;
        }
        for target in targets() {
            let mean = target.model.mean(&decided.change);
            let sigma = target.model.sigma(&decided.change, decided.changed);
            let probability = target.limits.probability(mean, sigma);
            if probability < target.floor {
                return None;
            }
            local.probability *= probability;
        }
        Some(local)
    }

    /// The checks no position changes.
    pub fn unmoved(&self) -> Option<Local> {
        let targets = self.targets.iter().enumerate();
        let fixed: Vec<usize> =
            targets.filter(|(_, target)| target.scope == 0).map(|(check, _)| check).collect();
        self.judge(&fixed, &self.undecided(), f64::INFINITY)
    }

    /// The shims that a candidate adds; those of a shared shelf are counted where its last member
    /// is decided. `None` where the shelf cannot make the packs.
    pub fn shims(&mut self, node: &Node, candidate: Candidate, decided: &Decided) -> Option<usize> {
        match node.completes {
            Some(shelf) => self.fewest_shared(shelf, decided),
            None if self.stock(node.position)?.shared() => Some(0),
            None => Some(candidate.shims),
        }
    }
}

/// The positions of a mask, in order.
pub(crate) fn positions(mask: u16) -> impl Iterator<Item = usize> {
    (0..16).filter(move |&position| mask & bit(position) != 0)
}

/// Candidates of a window, the nearest to a change first.
pub(crate) struct Outward<'a> {
    candidates: &'a [Candidate],
    /// Change to start from, mm.
    from: f64,
    /// The next one on each side; `below` is one too high.
    below: usize,
    above: usize,
    window: Range<usize>,
}

impl<'a> Outward<'a> {
    pub fn new(candidates: &'a [Candidate], window: Range<usize>, from: f64) -> Outward<'a> {
        let start = candidates.partition_point(|candidate| candidate.change < from);
        let start = start.clamp(window.start, window.end);
        Outward { candidates, from, below: start, above: start, window }
    }

    fn gap(&self, index: usize) -> f64 {
        let change = self.candidates.get(index).map(|candidate| candidate.change);
        change.map_or(f64::INFINITY, |change| (change - self.from).abs())
    }
}

impl Iterator for Outward<'_> {
    type Item = usize;

    fn next(&mut self) -> Option<usize> {
        let can_fall = self.below > self.window.start;
        let can_rise = self.above < self.window.end;
        let falls = match (can_fall, can_rise) {
            (false, false) => return None,
            (true, true) => self.gap(self.below - 1) < self.gap(self.above),
            (falls, _) => falls,
        };
        Some(if falls {
            self.below -= 1;
            self.below
        } else {
            self.above += 1;
            self.above - 1
        })
    }
}
