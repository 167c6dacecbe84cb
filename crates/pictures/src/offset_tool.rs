//! An offset head on a wrench, drawn to scale with its angle.

use std::f64::consts::PI;
use words::{say, t};

use crate::drawing::{Anchor, Drawing, Mark, Point, circle, line, lines, outline, rect, text};
use crate::scale::held;
use crate::section::pieces::{BORE, GEAR, RACE, STEEL};
use crate::section::pointer;

/// What the picture shows: lengths in millimetres, the angle in degrees, 0 straight ahead.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct OffsetTool {
    /// Middle of the grip to the drive.
    pub wrench: f64,
    /// Drive to the fastener.
    pub head: f64,
    /// How far the head is turned.
    pub angle: f64,
    /// The three with their units.
    pub words: [String; 3],
}

/// The picture is as wide as this, with room for the grip's end and the ring.
const WIDTH: f64 = 348.0;
const LEFT: f64 = 30.0;
const RIGHT: f64 = 96.0;
/// No shorter than the drive and the ring are wide, or they would hide the head.
const LEAST: f64 = 26.0;
/// How far from the drive the angle is written, and how much room "E 60 mm" takes.
const AROUND: f64 = 70.0;
const SAID: f64 = 92.0;

impl OffsetTool {
    /// The drawing, the drive at its middle.
    pub fn draw(&self) -> Drawing {
        let turned = held(self.angle, 0.0, 180.0) * PI / 180.0;
        let reach =
            self.wrench.max(-self.head * turned.cos()) + (self.head * turned.cos()).max(0.0);
        let scale = (WIDTH - LEFT - RIGHT) / reach.max(1e-6);
        let (wrench, head) = (self.wrench * scale, (self.head * scale).max(LEAST));
        let along = |distance: f64, aside: f64| {
            let (sine, cosine) = turned.sin_cos();
            (distance * cosine - aside * sine, -distance * sine - aside * cosine)
        };
        let ring = along(head, 0.0);
        let half = (AROUND * (0.5 * turned).cos(), -AROUND * (0.5 * turned).sin());
        let top = (ring.1 - 40.0).min(half.1 - 24.0).min(-66.0);
        let mut marks = vec![
            outline(
                STEEL,
                &[along(0.0, 8.0), along(head, 8.0), along(head, -8.0), along(0.0, -8.0)],
            ),
            rect(STEEL, -wrench, -6.0, wrench, 12.0),
            rect(GEAR, -wrench - 26.0, -9.0, 52.0, 18.0),
            circle(STEEL, (0.0, 0.0), 13.0),
            rect(BORE, -5.0, -5.0, 10.0, 10.0),
            circle(RACE, ring, 17.0),
            outline(GEAR, &hexagon(ring, 12.0)),
            line("k-axis", &[(14.0, 0.0), (RIGHT - 12.0, 0.0)]),
            line("d-line", &arc(62.0, turned)),
            lines(
                "d-line",
                &[
                    &[(-wrench, 30.0), (0.0, 30.0)],
                    &[(-wrench, 14.0), (-wrench, 40.0)],
                    &[(0.0, 18.0), (0.0, 40.0)],
                ],
            ),
            outline("d-fill", &[(-wrench, 30.0), (9.0 - wrench, 26.0), (9.0 - wrench, 34.0)]),
            outline("d-fill", &[(0.0, 30.0), (-9.0, 26.0), (-9.0, 34.0)]),
            pointer((-wrench, -62.0), (-wrench, -13.0)),
        ];
        marks.extend(self.words_at(wrench, ring, half));
        let (left, foot) = (-wrench - LEFT, 66.0);
        let view = [left, top, WIDTH, foot - top];
        Drawing { view, width: None, label: self.spoken(), marks }
    }

    fn words_at(&self, wrench: f64, ring: Point, half: Point) -> [Mark; 4] {
        let [length, head, angle] = &self.words;
        // Left of the ring, unless the pull's arrow stands there.
        let (beside, anchor) = match ring.0 - 26.0 - SAID > 16.0 - wrench {
            true => (ring.0 - 26.0, Anchor::End),
            false => (ring.0 + 26.0, Anchor::Start),
        };
        let outward = if half.0 > 30.0 { Anchor::Start } else { Anchor::Middle };
        let above = ring.1.min(-16.0) - 8.0;
        [
            text("c-tb", (-0.5 * wrench, 56.0), Anchor::Middle, format!("L {length}")),
            text("c-tb", (beside, above), anchor, format!("E {head}")),
            text("c-m", (half.0, half.1 - 6.0), outward, angle.clone()),
            text("c-t", (24.0 - wrench, -46.0), Anchor::Start, t("pull")),
        ]
    }

    fn spoken(&self) -> String {
        let [length, head, angle] = &self.words;
        say!(
            "Offset head drawn to scale: wrench {length} from hand to drive, head {head} at {angle}."
        )
    }
}

/// From straight ahead up to an angle, a stroke each few degrees.
pub(crate) fn arc(radius: f64, to: f64) -> Vec<Point> {
    let steps = (to / 0.08).ceil().max(1.0);
    let at = |step: f64| (radius * (to * step / steps).cos(), -radius * (to * step / steps).sin());
    (0..=steps as u32).map(|step| at(f64::from(step))).collect()
}

/// The six corners of a nut.
pub(crate) fn hexagon((x, y): Point, radius: f64) -> Vec<Point> {
    let corner = |at: u32| {
        let angle = f64::from(at) * PI / 3.0;
        (x + radius * angle.cos(), y + radius * angle.sin())
    };
    (0..6).map(corner).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drawing::Shape;

    fn ring(angle: f64) -> Point {
        let words = ["400 mm", "60 mm", "45°"].map(str::to_owned);
        let drawing = OffsetTool { wrench: 400.0, head: 60.0, angle, words }.draw();
        let ring = drawing.marks.iter().find(|mark| mark.ink == RACE).unwrap();
        let Shape::Circle(at, _) = ring.shape else { panic!("not a circle") };
        at
    }

    #[test]
    fn the_head_turns_up_and_back() {
        let (forward, square, back) = (ring(0.0), ring(90.0), ring(180.0));
        assert!(forward.0 > 25.0 && forward.1.abs() < 1e-9, "{forward:?}");
        assert!(square.0.abs() < 1e-9 && square.1 < -25.0, "{square:?}");
        assert!(back.0 < -25.0 && back.1.abs() < 1e-9, "{back:?}");
    }

    #[test]
    fn lengths_keep_their_ratio() {
        let words = || ["400 mm", "100 mm", "0°"].map(str::to_owned);
        let drawing = OffsetTool { wrench: 400.0, head: 100.0, angle: 0.0, words: words() }.draw();
        let ring = drawing.marks.iter().find(|mark| mark.ink == RACE).unwrap();
        let Shape::Circle((x, _), _) = ring.shape else { panic!("not a circle") };
        let wrench = -drawing.view[0] - LEFT;
        assert!((wrench / x - 4.0).abs() < 1e-9);
        assert!(drawing.label.ends_with("wrench 400 mm from hand to drive, head 100 mm at 0°."));
    }
}
