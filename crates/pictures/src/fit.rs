//! A ring in its bore, cold and warm: overlap or gap, drawn far too large.

use words::{say, t};

use crate::drawing::{Anchor, Drawing, Mark, line, rect, text};
use crate::section::pieces::{CASE, RACE};

/// A ring in its bore at one temperature.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct State {
    /// When: "20 °C".
    pub when: String,
    /// Room between them on the diameter; below zero they overlap. Any unit, the same in each state.
    pub gap: f64,
    /// The same in words, without a sign: "0.050 mm".
    pub size: String,
}

const WIDTH: f64 = 108.0;
const STEP: f64 = 116.0;
/// Where the bore's wall lies, and how far the largest gap or overlap reaches.
const WALL: f64 = 66.0;
const REACH: f64 = 22.0;

/// The drawing of one to three states, side by side.
pub fn draw(states: &[State]) -> Drawing {
    let largest = states.iter().map(|state| state.gap.abs()).fold(0.0, f64::max);
    let scale = if largest > 0.0 { REACH / largest } else { 0.0 };
    let left = 0.5 * STEP * (3.0 - states.len() as f64);
    let mut marks = Vec::new();
    for (at, state) in states.iter().enumerate() {
        marks.extend(panel(left + STEP * at as f64, state, state.gap * scale));
    }
    let spoken: Vec<String> = states.iter().map(spoken).collect();
    let label = say!("Ring in its bore. {}", spoken.join(" "));
    Drawing { view: [0.0, 0.0, 3.0 * STEP - 8.0, 168.0], width: None, label, marks }
}

fn panel(x: f64, state: &State, gap: f64) -> Vec<Mark> {
    let top = WALL + gap;
    let middle = x + 0.5 * WIDTH;
    let mut marks = vec![
        rect(CASE, x, 24.0, WIDTH, WALL - 24.0),
        rect(RACE, x + 10.0, top, WIDTH - 20.0, 116.0 - top),
    ];
    if gap < 0.0 {
        marks.push(rect("c-lost", x + 10.0, top, WIDTH - 20.0, -gap));
        marks.push(line("c-lim", &[(x + 10.0, WALL), (x + WIDTH - 10.0, WALL)]));
    }
    marks.push(text("c-t", (middle, 16.0), Anchor::Middle, state.when.clone()));
    marks.push(text("c-t", (middle, 136.0), Anchor::Middle, word(state)));
    marks.push(text("c-tb", (middle, 160.0), Anchor::Middle, state.size.clone()));
    marks
}

fn word(state: &State) -> &'static str {
    if state.gap > 0.0 { t("gap") } else { t("overlap") }
}

fn spoken(state: &State) -> String {
    format!("{}: {} {}.", state.when, word(state), state.size)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn it_says_each_state() {
        let state =
            |when: &str, gap, size: &str| State { when: when.into(), gap, size: size.into() };
        let drawing = draw(&[state("20 °C", -0.05, "0.050 mm"), state("72 °C", 0.03, "0.030 mm")]);
        let label = "Ring in its bore. 20 °C: overlap 0.050 mm. 72 °C: gap 0.030 mm.";
        assert_eq!(drawing.label, label);
        let overlaps = drawing.marks.iter().filter(|mark| mark.ink == "c-lost").count();
        assert_eq!(overlaps, 1, "only the first overlaps");
    }
}
