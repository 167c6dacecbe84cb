//! Pressure against time: as read, corrected, and the limit.

use words::{say, t};

use crate::drawing::{Anchor, Drawing, Mark, Point, line, rect, text};
use crate::scale::{Scale, held};

/// What the picture shows; times in minutes, pressures all in one unit.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Curve {
    /// As read.
    pub raw: Vec<Point>,
    /// Corrected for temperature and barometer.
    pub corrected: Vec<Point>,
    /// Where the loss allowed ends.
    pub limit: f64,
    /// How long it is held.
    pub minutes: f64,
    /// The unit of the pressures.
    pub unit: &'static str,
    /// What was done meanwhile, and when: "Prop" at 3.2 min.
    pub flags: Vec<(f64, &'static str)>,
}

const LEFT: f64 = 56.0;
const RIGHT: f64 = 328.0;
const TOP: f64 = 24.0;
const FOOT: f64 = 176.0;
/// Height and width of a flag.
const FLAG: (f64, f64) = (24.0, 58.0);

impl Curve {
    /// The drawing; `number` writes a number.
    pub fn draw(&self, number: impl Fn(f64) -> String) -> Drawing {
        let every = || self.raw.iter().chain(&self.corrected).map(|point| point.1);
        let high = every().fold(self.limit, f64::max);
        let low = every().fold(self.limit, f64::min);
        let room = 0.15 * (high - low).max(1e-6);
        let y = Scale { from: low - room, to: high + room, start: FOOT, end: TOP };
        let times = self.raw.last().map(|last| last.0).into_iter();
        let longest =
            times.chain(self.flags.iter().map(|flag| flag.0)).fold(self.minutes, f64::max);
        let x = Scale { from: 0.0, to: longest, start: LEFT, end: RIGHT };
        let limit = held(y.at(self.limit), TOP, FOOT);
        let place = |points: &[Point]| -> Vec<Point> {
            points.iter().map(|(at, value)| (x.at(*at), y.at(*value))).collect()
        };
        let mut marks = vec![
            rect("c-lost", LEFT, limit, RIGHT - LEFT, FOOT - limit),
            line("c-ax", &[(LEFT, TOP - 12.0), (LEFT, FOOT), (RIGHT, FOOT)]),
            line("c-lim", &[(LEFT, limit), (RIGHT, limit)]),
            text("c-t", (LEFT - 6.0, limit + 5.0), Anchor::End, number(self.limit)),
            // Beside the axis no flag hangs over it.
            text("c-t", (LEFT - 6.0, limit + 22.0), Anchor::End, t("limit")),
            text("c-t", (LEFT + 6.0, TOP - 8.0), Anchor::Start, self.unit),
            text("c-t", (LEFT, FOOT + 20.0), Anchor::Middle, "0"),
            text("c-t", (RIGHT - 10.0, FOOT + 20.0), Anchor::Middle, number(longest)),
            text("c-t", (0.5 * (LEFT + RIGHT), FOOT + 20.0), Anchor::Middle, "min"),
        ];
        if let Some(first) = self.raw.first() {
            let at = (LEFT - 6.0, y.at(first.1) + 5.0);
            marks.push(text("c-t", at, Anchor::End, number(first.1)));
        }
        marks.push(line("c-raw", &place(&self.raw)));
        marks.push(line("c-cor", &place(&self.corrected)));
        if let [_, .., (raw_x, raw_y)] = place(&self.raw).as_slice() {
            marks.push(text("c-t", (*raw_x, raw_y + 20.0), Anchor::End, t("raw")));
        }
        if let [_, .., (over_x, over_y)] = place(&self.corrected).as_slice() {
            let x = 0.5 * (LEFT + over_x);
            marks.push(text("c-tb", (x, over_y - 14.0), Anchor::Start, t("corrected")));
        }
        let mut hung: Vec<f64> = Vec::new();
        for (at, name) in &self.flags {
            let (pole, top) = (x.at(*at), y.at(height(&self.corrected, *at)));
            let left = if pole + FLAG.1 > RIGHT { pole - FLAG.1 } else { pole };
            let row = hung.iter().filter(|other| (left - **other).abs() < FLAG.1).count();
            hung.push(left);
            marks.extend(flag(pole, left, top, row, name));
        }
        let label = self.spoken(&number);
        Drawing { view: [0.0, 0.0, 340.0, 210.0], width: None, label, marks }
    }

    fn spoken(&self, number: &impl Fn(f64) -> String) -> String {
        let last =
            |points: &[Point]| points.last().map(|point| number(point.1)).unwrap_or_default();
        let (raw, corrected) = (last(&self.raw), last(&self.corrected));
        let (limit, unit) = (number(self.limit), self.unit);
        let flags: Vec<String> =
            self.flags.iter().map(|(at, name)| say!(" {name} at {} min.", number(*at))).collect();
        say!(
            "Pressure against time. Raw {raw}, corrected {corrected}, limit {limit} {unit}.{}",
            flags.concat()
        )
    }
}

/// Height of the curve at a time, straight between its points; that of its nearest end outside them.
fn height(curve: &[Point], at: f64) -> f64 {
    let after = curve.iter().position(|point| point.0 >= at);
    match (
        after.and_then(|after| curve.get(after)),
        after.and_then(|it| curve.get(it.checked_sub(1)?)),
    ) {
        (Some(next), Some(last)) => {
            last.1 + (next.1 - last.1) * (at - last.0) / (next.0 - last.0).max(1e-9)
        }
        (Some(first), None) => first.1,
        (None, _) => curve.last().map_or(0.0, |last| last.1),
    }
}

/// A flag on its pole, as many rows up as others hang in its way; near the end it hangs on the left.
fn flag(x: f64, left: f64, top: f64, row: usize, name: &'static str) -> [Mark; 3] {
    let (high, wide) = FLAG;
    let foot = FOOT - 2.0 - high * row as f64;
    [
        line("c-pole", &[(x, FOOT), (x, top.min(foot - high))]),
        rect("c-flag", left, foot - high, wide, high),
        text("c-flagged", (left + 0.5 * wide, foot - 6.0), Anchor::Middle, name),
    ]
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drawing::Shape;

    #[test]
    fn it_speaks_of_the_last_line() {
        let raw = vec![(0.0, 84.0), (10.0, 79.8)];
        let corrected = vec![(0.0, 84.0), (10.0, 81.9)];
        let flags = Vec::new();
        let curve = Curve { raw, corrected, limit: 77.0, minutes: 10.0, unit: "kPa", flags };
        let drawing = curve.draw(|value| (value as i64).to_string());
        assert_eq!(drawing.label, "Pressure against time. Raw 79, corrected 81, limit 77 kPa.");
    }

    #[test]
    fn what_was_done_stands_on_the_curve() {
        let corrected = vec![(0.0, 84.0), (4.0, 82.0), (10.0, 82.0)];
        assert_eq!(
            [-1.0, 2.0, 4.0, 7.0, 12.0].map(|at| height(&corrected, at)),
            [84.0, 83.0, 82.0, 82.0, 82.0]
        );
        let flags = vec![(3.0, "Prop"), (12.0, "Rod")];
        let raw = corrected.clone();
        let curve = Curve { raw, corrected, limit: 77.0, minutes: 10.0, unit: "kPa", flags };
        let drawing = curve.draw(|value| (value as i64).to_string());
        assert!(drawing.label.ends_with(" Prop at 3 min. Rod at 12 min."), "{}", drawing.label);
        let flags = drawing.marks.iter().filter(|mark| mark.ink == "c-flag");
        assert_eq!(flags.count(), 2);
    }

    #[test]
    fn no_flag_covers_the_word_limit() {
        let flags = vec![(0.0, "Prop"), (0.0, "Drive"), (0.0, "Rod")];
        let raw = vec![(0.0, 84.0), (10.0, 82.0)];
        let curve =
            Curve { corrected: raw.clone(), raw, limit: 77.0, minutes: 10.0, unit: "kPa", flags };
        let drawing = curve.draw(|value| (value as i64).to_string());
        let word = drawing.marks.iter().find_map(|mark| match &mark.shape {
            Shape::Text((end, _), Anchor::End, words) if words == "limit" => Some(*end),
            _ => None,
        });
        let end = word.unwrap();
        let flags = drawing.marks.iter().filter(|mark| mark.ink == "c-flag");
        let corners = flags.filter_map(|mark| match &mark.shape {
            Shape::Outline(corners) => Some(corners),
            _ => None,
        });
        let corners: Vec<f64> = corners.flatten().map(|corner| corner.0).collect();
        assert_eq!(corners.len(), 12, "three flags");
        assert!(corners.iter().all(|left| *left > end), "{corners:?} beside {end}");
    }
}
