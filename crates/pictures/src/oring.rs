//! An O-ring in its groove, to scale: the groove, the ring as it lies free, and the bore that
//! squeezes it.

use std::f64::consts::PI;
use words::say;

use crate::drawing::{Anchor, Drawing, Mark, Point, circle, outline, rect, text};

/// What the picture shows; lengths all in one unit.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Seated {
    /// Section of the ring as it is stretched.
    pub section: f64,
    /// Gland depth: bottom of the groove to the bore.
    pub depth: f64,
    /// Width of the groove; where it was not measured, one is drawn that leaves room.
    pub width: Option<f64>,
    /// Squeeze in whole per cent.
    pub squeeze: String,
    /// How full the groove is in whole per cent.
    pub fill: Option<String>,
}

/// Height of the taller of ring and gland.
const TALL: f64 = 104.0;
/// Left and right end of the metal.
const SIDE: f64 = 158.0;
/// Points of a squeezed outline.
const POINTS: u32 = 48;

impl Seated {
    /// The drawing: bottom of the groove at zero, bore above.
    pub fn draw(&self) -> Drawing {
        let scale = TALL / self.section.max(self.depth).max(f64::MIN_POSITIVE);
        let (section, depth) = (self.section * scale, self.depth * scale);
        let flat = squeezed(section, depth);
        let width = self.width.map_or(1.4 * section, |width| width * scale);
        let half = width.clamp(12.0, 2.0 * SIDE - 40.0) / 2.0;
        let land = depth.min(0.86 * section);
        let groove = [
            (-SIDE, -land),
            (-half, -land),
            (-half, 0.0),
            (half, 0.0),
            (half, -land),
            (SIDE, -land),
            (SIDE, 30.0),
            (-SIDE, 30.0),
        ];
        let mut marks = vec![
            rect("k-case", -SIDE, -depth - 30.0, 2.0 * SIDE, 30.0),
            outline("k-steel", &groove),
            outline("k-seal", &flat),
            circle("o-free", (0.0, -section / 2.0), section / 2.0),
        ];
        marks.extend(self.words());
        let top = -section.max(depth + 30.0) - 10.0;
        Drawing { view: [-170.0, top, 340.0, 68.0 - top], width: None, label: self.spoken(), marks }
    }

    fn words(&self) -> Vec<Mark> {
        let squeeze = say!("squeeze {} %", self.squeeze);
        let fill = self.fill.as_ref().map(|fill| say!("{fill} % full"));
        let fill = fill.into_iter().map(|fill| text("c-t", (166.0, 54.0), Anchor::End, fill));
        [text("c-tb", (-166.0, 54.0), Anchor::Start, squeeze)].into_iter().chain(fill).collect()
    }

    fn spoken(&self) -> String {
        let fill = self.fill.as_ref().map(|fill| say!(" The groove is {fill} % full."));
        say!(
            "O-ring in its groove, to scale. Dashed is the ring before the bore squeezes it by {} %.{}",
            self.squeeze,
            fill.unwrap_or_default()
        )
    }
}

/// The ring between groove and bore: as high as the gland, and so wide that its area stays.
fn squeezed(section: f64, depth: f64) -> Vec<Point> {
    let high = section.min(depth);
    // Two straight sides of length b between half circles of height h: h·b + π/4·h² stays π/4·s².
    let straight = PI / 4.0 * (section * section - high * high) / high.max(f64::MIN_POSITIVE);
    let (radius, middle) = (high / 2.0, -high / 2.0);
    let point = |at: u32| {
        let angle = 2.0 * PI * f64::from(at) / f64::from(POINTS);
        let side = if angle.cos() < 0.0 { -straight / 2.0 } else { straight / 2.0 };
        (side + radius * angle.cos(), middle + radius * angle.sin())
    };
    (0..POINTS).map(point).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drawing::Shape;

    fn area(points: &[Point]) -> f64 {
        let next = points.iter().cycle().skip(1);
        points.iter().zip(next).map(|(a, b)| a.0 * b.1 - b.0 * a.1).sum::<f64>().abs() / 2.0
    }

    #[test]
    fn rubber_keeps_its_area_when_it_is_squeezed() {
        let free = area(&squeezed(100.0, 100.0));
        assert!((area(&squeezed(100.0, 80.0)) / free - 1.0).abs() < 0.01);
        let high = squeezed(100.0, 80.0).iter().map(|point| -point.1).fold(0.0, f64::max);
        assert!((high - 80.0).abs() < 1e-9);
    }

    #[test]
    fn a_ring_that_does_not_reach_the_bore_stays_round() {
        let seated =
            Seated { section: 3.0, depth: 3.5, squeeze: "-17".into(), ..Seated::default() };
        let drawing = seated.draw();
        let Some(Shape::Outline(ring)) =
            drawing.marks.iter().find(|mark| mark.ink == "k-seal").map(|mark| mark.shape.clone())
        else {
            panic!("no ring")
        };
        let widest = ring.iter().map(|point| point.0).fold(0.0, f64::max);
        assert!((widest - TALL * 3.0 / 3.5 / 2.0).abs() < 1e-9);
        assert!(drawing.label.contains("-17 %"));
    }
}
