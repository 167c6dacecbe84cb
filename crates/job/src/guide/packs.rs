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

/// Checks as the layouts call them, with how the labels of readings begin that read them. A check
/// that is not here is read under its own name.
const READ_AS: [(&str, &[&str]); 15] = [
    ("depth", &["depth gap"]),
    ("driveshaft pair setting", &["driveshaft end play"]),
    ("end play", &["end play", "propshaft end play"]),
    ("end play or preload", &["end play", "propshaft end play"]),
    ("propshaft setting", &["end play", "propshaft end play"]),
    ("inner setting", &["inner shaft end play", "end play, inner"]),
    ("outer setting", &["outer shaft end play", "end play, outer"]),
    ("outer preload", &["outer pair rolling torque"]),
    ("pinion preload", &["pinion pair rolling torque"]),
    ("preload", &["rolling torque, total", "upper gear end play"]),
    ("setting", &["upper gear end play"]),
    ("vertical setting", &["upper gear end play"]),
    ("total rolling torque", &["rolling torque, total"]),
    ("dog travel", &["engagement length"]),
    ("clutch gap split", &["gap up", "gap down"]),
];

/// Whether a reading of that label reads the check: "closing forward backlash" reads "forward
/// backlash", "driveshaft end play" does not read "end play".
pub(super) fn reads(label: &str, check: &str) -> bool {
    let label = label.strip_prefix("closing ").unwrap_or(label);
    let row = READ_AS.iter().find(|row| row.0 == check);
    row.map_or(label.starts_with(check), |row| row.1.iter().any(|start| label.starts_with(start)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::procedure::{NEWEST, Procedure};

    #[test]
    fn every_check_that_a_pack_disturbs_is_read_on_a_step() {
        for layout in gearing::layout::LAYOUTS {
            let address = Procedure::address(layout.id, NEWEST);
            let path = format!("{}/../../public{address}", env!("CARGO_MANIFEST_DIR"));
            let text = std::fs::read_to_string(path).unwrap();
            let procedure = Procedure::parse(layout.id, NEWEST, &text).unwrap();
            let labels: Vec<&str> = procedure
                .steps
                .iter()
                .filter(|step| step.phase >= Phase::SetUp)
                .flat_map(|step| step.records.iter().map(|record| record.label.as_str()))
                .collect();
            for check in layout.positions.iter().flat_map(|position| position.rereads) {
                let read = labels.iter().any(|label| reads(label, check));
                assert!(read, "{}: nothing reads {check}", layout.id);
            }
        }
    }

    #[test]
    fn a_reading_of_another_shaft_is_not_taken_for_the_check() {
        assert!(reads("closing end play", "end play"));
        assert!(!reads("driveshaft end play", "end play"));
        assert!(!reads("backlash", "forward backlash"));
    }
}
