//! Socket and part with a paint line, and where the line must come to.

use words::{say, t};

use crate::drawing::{Anchor, Drawing, circle, line, outline, text};
use crate::offset_tool::hexagon;
use crate::runout::around;
use crate::scale::held;
use crate::section::pieces::{BORE, RACE, STEEL};

/// What the picture shows: where the line stands after each step, degrees past snug.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Turn {
    /// In order.
    pub marks: Vec<f64>,
}

const PART: f64 = 76.0;
const SOCKET: f64 = 40.0;

impl Turn {
    /// The drawing, the line at the top.
    pub fn draw(&self) -> Drawing {
        let total = self.marks.last().copied().unwrap_or_default();
        let mut swept = vec![(0.0, 0.0)];
        let swings = (held(total, 0.0, 360.0) / 4.0).ceil().max(1.0);
        swept.extend(
            (0..=swings as u32)
                .map(|at| around(held(total, 0.0, 360.0) * f64::from(at) / swings, PART)),
        );
        let mut marks = vec![
            circle(RACE, (0.0, 0.0), PART),
            outline("k-hot", &swept),
            circle(STEEL, (0.0, 0.0), SOCKET),
            outline(BORE, &hexagon((0.0, 0.0), 22.0)),
            line("c-mean", &[around(0.0, 26.0), around(0.0, PART)]),
        ];
        let words: Vec<String> = self.marks.iter().map(|mark| degrees(*mark)).collect();
        for (mark, words) in self.marks.iter().zip(&words) {
            marks.push(line("c-mean", &[around(*mark, SOCKET), around(*mark, PART)]));
            let (x, y) = around(*mark, PART + 20.0);
            marks.push(text("c-tb", (x, y + 6.0), Anchor::Middle, words.clone()));
        }
        let label = say!(
            "Socket and part with a paint line. Turn to {} past snug.",
            words.join(t(", then "))
        );
        Drawing { view: [-132.0, -112.0, 264.0, 224.0], width: Some(264.0), label, marks }
    }
}

fn degrees(mark: f64) -> String {
    format!("{}°", crate::drawing::number(mark))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_step_has_its_mark() {
        let drawing = Turn { marks: vec![40.0, 80.0] }.draw();
        let label = "Socket and part with a paint line. Turn to 40°, then 80° past snug.";
        assert_eq!(drawing.label, label);
        assert_eq!(drawing.marks.iter().filter(|mark| mark.ink == "c-mean").count(), 3);
    }
}
