//! The band: limits as a box, readings as dots, the prediction as a diamond.

use words::{say, t};

use super::drawing::{Anchor, Drawing, Mark, circle, diamond, line, lines, outline, rect, text};
use super::scale::{Place, Scale, around_band, beside, held};

/// What a band shows; all values in one unit.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Band {
    /// What is read, as it is spoken: "Forward lash, mm".
    pub name: String,
    /// Low limit.
    pub low: f64,
    /// High limit, above the low one.
    pub high: f64,
    /// Width of the hatched zone inside each limit; 0 for none.
    pub near: f64,
    /// Readings in the order they were taken.
    pub readings: Vec<f64>,
    /// Their mean.
    pub mean: Option<f64>,
    /// What was predicted: the value and its ±.
    pub predicted: Option<(f64, f64)>,
    /// What was found before the work.
    pub found: Option<f64>,
    /// The reading lost its ground.
    pub stale: bool,
    /// The verdict in words, for the spoken sentence.
    pub verdict: String,
}

/// Height of the axis in a small band, and half the height of its box.
const SMALL: (f64, f64) = (17.0, 12.0);

impl Band {
    /// One line high: the mean, or the readings before there is a mean.
    pub fn small(&self, show: impl Fn(f64) -> String) -> Drawing {
        self.one_line(300.0, show)
    }

    /// The small band of a table, a little narrower.
    pub fn narrow(&self, show: impl Fn(f64) -> String) -> Drawing {
        self.one_line(260.0, show)
    }

    fn one_line(&self, width: f64, show: impl Fn(f64) -> String) -> Drawing {
        let (axis, half) = SMALL;
        let scale = self.scale(8.0, width - 8.0);
        let mut marks = vec![line("c-ax", &[(scale.start, axis), (scale.end, axis)])];
        marks.extend(self.limits(&scale, axis, half));
        if let Some(predicted) = self.predicted {
            marks.extend(prediction(&scale, predicted, axis, 7.0));
        }
        if let Some(found) = self.found {
            marks.push(dot("c-found", scale.place(found), axis, 7.5));
        }
        let ink = if self.stale { "c-dot--stale" } else { "c-dot" };
        let known = self.mean.map_or_else(|| self.readings.clone(), |mean| vec![mean]);
        marks.extend(known.iter().map(|value| dot(ink, scale.place(*value), axis, 8.0)));
        marks.extend(self.limit_texts(&scale, &show, "c-m", 47.0, None));
        Drawing { view: [0.0, 0.0, width, 52.0], width: None, label: self.spoken(&show), marks }
    }

    /// The band of a reading series: each reading, its mean and spread, and the prediction.
    pub fn large(&self, show: impl Fn(f64) -> String) -> Drawing {
        let scale = self.scale(14.0, 326.0);
        let axis = 66.0;
        let mut marks = vec![line("c-ax", &[(14.0, axis), (326.0, axis)])];
        marks.extend(self.limits(&scale, axis, 26.0));
        marks.extend(self.spread(&scale, axis));
        let mean = self.mean.map(|mean| scale.place(mean)).filter(|place| place.beyond == 0);
        marks.extend(mean.map(|place| line("c-mean", &[(place.at, 32.0), (place.at, 98.0)])));
        let ink = if self.stale { "c-dot--stale" } else { "c-dot" };
        for (index, value) in self.readings.iter().enumerate() {
            // Four heights, so that readings alike do not hide one another.
            let y = 57.0 + 6.0 * (index % 4) as f64;
            marks.push(dot(ink, scale.place(*value), y, 6.0));
        }
        let mut taken = None;
        if let Some((value, plus_minus)) = self.predicted {
            marks.extend(prediction(&scale, (value, plus_minus), 104.0, 6.0));
            taken = Some((
                scale.place(value - plus_minus).at.min(scale.place(value).at - 8.0) - 6.0,
                scale.place(value + plus_minus).at.max(scale.place(value).at + 8.0) + 6.0,
            ));
        }
        marks.extend(self.limit_texts(&scale, &show, "c-tb", 110.0, taken));
        if let Some(mean) = self.mean {
            let words = say!("mean {value}", value = show(mean));
            let half = half_width(&words);
            let x = held(scale.place(mean).at, half, 340.0 - half);
            marks.push(text("c-tb", (x, 24.0), Anchor::Middle, words));
        }
        Drawing { view: [0.0, 0.0, 340.0, 114.0], width: None, label: self.spoken(&show), marks }
    }

    fn scale(&self, start: f64, end: f64) -> Scale {
        let predicted =
            self.predicted.iter().flat_map(|(value, more)| [value - more, value + more]);
        let points = self.readings.iter().chain(&self.mean).chain(&self.found).copied();
        let (from, to) = around_band(self.low, self.high, points.chain(predicted));
        Scale { from, to, start, end }
    }

    fn limits(&self, scale: &Scale, axis: f64, half: f64) -> Vec<Mark> {
        let (low, high) = (scale.at(self.low), scale.at(self.high));
        let zone = if self.stale { "c-zone--stale" } else { "c-zone" };
        let mut marks = vec![rect(zone, low, axis - half, high - low, 2.0 * half)];
        // Two zones that meet fill the box between them, and no more.
        let near = (scale.at(self.low + self.near) - low).min((high - low) / 2.0);
        if near > 0.0 && !self.stale {
            marks.push(rect("c-near", low, axis - half, near, 2.0 * half));
            marks.push(rect("c-near", high - near, axis - half, near, 2.0 * half));
        }
        marks
    }

    fn limit_texts(
        &self,
        scale: &Scale,
        show: &impl Fn(f64) -> String,
        ink: &'static str,
        y: f64,
        taken: Option<(f64, f64)>,
    ) -> Vec<Mark> {
        let (low, high) = (show(self.low), show(self.high));
        let (half_low, half_high) = (half_width(&low), half_width(&high));
        let (mut left, mut right) = (scale.at(self.low), scale.at(self.high));
        let lacking = (left + half_low + 8.0) - (right - half_high);
        if lacking > 0.0 {
            (left, right) = (left - lacking / 2.0, right + lacking / 2.0);
        }
        left = beside(left, half_low, taken).max(half_low);
        right = beside(right, half_high, taken).min(scale.end + scale.start - half_high);
        vec![text(ink, (left, y), Anchor::Middle, low), text(ink, (right, y), Anchor::Middle, high)]
    }

    fn spread(&self, scale: &Scale, axis: f64) -> Option<Mark> {
        let least = self.readings.iter().copied().reduce(f64::min)?;
        let most = self.readings.iter().copied().reduce(f64::max)?;
        let (left, right) = (scale.place(least).at, scale.place(most).at);
        (self.readings.len() > 1).then(|| whisker("c-whisk", (left, right), axis, 9.0))
    }

    fn spoken(&self, show: &impl Fn(f64) -> String) -> String {
        let list =
            |values: &[f64]| values.iter().map(|it| show(*it)).collect::<Vec<_>>().join(", ");
        let mut parts = vec![say!("band {} to {}", show(self.low), show(self.high))];
        if let Some((value, more)) = self.predicted {
            parts.push(say!("predicted {} plus or minus {}", show(value), show(more)));
        }
        if !self.readings.is_empty() {
            parts.push(say!("read {values}", values = list(&self.readings)));
        }
        let mean = self.mean.filter(|_| self.readings.len() != 1);
        parts.extend(mean.map(|mean| say!("mean {value}", value = show(mean))));
        parts.extend(self.found.map(|found| say!("found {value}", value = show(found))));
        let scale = self.scale(0.0, 1.0);
        let values = self.readings.iter().chain(&mean).chain(&self.found).copied();
        let off: Vec<f64> = values.filter(|value| scale.place(*value).beyond != 0).collect();
        if !off.is_empty() {
            parts.push(say!("off the picture: {}", list(&off)));
        }
        if self.stale {
            parts.push(t("stale").to_owned());
        }
        if !self.verdict.is_empty() {
            parts.push(self.verdict.clone());
        }
        let words = parts.join("; ");
        if self.name.is_empty() { words } else { format!("{}: {words}", self.name) }
    }
}

/// A dot, or an arrow at the edge for a value that lies beyond it.
fn dot(ink: &'static str, place: Place, y: f64, radius: f64) -> Mark {
    if place.beyond == 0 {
        return circle(ink, (place.at, y), radius);
    }
    let way = f64::from(place.beyond);
    let (tip, back) = (place.at + way * 6.0, place.at - way * 8.0);
    outline(ink, &[(tip, y), (back, y - radius - 1.0), (back, y + radius + 1.0)])
}

fn whisker(ink: &'static str, (left, right): (f64, f64), y: f64, half: f64) -> Mark {
    let end = |x: f64| [(x, y - half), (x, y + half)];
    lines(ink, &[&[(left, y), (right, y)], &end(left), &end(right)])
}

fn prediction(scale: &Scale, (value, more): (f64, f64), y: f64, half: f64) -> Vec<Mark> {
    let ends = (scale.place(value - more).at, scale.place(value + more).at);
    let place = scale.place(value);
    let head = match place.beyond {
        0 => diamond("c-pp", (place.at, y), half + 2.0),
        _ => dot("c-pp", place, y, half),
    };
    vec![whisker("c-pred c-pred--firm", ends, y, half), head]
}

/// Half of what a text of the pictures' size is wide at most.
fn half_width(words: &str) -> f64 {
    words.chars().count() as f64 * 6.0 + 2.0
}

#[cfg(test)]
mod tests {

    use super::*;
    use crate::drawing::Shape;

    fn show(value: f64) -> String {
        format!("{value:.2}")
    }

    /// Lash 0.273 to 0.477 mm at a 30 mm arm: the invented unit of the worked example.
    fn lash(readings: &[f64]) -> Band {
        Band {
            name: "Forward lash, mm".to_owned(),
            low: 0.273,
            high: 0.477,
            near: 0.03,
            readings: readings.to_vec(),
            ..Band::default()
        }
    }

    fn marks(drawing: &Drawing, ink: &str) -> usize {
        drawing.marks.iter().filter(|mark| mark.ink == ink).count()
    }

    #[test]
    fn the_sentence_has_every_number() {
        let band =
            Band { mean: Some(0.385), predicted: Some((0.376, 0.03)), ..lash(&[0.38, 0.39]) };
        assert_eq!(
            band.large(show).label,
            "Forward lash, mm: band 0.27 to 0.48; predicted 0.38 plus or minus 0.03; read 0.38, 0.39; mean 0.39"
        );
    }

    #[test]
    fn a_value_far_away_sits_at_the_edge_and_is_said() {
        let drawing = lash(&[9.6]).small(show);
        assert!(drawing.label.ends_with("read 9.60; off the picture: 9.60"), "{}", drawing.label);
        let dot = drawing.marks.iter().find(|mark| mark.ink == "c-dot").expect("a mark for it");
        let Shape::Outline(points) = &dot.shape else { panic!("an arrow, not a dot: {dot:?}") };
        assert!(points.iter().all(|(x, _)| (280.0..300.0).contains(x)));
    }

    #[test]
    fn a_stale_reading_is_never_drawn_as_a_good_one() {
        let drawing = Band { stale: true, mean: Some(0.38), ..lash(&[0.38, 0.38]) }.large(show);
        let solid = ["c-zone", "c-near", "c-dot"].map(|ink| marks(&drawing, ink));
        assert_eq!(solid, [0, 0, 0]);
        assert_eq!(marks(&drawing, "c-dot--stale"), 2);
        assert!(drawing.label.ends_with("; stale"));
    }

    #[test]
    fn zones_that_meet_fill_the_band_once() {
        let drawing = Band { near: 0.5, ..lash(&[]) }.small(show);
        let edges: Vec<f64> = drawing
            .marks
            .iter()
            .filter(|mark| mark.ink == "c-near" || mark.ink == "c-zone")
            .flat_map(|mark| match &mark.shape {
                Shape::Outline(points) => points.iter().map(|(x, _)| *x).collect(),
                _ => Vec::new(),
            })
            .collect();
        let (zone, near) = edges.split_at(4);
        let most = |values: &[f64]| values.iter().copied().fold(f64::MIN, f64::max);
        let least = |values: &[f64]| values.iter().copied().fold(f64::MAX, f64::min);
        assert_eq!((least(near), most(near)), (least(zone), most(zone)));
    }
}
