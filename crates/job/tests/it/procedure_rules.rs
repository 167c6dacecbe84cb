//! What must hold for every published step and every plan, rules 1 to 11 of PROCEDURES.md.

use std::collections::{BTreeMap, BTreeSet};

use gearing::layout::Layout;
use job::procedure::*;

use crate::procedures::*;

fn layout(procedure: &Procedure) -> &'static Layout {
    Layout::find(&procedure.layout).unwrap()
}

#[test]
fn every_layout_has_its_steps_and_its_revision() {
    let counts = LAYOUTS.map(|layout| procedure(layout).steps.len());
    assert_eq!(counts, [63, 71, 55, 61, 55]);
    assert_eq!(counts.iter().sum::<usize>(), 305);
}

#[test]
fn a_published_revision_is_never_edited() {
    // A fingerprint of each file (FNV-1a, 64 bits): a change is a new revision in a new file.
    let fingerprint = |text: &str| {
        text.bytes().fold(0xcbf2_9ce4_8422_2325_u64, |hash, byte| {
            (hash ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3)
        })
    };
    let found = LAYOUTS.map(|layout| fingerprint(&text(&Procedure::address(layout, 1))));
    assert_eq!(found, PUBLISHED);
}

const PUBLISHED: [u64; 5] = [
    4_836_822_068_380_459_273,
    15_662_156_646_331_195_358,
    7_166_266_588_394_403_037,
    18_218_013_584_052_819_557,
    5_568_921_058_797_569_742,
];

#[test]
fn texts_are_one_clean_line() {
    none(|procedure| {
        let mut faults = Vec::new();
        for step in &procedure.steps {
            for text in [&step.title, &step.why, &step.caution] {
                let clean = text.trim() == text && !text.contains("  ") && !text.contains('\t');
                if !clean {
                    faults.push(format!("{}: blanks in {text}", step.id));
                }
            }
            if step.title.chars().count() > 80 {
                faults.push(format!("{}: a long title", step.id));
            }
            let tools: BTreeSet<_> = step.tools.iter().collect();
            if step.tools.is_empty() || tools.len() != step.tools.len() {
                faults.push(format!("{}: tools", step.id));
            }
        }
        faults
    });
}

#[test]
fn ids_are_names_used_once_in_all_files() {
    let mut seen = BTreeSet::new();
    for layout in LAYOUTS {
        for step in procedure(layout).steps {
            let rest = step.id.strip_prefix(layout).unwrap().as_bytes();
            let form = matches!(rest, [tens, ones] if tens.is_ascii_digit() && ones.is_ascii_digit())
                || matches!(rest, [tens, ones, letter] if tens.is_ascii_digit()
                    && ones.is_ascii_digit() && letter.is_ascii_lowercase());
            assert!(form, "{}", step.id);
            assert!(seen.insert(step.id.clone()), "{} twice", step.id);
        }
    }
}

#[test]
fn needs_point_backwards_and_none_is_implied_by_another() {
    none(|procedure| {
        let mut faults = Vec::new();
        for (at, step) in procedure.steps.iter().enumerate() {
            let unique: BTreeSet<_> = step.needs.iter().collect();
            if unique.len() != step.needs.len() {
                faults.push(format!("{}: a need twice", step.id));
            }
            for need in &step.needs {
                let stands = procedure.steps.iter().position(|other| other.id == *need);
                if stands.is_none_or(|stands| stands >= at) {
                    faults.push(format!("{}: {need} is not earlier", step.id));
                    continue;
                }
                let earlier = procedure.step(need).unwrap();
                let shared: Vec<_> =
                    step.scopes.iter().filter(|scope| earlier.scopes.contains(scope)).collect();
                let implied = |scope: &&Scope| {
                    step.needs.iter().filter(|other| *other != need).any(|other| {
                        let other_step = procedure.step(other).unwrap();
                        other_step.scopes.contains(scope) && needed(procedure, other).contains(need)
                    })
                };
                if shared.iter().all(implied) {
                    faults.push(format!("{}: {need} is implied", step.id));
                }
            }
        }
        faults
    });
}

#[test]
fn records_name_positions_of_their_layout_and_labels_once() {
    none(|procedure| {
        let mut faults = Vec::new();
        for step in &procedure.steps {
            let labels: BTreeSet<_> = step.records.iter().map(|record| &record.label).collect();
            if labels.len() != step.records.len() || labels.is_empty() {
                faults.push(format!("{}: labels", step.id));
            }
            for position in &step.positions {
                if layout(procedure).position(position).is_none() {
                    faults.push(format!("{}: {position}", step.id));
                }
            }
            for record in &step.records {
                let named = match record.kind {
                    RecordKind::Sign => Some((record.label.as_str(), "frozen")),
                    RecordKind::Pack => Some(record.pack().unwrap()),
                    _ => None,
                };
                let Some((named, state)) = named else { continue };
                let known = layout(procedure).position(named).is_some_and(|position| {
                    let slot = layout(procedure).slot(position.slot).unwrap();
                    step.positions.iter().any(|id| slot.members.contains(&id.as_str()))
                });
                let states = ["as found", "listed", "trial", "frozen", "fitted"];
                if !known || !states.contains(&state) {
                    faults.push(format!("{}: {}", step.id, record.label));
                }
            }
        }
        faults
    });
}

#[test]
fn options_that_shut_a_gate_are_read_by_one() {
    none(|procedure| {
        let read = |step: &Step, label: &str| {
            procedure.steps.iter().any(|gated| {
                gated.gate.iter().flat_map(|gate| &gate.proof).any(|proof| {
                    proof.label == label && proof.step.as_deref().unwrap_or(&gated.id) == step.id
                })
            })
        };
        let mut faults = Vec::new();
        for step in &procedure.steps {
            for record in &step.records {
                let shuts = record.choices.iter().any(|choice| choice.shuts);
                if shuts && !read(step, &record.label) {
                    faults.push(format!("{}: no gate reads {}", step.id, record.label));
                }
            }
        }
        faults
    });
}

#[test]
fn gates_can_be_judged_in_every_scope() {
    none(|procedure| {
        let mut faults = Vec::new();
        for step in &procedure.steps {
            let Some(gate) = &step.gate else { continue };
            let before = needed(procedure, &step.id);
            for proof in &gate.proof {
                let holder = proof.step.as_deref().unwrap_or(&step.id);
                let there = procedure.step(holder).and_then(|step| step.record(&proof.label));
                let done = proof.step.as_ref().is_none_or(|id| before.contains(id));
                if there.is_none() || !done {
                    faults.push(format!("{}: proof {}", step.id, proof.label));
                }
            }
            for scope in &step.scopes {
                let judged = gate.proof.iter().any(|proof| {
                    let holder = proof.step.as_deref().unwrap_or(&step.id);
                    procedure.step(holder).unwrap().scopes.contains(scope)
                });
                if !judged {
                    faults.push(format!("{}: no proof in {}", step.id, scope.name()));
                }
            }
        }
        faults
    });
}

#[test]
fn scopes_minutes_and_clocks() {
    none(|procedure| {
        let mut faults = Vec::new();
        for step in &procedure.steps {
            let in_order = step.scopes.is_sorted_by(|one, next| one < next);
            let times = step.records.iter().any(|record| record.kind == RecordKind::Time);
            let right = !step.scopes.is_empty()
                && in_order
                && (1..=60).contains(&step.minutes)
                && (times || !step.meanwhile);
            if !right {
                faults.push(format!("{}: scopes, minutes or clock", step.id));
            }
        }
        faults
    });
}

#[test]
fn a_plan_has_one_first_and_one_last_step_and_loses_no_order() {
    none_planned(|plan| {
        let procedure = procedure(&plan.layout);
        let last = plan.steps.len() - 1;
        let mut faults = Vec::new();
        for (at, step) in plan.steps.iter().enumerate() {
            if (step.needs.is_empty()) != (at == 0) {
                faults.push(format!("{} is a first step", step.id));
            }
            if at != last && !plan.comes_before(at, last) {
                faults.push(format!("{} is not needed by the last", step.id));
            }
            let full = needed(&procedure, &step.id);
            for (first, earlier) in plan.steps.iter().enumerate() {
                if full.contains(&earlier.id) != plan.comes_before(first, at) {
                    faults.push(format!("{} and {} lose their order", earlier.id, step.id));
                }
            }
        }
        faults
    });
}

/// Parts that come off early only for access or a reading; the one wanted exception of layout (d).
const FREE: [&str; 10] = [
    "drain-plug",
    "vent-plug",
    "plug-washers",
    "propeller",
    "prop-hardware",
    "prop-lock",
    "top-cover",
    "top-cover-oring",
    "seal-carrier",
    "seal-carrier-oring",
];

#[test]
fn every_part_goes_back_once_and_in_reverse() {
    none_planned(|plan| {
        let mut faults = Vec::new();
        let mut stands: BTreeMap<&str, Act> = BTreeMap::new();
        let (mut off, mut on) = (BTreeMap::new(), BTreeMap::new());
        for (at, step) in plan.steps.iter().enumerate() {
            for PartAct { act, part } in &step.parts {
                let trial = part.ends_with("trial-nut");
                let may = match (act, stands.get(part.as_str())) {
                    (Act::Off, was) => was.is_none_or(|was| *was == Act::On),
                    (Act::Reject, was) => was == Some(&Act::Off),
                    (Act::Dry, was) => {
                        trial || matches!(was, Some(Act::Off | Act::Back | Act::Dry))
                    }
                    (Act::Back, was) => was == Some(&Act::Dry),
                    (Act::On, was) => was.is_some_and(|was| *was != Act::On),
                };
                if !may {
                    faults.push(format!("{}: {act:?} {part}", step.id));
                }
                if *act != Act::Reject {
                    stands.insert(part, *act);
                }
                match act {
                    Act::Off => drop(off.insert(part.as_str(), at)),
                    Act::On => drop(on.insert(part.as_str(), at)),
                    _ => {}
                }
            }
        }
        for (part, act) in &stands {
            let trial = part.ends_with("trial-nut");
            if *act != if trial { Act::Back } else { Act::On } {
                faults.push(format!("{part} is left {act:?}"));
            }
        }
        for (outer, outer_off) in &off {
            for (inner, inner_off) in &off {
                let wanted =
                    plan.layout == "d" && *outer == "lower-race" && *inner == "needle-shells";
                if FREE.contains(outer) || wanted || !plan.comes_before(*outer_off, *inner_off) {
                    continue;
                }
                let (outer_on, inner_on) = (on[outer], on[inner]);
                if outer_on != inner_on && !plan.comes_before(inner_on, outer_on) {
                    faults.push(format!("{outer} may go on before {inner}"));
                }
            }
        }
        faults
    });
}

#[test]
fn every_position_is_captured_at_teardown_and_fitted_at_assembly() {
    none_planned(|plan| {
        let layout = Layout::find(&plan.layout).unwrap();
        let slot = |position: &str| layout.position(position).unwrap().slot;
        let records = || plan.steps.iter().flat_map(|step| &step.records);
        let slots = |wanted: &str| -> BTreeSet<&str> {
            records()
                .filter_map(Record::pack)
                .filter(|(_, state)| *state == wanted)
                .map(|(position, _)| slot(position))
                .collect()
        };
        let (found, fitted) = (slots("as found"), slots("fitted"));
        let mut faults = Vec::new();
        if found != fitted {
            faults.push(format!("found {found:?}, fitted {fitted:?}"));
        }
        if [Scope::Bearings, Scope::GearSet].contains(&plan.scope) {
            let all: BTreeSet<&str> = layout.slots.iter().map(|slot| slot.id).collect();
            let signs: BTreeSet<&str> = records()
                .filter(|record| record.kind == RecordKind::Sign)
                .map(|record| slot(&record.label))
                .collect();
            for (what, has) in [("found", found), ("frozen", slots("frozen")), ("sign", signs)] {
                if has != all {
                    faults.push(format!("{what} {has:?} of {all:?}"));
                }
            }
        }
        faults
    });
}
