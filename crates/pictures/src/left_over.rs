//! What is left round a turn when the circle that fits is taken out: a bar for each reading.

use words::{say, t};

use crate::drawing::{Anchor, Drawing, line, rect, text};

/// What the picture shows.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct LeftOver {
    /// Angle in degrees from 12 o'clock, what is left there, and the hour in words.
    pub bars: Vec<(f64, f64, String)>,
    /// The largest in words, with its unit.
    pub most: String,
}

const LEFT: f64 = 16.0;
const TURN: f64 = 308.0;
const AXIS: f64 = 56.0;
const REACH: f64 = 30.0;
/// Hours closer together than this would write over one another.
const APART: f64 = 36.0;

impl LeftOver {
    /// The drawing, bars far too high.
    pub fn draw(&self) -> Drawing {
        let mut bars = self.bars.clone();
        bars.sort_by(|one, next| one.0.total_cmp(&next.0));
        let largest = bars.iter().map(|bar| bar.1.abs()).fold(0.0, f64::max);
        let scale = if largest > 0.0 { REACH / largest } else { 0.0 };
        let mut marks = vec![
            line("c-ax", &[(4.0, AXIS), (336.0, AXIS)]),
            text("c-t", (336.0, 18.0), Anchor::End, format!("± {}", self.most)),
            text("c-t", (4.0, 18.0), Anchor::Start, t("what is left")),
        ];
        let mut free = 0.0;
        for (angle, height, hour) in &bars {
            let (x, height) = (LEFT + TURN * angle / 360.0, height * scale);
            marks.push(rect("c-dot", x - 4.5, AXIS - height.max(0.0), 9.0, height.abs()));
            if x >= free {
                marks.push(text("c-t", (x, 110.0), Anchor::Middle, hour.trim_end_matches(" h")));
                free = x + APART;
            }
        }
        let label = say!("What is left after the circle: {} at most either way.", self.most);
        Drawing { view: [0.0, 0.0, 340.0, 118.0], width: None, label, marks }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drawing::Shape;

    #[test]
    fn bars_stand_up_and_hang_down_in_order() {
        let bars = vec![(180.0, -0.01, "6 h".to_owned()), (0.0, 0.005, "12 h".to_owned())];
        let drawing = LeftOver { bars, most: "0.010 mm".to_owned() }.draw();
        assert_eq!(drawing.label, "What is left after the circle: 0.010 mm at most either way.");
        let bars: Vec<_> = drawing.marks.iter().filter(|mark| mark.ink == "c-dot").collect();
        let Shape::Outline(first) = &bars[0].shape else { panic!("not a bar") };
        assert!(first[0].0 < 170.0 && first[0].1 < AXIS, "12 h comes first and stands up");
        let Shape::Outline(second) = &bars[1].shape else { panic!("not a bar") };
        assert!(second[2].1 > AXIS, "6 h hangs down");
    }
}
