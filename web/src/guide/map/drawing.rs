//! The picture of the map: top to bottom, each node with shape, edge and word of its state; a dotted
//! line leads to what went stale.

use job::guide::{Map, MapNode, StepState};
use words::say;

use super::of_stage;
use crate::guide::rows::sign;
use crate::pictures::drawing::{Anchor, Drawing, Mark, Point, line, rect, text};

const WIDE: f64 = 340.0;
const GAP: f64 = 8.0;
const HIGH: f64 = 52.0;
const APART: f64 = 82.0;
const WIDEST: f64 = 130.0;

/// A node where it is drawn: its middle and its width.
struct Placed<'a> {
    at: usize,
    node: &'a MapNode,
    middle: Point,
    width: f64,
}

/// Draws the nodes of a stage.
pub fn draw(map: &Map, stage: &str) -> Drawing {
    let nodes = placed(map, stage);
    let mut marks: Vec<Mark> = Vec::new();
    for (from, to) in &map.links {
        let ends = (find(&nodes, *from), find(&nodes, *to));
        let (Some(from), Some(to)) = ends else { continue };
        let ink = match to.node.state {
            StepState::Stale { .. } => "d-line--stale",
            _ => "d-line",
        };
        let (below, above) =
            ((from.middle.0, from.middle.1 + HIGH / 2.0), (to.middle.0, to.middle.1 - HIGH / 2.0));
        marks.push(line(ink, &[below, above]));
    }
    nodes.iter().for_each(|node| marks.extend(drawn(node)));
    let lowest = nodes.iter().map(|node| node.middle.1).fold(0.0, f64::max);
    let said: Vec<String> =
        nodes.iter().map(|it| format!("{} {}", it.node.number, sign(&it.node.state).1)).collect();
    Drawing {
        view: [0.0, 0.0, WIDE, lowest + HIGH / 2.0 + 4.0],
        width: None,
        label: say!("{stage}, steps from top to bottom: {}", said.join(", ")),
        marks,
    }
}

fn placed<'a>(map: &'a Map, stage: &str) -> Vec<Placed<'a>> {
    let nodes = of_stage(map, stage);
    let mut columns: Vec<usize> = nodes.iter().map(|(_, node)| node.column).collect();
    columns.sort_unstable();
    columns.dedup();
    let mut placed = Vec::new();
    for (row, column) in columns.iter().enumerate() {
        let abreast: Vec<_> = nodes.iter().filter(|(_, node)| node.column == *column).collect();
        let share = WIDE / abreast.len() as f64;
        for (place, (at, node)) in abreast.iter().enumerate() {
            let middle = (share * (place as f64 + 0.5), APART * row as f64 + HIGH / 2.0 + 4.0);
            let width = (share - GAP).min(WIDEST);
            placed.push(Placed { at: *at, node, middle, width });
        }
    }
    placed
}

fn find<'a, 'b>(nodes: &'b [Placed<'a>], at: usize) -> Option<&'b Placed<'a>> {
    nodes.iter().find(|node| node.at == at)
}

fn drawn(placed: &Placed<'_>) -> [Mark; 3] {
    let ink = match placed.node.state {
        StepState::Open => "n-open",
        StepState::Locked { .. } => "n-lock",
        StepState::Done { .. } => "n-in",
        StepState::Skipped { .. } => "n-skip",
        StepState::Stale { .. } => "n-stale",
    };
    let (x, y) = placed.middle;
    let number = placed.node.number.to_string();
    [
        rect(ink, x - placed.width / 2.0, y - HIGH / 2.0, placed.width, HIGH),
        text("n-t", (x, y - 3.0), Anchor::Middle, number),
        text("n-s", (x, y + 17.0), Anchor::Middle, sign(&placed.node.state).1),
    ]
}
