//! What was seen at teardown, shown beside the step that puts it back.

use super::facing::faced;
use super::log::GuideLog;
use crate::guided::{capitalised, labelled, spaced};
use crate::procedure::{Act, Plan, RecordKind};

/// Something to look at while a step is done.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Beside {
    /// The step it was captured in.
    pub step: String,
    /// What it is: "Thrust washer faces", "9 Pinion nut".
    pub name: String,
    /// In words: which way it faced, what was read; may be empty.
    pub words: String,
    /// Where its photo is kept.
    pub photo: Option<String>,
}

/// What to look at beside a step: the rungs of the parts it fits, the photos and orientations of
/// the steps these came off in, and what its gate compares with.
pub fn beside(plan: &Plan, log: &GuideLog, id: &str) -> Vec<Beside> {
    let Some(step) = plan.step(id) else { return Vec::new() };
    let parts: Vec<&str> = step.parts_of(Act::On).chain(step.parts_of(Act::Dry)).collect();
    let rungs = log.bagged.iter().filter(|(_, bagged)| parts.contains(&bagged.part.as_str()));
    let mut shown: Vec<Beside> = rungs
        .map(|(number, bagged)| Beside {
            step: bagged.step.clone(),
            name: format!("{number} {}", capitalised(&spaced(&bagged.part))),
            words: faced(&bagged.facing),
            photo: bagged.photo.clone(),
        })
        .collect();
    let came_off =
        plan.steps.iter().filter(|other| other.parts_of(Act::Off).any(|off| parts.contains(&off)));
    let seen = came_off.flat_map(|off| {
        let looks = [RecordKind::Photo, RecordKind::Orientation];
        let records = off.records.iter().filter(move |record| looks.contains(&record.kind));
        records.map(|record| (off.id.as_str(), record.label.as_str()))
    });
    let compared = step.gate.iter().flat_map(|gate| &gate.proof);
    let compared =
        compared.filter_map(|proof| Some((proof.step.as_deref()?, proof.label.as_str())));
    for (from, label) in seen.chain(compared) {
        let Some(kept) = log.capture(from, label) else { continue };
        let name = labelled(label);
        if shown.iter().any(|other| other.step == from && other.name == name) {
            continue;
        }
        let photo = kept.value.photo().map(str::to_owned);
        shown.push(Beside { step: from.to_owned(), name, words: kept.value.beside_photo(), photo });
    }
    shown
}
