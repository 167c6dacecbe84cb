//! The shims of one family, and the packs they make.

use std::rc::Rc;

use measure::{Decimal, real};

use crate::effort::Effort;

/// Shims of one thickness.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Size {
    /// In steps of the shelf.
    pub steps: usize,
    /// As given.
    pub thickness: Decimal,
    /// How many.
    pub count: usize,
}

/// A pack: sizes of a shelf by their place, thick to thin.
pub(crate) type Pack = Vec<usize>;

/// Shims of one family, thick to thin, counted in whole steps of their common divisor.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Shelf {
    /// Different thicknesses, thick to thin.
    pub sizes: Vec<Size>,
    /// One step, mm.
    pub step: Decimal,
}

impl Shelf {
    /// A shelf of shims, any number of each; equal thicknesses are put together and keep the first
    /// one's digits.
    pub fn new(shims: impl IntoIterator<Item = (Decimal, usize)>) -> Shelf {
        let mut sizes: Vec<(Decimal, usize)> = Vec::new();
        for (thickness, count) in shims {
            match sizes.iter_mut().find(|(other, _)| *other == thickness) {
                Some((_, total)) => *total = total.saturating_add(count),
                None => sizes.push((thickness, count)),
            }
        }
        sizes.retain(|(thickness, count)| *count > 0 && *thickness > Decimal::ZERO);
        sizes.sort_by(|(a, _), (b, _)| b.cmp(a));
        let step = sizes.iter().fold(Decimal::ZERO, |step, (size, _)| divisor(step, *size));
        let step = if step > Decimal::ZERO { step } else { Decimal::ONE };
        let sizes = sizes.into_iter().map(|(thickness, count)| {
            let steps = steps(thickness, step);
            Size { steps, thickness, count }
        });
        Shelf { sizes: sizes.collect(), step }
    }

    /// One step, mm.
    pub fn step_mm(&self) -> f64 {
        real::from_decimal(self.step)
    }

    /// The place of a thickness.
    pub fn place(&self, thickness: Decimal) -> Option<usize> {
        self.sizes.iter().position(|size| size.thickness == thickness)
    }

    /// How many there are of each size.
    pub fn counts(&self) -> Vec<usize> {
        self.sizes.iter().map(|size| size.count).collect()
    }

    /// Total of a pack, steps.
    pub fn total(&self, pack: &[usize]) -> usize {
        pack.iter().filter_map(|&place| self.sizes.get(place)).map(|size| size.steps).sum()
    }

    /// The thicknesses of a pack, thin shims inside.
    pub fn thin_inside(&self, pack: &[usize]) -> Vec<Decimal> {
        let mut thick_to_thin: Vec<Decimal> = pack
            .iter()
            .filter_map(|&place| self.sizes.get(place))
            .map(|size| size.thickness)
            .collect();
        if thick_to_thin.len() > 2 {
            let second = thick_to_thin.remove(1);
            thick_to_thin.push(second);
        }
        thick_to_thin
    }

    /// The most steps that `most` shims make.
    pub fn highest(&self, most: usize) -> usize {
        let thick_to_thin = self
            .sizes
            .iter()
            .flat_map(|size| std::iter::repeat_n(size.steps, size.count.min(most)));
        thick_to_thin.take(most).sum()
    }
}

/// The fewest shims for every total up to a top, from every tail of a shelf.
#[derive(Clone, Debug)]
pub(crate) struct Totals {
    most: usize,
    width: usize,
    /// Row i: the fewest shims of the sizes from i on.
    fewest: Vec<u8>,
    effort: Rc<Effort>,
}

/// More shims than any pack holds.
const NONE: u8 = u8::MAX;
/// More cells than a search has time for.
const MOST_CELLS: usize = 20_000_000;

impl Totals {
    /// Totals up to `top` steps with at most `most` shims; `None` if they are too many to search.
    pub fn new(shelf: &Shelf, most: usize, top: usize, effort: Rc<Effort>) -> Option<Totals> {
        let width = top.checked_add(1)?;
        let cells =
            width.checked_mul(shelf.sizes.len() + 1).filter(|cells| *cells <= MOST_CELLS)?;
        let mut fewest = vec![NONE; cells];
        if let Some(nothing) = fewest.get_mut(width * shelf.sizes.len()) {
            *nothing = 0;
        }
        for (place, size) in shelf.sizes.iter().enumerate().rev() {
            let (head, tail) = fewest.split_at_mut(width * (place + 1));
            let row = head.get_mut(width * place..).unwrap_or_default();
            let next = tail.get(..width).unwrap_or_default();
            row.copy_from_slice(next);
            for taken in 1..=size.count.min(most) {
                let shift = taken * size.steps;
                let Some(shifted) = row.get_mut(shift..) else { break };
                for (cell, &rest) in shifted.iter_mut().zip(next) {
                    let shims = rest.saturating_add(taken as u8);
                    if shims < *cell && usize::from(shims) <= most {
                        *cell = shims;
                    }
                }
            }
        }
        Some(Totals { most, width, fewest, effort })
    }

    /// The fewest shims that make a total.
    pub fn fewest(&self, total: usize) -> Option<usize> {
        self.fewest_from(0, total)
    }

    /// The fewest shims of the sizes from a place on that make a total, however many there are.
    pub fn fewest_from(&self, place: usize, total: usize) -> Option<usize> {
        if total >= self.width {
            return None;
        }
        self.fewest
            .get(place * self.width + total)
            .filter(|shims| **shims != NONE)
            .map(|shims| usize::from(*shims))
    }

    /// Counts a step of the search; says whether there were too many.
    pub fn spend(&self) -> bool {
        self.effort.spend()
    }

    /// Every total from `low` to `high` steps with its fewest shims, at least one.
    pub fn between(&self, low: usize, high: usize) -> impl Iterator<Item = (usize, usize)> {
        let low = low.max(1);
        let high = high.min(self.width - 1);
        (low..=high).filter_map(|total| Some((total, self.fewest(total)?)))
    }

    /// Calls `found` with each pack of exactly `shims` shims that makes a total from what is
    /// available, thick packs first, until it returns true; says whether it did.
    pub fn packs(
        &self,
        shelf: &Shelf,
        available: &[usize],
        total: usize,
        shims: usize,
        found: &mut dyn FnMut(&[usize]) -> bool,
    ) -> bool {
        let mut pack = Vec::with_capacity(shims);
        shims <= self.most && self.extend(shelf, available, 0, total, shims, &mut pack, found)
    }

    #[expect(clippy::too_many_arguments, reason = "the state of one recursion")]
    fn extend(
        &self,
        shelf: &Shelf,
        available: &[usize],
        place: usize,
        total: usize,
        shims: usize,
        pack: &mut Pack,
        found: &mut dyn FnMut(&[usize]) -> bool,
    ) -> bool {
        if self.effort.spend() || self.fewest_from(place, total).is_none_or(|few| few > shims) {
            return false;
        }
        if shims == 0 {
            return total == 0 && found(pack);
        }
        let Some((size, &left)) = shelf.sizes.get(place).zip(available.get(place)) else {
            return false;
        };
        let before = pack.len();
        let most = left.min(shims).min(total / size.steps);
        for taken in (0..=most).rev() {
            pack.resize(before + taken, place);
            let (total, shims) = (total - taken * size.steps, shims - taken);
            if self.extend(shelf, available, place + 1, total, shims, pack, found) {
                return true;
            }
            pack.truncate(before);
        }
        false
    }
}

/// The number of whole steps in a thickness that is a multiple of the step.
fn steps(thickness: Decimal, step: Decimal) -> usize {
    thickness.checked_div(step).and_then(|steps| usize::try_from(steps.round()).ok()).unwrap_or(0)
}

/// Greatest common divisor of two decimals.
fn divisor(a: Decimal, b: Decimal) -> Decimal {
    let (mut a, mut b) = (a, b);
    while b > Decimal::ZERO {
        (a, b) = (b, a.checked_rem(b).unwrap_or(Decimal::ZERO));
    }
    a.normalize()
}
