//! The fewest shims of several packs from one shelf, by their totals: size by size, thick to thin.
//!
//! What is left to make from the thinner sizes is all that matters, however it came about, so each
//! such remainder is worked out once.

use std::collections::HashMap;

use crate::search::Stock;

/// The fewest shims for what is left: the place on the shelf, then total and shims of each pack.
pub(crate) type Known = HashMap<Vec<usize>, Option<usize>>;

/// Packs that draw on one shelf together.
pub(crate) struct Together<'a> {
    pub stock: &'a Stock,
    /// How many there are of each size.
    pub available: &'a [usize],
    pub known: &'a mut Known,
}

/// One size being shared out.
struct Sharing {
    place: usize,
    /// Shims taken so far.
    taken: usize,
    /// No fewer shims than this can do.
    bound: usize,
}

impl Together<'_> {
    /// The fewest shims that make all totals, each pack with at most so many.
    pub fn least_of(&mut self, totals: &[usize], most: usize) -> Option<usize> {
        self.least(0, totals, &vec![most; totals.len()])
    }

    /// The same with the sizes from a place on, and so many shims as are `left` to each pack.
    fn least(&mut self, place: usize, totals: &[usize], left: &[usize]) -> Option<usize> {
        let mut bound = 0;
        for (&total, &left) in totals.iter().zip(left) {
            bound += self.stock.totals.fewest_from(place, total).filter(|few| *few <= left)?;
        }
        if bound == 0 {
            return Some(0);
        }
        let key = || -> Vec<usize> {
            std::iter::once(place).chain(totals.iter().chain(left).copied()).collect()
        };
        // Most tins hold enough: nothing is looked up or remembered until one does not.
        if !self.known.is_empty()
            && let Some(known) = self.known.get(&key())
        {
            return *known;
        }
        let (mut rest, mut may, mut best) = (totals.to_vec(), left.to_vec(), None);
        let here = self.available.get(place).copied().unwrap_or(0);
        let sharing = Sharing { place, taken: 0, bound };
        self.share(&sharing, 0, here, &mut rest, &mut may, &mut best);
        if best != Some(bound) {
            self.known.insert(key(), best);
        }
        best
    }

    /// Gives shims of one size to a pack and those after it, in every way that can be the best.
    fn share(
        &mut self,
        so_far: &Sharing,
        pack: usize,
        here: usize,
        totals: &mut [usize],
        left: &mut [usize],
        best: &mut Option<usize>,
    ) {
        let next = so_far.place + 1;
        let Some((total, may)) = totals.get(pack).copied().zip(left.get(pack).copied()) else {
            if let Some(rest) = self.least(next, totals, left) {
                let shims = so_far.taken + rest;
                *best = Some(best.map_or(shims, |best| best.min(shims)));
            }
            return;
        };
        let Some(steps) = self.stock.shelf.sizes.get(so_far.place).map(|size| size.steps) else {
            return;
        };
        let few = |place, total| self.stock.totals.fewest_from(place, total);
        let Some(before) = few(so_far.place, total) else { return };
        let options: Vec<(usize, usize)> = (0..=here.min(may).min(total / steps))
            .rev()
            .filter_map(|taken| Some((taken, few(next, total - taken * steps)?)))
            .filter(|(taken, after)| taken + after <= may)
            .collect();
        for (taken, after) in options {
            let bound = so_far.bound - before + taken + after;
            if self.stock.totals.spend() || best.is_some_and(|best| bound >= best) {
                continue;
            }
            let sharing = Sharing { taken: so_far.taken + taken, bound, ..*so_far };
            if let Some((slot, own)) = totals.get_mut(pack).zip(left.get_mut(pack)) {
                (*slot, *own) = (total - taken * steps, may - taken);
            }
            self.share(&sharing, pack + 1, here - taken, totals, left, best);
        }
        if let Some((slot, own)) = totals.get_mut(pack).zip(left.get_mut(pack)) {
            (*slot, *own) = (total, may);
        }
    }
}
