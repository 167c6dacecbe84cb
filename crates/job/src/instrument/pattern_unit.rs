//! What a tooth print means on a unit: the pack of the pinion, which way it pushes, and whether the
//! depth gap agrees.

use words::say;

use crate::standing::standing;
use crate::{Check, CheckState, Figure, Job, Sheet, Shown, figure::with_unit};

/// The sentences beside a print that says the pinion goes in, or out.
pub(super) fn of_unit(job: &Job, sheet: &Sheet, shown: Shown) -> Vec<String> {
    let positions = sheet.positions();
    let Some(pack) = positions.iter().find(|it| it.slot.check() == Some(Check::Depth)) else {
        return Vec::new();
    };
    let inward = sheet.signs(pack).0 > 0;
    let (id, mut says) = (pack.id, Vec::new());
    says.push(match (sheet.is_confirmed(pack), inward) {
        (true, true) => {
            say!("{id}: thicker moves the pinion in. How much: from the depth gap.")
        }
        (true, false) => {
            say!("{id}: thicker moves the pinion out. How much: from the depth gap.")
        }
        (false, true) => say!(
            "{id}: thicker moves the pinion in on the usual build. Look which way it pushes on this unit first."
        ),
        (false, false) => say!(
            "{id}: thicker moves the pinion out on the usual build. Look which way it pushes on this unit first."
        ),
    });
    let (state, judged) = standing(Check::Depth, job, sheet, shown);
    if let (CheckState::InBand, Some(judged)) = (state, judged) {
        let read = with_unit(judged.mean, Figure::Reading, shown);
        says.push(say!(
            "But the depth gap is in band, {read}: leave {id} until both are read again."
        ));
    }
    says
}
