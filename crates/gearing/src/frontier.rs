//! What a tree can reach: for each set of changed positions and number of shims, the best
//! probability.

use std::rc::Rc;

use crate::forest::Node;
use crate::reading_model::{ReadingModel, bit};
use crate::search::{Decided, Local, Search, positions};

/// What a branch can reach with one set of changed positions and one number of shims.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Entry {
    pub changed: u16,
    pub shims: usize,
    /// The highest probability.
    pub probability: f64,
    /// No packs with these changes and shims are nearer to the aims; not necessarily those of the
    /// highest probability.
    pub distance: f64,
}

impl Entry {
    /// Nothing decided, nothing lost.
    pub const NOTHING: Entry = Entry { changed: 0, shims: 0, probability: 1.0, distance: 0.0 };
}

impl Search<'_> {
    /// What a tree can reach below the positions decided. An entry is left out if fewer shims
    /// reach the same. What does not depend on all that is decided is worked out once for each
    /// way to decide what it does depend on.
    pub fn frontier(&mut self, node: &Node, decided: &mut Decided) -> Rc<Vec<Entry>> {
        let leaf = self.single_check(node);
        let key = match leaf.and_then(|check| self.exact_leaf(node, check)) {
            Some(model) => decided.key_by_mean(node, model),
            None => decided.key(node, node.depends),
        };
        if let Some(known) = key.and_then(|key| self.known.get(&key)) {
            return Rc::clone(known);
        }
        let frontier = Rc::new(match leaf {
            Some(check) => self.leaf_frontier(node, check, decided),
            None => {
                let own = self.own(node, decided);
                self.join(node, &own, decided)
            }
        });
        if let Some(key) = key {
            self.known.insert(key, Rc::clone(&frontier));
        }
        frontier
    }

    /// What a tree can reach with some candidates of its root.
    pub fn frontier_of(
        &mut self,
        node: &Node,
        candidates: impl Iterator<Item = usize>,
        decided: &mut Decided,
    ) -> Vec<Entry> {
        let own = self.judged(node, candidates, decided);
        self.join(node, &own, decided)
    }

    /// The candidates of a node that its checks leave possible, each with what it adds.
    fn own(&mut self, node: &Node, decided: &mut Decided) -> Rc<Vec<(usize, Entry)>> {
        let key = decided.key(node, node.judged_by).filter(|_| node.completes.is_none());
        if let Some(known) = key.and_then(|key| self.judged.get(&key)) {
            return Rc::clone(known);
        }
        let window = self.window(node, decided);
        let own = Rc::new(self.judged(node, window, decided));
        if let Some(key) = key {
            self.judged.insert(key, Rc::clone(&own));
        }
        own
    }

    fn judged(
        &mut self,
        node: &Node,
        candidates: impl Iterator<Item = usize>,
        decided: &mut Decided,
    ) -> Vec<(usize, Entry)> {
        let mut judged = Vec::new();
        for index in candidates {
            if self.effort.spend() {
                break;
            }
            let Some(&candidate) = self.candidates(node.position).get(index) else { continue };
            decided.set(node.position, candidate);
            let Some(local) = self.judge(&node.checks, decided, f64::INFINITY) else { continue };
            let Some(shims) = self.shims(node, candidate, decided) else { continue };
            let changed = if candidate.changed { bit(node.position) } else { 0 };
            let Local { probability, distance, .. } = local;
            judged.push((index, Entry { changed, shims, probability, distance }));
        }
        decided.clear(node.position);
        judged
    }

    /// Candidates of a node together with what is below each.
    fn join(&mut self, node: &Node, own: &[(usize, Entry)], decided: &mut Decided) -> Vec<Entry> {
        let mut frontier = Vec::new();
        for &(index, own) in own {
            if self.effort.spend() {
                break;
            }
            let Some(&candidate) = self.candidates(node.position).get(index) else { continue };
            decided.set(node.position, candidate);
            for &entry in self.below(node, index, decided).iter() {
                keep(&mut frontier, together(own, entry));
            }
        }
        decided.clear(node.position);
        frontier
    }

    /// The reading of a leaf that is a sum of exact slopes, so that only the sum counts.
    fn exact_leaf(&self, node: &Node, check: usize) -> Option<&ReadingModel> {
        let model = self.targets.get(check)?.model;
        let shared = self.stock(node.position)?.shared();
        (!shared && model.inexact().next().is_none()).then_some(model)
    }

    /// What the branches below one candidate of a node reach together.
    pub fn below(&mut self, node: &Node, index: usize, decided: &mut Decided) -> Rc<Vec<Entry>> {
        let key = (node.position, index);
        if let Some(known) = self.below.get(&key).filter(|_| node.root) {
            return Rc::clone(known);
        }
        let mut below = vec![Entry::NOTHING];
        for branch in &node.branches {
            if below.is_empty() {
                break;
            }
            below = combine(&below, &self.frontier(branch, decided));
        }
        let below = Rc::new(below);
        if node.root {
            self.below.insert(key, Rc::clone(&below));
        }
        below
    }
}

/// A tree, which of the packs it depends on are others, and their totals or what they come to.
pub(crate) type Key = (usize, u16, u128);

impl Decided {
    /// What a tree depends on; `None` where that is all that is decided, or too much for a key.
    fn key(&self, node: &Node, depends: u16) -> Option<Key> {
        if node.root || depends == node.above || depends.count_ones() > 4 {
            return None;
        }
        let total = |position: usize| u32::try_from(*self.totals.get(position)?).ok();
        let totals = positions(depends)
            .try_fold(0_u128, |key, position| Some(key << 32 | u128::from(total(position)?)))?;
        Some((node.position, self.changed & depends, totals))
    }

    /// The same for a leaf that depends on what the packs before it come to, in billionths of a
    /// thousandth of a millimetre: finer than any difference there is, coarser than rounding.
    fn key_by_mean(&mut self, node: &Node, model: &ReadingModel) -> Option<Key> {
        self.clear(node.position);
        let mean = (model.mean(&self.change) * 1e12).round();
        let key =
            (node.position, self.changed & node.depends, u128::from((mean as i64).cast_unsigned()));
        (!node.root).then_some(key)
    }
}

/// Both frontiers together.
pub(crate) fn combine(some: &[Entry], others: &[Entry]) -> Vec<Entry> {
    let mut frontier = Vec::with_capacity(some.len() * others.len());
    for &a in some {
        for &b in others {
            keep(&mut frontier, together(a, b));
        }
    }
    frontier
}

/// Probabilities multiply, shims and distances add.
fn together(a: Entry, b: Entry) -> Entry {
    Entry {
        changed: a.changed | b.changed,
        shims: a.shims + b.shims,
        probability: a.probability * b.probability,
        distance: a.distance + b.distance,
    }
}

/// Adds an entry to a frontier that is sorted by changed positions and shims.
pub(crate) fn keep(frontier: &mut Vec<Entry>, entry: Entry) {
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
