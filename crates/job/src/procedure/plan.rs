//! The steps of one job: a procedure cut to its scope, with the shop's own changes.

use std::fmt;
use words::say;

use super::{Act, Change, Changes, Phase, Procedure, Record, Scope, Step};

/// The steps to do, in the order shown. Needs point backwards and inside the plan.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Plan {
    /// The layout.
    pub layout: String,
    /// The pinned revision.
    pub revision: u32,
    /// The scope.
    pub scope: Scope,
    /// The steps.
    pub steps: Vec<Step>,
    /// Changes of the shop's that cannot be made on this procedure: one sentence each.
    pub set_aside: Vec<String>,
    /// For each step, whether each step must be done before it, directly or not.
    before: Vec<Vec<bool>>,
}

/// Why a change cannot be made; `Display` is the sentence to show.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum PlanRefusal {
    /// No such step in this plan.
    NoStep {
        /// The id asked for.
        step: String,
    },
    /// A part is taken off or fitted in the step.
    HandlesParts {
        /// The step's title.
        step: String,
    },
    /// The gate of another step reads what this one captures.
    Proves {
        /// The step's title.
        step: String,
        /// The title of the step with the gate.
        gate: String,
    },
    /// The last step, or one that makes the rest safe.
    Kept {
        /// The step's title.
        step: String,
    },
    /// It would stand before something it needs, or after something that needs it.
    Order {
        /// The step's title.
        step: String,
        /// The title of the step that stands in the way.
        other: String,
    },
    /// A record of an added step does not follow the grammar.
    Record {
        /// As written.
        found: String,
    },
    /// A step of that id is there already.
    Taken {
        /// The id.
        step: String,
    },
}

impl fmt::Display for PlanRefusal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            PlanRefusal::NoStep { step } => {
                f.write_str(&say!("Step {step} is not in this plan. Choose one that is."))
            }
            PlanRefusal::HandlesParts { step } => f.write_str(&say!(
                "“{step}” takes off or fits parts. Skip it in the job, with a reason."
            )),
            PlanRefusal::Proves { step, gate } => {
                f.write_str(&say!("The gate of “{gate}” reads what “{step}” captures. Keep it."))
            }
            PlanRefusal::Kept { step } => {
                f.write_str(&say!("“{step}” makes the rest safe or closes the job. Keep it."))
            }
            PlanRefusal::Order { step, other } => {
                f.write_str(&say!("“{step}” and “{other}” hang together. Keep their order."))
            }
            PlanRefusal::Record { found } => {
                f.write_str(&say!("{found} is no capture. Write it like photo:both faces."))
            }
            PlanRefusal::Taken { step } => {
                f.write_str(&say!("Step {step} is there already. Give the new one another name."))
            }
        }
    }
}

impl std::error::Error for PlanRefusal {}

impl Plan {
    /// The plan of a scope. Total: a change that cannot be made is set aside and said.
    pub fn of(procedure: &Procedure, scope: Scope, changes: &Changes) -> Plan {
        let mut steps: Vec<Step> =
            procedure.steps.iter().filter(|step| step.scopes.contains(&scope)).cloned().collect();
        let kept: Vec<String> = steps.iter().map(|step| step.id.clone()).collect();
        for step in &mut steps {
            step.needs.retain(|need| kept.contains(need));
        }
        let mut plan = Plan {
            layout: procedure.layout.clone(),
            revision: procedure.revision,
            scope,
            before: before(&steps),
            steps,
            set_aside: Vec::new(),
        };
        for change in &changes.0 {
            // A step of another scope is not missed here.
            let elsewhere = change.on().is_some_and(|id| {
                procedure.step(id).is_some_and(|step| !step.scopes.contains(&scope))
            });
            match plan.changed(change) {
                Ok(changed) => plan = changed,
                Err(refusal) if !elsewhere => plan.set_aside.push(refusal.to_string()),
                Err(_) => {}
            }
        }
        plan
    }

    /// The plan with one more change.
    ///
    /// # Errors
    /// [`PlanRefusal`], whose `Display` is the sentence to show.
    pub fn changed(&self, change: &Change) -> Result<Plan, PlanRefusal> {
        let mut plan = self.clone();
        match change {
            Change::Added { step, after, title, why, caution, records } => {
                if plan.index(step).is_some() {
                    return Err(PlanRefusal::Taken { step: step.clone() });
                }
                let at = plan.at(after)?;
                let read = |text: &String| {
                    Record::parse(text).ok_or(PlanRefusal::Record { found: text.clone() })
                };
                let phase = plan.steps.get(at).map_or(Phase::Paper, |step| step.phase);
                let own = Step {
                    id: step.clone(),
                    phase,
                    title: title.clone(),
                    why: why.clone(),
                    tools: Vec::new(),
                    caution: caution.clone(),
                    needs: vec![after.clone()],
                    records: records.iter().map(read).collect::<Result<_, _>>()?,
                    consumables: Vec::new(),
                    gate: None,
                    scopes: Scope::ALL.to_vec(),
                    positions: Vec::new(),
                    parts: Vec::new(),
                    minutes: 0,
                    meanwhile: false,
                    own: true,
                };
                // The job is not closed before the shop's own step is done too.
                if at + 1 < plan.steps.len()
                    && let Some(last) = plan.steps.last_mut()
                {
                    last.needs.push(step.clone());
                }
                plan.steps.insert(at + 1, own);
            }
            Change::Dropped { step, .. } => {
                let at = plan.may_drop(step)?;
                let dropped = plan.steps.remove(at);
                for later in plan.steps.iter_mut().filter(|later| later.needs.contains(step)) {
                    later.needs.retain(|need| need != step);
                    let passed = dropped.needs.iter().filter(|need| !later.needs.contains(need));
                    let passed: Vec<String> = passed.cloned().collect();
                    later.needs.extend(passed);
                }
            }
            Change::Moved { step, after } => {
                let (from, to) = (plan.at(step)?, plan.at(after)?);
                let moved = plan.steps.remove(from);
                let to = if from < to { to } else { to + 1 };
                plan.steps.insert(to.min(plan.steps.len()), moved);
                plan.in_order(step)?;
            }
        }
        plan.before = before(&plan.steps);
        Ok(plan)
    }

    /// Labour of all steps, waits left out, minutes.
    pub fn minutes(&self) -> u32 {
        self.steps.iter().map(|step| step.minutes).sum()
    }

    /// A step by its id.
    pub fn step(&self, id: &str) -> Option<&Step> {
        self.steps.iter().find(|step| step.id == id)
    }

    /// Where a step stands, from 0.
    pub fn index(&self, id: &str) -> Option<usize> {
        self.steps.iter().position(|step| step.id == id)
    }

    /// Whether the step at `first` must be done before the one at `then`, directly or not.
    pub fn comes_before(&self, first: usize, then: usize) -> bool {
        self.before.get(then).and_then(|row| row.get(first)).copied().unwrap_or(false)
    }

    fn at(&self, id: &str) -> Result<usize, PlanRefusal> {
        self.index(id).ok_or_else(|| PlanRefusal::NoStep { step: id.to_owned() })
    }

    fn may_drop(&self, id: &str) -> Result<usize, PlanRefusal> {
        let at = self.at(id)?;
        let Some(step) = self.steps.get(at) else { return Ok(at) };
        let title = step.title.clone();
        if !step.parts.is_empty() {
            return Err(PlanRefusal::HandlesParts { step: title });
        }
        let reads = |later: &&Step| {
            let proof = later.gate.iter().flat_map(|gate| &gate.proof);
            proof.filter_map(|proof| proof.step.as_deref()).any(|named| named == id)
        };
        if let Some(later) = self.steps.iter().find(reads) {
            return Err(PlanRefusal::Proves { step: title, gate: later.title.clone() });
        }
        // The first two steps make safe, the quote holds the consent, the last closes the job.
        let kept = at < 2 || at + 1 == self.steps.len() || step.phase == Phase::Quote;
        if kept { Err(PlanRefusal::Kept { step: title }) } else { Ok(at) }
    }

    /// Whether everything a step needs stands before it, and everything that needs it after it.
    fn in_order(&self, id: &str) -> Result<(), PlanRefusal> {
        let at = self.at(id)?;
        let Some(step) = self.steps.get(at) else { return Ok(()) };
        let clash = self.steps.iter().enumerate().find(|(other, stands)| {
            (*other > at && step.needs.contains(&stands.id))
                || (*other < at && stands.needs.iter().any(|need| need == id))
        });
        match clash {
            None => Ok(()),
            Some((_, other)) => {
                Err(PlanRefusal::Order { step: step.title.clone(), other: other.title.clone() })
            }
        }
    }

    /// Parts that come off in this plan, with the step, in order.
    pub fn parts_off(&self) -> impl Iterator<Item = (&Step, &str)> {
        self.steps.iter().flat_map(|step| step.parts_of(Act::Off).map(move |part| (step, part)))
    }
}

impl Change {
    /// The published step it hangs on.
    fn on(&self) -> Option<&str> {
        match self {
            Change::Added { after, .. } => Some(after),
            Change::Dropped { step, .. } | Change::Moved { step, .. } => Some(step),
        }
    }
}

/// Which steps must be done before which; needs point backwards, so one pass does it.
fn before(steps: &[Step]) -> Vec<Vec<bool>> {
    let mut rows: Vec<Vec<bool>> = Vec::with_capacity(steps.len());
    for step in steps {
        let mut row = vec![false; steps.len()];
        for need in &step.needs {
            let Some(at) = steps.iter().position(|other| other.id == *need) else { continue };
            for (cell, earlier) in row.iter_mut().zip(rows.get(at).into_iter().flatten()) {
                *cell |= earlier;
            }
            if let Some(cell) = row.get_mut(at) {
                *cell = true;
            }
        }
        rows.push(row);
    }
    rows
}
