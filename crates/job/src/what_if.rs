//! What a thicker or thinner pack would do, in the unit's words.

use std::cmp::Ordering;
use words::{say, t};

use measure::Decimal;

use crate::case::Bridge;
use crate::reading::length;
use crate::{Check, Figure, Job, Sheet, Shown, Slot, Tin, expected_slopes, figure};

/// What a change of a pack does. Lengths are mm.
#[derive(Clone, Debug, PartialEq)]
pub struct WhatIf {
    /// The pack afterwards; `None` while the pack is not known.
    pub total: Option<Decimal>,
    /// The way the member goes: "gear aft"; empty without a change.
    pub way: String,
    /// Change of each reading; empty while it cannot be said.
    pub changes: Vec<(Check, Decimal)>,
    /// "gear aft 0.095, lash falls 0.09".
    pub says: String,
}

/// Works out what happens where a pack is made thicker by `by` (mm; below zero: thinner).
pub fn what_if(
    (job, sheet, tin): (&Job, &Sheet, &Tin),
    slot: Slot,
    by: Decimal,
    shown: Shown,
) -> WhatIf {
    let total = job.pack(slot).map(|fit| (fit.total() + by).max(Decimal::ZERO));
    let Some(position) = sheet.position(slot) else {
        return WhatIf { total, way: String::new(), changes: Vec::new(), says: String::new() };
    };
    let (thicker, thinner) = sheet.ways(&position);
    let way = match by.cmp(&Decimal::ZERO) {
        Ordering::Less => thinner,
        Ordering::Equal => "",
        Ordering::Greater => thicker,
    };
    let changes = changes((job, sheet, tin), slot, by);
    let amount = figure(by.abs(), Figure::Shim, shown);
    let mut parts = Vec::new();
    if way.is_empty() {
        parts.push(t("as it lies").to_owned());
    } else {
        parts.push(format!("{way} {amount}"));
        parts.extend(effects(slot, &changes, shown));
    }
    WhatIf { total, way: way.to_owned(), changes, says: parts.join(", ") }
}

/// By what was learnt, or by the formula before the packs are known.
fn changes(
    (job, sheet, tin): (&Job, &Sheet, &Tin),
    slot: Slot,
    by: Decimal,
) -> Vec<(Check, Decimal)> {
    let slopes = match Bridge::of(job, sheet, tin, &sheet.checks()) {
        Ok(bridge) => bridge
            .influences()
            .into_iter()
            .map(|(slot, check, influence)| (slot, check, influence.slope))
            .collect(),
        Err(_) => expected_slopes(sheet),
    };
    let of_slot = slopes.into_iter().filter(|(other, _, slope)| *other == slot && *slope != 0.0);
    of_slot.map(|(_, check, slope)| (check, length(slope) * by)).collect()
}

/// "lash falls 0.09"; where both lashes change alike, "both lashes fall 0.06".
fn effects(slot: Slot, changes: &[(Check, Decimal)], shown: Shown) -> Vec<String> {
    // The washer's way is the effect itself.
    let told = |check: &Check| !(slot == Slot::B4 && *check == Check::END_PLAY);
    let amount = |change: Decimal| figure(change.abs(), Figure::Reading, shown);
    let lashes: Vec<Decimal> =
        changes.iter().filter(|(check, _)| check.has_arm()).map(|(_, change)| *change).collect();
    let both = match lashes.as_slice() {
        [one, other] if amount(*one) == amount(*other) => Some(*one),
        _ => None,
    };
    let mut parts = Vec::new();
    for (check, change) in changes.iter().filter(|(check, _)| told(check)) {
        let falls = change.is_sign_negative();
        let name = match check {
            Check::Depth => {
                let by = amount(*change);
                parts.push(match falls {
                    true => say!("depth gap closes {by}"),
                    false => say!("depth gap opens {by}"),
                });
                continue;
            }
            Check::Lash(_) if both.is_some() => continue,
            Check::Lash(_) if lashes.len() == 1 => t("lash"),
            _ => check.short(),
        };
        let by = amount(*change);
        parts.push(if falls { say!("{name} falls {by}") } else { say!("{name} grows {by}") });
    }
    if let Some(both) = both {
        let by = amount(both);
        parts.push(match both.is_sign_negative() {
            true => say!("both lashes fall {by}"),
            false => say!("both lashes grow {by}"),
        });
    }
    parts
}
