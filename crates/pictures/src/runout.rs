//! Runout round a turn: the readings as dots, the circle that fits, and where it is high.

use std::f64::consts::PI;
use words::say;

use crate::drawing::{Anchor, Drawing, Mark, Point, circle, line, text};
use crate::section::pointer;

/// What the picture shows; angles are degrees from 12 o'clock the way a clock goes.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Polar {
    /// Angle and reading.
    pub dots: Vec<(f64, f64)>,
    /// Mean reading.
    pub mean: f64,
    /// How far the fitted circle lies off centre, in the unit of the readings.
    pub off_centre: f64,
    /// Where it is highest; `None` where nothing stands out.
    pub high: Option<f64>,
    /// The same in words.
    pub hour: Option<String>,
}

/// Radius of the circle without runout.
const RADIUS: f64 = 88.0;
/// How far the largest departure is drawn.
const REACH: f64 = 34.0;

impl Polar {
    /// The drawing, departures far too large.
    pub fn draw(&self) -> Drawing {
        let departure = |reading: f64| reading - self.mean;
        let largest = self.dots.iter().map(|dot| departure(dot.1).abs()).fold(0.0, f64::max);
        let scale = if largest > 0.0 { REACH / largest } else { 0.0 };
        let mut marks = vec![circle("p-ref", (0.0, 0.0), RADIUS)];
        for (angle, _) in &self.dots {
            marks.push(line("p-stem", &[around(*angle, 62.0), around(*angle, 140.0)]));
        }
        if let Some(high) = self.high {
            let centre = around(high, self.off_centre * scale);
            marks.push(circle("p-fit", centre, RADIUS));
            marks.push(circle("c-dot", centre, 4.0));
        }
        marks.push(line("d-line", &[(-7.0, 0.0), (7.0, 0.0)]));
        marks.push(line("d-line", &[(0.0, -7.0), (0.0, 7.0)]));
        for (angle, reading) in &self.dots {
            marks.push(circle("c-dot", around(*angle, RADIUS + departure(*reading) * scale), 7.0));
        }
        marks.extend(["12", "3", "6", "9"].into_iter().enumerate().map(|(at, hour)| {
            let (x, y) = around(90.0 * at as f64, 44.0);
            text("c-m", (x, y + 6.0), Anchor::Middle, hour)
        }));
        marks.extend(self.arrow());
        Drawing { view: [-170.0, -170.0, 340.0, 340.0], width: None, label: self.spoken(), marks }
    }

    fn arrow(&self) -> Vec<Mark> {
        let (Some(high), Some(hour)) = (self.high, &self.hour) else { return Vec::new() };
        vec![
            pointer(around(high, 168.0), around(high, 126.0)),
            text("c-tb", (168.0, -148.0), Anchor::End, say!("high spot {hour}")),
        ]
    }

    fn spoken(&self) -> String {
        let count = self.dots.len();
        match &self.hour {
            Some(hour) => say!("Runout, mark at 12. {count} readings. High spot at {hour}."),
            None => say!("Runout, mark at 12. {count} readings. No high spot stands out."),
        }
    }
}

/// The point at an angle from 12 o'clock and a distance from the middle.
pub(crate) fn around(degrees: f64, distance: f64) -> Point {
    let angle = degrees * PI / 180.0;
    (distance * angle.sin(), -distance * angle.cos())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drawing::Shape;

    #[test]
    fn the_circle_that_fits_lies_toward_the_high_spot() {
        let dots = vec![(0.0, 0.0), (90.0, 0.1), (180.0, 0.0), (270.0, -0.1)];
        let hour = Some("3 h".to_owned());
        let polar = Polar { dots, mean: 0.0, off_centre: 0.1, high: Some(90.0), hour };
        let drawing = polar.draw();
        let fitted = drawing.marks.iter().find(|mark| mark.ink == "p-fit").unwrap();
        let Shape::Circle((x, y), _) = fitted.shape else { panic!("not a circle") };
        assert!((x - REACH).abs() < 1e-9 && y.abs() < 1e-9);
        assert_eq!(drawing.label, "Runout, mark at 12. 4 readings. High spot at 3 h.");
    }
}
