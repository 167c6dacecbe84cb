//! How far each stage of the job is.

use super::course::{Course, StepState};
use crate::procedure::Plan;

/// A stage of the job: Look, Strip, Judge, Shim, Close or Prove.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct StageView {
    /// "Shim".
    pub name: &'static str,
    /// The places of its steps.
    pub steps: Vec<usize>,
    /// How many are done or left out.
    pub settled: usize,
    /// How many lost their ground.
    pub stale: usize,
    /// The step proposed next is here.
    pub here: bool,
    /// Labour of the steps still to do, minutes, waits left out.
    pub minutes: u32,
}

impl StageView {
    /// Every step of it is done or left out.
    pub fn is_done(&self) -> bool {
        self.settled == self.steps.len()
    }
}

/// The stages in the order of work.
pub fn guide_stages(plan: &Plan, course: &Course) -> Vec<StageView> {
    let mut stages: Vec<StageView> = Vec::new();
    for (at, (step, view)) in plan.steps.iter().zip(&course.steps).enumerate() {
        let name = view.phase.stage();
        let known = stages.iter().position(|stage| stage.name == name);
        let known = known.unwrap_or_else(|| {
            let steps = Vec::new();
            stages.push(StageView { name, steps, settled: 0, stale: 0, here: false, minutes: 0 });
            stages.len() - 1
        });
        let Some(stage) = stages.get_mut(known) else { continue };
        stage.steps.push(at);
        stage.here |= course.next == Some(at);
        stage.stale += usize::from(matches!(view.state, StepState::Stale { .. }));
        if view.is_settled() {
            stage.settled += 1;
        } else {
            stage.minutes += step.minutes;
        }
    }
    stages
}
