//! What the form for a pack that was found is told while it is being typed.

use measure::{Decimal, Typed, Unit, unit_typed};
use words::say;

use crate::{BookId, Fact, Figure, FittedShim, Job, Shown, Slot, Typing, figure, record_found};

/// What the form for a found pack is told. Lengths are mm.
#[derive(Clone, Debug, PartialEq)]
pub struct PackPreview {
    /// The fields.
    pub shims: Vec<Typing>,
    /// Thickness of the pack so far.
    pub total: Decimal,
    /// What the blue button says: "Write down B1: 0.600".
    pub words: String,
    /// What to record when it is pressed; `None` while nothing is typed or something is refused.
    pub fact: Option<(BookId, Fact)>,
}

/// Works out what the form shows; `texts` are the net thicknesses of the shims, empty ones are
/// passed over. A shim without a unit takes the one that others of its pack name, else `unit`: in
/// "0.020 + 0.010 in" all are inches.
pub fn pack_preview(
    job: &Job,
    slot: Slot,
    texts: &[&str],
    unit: Unit,
    shown: Shown,
) -> PackPreview {
    let unit = unit_typed(&texts.join("+")).unwrap_or(unit);
    let shims: Vec<Typing> = texts.iter().map(|text| Typing::shim(text, unit)).collect();
    let typed: Vec<Typed> = shims.iter().filter_map(|shim| shim.typed.clone()).collect();
    let pack: Vec<FittedShim> = typed.into_iter().map(FittedShim::Measured).collect();
    let total = pack.iter().map(FittedShim::net).sum();
    let refused = shims.iter().position(|shim| shim.refused.is_some());
    let words = match refused {
        Some(shim) => say!("Type shim {} again", shim + 1),
        None if pack.is_empty() => say!("Measure {} first", slot.tag()),
        None => say!("Write down {}: {}", slot.tag(), figure(total, Figure::Shim, shown)),
    };
    let is_ready = refused.is_none() && !pack.is_empty();
    let fact = is_ready.then(|| record_found(job, slot, pack));
    PackPreview { shims, total, words, fact }
}
