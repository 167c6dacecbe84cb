//! The published procedures, read as the app reads them.

use job::procedure::*;

/// Every layout.
pub const LAYOUTS: [&str; 5] = ["a", "b", "c", "d", "e"];

pub fn text(address: &str) -> String {
    let path = format!("{}/../../public{address}", env!("CARGO_MANIFEST_DIR"));
    std::fs::read_to_string(&path).unwrap_or_else(|_| panic!("{path} is there"))
}

pub fn procedure(layout: &str) -> Procedure {
    Procedure::parse(layout, NEWEST, &text(&Procedure::address(layout, NEWEST))).unwrap()
}

pub fn plan(layout: &str, scope: Scope) -> Plan {
    Plan::of(&procedure(layout), scope, &Changes::default())
}

/// Fails with every fault, over all layouts.
pub fn none(faults: impl Fn(&Procedure) -> Vec<String>) {
    let found: Vec<String> = LAYOUTS.iter().flat_map(|layout| faults(&procedure(layout))).collect();
    assert!(found.is_empty(), "\n{}\n", found.join("\n"));
}

/// Fails with every fault, over all plans.
pub fn none_planned(faults: impl Fn(&Plan) -> Vec<String>) {
    for scope in Scope::ALL {
        none(|procedure| {
            let plan = Plan::of(procedure, scope, &Changes::default());
            let named = |fault: String| format!("{} {}: {fault}", plan.layout, scope.name());
            faults(&plan).into_iter().map(named).collect()
        });
    }
}

/// Where a step stands in the procedure, and everything it needs, directly or not.
pub fn needed(procedure: &Procedure, id: &str) -> Vec<String> {
    let mut found: Vec<String> = Vec::new();
    let mut next = vec![id.to_owned()];
    while let Some(id) = next.pop() {
        for need in &procedure.step(&id).unwrap().needs {
            if !found.contains(need) {
                found.push(need.clone());
                next.push(need.clone());
            }
        }
    }
    found
}

#[test]
fn sentences_name_steps_by_their_titles() {
    let plan = plan("b", Scope::GearSet);
    let step = plan.steps.first().expect("a step");
    let told = |sentence: &str| job::guide::titled(&sentence.replace("ID", &step.id), &plan);
    assert_eq!(told("Step ID done."), format!("“{}” done.", step.title));
    assert_eq!(
        told("Step ID left out: a step too far."),
        format!("“{}” left out: a step too far.", step.title)
    );
    assert_eq!(
        told("Gate of ID passed by SA: dry."),
        format!("Gate of “{}” passed by SA: dry.", step.title)
    );
    assert_eq!(told("B2 left 0.50."), "B2 left 0.50.");
}
