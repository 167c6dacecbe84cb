//! What a tin can make for one place: every total, and the pack nearest to one.

use std::rc::Rc;

use measure::Decimal;

use crate::case_error::CaseError;
use crate::shelf::{Shelf, Totals};
use crate::validate;

/// The side to take where two totals are equally near.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// The thinner pack: looser where a thicker pack closes the backlash or the end play.
    Thinner,
    /// The thicker pack: looser where a thicker pack opens them.
    Thicker,
}

/// Every total that at least one and at most `most` of these shims make, thin to thick, with the
/// fewest shims that make it.
///
/// ```
/// use measure::Decimal;
/// let shims = [(Decimal::new(10, 2), 2), (Decimal::new(15, 2), 1)];
/// let totals: Vec<String> = gearing::reachable_totals(&shims, 2).unwrap()
///     .iter().map(|(total, shims)| format!("{total} {shims}")).collect();
/// assert_eq!(totals, ["0.10 1", "0.15 1", "0.20 2", "0.25 2"]);
/// ```
///
/// # Errors
/// [`CaseError`] for a thickness that is not one.
pub fn reachable_totals(
    shims: &[(Decimal, u32)],
    most: usize,
) -> Result<Vec<(Decimal, usize)>, CaseError> {
    let (shelf, totals) = totals(shims, most)?;
    let in_mm = |(total, shims): (usize, usize)| (Decimal::from(total) * shelf.step, shims);
    Ok(totals.between(1, usize::MAX).map(in_mm).collect())
}

/// The pack whose total is nearest to a target: least error first, then the fewest shims, then the
/// wanted side, then thick shims; thin shims inside.
///
/// An empty pack is an answer too, where nothing is needed or nothing is there.
///
/// ```
/// use gearing::Side;
/// use measure::Decimal;
/// let shims = [2, 3, 5, 10, 20, 32].map(|n| Decimal::new(n, 3)).map(|size| (size, 2));
/// let pack = gearing::nearest_pack(Decimal::new(47, 3), &shims, 3, Side::Thinner).unwrap();
/// assert_eq!(pack, [32, 5, 10].map(|n| Decimal::new(n, 3)));
/// ```
///
/// # Errors
/// [`CaseError`] for a thickness that is not one.
pub fn nearest_pack(
    target: Decimal,
    shims: &[(Decimal, u32)],
    most: usize,
    side: Side,
) -> Result<Vec<Decimal>, CaseError> {
    let (shelf, totals) = totals(shims, most)?;
    let reachable = std::iter::once((0, 0)).chain(totals.between(1, usize::MAX));
    let nearest = reachable.min_by_key(|&(total, fewest)| {
        let off = Decimal::from(total) * shelf.step - target;
        let wanted = match side {
            Side::Thinner => off <= Decimal::ZERO,
            Side::Thicker => off >= Decimal::ZERO,
        };
        (off.abs(), fewest, !wanted)
    });
    let (total, fewest) = nearest.unwrap_or_default();
    let mut nearest = Vec::new();
    totals.packs(&shelf, &shelf.counts(), total, fewest, &mut |pack| {
        nearest = shelf.thin_inside(pack);
        true
    });
    Ok(nearest)
}

fn totals(shims: &[(Decimal, u32)], most: usize) -> Result<(Shelf, Totals), CaseError> {
    validate::shims("shims", shims.iter().map(|(thickness, _)| *thickness))?;
    let counted = shims.iter().map(|&(size, count)| (size, usize::try_from(count).unwrap_or(0)));
    let shelf = Shelf::new(counted);
    let most = most.min(validate::SHIMS);
    let top = shelf.highest(most);
    let totals = Totals::new(&shelf, most, top, Rc::default())
        .ok_or_else(|| CaseError::new("shims", crate::Fault::TooManyTotals))?;
    Ok((shelf, totals))
}
