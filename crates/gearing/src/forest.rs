//! The order in which positions are decided: a forest whose branches have nothing in common.

use crate::reading_model::bit;
use crate::search::{Search, positions};

/// A position with the checks it completes and the branches below it.
pub(crate) struct Node {
    pub position: usize,
    /// Whether nothing is decided before it.
    pub root: bool,
    /// Positions decided before it.
    pub above: u16,
    /// Checks all of whose positions are decided with this one.
    pub checks: Vec<usize>,
    /// Positions decided before it that make a difference to this tree.
    pub depends: u16,
    /// Those of them that make a difference to its own checks.
    pub judged_by: u16,
    /// The shared shelf whose last member this is.
    pub completes: Option<usize>,
    pub branches: Vec<Node>,
}

impl Search<'_> {
    /// The forest over all positions.
    pub fn forest(&self) -> Vec<Node> {
        let all = (0..self.places.len()).fold(0, |mask, position| mask | bit(position));
        self.grow(all, 0)
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
        let checks = checks.filter(|(_, target)| completed(target.scope));
        let judged_by = checks.clone().fold(0, |all, (_, target)| all | target.scope);
        let mut shared = self.stocks.iter().enumerate();
        let completes =
            shared.find(|(_, stock)| stock.shared() && completed(stock.members)).map(|(i, _)| i);
        let scopes = self.targets.iter().map(|target| target.scope);
        let scopes = scopes.chain(self.stocks.iter().map(|stock| stock.members));
        let touching = scopes.filter(|scope| scope & component != 0);
        Node {
            position,
            root: above == 0,
            above,
            depends: above & touching.fold(0, |all, scope| all | scope),
            checks: checks.map(|(check, _)| check).collect(),
            judged_by: above & judged_by,
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
        (largest, !narrowed, self.candidates(root).len())
    }
}
