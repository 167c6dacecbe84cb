//! How thick to begin with after new parts.

use gearing::Side;
use measure::Decimal;
use words::say;

use crate::pack_view::made_of;
use crate::why::first_guess_why;
use crate::{
    Figure, Job, MarkKind, PartsChange, Position, Sheet, ShimView, Shown, Slot, Tin, Why, figure,
    tin::MAX_SHIMS,
};

/// What stands after "±" of a first guess, mm: a trial, not a result (common practice, no source).
const EXPANDED: Decimal = Decimal::from_parts(10, 0, 0, false, 2);

/// The pack to begin with after new parts. Lengths are mm.
#[derive(Clone, Debug, PartialEq)]
pub struct FirstGuess {
    /// Which pack.
    pub slot: Slot,
    /// Where it lies.
    pub position: Position,
    /// Thickness with the old parts.
    pub old: Decimal,
    /// Thickness guessed.
    pub guess: Decimal,
    /// What stands after "±".
    pub expanded: Decimal,
    /// The nearest pack from tin and case, ready for [`crate::fit`]; empty where there is none.
    pub shims: Vec<ShimView>,
    /// Its thickness.
    pub total: Decimal,
    /// "Begin B2 with 0.530 ± 0.10, then read. It is a trial, not a result."
    pub says: String,
    /// Formula, inputs and source.
    pub why: Why,
}

/// The first guesses that wait to be fitted: for each place with new parts and no pack since.
pub fn first_guesses(job: &Job, sheet: &Sheet, tin: &Tin, shown: Shown) -> Vec<FirstGuess> {
    let tin = tin.side(sheet.is_invented());
    let of_position = |position| guess(job, sheet, &tin, position, shown);
    sheet.positions().into_iter().filter_map(of_position).collect()
}

fn guess(
    job: &Job,
    sheet: &Sheet,
    tin: &Tin,
    position: Position,
    shown: Shown,
) -> Option<FirstGuess> {
    let slot = position.slot;
    let parts = job.parts.iter().rev().find(|parts| parts.slot == slot)?;
    if parts.marks.is_empty()
        || job.fits.iter().any(|fit| fit.slot == slot && fit.order > parts.order)
    {
        return None;
    }
    let lies = job.pack(slot)?;
    let (old, (mesh_sign, _)) = (lies.total(), sheet.signs(&position));
    let [height, mounting, case] = changes(parts);
    let height_sign = position.facts.height_sign;
    let guess = gearing::first_guess(old, height_sign, mesh_sign, height, mounting, case)?;
    let guess = guess.max(Decimal::ZERO);
    let mut there: Vec<(Decimal, u32)> = tin
        .stock()
        .into_iter()
        .filter(|line| line.family == position.family)
        .map(|line| (line.thickness, line.count))
        .collect();
    there.extend(lies.nets().into_iter().map(|net| (net, 1)));
    // Loose is the safe side: a thin pack where thicker tightens the mesh.
    let side = if mesh_sign < 0 { Side::Thicker } else { Side::Thinner };
    let nets = gearing::nearest_pack(guess, &there, MAX_SHIMS, side).unwrap_or_default();
    let (shims, _) = made_of(&nets, lies.shims.clone(), tin, position.family);
    let thick = figure(guess, Figure::Shim, shown);
    let spread = figure(EXPANDED, Figure::Reading, shown);
    Some(FirstGuess {
        slot,
        position,
        old,
        guess,
        expanded: EXPANDED,
        total: nets.iter().sum(),
        shims,
        says: say!(
            "Begin {} with {thick} ± {spread} {}, then read. It is a trial, not a result.",
            slot.tag(),
            shown.units.length
        ),
        why: first_guess_why(&position, mesh_sign, old, [height, mounting, case], guess, shown),
    })
}

/// Change of bearing height, mounting distance and case distance, mm.
fn changes(parts: &PartsChange) -> [Decimal; 3] {
    MarkKind::ALL.map(|kind| {
        let marks = parts.marks.iter().filter(|mark| mark.kind == kind);
        marks.map(crate::PartMark::change).sum()
    })
}
