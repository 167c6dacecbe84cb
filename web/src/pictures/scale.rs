//! From values to places on a picture.

/// The widest a picture may stretch, as a multiple of the band: beyond it a value sits at the edge.
const STRETCH: f64 = 5.0;

/// A straight scale: the value `from` lies at `start`, the value `to` at `end`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Scale {
    /// Value at the start.
    pub from: f64,
    /// Value at the end.
    pub to: f64,
    /// Place of the start.
    pub start: f64,
    /// Place of the end; less than the start where values grow upward.
    pub end: f64,
}

/// Where a value came to lie.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Place {
    /// On the scale, never outside it.
    pub at: f64,
    /// −1 the value is below the scale, +1 above it, 0 on it.
    pub beyond: i8,
}

impl Scale {
    /// Place of a value, which may lie outside the scale.
    pub fn at(&self, value: f64) -> f64 {
        let span = self.to - self.from;
        let part = if span == 0.0 { 0.5 } else { (value - self.from) / span };
        self.start + part * (self.end - self.start)
    }

    /// Place of a value, held on the scale.
    pub fn place(&self, value: f64) -> Place {
        let (held, beyond) = if value < self.from {
            (self.from, -1)
        } else if value > self.to {
            (self.to, 1)
        } else {
            (value, 0)
        };
        Place { at: self.at(held), beyond }
    }
}

/// The values a band's picture runs over: the band in the middle, wide enough for every value,
/// never more than five bands wide.
pub fn around_band(low: f64, high: f64, values: impl IntoIterator<Item = f64>) -> (f64, f64) {
    let width = high - low;
    let rest = 0.55 * width;
    let edge = 0.25 * width;
    let (mut from, mut to) = (low - rest, high + rest);
    for value in values {
        from = from.min(value - edge);
        to = to.max(value + edge);
    }
    let most = (STRETCH - 1.0) / 2.0 * width;
    (from.max(low - most), to.min(high + most))
}

/// The values a plot runs over: all of them, and a margin of a tenth on each side;
/// nothing where there is no value.
pub fn around(values: impl IntoIterator<Item = f64>) -> (f64, f64) {
    let (mut from, mut to) = (f64::INFINITY, f64::NEG_INFINITY);
    for value in values {
        from = from.min(value);
        to = to.max(value);
    }
    if from > to {
        return (0.0, 0.0);
    }
    // One value alone has no span: a tenth of itself is shown on each side.
    let margin = if to > from { (to - from) / 10.0 } else { (from.abs() * 0.1).max(0.01) };
    (from - margin, to + margin)
}

/// Round values from `from` to `to`: steps of 1, 2 or 5 times a power of ten, about `count` of them.
pub fn ticks(from: f64, to: f64, count: f64) -> Vec<f64> {
    let span = to - from;
    if span <= 0.0 || !span.is_finite() {
        return Vec::new();
    }
    let mut step = 1.0;
    while step * count > span {
        step /= 10.0;
    }
    while step * count * 10.0 < span {
        step *= 10.0;
    }
    let step = [1.0, 2.0, 5.0, 10.0]
        .into_iter()
        .map(|factor| factor * step)
        .find(|step| step * count >= span)
        .unwrap_or(step * 10.0);
    let first = (from / step).ceil() as i64;
    let last = (to / step).floor() as i64;
    (first..=last).map(|index| index as f64 * step).collect()
}

/// Puts something `half` wide to each side as near `wanted` as it can without touching `taken`.
pub fn beside(wanted: f64, half: f64, taken: Option<(f64, f64)>) -> f64 {
    match taken {
        Some((left, right)) if wanted + half > left && wanted - half < right => {
            let (before, after) = (left - half, right + half);
            if wanted - before < after - wanted { before } else { after }
        }
        _ => wanted,
    }
}
