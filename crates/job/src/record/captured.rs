//! What was captured on the steps: torques, everything else, and waits.

use std::collections::BTreeMap;
use words::{say, t};

use measure::Typed;

use super::Look;
use crate::Figure;
use crate::carried::both;
use crate::figure::with_unit;
use crate::guide::Kept;
use crate::guided::{Capture, capitalised, labelled};

/// A torque, as it was applied or broke out.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RecordTorque {
    /// The step.
    pub step: String,
    /// The fastener: "Pinion nut".
    pub label: String,
    /// What the manual asks, as typed; empty where not typed.
    pub asked: String,
    /// What was applied, one for each fastener: "95 95 N·m".
    pub values: String,
    /// "Wrench set to 95 N·m, offset 40 mm, dry"; may be empty.
    pub how: String,
}

/// What was captured on one step.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RecordStep {
    /// The step.
    pub step: String,
    /// Label and value, as a mechanic would write them.
    pub values: Vec<(String, String)>,
}

/// The torques in the order of the steps.
pub(super) fn torques(look: &Look) -> Vec<RecordTorque> {
    let torque = |(step, label, kept): (&str, &str, &Kept)| {
        let Capture::Torque { values, asked, offset, set, on } = &kept.value else { return None };
        let one = |typed: &Typed| both(typed.to_string(), std::slice::from_ref(typed), look.shown);
        let on = on.map(|on| t(on.word()).to_owned());
        let set = set.as_ref().map(|set| say!("wrench set to {set}", set = one(set)));
        let offset = offset.as_ref().map(|offset| say!("offset {offset}", offset = one(offset)));
        let how = [set, offset, on];
        let how: Vec<String> = how.into_iter().flatten().collect();
        Some(RecordTorque {
            step: look.title(step),
            label: labelled(label),
            asked: asked.as_ref().map(one).unwrap_or_default(),
            values: both(Capture::Readings(values.clone()).words(), values, look.shown),
            how: capitalised(&how.join(", ")),
        })
    };
    in_order(look).into_iter().filter_map(torque).collect()
}

/// Everything else that was captured and is no picture, step by step.
pub(super) fn others(look: &Look) -> Vec<RecordStep> {
    let mut steps: Vec<(String, RecordStep)> = Vec::new();
    for (step, label, kept) in in_order(look) {
        let Some(value) = words(look, &kept.value) else { continue };
        let value = (labelled(label), value);
        match steps.last_mut().filter(|last| last.0 == step) {
            Some((_, last)) => last.values.push(value),
            None => {
                let values = vec![value];
                steps.push((step.to_owned(), RecordStep { step: look.title(step), values }));
            }
        }
    }
    steps.into_iter().map(|(_, step)| step).collect()
}

/// The waits, in the order started.
pub(super) fn waits(look: &Look) -> Vec<String> {
    let clocks = look.log.clocks.iter().map(|clock| {
        let name = clock.label.strip_suffix(" from").unwrap_or(&clock.label);
        let (from, end) = (look.when(clock.started.at), clock.marks.last().copied());
        let (name, minutes) = (labelled(name), end.unwrap_or_default());
        match clock.stopped {
            true => say!("{name}: from {from}, {minutes} min. Ended by hand."),
            false => say!("{name}: from {from}, {minutes} min."),
        }
    });
    clocks.collect()
}

/// Each capture with its step and label, in the order of work.
pub(super) fn in_order<'a>(look: &'a Look) -> Vec<(&'a str, &'a str, &'a Kept)> {
    let mut places: BTreeMap<(usize, &str, usize, &str), &Kept> = BTreeMap::new();
    for ((step, label), kept) in &look.log.captures {
        let planned = look.plan.and_then(|plan| plan.step(step));
        let at = planned
            .and_then(|planned| planned.records.iter().position(|record| record.label == *label));
        places.insert((look.place(step), step, at.unwrap_or(usize::MAX), label), kept);
    }
    places.into_iter().map(|((_, step, _, label), kept)| (step, label, kept)).collect()
}

/// The value in words; `None` for torques, which have a table, and for a picture alone.
fn words(look: &Look, value: &Capture) -> Option<String> {
    match value {
        Capture::Torque { .. } | Capture::Photo(_) => None,
        Capture::Facing { words, .. } if words.trim().is_empty() => None,
        Capture::Time(at) => Some(look.when(*at)),
        Capture::Readings(values) => Some(both(value.words(), values, look.shown)),
        Capture::Pack(_) => {
            let total = value.pack_total().map(|total| with_unit(total, Figure::Shim, look.shown));
            Some(format!("{} = {}", value.words(), total.unwrap_or_default()))
        }
        _ => Some(value.words()),
    }
}
