//! What a tree can reach: for each set of changed positions and number of shims, the best
//! probability.

use std::rc::Rc;

use crate::forest::Node;
use crate::reading_model::bit;
use crate::search::{Decided, Search};

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
    /// reach the same.
    pub fn frontier(&mut self, node: &Node, decided: &mut Decided) -> Vec<Entry> {
        if let Some(check) = self.single_check(node) {
            return self.leaf_frontier(node, check, decided);
        }
        let window = self.window(node, decided);
        self.frontier_of(node, window, decided)
    }

    /// What a tree can reach with some candidates of its root.
    pub fn frontier_of(
        &mut self,
        node: &Node,
        candidates: impl Iterator<Item = usize>,
        decided: &mut Decided,
    ) -> Vec<Entry> {
        let mut frontier = Vec::new();
        for index in candidates {
            if self.effort.spend() {
                break;
            }
            let Some(&candidate) = self.candidates(node.position).get(index) else { continue };
            decided.set(node.position, candidate);
            let Some(local) = self.judge(&node.checks, decided, f64::INFINITY) else { continue };
            let Some(shims) = self.shims(node, candidate, decided) else { continue };
            let own = Entry {
                changed: if candidate.changed { bit(node.position) } else { 0 },
                shims,
                probability: local.probability,
                distance: local.distance,
            };
            for &entry in self.below(node, index, decided).iter() {
                keep(&mut frontier, together(own, entry));
            }
        }
        decided.clear(node.position);
        frontier
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
