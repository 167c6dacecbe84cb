//! A signature as it was drawn.

use crate::drawing::{Drawing, Mark, Point, Shape};

/// The drawing of strokes on a pad of that width and height; `label` says whose it is.
pub fn signature(
    strokes: &[Vec<(u16, u16)>],
    (width, height): (u16, u16),
    label: String,
) -> Drawing {
    let strokes: Vec<Vec<Point>> = strokes
        .iter()
        .map(|points| {
            let ends = points.iter().chain(points.last().filter(|_| points.len() == 1));
            // A line to itself shows as a dot.
            ends.map(|(x, y)| (f64::from(*x), f64::from(*y))).collect()
        })
        .collect();
    let view = [0.0, 0.0, f64::from(width), f64::from(height)];
    Drawing {
        view,
        width: None,
        label,
        marks: vec![Mark { ink: "s-pen", shape: Shape::Lines(strokes) }],
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_tap_is_a_dot() {
        let drawing =
            signature(&[vec![(1, 2), (3, 4)], vec![(9, 9)]], (1000, 300), "M. Lind".into());
        assert_eq!(drawing.marks[0].path(), "M1 2L3 4M9 9L9 9");
        assert_eq!((drawing.view, drawing.label.as_str()), ([0.0, 0.0, 1000.0, 300.0], "M. Lind"));
    }
}
