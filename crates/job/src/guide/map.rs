//! The dependency picture: what is open, locked, stale, and on what it hangs.

use super::course::{Course, StepState};
use crate::procedure::Plan;

/// The steps as nodes, and what must be done first as links.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Map {
    /// The nodes, in the order of the plan.
    pub nodes: Vec<MapNode>,
    /// Direct needs: from the earlier node to the later one.
    pub links: Vec<(usize, usize)>,
    /// How many columns.
    pub columns: usize,
}

/// A step on the map.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct MapNode {
    /// Its id.
    pub id: String,
    /// Its number on the screen.
    pub number: usize,
    /// The act.
    pub title: String,
    /// The stage: "Strip".
    pub stage: &'static str,
    /// Column, from 0: one right of the furthest step it needs.
    pub column: usize,
    /// Row in its column, from 0.
    pub row: usize,
    /// How it stands.
    pub state: StepState,
    /// It has a gate.
    pub gated: bool,
}

/// Lays the plan out as a map.
pub fn map(plan: &Plan, course: &Course) -> Map {
    let mut nodes: Vec<MapNode> = Vec::with_capacity(plan.steps.len());
    let mut links = Vec::new();
    for (at, (step, view)) in plan.steps.iter().zip(&course.steps).enumerate() {
        let mut column = 0;
        for (first, earlier) in nodes.iter().enumerate() {
            if step.needs.contains(&earlier.id) {
                column = column.max(earlier.column + 1);
                links.push((first, at));
            }
        }
        let row = nodes.iter().filter(|node| node.column == column).count();
        nodes.push(MapNode {
            id: view.id.clone(),
            number: view.number,
            title: view.title.clone(),
            stage: view.phase.stage(),
            column,
            row,
            state: view.state.clone(),
            gated: step.gate.is_some(),
        });
    }
    let columns = nodes.iter().map(|node| node.column + 1).max().unwrap_or_default();
    Map { nodes, links, columns }
}
