//! Tooth prints: where the teeth touched on a flank, toe left and tip up, for both families of teeth;
//! and which way the pinion goes.

use words::{say, t};

use crate::drawing::{Anchor, Drawing, Mark, Point, line, moved, outline, rect, text};
use crate::section::pointer;

/// Height of a print.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Height {
    /// Toward the tip.
    Tip,
    /// In the middle.
    Middle,
    /// Toward the root.
    Root,
}

/// Place of a print along its tooth.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Along {
    /// Inner end.
    Toe,
    /// A little to the toe: what is usual without load, for the cards.
    Usual,
    /// Middle.
    Middle,
    /// Outer end.
    Heel,
}

/// Left and right end of a flank.
const ENDS: (f64, f64) = (14.0, 126.0);
/// Points along a print.
const STEPS: u32 = 12;

/// One flank with its print, to choose by; tapering or of even depth.
pub fn card(tapers: bool, height: Height) -> Drawing {
    let marks = flank(tapers, height, Along::Usual);
    Drawing { view: [0.0, 0.0, 140.0, 96.0], width: None, label: String::new(), marks }
}

/// Both flanks of a gear side by side, each with its height and place along.
pub fn flanks(tapers: bool, drive: (Height, Along), coast: (Height, Along)) -> Drawing {
    let mut marks = Vec::new();
    for (x, name, (height, along)) in
        [(0.0, t("drive flank"), drive), (170.0, t("coast flank"), coast)]
    {
        marks.extend(moved(flank(tapers, height, along), x, 22.0));
        marks.push(text("c-tb", (x + 70.0, 16.0), Anchor::Middle, name));
        marks.push(text("c-t", (x + 14.0, 136.0), Anchor::Start, t("toe")));
        marks.push(text("c-t", (x + 126.0, 136.0), Anchor::End, t("heel")));
    }
    let family = if tapers { t("tooth depth tapers") } else { t("same depth all along") };
    let said = |(height, along)| format!("{}, {}", height_word(height), along_word(along));
    let label = say!(
        "Tooth print, tip up, {family}. Drive flank {}. Coast flank {}.",
        said(drive),
        said(coast)
    );
    Drawing { view: [0.0, 0.0, 310.0, 144.0], width: None, label, marks }
}

/// The pinion over the gear's axis with the arrow for its move, toward the axis or away.
pub fn pinion_moves(inward: bool) -> Drawing {
    let mut marks = vec![rect("k-steel", -9.0, -112.0, 18.0, 50.0)];
    marks.extend(crate::section::pieces::pinion("k-gear"));
    marks.push(line("k-axis", &[(-124.0, 0.0), (184.0, 0.0)]));
    marks.push(line("k-axis", &[(0.0, -112.0), (0.0, 12.0)]));
    marks.push(text("c-t", (-124.0, -10.0), Anchor::Start, t("gear axis")));
    let (far, near) = ((74.0, -96.0), (74.0, -22.0));
    let (tail, tip, word) = if inward { (far, near, "IN") } else { (near, far, "OUT") };
    marks.push(pointer(tail, tip));
    marks.push(text("k-note", (100.0, -54.0), Anchor::Start, word));
    let label = match inward {
        true => t("The print says: move the pinion in, toward the gear axis."),
        false => t("The print says: move the pinion out, away from the gear axis."),
    };
    let label = label.to_owned();
    Drawing { view: [-130.0, -116.0, 320.0, 132.0], width: None, label, marks }
}

fn flank(tapers: bool, height: Height, along: Along) -> Vec<Mark> {
    let edges = |x: f64| match tapers {
        true => {
            let part = (x - ENDS.0) / (ENDS.1 - ENDS.0);
            (30.0 - 20.0 * part, 70.0 + 16.0 * part)
        }
        false => (16.0, 80.0),
    };
    let at = |x: f64, part: f64| {
        let (top, foot) = edges(x);
        (x, top + part * (foot - top))
    };
    let (left, right) = ENDS;
    let corners = [at(left, 0.0), at(right, 0.0), at(right, 1.0), at(left, 1.0)];
    vec![
        outline("t-flank", &corners),
        line("t-mid", &[at(left, 0.5), at(right, 0.5)]),
        outline("t-print", &print(height, along, at)),
    ]
}

fn print(height: Height, along: Along, at: impl Fn(f64, f64) -> Point) -> Vec<Point> {
    let (high, low) = match height {
        Height::Tip => (0.12, 0.30),
        Height::Middle => (0.32, 0.68),
        Height::Root => (0.70, 0.88),
    };
    let (from, to) = match along {
        Along::Toe => (18.0, 66.0),
        Along::Usual => (26.0, 96.0),
        Along::Middle => (35.0, 105.0),
        Along::Heel => (74.0, 122.0),
    };
    let step = |count: u32| f64::from(count) / f64::from(STEPS);
    // Both edges bulge a little in the middle of the print.
    let bulge = |part: f64| 0.16 * part * (1.0 - part);
    let edge =
        |part: f64, side: f64, way: f64| at(from + part * (to - from), side + way * bulge(part));
    let upper = (0..=STEPS).map(|count| edge(step(count), high, -1.0));
    let lower = (0..=STEPS).rev().map(|count| edge(step(count), low, 1.0));
    upper.chain(lower).collect()
}

fn height_word(height: Height) -> &'static str {
    match height {
        Height::Tip => t("toward the tip"),
        Height::Middle => t("in the middle of its height"),
        Height::Root => t("toward the root"),
    }
}

fn along_word(along: Along) -> &'static str {
    match along {
        Along::Toe => t("at the toe"),
        Along::Usual => t("place along not said"),
        Along::Middle => t("in the middle along"),
        Along::Heel => t("at the heel"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drawing::Shape;

    fn middle(height: Height, along: Along, tapers: bool) -> Point {
        let marks = flank(tapers, height, along);
        let print = marks.into_iter().find(|mark| mark.ink == "t-print").unwrap();
        let Shape::Outline(points) = print.shape else { panic!("no outline") };
        let count = points.len() as f64;
        let sum = points.iter().fold((0.0, 0.0), |sum, at| (sum.0 + at.0, sum.1 + at.1));
        (sum.0 / count, sum.1 / count)
    }

    #[test]
    fn tip_is_up_and_toe_is_left_in_both_families() {
        for tapers in [true, false] {
            let heights = [Height::Tip, Height::Middle, Height::Root];
            let y = heights.map(|height| middle(height, Along::Middle, tapers).1);
            assert!(y[0] < y[1] && y[1] < y[2]);
            let x = [Along::Toe, Along::Usual, Along::Middle, Along::Heel];
            let x = x.map(|along| middle(Height::Middle, along, tapers).0);
            assert!(x.windows(2).all(|pair| pair[0] < pair[1]));
        }
    }

    #[test]
    fn it_says_what_it_shows() {
        let drive = (Height::Tip, Along::Heel);
        let label = flanks(true, drive, (Height::Tip, Along::Usual)).label;
        assert!(
            label.contains("Drive flank toward the tip, at the heel. Coast flank toward the tip")
        );
        assert!(pinion_moves(false).label.contains("out, away"));
    }
}
