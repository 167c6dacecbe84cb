//! Positions that draw on one shelf: their packs together.

use crate::reading_model::bit;
use crate::search::{Decided, Search, Stock, positions};
use crate::shelf::Pack;
use crate::together::{Known, Together};

impl Search<'_> {
    /// The fewest shims of all packs on a shared shelf together.
    pub fn fewest_shared(&mut self, shelf: usize, decided: &Decided) -> Option<usize> {
        let members = self.stocks.get(shelf)?.members;
        let totals = positions(members).filter_map(|i| decided.totals.get(i).copied()).collect();
        let key = (shelf, decided.changed & members, totals);
        if let Some(known) = self.shared.get(&key) {
            return *known;
        }
        let fewest = self.work_out_fewest(shelf, decided);
        self.shared.insert(key, fewest);
        fewest
    }

    fn work_out_fewest(&mut self, shelf: usize, decided: &Decided) -> Option<usize> {
        let stock = self.stocks.get(shelf)?;
        let available = self.left_by_unchanged(stock, decided)?;
        let (changed, unchanged): (Vec<usize>, Vec<usize>) =
            positions(stock.members).partition(|&position| decided.changed & bit(position) != 0);
        let last = |&position: &usize| self.places.get(position).map(|place| &place.last);
        let stay: usize = unchanged.iter().filter_map(last).map(Vec::len).sum();
        let with_total = |position| (position, decided.totals.get(position).copied().unwrap_or(0));
        // Most tins hold enough for every pack to be its shortest: that is found at once.
        let each = changed.iter().map(|&position| stock.totals.fewest(with_total(position).1));
        let shortest = stay + each.sum::<Option<usize>>()?;
        let mut found = false;
        self.shared_packs(shelf, decided, shortest, &mut |_| {
            found = true;
            true
        });
        if found {
            return Some(shortest);
        }
        // Where the total is that of the last pack, the pack itself counts: it must be another one.
        let (other_pack, any_pack): (Vec<_>, Vec<_>) =
            changed.into_iter().map(with_total).partition(|(position, total)| {
                last(position).is_some_and(|pack| stock.shelf.total(pack) == *total)
            });
        let any_pack: Vec<usize> = any_pack.into_iter().map(|(_, total)| total).collect();
        if other_pack.is_empty() {
            let known = self.together.entry((shelf, decided.changed & stock.members)).or_default();
            return Together { stock, available: &available, known }
                .least_of(&any_pack, self.most)
                .map(|shims| stay + shims);
        }
        let mut fewest = None;
        self.others_first(stock, &other_pack, &any_pack, 0, &mut available.clone(), &mut fewest);
        fewest.map(|shims: usize| stay + shims)
    }

    /// Tries every pack but the last one for some positions, then the fewest shims for the rest.
    fn others_first(
        &self,
        stock: &Stock,
        other_pack: &[(usize, usize)],
        any_pack: &[usize],
        taken: usize,
        available: &mut Vec<usize>,
        fewest: &mut Option<usize>,
    ) {
        let few = |total: usize| stock.totals.fewest(total);
        let still = other_pack.iter().map(|(_, total)| *total).chain(any_pack.iter().copied());
        let Some(still) = still.map(few).sum::<Option<usize>>() else { return };
        if fewest.is_some_and(|fewest| taken + still >= fewest) {
            return;
        }
        let Some((&(position, total), others)) = other_pack.split_first() else {
            let mut together = Together { stock, available, known: &mut Known::new() };
            let shims = together.least_of(any_pack, self.most).map(|shims| taken + shims);
            *fewest = shims.into_iter().chain(*fewest).min();
            return;
        };
        let Some(place) = self.places.get(position) else { return };
        for own in few(total).unwrap_or(self.most)..=self.most {
            let offered = available.clone();
            stock.totals.packs(&stock.shelf, &offered, total, own, &mut |pack| {
                if pack != place.last && take(available, pack) {
                    self.others_first(stock, others, any_pack, taken + own, available, fewest);
                    put_back(available, pack);
                }
                false
            });
        }
    }

    /// What is there of each size once the unchanged packs have theirs; `None` where they cannot.
    fn left_by_unchanged(&self, stock: &Stock, decided: &Decided) -> Option<Vec<usize>> {
        let mut available = stock.available.clone();
        for position in positions(stock.members) {
            let last = self.places.get(position).map_or(&[][..], |place| &place.last);
            if decided.changed & bit(position) == 0 && !take(&mut available, last) {
                return None;
            }
        }
        Some(available)
    }

    /// Calls `found` with the packs of a shelf's members that are so many shims together, until it
    /// returns true.
    pub fn shared_packs(
        &self,
        shelf: usize,
        decided: &Decided,
        shims: usize,
        found: &mut dyn FnMut(&[Pack]) -> bool,
    ) {
        let Some(stock) = self.stocks.get(shelf) else { return };
        let Some(mut available) = self.left_by_unchanged(stock, decided) else { return };
        let members: Vec<usize> = positions(stock.members).collect();
        let mut packs = Vec::with_capacity(members.len());
        self.fill(stock, decided, &members, shims, &mut available, &mut packs, found);
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
