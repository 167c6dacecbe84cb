//! How the gauge is set before a reading is taken.

use words::{say, t};

use super::drawing::{
    Anchor, Drawing, Mark, Point, circle, line, lines, outline, placed, rect, text,
};
use super::section::pieces::{BORE, CASE, GEAR, LEAD, RACE, ROLLER, STEEL, pinion};
use super::section::pointer;

/// The reading a gauge is set for.
#[derive(Clone, Debug, PartialEq)]
pub enum Gauge {
    /// Backlash: an arm on a shaft, the indicator square to it.
    Lash {
        /// The arm's radius with its unit: "30.0 mm".
        radius: String,
        /// The shaft the arm is on: "driveshaft".
        on: String,
    },
    /// Depth gap: a feeler between the pinion face and the block on the mandrel.
    Depth {
        /// What stands at the gap: "0.60 to 0.66".
        gap: String,
    },
    /// End play: the indicator on the end of the propshaft.
    EndPlay,
}

impl Gauge {
    /// The drawing.
    pub fn draw(&self) -> Drawing {
        let (marks, label) = match self {
            Gauge::Lash { radius, on } => (
                lash(radius, on),
                say!(
                    "Along the shaft: arm clamped on the {on}, plunger square to the arm {radius} from the middle of the shaft, half a turn of preload"
                ),
            ),
            Gauge::Depth { gap } => (
                depth(gap),
                say!(
                    "Mandrel in the propshaft bore with its block under the pinion; feeler between block and pinion face, beside the nut; gap {gap}"
                ),
            ),
            Gauge::EndPlay => (
                end_play(),
                t("Indicator on the end of the propshaft, plunger in line with it, its base on the case; push and pull the shaft").to_owned(),
            ),
        };
        Drawing { view: [0.0, 0.0, 376.0, 190.0], width: Some(360.0), label, marks }
    }
}

fn label(at: Point, anchor: Anchor, words: &str) -> Mark {
    text("k-lab", at, anchor, words)
}

/// The dial of an indicator, and its hand.
fn dial((x, y): Point) -> [Mark; 2] {
    [circle(ROLLER, (x, y), 20.0), line("k-lead k-hand", &[(x, y), (x + 9.0, y - 11.0)])]
}

fn lash(radius: &str, on: &str) -> Vec<Mark> {
    let (shaft, plunger) = ((92.0, 92.0), 212.0);
    let mut marks = vec![
        circle(CASE, shaft, 62.0),
        circle(BORE, shaft, 42.0),
        circle(STEEL, shaft, 24.0),
        rect(RACE, 70.0, 82.0, 150.0, 20.0),
        rect(STEEL, plunger - 7.0, 22.0, 14.0, 58.0),
    ];
    marks.extend(dial((plunger, 24.0)));
    marks.push(lines(
        "c-ax",
        &[
            &[shaft, (92.0, 168.0)],
            &[(plunger, 106.0), (plunger, 168.0)],
            &[(92.0, 162.0), (plunger, 162.0)],
        ],
    ));
    marks.push(text("c-tb", (152.0, 185.0), Anchor::Middle, radius));
    marks.push(label((92.0, 22.0), Anchor::Middle, on));
    let notes = [
        (30.0, t("half turn of")),
        (50.0, t("preload")),
        (90.0, t("plunger")),
        (110.0, t("square to arm")),
    ];
    marks.extend(notes.map(|(y, words)| label((240.0, y), Anchor::Start, words)));
    marks
}

/// The pinion at twice its size in the section, the mandrel on the propshaft's axis under it.
fn depth(gap: &str) -> Vec<Mark> {
    let twice = |(x, y): Point| (2.0 * x + 150.0, 2.0 * y + 134.0);
    let (face, land) = (76.0, 84.0);
    let block = [
        (112.0, land),
        (129.0, land),
        (129.0, 96.0),
        (171.0, 96.0),
        (171.0, land),
        (188.0, land),
        (188.0, 116.0),
        (112.0, 116.0),
    ];
    let mut marks = vec![rect(CASE, 252.0, 96.0, 60.0, 76.0), rect(BORE, 252.0, 112.0, 60.0, 44.0)];
    marks.push(rect(STEEL, 132.0, -2.0, 36.0, 10.0));
    marks.extend(placed(pinion(GEAR), twice));
    marks.extend([
        rect(STEEL, 132.0, face, 36.0, 12.0),
        outline(RACE, &block),
        rect(STEEL, 8.0, 116.0, 300.0, 36.0),
        line("k-axis", &[(2.0, 134.0), (330.0, 134.0)]),
        rect(ROLLER, 30.0, 77.5, 99.0, 5.0),
        lines(LEAD, &[&[(184.0, face), (232.0, face)], &[(192.0, land), (232.0, land)]]),
        text("c-tb", (238.0, 86.0), Anchor::Start, gap),
        label((24.0, 68.0), Anchor::Start, t("feeler")),
        label((218.0, 26.0), Anchor::Start, t("shaft held on")),
        label((218.0, 46.0), Anchor::Start, t("its thrust face")),
        label((8.0, 176.0), Anchor::Start, t("mandrel, block square")),
    ]);
    marks
}

fn end_play() -> Vec<Mark> {
    let (axis, end, dial_at) = (104.0, 216.0, (306.0, 104.0));
    let bracket = [
        (104.0, 38.0),
        (104.0, 8.0),
        (312.0, 8.0),
        (312.0, 84.0),
        (300.0, 84.0),
        (300.0, 20.0),
        (118.0, 20.0),
        (118.0, 38.0),
    ];
    let mut marks = vec![
        rect(CASE, 8.0, 38.0, 112.0, 132.0),
        rect(BORE, 8.0, 66.0, 112.0, 76.0),
        rect(STEEL, 66.0, 66.0, 46.0, 76.0),
        rect(ROLLER, 72.0, 74.0, 34.0, 60.0),
        rect(STEEL, 8.0, axis - 20.0, end - 8.0, 40.0),
        line("k-axis", &[(2.0, axis), (370.0, axis)]),
        outline(RACE, &bracket),
        rect(STEEL, end, axis - 5.0, dial_at.0 - end, 10.0),
    ];
    marks.extend(dial(dial_at));
    marks.push(pointer((166.0, 64.0), (128.0, 64.0)));
    marks.push(pointer((170.0, 64.0), (208.0, 64.0)));
    marks.push(label((128.0, 42.0), Anchor::Start, t("push, pull")));
    marks.push(label((130.0, 150.0), Anchor::Start, t("plunger in line")));
    marks.push(label((130.0, 170.0), Anchor::Start, t("with the shaft")));
    marks.push(label((98.0, 26.0), Anchor::End, t("on case")));
    marks
}
