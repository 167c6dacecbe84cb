//! Exact search over the totals of all packs together.
//!
//! The probability is a product over the checks, and a check depends on a few positions only. So
//! the positions stand in a forest: once a position and those above it are decided, the branches
//! below it have nothing in common and are searched apart. A branch answers with a frontier: for
//! each set of changed positions and number of shims, the best probability it can reach.

use std::collections::HashMap;
use std::ops::Range;

use measure::normal;

use crate::reading_model::{ReadingModel, bit};
use crate::shelf::{Pack, Shelf, Totals};

/// A check as the search sees it.
pub(crate) struct Target<'a> {
    pub model: &'a ReadingModel,
    pub low: f64,
    pub high: f64,
    pub aim: f64,
    /// Whether a higher reading is the looser, safer one: backlash and end play.
    pub loose_high: bool,
    /// Positions that change it.
    pub scope: u16,
    /// The least probability a candidate may have for this check.
    pub floor: f64,
    /// How far outside the band a mean may lie and still reach that.
    pub reach: f64,
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
    /// What is not in a pack that stays.
    pub available: Vec<usize>,
}

impl Stock {
    /// Whether more than one position draws on it.
    pub fn shared(&self) -> bool {
        self.members.count_ones() > 1
    }
}

/// A position with the checks it completes and the branches below it.
pub(crate) struct Node {
    pub position: usize,
    checks: Vec<usize>,
    /// The shared shelf whose last member this is.
    completes: Option<usize>,
    branches: Vec<Node>,
}

/// What a branch can reach with one set of changed positions and one number of shims.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Entry {
    pub changed: u16,
    pub shims: usize,
    /// The highest probability.
    pub probability: f64,
    /// The least distance from the aims, not necessarily of the same packs.
    pub distance: f64,
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
    /// Fewest shims of shared shelves for totals already asked.
    pub shared: HashMap<(usize, u16, Vec<usize>), Option<usize>>,
}

/// What the checks completed by one candidate come to.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Local {
    pub probability: f64,
    pub distance: f64,
    pub looseness: f64,
    pub shims: usize,
}

impl Search<'_> {
    /// The forest over all positions.
    pub fn forest(&self) -> Vec<Node> {
        let all = (0..self.places.len()).fold(0, |mask, position| mask | bit(position));
        self.grow(all, 0)
    }

    /// No position decided.
    pub fn undecided(&self) -> Decided {
        let places = self.places.len();
        Decided { change: vec![0.0; places], changed: 0, totals: vec![0; places] }
    }

    /// The checks no position changes, as one frontier entry.
    pub fn unmoved(&self) -> Option<Local> {
        let fixed: Vec<usize> = (0..self.targets.len())
            .filter(|&check| self.targets.get(check).is_some_and(|target| target.scope == 0))
            .collect();
        self.judge(&fixed, &self.undecided())
    }

    /// Trees for the open positions of a mask, those of `above` being decided.
    fn grow(&self, open: u16, above: u16) -> Vec<Node> {
        let mut trees = Vec::new();
        let mut left = open;
        while left != 0 {
            let component = self.component(left, open);
            left &= !component;
            let best = positions(component)
                .min_by_key(|&root| self.cost_of_root(root, component, above))
                .map(|root| self.tree(root, component, above));
            trees.extend(best);
        }
        trees
    }

    fn tree(&self, position: usize, component: u16, above: u16) -> Node {
        let here = above | bit(position);
        let completed = |scope: u16| scope & bit(position) != 0 && scope & !here == 0;
        let checks = self.targets.iter().enumerate();
        let checks = checks.filter(|(_, target)| completed(target.scope)).map(|(check, _)| check);
        let mut shared = self.stocks.iter().enumerate();
        let completes =
            shared.find(|(_, stock)| stock.shared() && completed(stock.members)).map(|(i, _)| i);
        Node {
            position,
            checks: checks.collect(),
            completes,
            branches: self.grow(component & !bit(position), here),
        }
    }

    /// The open positions that hang together with the lowest one of `left`.
    fn component(&self, left: u16, open: u16) -> u16 {
        let mut component = left & left.wrapping_neg();
        loop {
            let mut grown = component;
            let scopes = self.targets.iter().map(|target| target.scope);
            let shelves = self.stocks.iter().map(|stock| stock.members);
            for scope in scopes.chain(shelves) {
                if scope & grown != 0 {
                    grown |= scope & open;
                }
            }
            if grown == component {
                return component;
            }
            component = grown;
        }
    }

    /// Small where deciding this position first leaves small branches and few candidates.
    fn cost_of_root(&self, root: usize, component: u16, above: u16) -> (u32, bool, usize) {
        let mut rest = component & !bit(root);
        let mut largest = 0;
        while rest != 0 {
            let part = self.component(rest, component & !bit(root));
            largest = largest.max(part.count_ones());
            rest &= !part;
        }
        let here = above | bit(root);
        let narrowed = self
            .targets
            .iter()
            .any(|target| target.scope & bit(root) != 0 && target.scope & !here == 0);
        let candidates = self.places.get(root).map_or(0, |place| place.candidates.len());
        (largest, !narrowed, candidates)
    }

    /// What a tree can reach below the positions decided.
    pub fn frontier(&mut self, node: &Node, decided: &mut Decided) -> Vec<Entry> {
        let mut frontier = Vec::new();
        for index in self.window(node, decided) {
            let Some(candidate) = self.decide(node, index, decided) else { continue };
            let Some(local) = self.local(node, candidate, decided) else { continue };
            let mut entries = vec![Entry {
                changed: if candidate.changed { bit(node.position) } else { 0 },
                shims: local.shims,
                probability: local.probability,
                distance: local.distance,
            }];
            for branch in &node.branches {
                if entries.is_empty() {
                    break;
                }
                entries = combine(&entries, &self.frontier(branch, decided));
            }
            for entry in entries {
                keep(&mut frontier, entry);
            }
        }
        undecide(node, decided);
        frontier
    }

    /// Sets one candidate of a node's position.
    pub fn decide(&self, node: &Node, index: usize, decided: &mut Decided) -> Option<Candidate> {
        let place = self.places.get(node.position)?;
        let candidate = *place.candidates.get(index)?;
        *decided.change.get_mut(node.position)? = candidate.change;
        *decided.totals.get_mut(node.position)? = candidate.total;
        decided.changed &= !bit(node.position);
        if candidate.changed {
            decided.changed |= bit(node.position);
        }
        Some(candidate)
    }

    /// The candidates of a node that the checks it completes leave possible.
    pub fn window(&self, node: &Node, decided: &mut Decided) -> Range<usize> {
        let Some(place) = self.places.get(node.position) else { return 0..0 };
        undecide(node, decided);
        let (mut low, mut high) = (f64::NEG_INFINITY, f64::INFINITY);
        for target in node.checks.iter().filter_map(|&check| self.targets.get(check)) {
            if target.model.trapped.is_some() {
                continue;
            }
            let slope = target.model.slope_at(&decided.change, node.position);
            let base = target.model.mean(&decided.change);
            let ends = [target.low - target.reach - base, target.high + target.reach - base]
                .map(|end| end / slope);
            if slope != 0.0 {
                low = low.max(ends[0].min(ends[1]));
                high = high.min(ends[0].max(ends[1]));
            }
        }
        // A hair wider, so that rounding excludes nothing.
        let (low, high) = (low - 1e-9, high + 1e-9);
        let start = place.candidates.partition_point(|candidate| candidate.change < low);
        let end = place.candidates.partition_point(|candidate| candidate.change <= high);
        start..end.max(start)
    }

    /// What the checks that a node completes come to; `None` where they rule the candidate out.
    pub fn local(&mut self, node: &Node, chosen: Candidate, decided: &Decided) -> Option<Local> {
        let mut local = self.judge(&node.checks, decided)?;
        let stock =
            self.places.get(node.position).and_then(|place| self.stocks.get(place.shelf))?;
        local.shims = match node.completes {
            Some(shelf) => self.fewest_shared(shelf, decided)?,
            // Counted where the last member is decided.
            None if stock.shared() => 0,
            None => chosen.shims,
        };
        Some(local)
    }

    /// Probability and distances of some checks, all their positions decided.
    fn judge(&self, checks: &[usize], decided: &Decided) -> Option<Local> {
        let mut local = Local { probability: 1.0, distance: 0.0, looseness: 0.0, shims: 0 };
        for target in checks.iter().filter_map(|&check| self.targets.get(check)) {
            let mean = target.model.mean(&decided.change);
            if self.in_band && !(target.low..=target.high).contains(&mean) {
                return None;
            }
            let sigma = target.model.sigma(&decided.change, decided.changed);
            let probability =
                normal::interval((target.low - mean) / sigma, (target.high - mean) / sigma);
            if probability < target.floor {
                return None;
            }
            local.probability *= probability;
            let off = (mean - target.aim) / ((target.high - target.low) / 2.0);
            local.distance += off * off;
            if target.loose_high {
                local.looseness += off;
            }
        }
        Some(local)
    }

    /// The fewest shims of all packs on a shared shelf together.
    fn fewest_shared(&mut self, shelf: usize, decided: &Decided) -> Option<usize> {
        let members = self.stocks.get(shelf)?.members;
        let totals = positions(members).filter_map(|i| decided.totals.get(i).copied()).collect();
        let key = (shelf, decided.changed & members, totals);
        if let Some(known) = self.shared.get(&key) {
            return *known;
        }
        let mut fewest = None;
        self.shared_packs(shelf, decided, &mut |packs| {
            fewest = Some(packs.iter().map(Vec::len).sum());
            true
        });
        self.shared.insert(key, fewest);
        fewest
    }

    /// Calls `found` with the packs of a shelf's members, fewest shims together first, until it
    /// returns true.
    pub fn shared_packs(
        &self,
        shelf: usize,
        decided: &Decided,
        found: &mut dyn FnMut(&[Pack]) -> bool,
    ) {
        let Some(stock) = self.stocks.get(shelf) else { return };
        let mut available = stock.available.clone();
        let stays = |position: usize| decided.changed & bit(position) == 0;
        for position in positions(stock.members).filter(|&position| stays(position)) {
            let last = self.places.get(position).map_or(&[][..], |place| &place.last);
            if !take(&mut available, last) {
                return;
            }
        }
        let members: Vec<usize> = positions(stock.members).collect();
        let fewest = |&position: &usize| {
            if stays(position) {
                self.places.get(position).map(|place| place.last.len())
            } else {
                stock.totals.fewest(decided.totals.get(position).copied()?)
            }
        };
        let Some(least) = members.iter().map(fewest).sum::<Option<usize>>() else { return };
        let longest = members.len()
            * self.most.max(self.places.iter().map(|place| place.last.len()).max().unwrap_or(0));
        for shims in least..=longest {
            let mut packs = Vec::with_capacity(members.len());
            if self.fill(stock, decided, &members, shims, &mut available, &mut packs, found) {
                return;
            }
        }
    }

    #[expect(clippy::too_many_arguments, reason = "the state of one recursion")]
    fn fill(
        &self,
        stock: &Stock,
        decided: &Decided,
        members: &[usize],
        shims: usize,
        available: &mut Vec<usize>,
        packs: &mut Vec<Pack>,
        found: &mut dyn FnMut(&[Pack]) -> bool,
    ) -> bool {
        let Some((&position, rest)) = members.split_first() else {
            return shims == 0 && found(packs);
        };
        let Some(place) = self.places.get(position) else { return false };
        if decided.changed & bit(position) == 0 {
            let Some(left) = shims.checked_sub(place.last.len()) else { return false };
            packs.push(place.last.clone());
            let done = self.fill(stock, decided, rest, left, available, packs, found);
            packs.pop();
            return done;
        }
        let total = decided.totals.get(position).copied().unwrap_or(0);
        let least = stock.totals.fewest(total).unwrap_or(usize::MAX).max(1);
        for own in least..=self.most.min(shims) {
            let offered = available.clone();
            let done = stock.totals.packs(&stock.shelf, &offered, total, own, &mut |pack| {
                if pack == place.last || !take(available, pack) {
                    return false;
                }
                packs.push(pack.to_vec());
                let done = self.fill(stock, decided, rest, shims - own, available, packs, found);
                packs.pop();
                put_back(available, pack);
                done
            });
            if done {
                return true;
            }
        }
        false
    }
}

/// Forgets a node's candidate.
pub(crate) fn undecide(node: &Node, decided: &mut Decided) {
    decided.changed &= !bit(node.position);
    if let Some(change) = decided.change.get_mut(node.position) {
        *change = 0.0;
    }
}

impl Node {
    /// The branches below.
    pub fn branches(&self) -> &[Node] {
        &self.branches
    }
}

/// Both frontiers together: probabilities multiply, shims and distances add.
pub(crate) fn combine(some: &[Entry], others: &[Entry]) -> Vec<Entry> {
    let mut frontier = Vec::with_capacity(some.len() * others.len());
    for a in some {
        for b in others {
            let entry = Entry {
                changed: a.changed | b.changed,
                shims: a.shims + b.shims,
                probability: a.probability * b.probability,
                distance: a.distance + b.distance,
            };
            keep(&mut frontier, entry);
        }
    }
    frontier
}

/// Adds an entry to a frontier that is sorted by changed positions and shims.
fn keep(frontier: &mut Vec<Entry>, entry: Entry) {
    let key = |entry: &Entry| (entry.changed, entry.shims);
    match frontier.binary_search_by_key(&key(&entry), key) {
        Ok(index) => {
            if let Some(known) = frontier.get_mut(index) {
                known.probability = known.probability.max(entry.probability);
                known.distance = known.distance.min(entry.distance);
            }
        }
        Err(index) => frontier.insert(index, entry),
    }
}

/// The positions of a mask, in order.
pub(crate) fn positions(mask: u16) -> impl Iterator<Item = usize> {
    (0..16).filter(move |&position| mask & bit(position) != 0)
}

/// Takes a pack's shims away, all or none.
fn take(available: &mut [usize], pack: &[usize]) -> bool {
    for (taken, &place) in pack.iter().enumerate() {
        match available.get_mut(place).filter(|left| **left > 0) {
            Some(left) => *left -= 1,
            None => {
                put_back(available, pack.get(..taken).unwrap_or_default());
                return false;
            }
        }
    }
    true
}

/// Gives a pack's shims back.
fn put_back(available: &mut [usize], pack: &[usize]) {
    for &place in pack {
        if let Some(left) = available.get_mut(place) {
            *left += 1;
        }
    }
}
