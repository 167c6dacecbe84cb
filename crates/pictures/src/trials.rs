//! The trials at one position: pack across, lash up, the learnt slope, and the next pack.

use words::{say, t};

use super::drawing::{Anchor, Drawing, Mark, Point, circle, diamond, line, lines, rect, text};
use super::scale::{Scale, around, around_band, held, ticks};

/// What the picture of the trials shows; packs in one unit, readings in one unit.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Trials {
    /// What lies across: "B2 pack, mm".
    pub across: String,
    /// What stands up: "lash, mm".
    pub up: String,
    /// Low limit of the reading.
    pub low: f64,
    /// High limit of the reading, above the low one.
    pub high: f64,
    /// Pack and mean reading of each trial, in the order they were built.
    pub built: Vec<Trial>,
    /// The learnt line: a point of it, and its slope.
    pub learnt: Option<(Point, f64)>,
    /// The next pack, the reading predicted for it and its ±.
    pub next: Option<(f64, f64, f64)>,
}

/// One dry build.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Trial {
    /// Thickness of the pack.
    pub pack: f64,
    /// Mean of the readings.
    pub reading: f64,
    /// It does not count any more: parts changed, or it was left out with a reason.
    pub left_out: bool,
}

const TOP: f64 = 14.0;
const FOOT: f64 = 190.0;
const RIGHT: f64 = 330.0;

impl Trials {
    /// The drawing; the two functions write a pack and a reading.
    pub fn draw(&self, pack: impl Fn(f64) -> String, reading: impl Fn(f64) -> String) -> Drawing {
        let limits = [reading(self.low), reading(self.high)];
        let longest = limits.iter().map(|words| words.chars().count()).max().unwrap_or_default();
        let left = 9.0 * longest as f64 + 12.0;
        let (x, y) = self.scales(left);
        let (low, high) = (y.at(self.low), y.at(self.high));
        let [low_words, high_words] = limits;
        let mut marks = vec![
            rect("c-zone", left, high, RIGHT - 2.0 - left, low - high),
            line("c-ax", &[(left, TOP), (left, FOOT), (RIGHT, FOOT)]),
            text("c-t", (left - 6.0, low + 5.0), Anchor::End, low_words),
            text("c-t", (left - 6.0, high + 5.0), Anchor::End, high_words),
        ];
        for tick in ticks(x.from, x.to, 4.0) {
            let at = x.at(tick);
            marks.push(line("c-ax", &[(at, FOOT), (at, FOOT + 6.0)]));
            marks.push(text("c-t", (at.min(316.0), FOOT + 22.0), Anchor::Middle, pack(tick)));
        }
        marks.extend(self.learnt.map(|it| learnt(&x, &y, it)));
        for (index, trial) in self.built.iter().enumerate() {
            marks.extend(built(&x, &y, index, trial));
        }
        marks.extend(self.next.iter().flat_map(|next| self.coming(&x, &y, *next)));
        marks.push(text("c-t", (RIGHT, FOOT - 6.0), Anchor::End, &*self.across));
        marks.push(text("c-t", (left + 6.0, TOP + 1.0), Anchor::Start, &*self.up));
        let label = self.spoken(&pack, &reading);
        Drawing { view: [0.0, 0.0, 340.0, 230.0], width: None, label, marks }
    }

    fn scales(&self, left: f64) -> (Scale, Scale) {
        let packs = self.built.iter().map(|trial| trial.pack);
        let (from, to) = around(packs.chain(self.next.map(|(pack, ..)| pack)));
        let x = Scale { from, to, start: left + 14.0, end: RIGHT - 14.0 };
        let read = self.built.iter().map(|trial| trial.reading);
        let predicted = self.next.iter().flat_map(|(_, mean, more)| [mean - more, mean + more]);
        let (from, to) = around_band(self.low, self.high, read.chain(predicted));
        (x, Scale { from, to, start: FOOT - 8.0, end: TOP + 12.0 })
    }

    fn coming(&self, x: &Scale, y: &Scale, (pack, mean, more): (f64, f64, f64)) -> Vec<Mark> {
        let (at, middle) = (x.at(pack), y.place(mean).at);
        let (top, bottom) = (y.place(mean + more).at, y.place(mean - more).at);
        let cap = |height: f64| [(at - 8.0, height), (at + 8.0, height)];
        let whisker: [&[Point]; 3] = [&[(at, top), (at, bottom)], &cap(top), &cap(bottom)];
        let number = self.built.len() + 1;
        let crown = top.min(middle - 10.0);
        let name = if crown > 40.0 { crown - 7.0 } else { bottom.max(middle + 10.0) + 20.0 };
        vec![
            lines("c-pred c-pred--firm", &whisker),
            diamond("c-pp", (at, middle), 10.0),
            text("c-tb", (at.min(RIGHT - 26.0), name), Anchor::Middle, say!("{number} next")),
        ]
    }

    fn spoken(&self, pack: &impl Fn(f64) -> String, reading: &impl Fn(f64) -> String) -> String {
        let mut parts: Vec<String> = self
            .built
            .iter()
            .map(|trial| {
                let (pack, read) = (pack(trial.pack), reading(trial.reading));
                match trial.left_out {
                    true => say!("pack {pack} read {read}, left out"),
                    false => say!("pack {pack} read {read}"),
                }
            })
            .collect();
        parts.extend(self.next.map(|(next, mean, more)| {
            let (next, mean, more) = (pack(next), reading(mean), reading(more));
            say!("next {next}, predicted {mean} plus or minus {more}")
        }));
        if parts.is_empty() {
            parts.push(t("none yet").to_owned());
        }
        let (low, high) = (reading(self.low), reading(self.high));
        let told = parts.join("; ");
        say!("Trials, {} across, {} up: {told}; band {low} to {high}", self.across, self.up)
    }
}

fn built(x: &Scale, y: &Scale, index: usize, trial: &Trial) -> [Mark; 2] {
    let at = (x.at(trial.pack), y.place(trial.reading).at);
    let ink = if trial.left_out { "c-dot--stale" } else { "c-dot" };
    let (name, anchor) = match at.0 {
        x if x > 290.0 => (x - 13.0, Anchor::End),
        x => (x + 13.0, Anchor::Start),
    };
    [circle(ink, at, 8.0), text("c-tb", (name, at.1 - 6.0), anchor, (index + 1).to_string())]
}

/// The learnt line, cut off where it leaves the picture.
fn learnt(x: &Scale, y: &Scale, ((pack, reading), slope): (Point, f64)) -> Mark {
    let height = |value: f64| y.at(reading + slope * (value - pack));
    let (left, right) = ((x.start, height(x.from)), (x.end, height(x.to)));
    let cut = |(at, height): Point, (far, other): Point| {
        let at_edge = held(height, y.end, y.start);
        let rise = other - height;
        if rise == 0.0 {
            (at, at_edge)
        } else {
            (at + (far - at) * (at_edge - height) / rise, at_edge)
        }
    };
    line("c-pred", &[cut(left, right), cut(right, left)])
}
