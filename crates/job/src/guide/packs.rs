//! Which readings and seats hang on a pack.

use gearing::layout::Layout;

use super::log::{GuideLog, Mark};
use crate::procedure::{Act, Phase, Plan, RecordKind, Step};

/// Position and state of a pack's label: ("B1", "as found"); a note after a comma is left out.
pub(super) fn label(kind: RecordKind, label: &str) -> Option<(&str, &str)> {
    let (position, rest) = label.split_once(' ')?;
    let state = rest.split_once(',').map_or(rest, |(state, _)| state);
    (kind == RecordKind::Pack).then_some((position, state))
}

/// The last change of a pack after `since` that takes the ground from a reading.
pub(super) fn changed_under<'a>(
    plan: &Plan,
    log: &'a GuideLog,
    reading: &str,
    since: Mark,
) -> Option<&'a (String, Mark)> {
    if reading.contains("as found") {
        return None;
    }
    let layout = Layout::find(&plan.layout)?;
    log.pack_changes.iter().rev().filter(|change| change.1.order > since.order).find(|change| {
        let position = layout.position(&change.0);
        position.is_some_and(|position| position.rereads.iter().any(|check| reads(reading, check)))
    })
}

/// The last change of a pack after `since` that the step must seat again.
pub(super) fn seat_changed<'a>(
    plan: &Plan,
    log: &'a GuideLog,
    step: &Step,
    since: Mark,
) -> Option<&'a (String, Mark)> {
    let seats = step.parts_of(Act::On).chain(step.parts_of(Act::Dry)).next().is_some();
    if step.phase != Phase::SetUp || !seats {
        return None;
    }
    let layout = Layout::find(&plan.layout)?;
    log.pack_changes.iter().rev().filter(|change| change.1.order > since.order).find(|change| {
        let slot = layout.position(&change.0).and_then(|position| layout.slot(position.slot));
        slot.is_some_and(|slot| step.positions.iter().any(|id| slot.members.contains(&id.as_str())))
    })
}

/// Whether a reading of that label is the check: "closing forward backlash" reads "forward
/// backlash"; the check "depth" is read as "depth gap".
pub(super) fn reads(label: &str, check: &str) -> bool {
    match check {
        "depth" => label.contains("depth gap"),
        _ => label.contains(check),
    }
}
