//! The seal map of a unit: every seal of its section, with the lips that were kept.

use pictures::drawing::Drawing;
use pictures::seals::map;
use pictures::section::Section;
use workshop::seal::Toward;

use super::seal::looks;
use crate::Sheet;
use crate::guide::GuideLog;

/// The map; `None` for a layout that has no section.
pub(super) fn seal_map(sheet: &Sheet, log: &GuideLog) -> Option<Drawing> {
    let bare = Section::card(sheet.layout().id)?;
    let of_unit = Section::of(sheet.positions().iter().map(|position| position.id));
    let section = if of_unit.unit == 0 { bare } else { of_unit };
    let kept = |tag: &str| {
        let of_seal = log.checks.iter().filter(|(key, _)| {
            let mut words = key.place.split_whitespace();
            key.kind == "seal" && words.any(|word| word.eq_ignore_ascii_case(tag))
        });
        let last = of_seal.map(|(_, check)| check).filter(|check| looks(&check.values).is_some());
        let last = last.max_by_key(|check| check.mark)?;
        looks(&last.values).map(|toward| toward == Toward::Oil)
    };
    Some(map(&section, kept))
}
