//! Rules of the trade that every published procedure keeps, rules 12 to 16 of PROCEDURES.md.
//! Common practice, no source.

use job::procedure::*;

use crate::procedures::*;

/// The first step whose title holds one of the words.
fn first<'a>(procedure: &'a Procedure, words: &[&str]) -> &'a Step {
    let holds = |step: &&Step| words.iter().any(|word| step.title.contains(word));
    procedure.steps.iter().find(holds).unwrap_or_else(|| panic!("{}: {words:?}", procedure.layout))
}

fn before(procedure: &Procedure, one: &[&str], other: &[&str]) -> Vec<String> {
    let (one, other) = (first(procedure, one), first(procedure, other));
    if needed(procedure, &other.id).contains(&one.id) {
        Vec::new()
    } else {
        vec![format!("{} does not wait for {}", other.id, one.id)]
    }
}

#[test]
fn the_order_that_saves_cases_and_people() {
    let low = ["Low-pressure", "eak test: low"];
    none(|procedure| {
        let mut faults = Vec::new();
        let mut first_then = |one: &[&str], other: &[&str]| {
            faults.extend(before(procedure, one, other));
        };
        // Layout (d) has no threaded ring: its caps are bolted.
        if procedure.layout != "d" {
            let lock = ["lock set screw", "carrier's lock"];
            first_then(&lock, &["nscrew the threaded ring", "take off the carrier retainer"]);
            let locked = ["Lock set screw in", "Lock the retainer"];
            first_then(&locked, &low);
            first_then(&["Closing"], &locked);
        }
        first_then(
            &["Freeze"],
            &["Fit the seals", "Fit seals", "Fit the input seal", "Fit input seal"],
        );
        first_then(&["Closing"], &low);
        first_then(&["orking"], &["Vacuum"]);
        first_then(&["Run-in"], &["After-run"]);
        first_then(&["Agree scope"], &["Support", "Take off", "take it off"]);
        first_then(&["Make safe"], &["Drain"]);
        faults
    });
}

#[test]
fn as_found_readings_come_before_anything_that_touches_a_mesh() {
    none(|procedure| {
        let read: Vec<&Step> = procedure
            .steps
            .iter()
            .filter(|step| step.phase == Phase::Teardown && step.title.starts_with("As-found"))
            .collect();
        let last = procedure.steps.iter().position(|step| step.id == read.last().unwrap().id);
        let strips = procedure.steps.iter().skip(last.unwrap() + 1).filter(|step| {
            // The shift shoe and what hangs on it may go earlier in layout (d).
            let free = ["d11", "d17"].contains(&step.id.as_str());
            step.phase == Phase::Teardown && step.parts_of(Act::Off).next().is_some() && !free
        });
        let mut faults = Vec::new();
        for step in strips {
            let before = needed(procedure, &step.id);
            for reading in read.iter().filter(|reading| !before.contains(&reading.id)) {
                faults.push(format!("{} strips before {}", step.id, reading.id));
            }
        }
        faults
    });
}

#[test]
fn what_must_be_asked_is_asked() {
    none(|procedure| {
        let mut faults = Vec::new();
        for step in &procedure.steps {
            let has = |label: &str| step.record(label).is_some();
            let proof: Vec<&Proof> = step.gate.iter().flat_map(|gate| &gate.proof).collect();
            let mut must = |holds: bool, what: &str| {
                if !holds {
                    faults.push(format!("{}: {what}", step.id));
                }
            };
            if step.title.starts_with("Freeze") {
                let asked = ["second initials", "case temperature", "room temperature"];
                must(asked.into_iter().all(has), "freeze lacks initials or temperatures");
            }
            if step.phase == Phase::Test && step.gate.is_some() {
                must(proof.iter().any(|proof| proof.label.contains("turned")), "no turned flag");
            }
            if step.title.starts_with("Closing") {
                let compared = proof
                    .iter()
                    .any(|proof| proof.step.is_some() && proof.label.contains("backlash"));
                must(compared, "closing backlash is compared with nothing");
            }
            let reads = step.records.iter().any(|record| {
                record.kind == RecordKind::Measure
                    && record.label.contains("backlash")
                    && !record.label.contains("recheck")
            });
            let arm = step.records.iter().any(|record| record.label.starts_with("arm radius"));
            must(!reads || arm, "a backlash without its arm");
            let pulls =
                ["race; keep", "race out of", "race, pull", "pull its race", "shells and sleeves"];
            let pulls = pulls.iter().any(|word| step.title.contains(word))
                || step.title.ends_with("needle shells");
            if pulls && step.phase == Phase::Teardown {
                let asked =
                    step.records.iter().any(|r| r.label.contains("rollers in place before"));
                must(asked, "rollers in place is not asked");
            }
        }
        faults
    });
}

#[test]
fn every_count_out_is_compared() {
    none(|procedure| {
        let mut faults = Vec::new();
        for step in &procedure.steps {
            for record in step.records.iter().filter(|record| record.label.ends_with(" out")) {
                let is_count = record.is_count();
                let compared = procedure.steps.iter().any(|other| {
                    other.gate.iter().flat_map(|gate| &gate.proof).any(|proof| {
                        proof.step.as_deref() == Some(&step.id) && proof.label == record.label
                    })
                });
                if is_count && !compared {
                    faults.push(format!("{}: {} is never compared", step.id, record.label));
                }
            }
        }
        faults
    });
}

/// What can hurt, by the word of a tool or consumable, and what the caution must then say.
const HAZARDS: [(&str, &[&str]); 9] = [
    ("heat gun", &["flame"]),
    ("heat gun", &["glove"]),
    ("hand pump", &["plug"]),
    ("hand pump", &["limit"]),
    ("hoist", &["two people", "second person", "hoist", "weight"]),
    ("long bar", &["bar"]),
    ("freezer", &["cold"]),
    ("lube pump", &["spill", "floor", "drop", "sheen", "vent plug"]),
    ("clamp arm", &["finger", "teeth", "indicator square"]),
];

#[test]
fn every_hazard_has_its_caution() {
    none(|procedure| {
        let mut faults = Vec::new();
        for step in &procedure.steps {
            let caution = step.caution.to_lowercase();
            let tools = step.tools.join(" ").to_lowercase();
            let used = format!("{} {}", step.title, step.consumables.join(" ")).to_lowercase();
            let mut must = |hazard: bool, words: &[&str], what: &str| {
                if hazard && !words.iter().any(|word| caution.contains(word)) {
                    faults.push(format!("{}: {what} without {words:?}", step.id));
                }
            };
            for (tool, words) in HAZARDS {
                must(tools.contains(tool), words, tool);
            }
            let pressed = step.tools.iter().any(|tool| tool == "press");
            must(pressed, &["glass"], "press");
            let flammable = ["solvent", "degreaser", "dye"].iter().any(|word| used.contains(word));
            must(flammable, &["flame"], "solvent");
            let blades = tools.contains("prop-nut socket")
                && [Phase::Diagnose, Phase::Reassemble].contains(&step.phase);
            must(blades, &["blade"], "blades");
            let springs = used.contains("spring")
                && !tools.contains("spring scale")
                && !used.contains("seal");
            must(springs, &["glass"], "springs");
            if tools.contains("flush feed") {
                for word in ["exhaust", "feed water", "propeller"] {
                    must(true, &[word], "running");
                }
            }
            let isolates = tools.contains("battery isolator");
            must(isolates, &["battery"], "electricity");
            must(isolates, &["shore"], "electricity");
        }
        faults
    });
}
