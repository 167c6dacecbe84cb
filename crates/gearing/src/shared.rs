//! Positions that draw on one shelf: their packs together.

use crate::reading_model::bit;
use crate::search::{Decided, Search, Stock, positions};
use crate::shelf::Pack;

impl Search<'_> {
    /// The fewest shims of all packs on a shared shelf together.
    pub fn fewest_shared(&mut self, shelf: usize, decided: &Decided) -> Option<usize> {
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
