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

/// A value held between two others. (`f64::clamp` would bring all printing of floating point along,
/// for its panic.)
pub fn held(value: f64, least: f64, most: f64) -> f64 {
    value.max(least).min(most)
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

#[cfg(test)]
mod tests {

    use super::*;

    #[test]
    fn a_value_outside_is_held_at_the_edge() {
        let up = Scale { from: 0.0, to: 2.0, start: 100.0, end: 20.0 };
        assert_eq!(up.at(0.5), 80.0);
        assert_eq!(up.place(1.0), Place { at: 60.0, beyond: 0 });
        assert_eq!(up.place(2.5), Place { at: 20.0, beyond: 1 });
        assert_eq!(up.place(-0.1), Place { at: 100.0, beyond: -1 });
    }

    #[test]
    fn a_scale_without_span_has_a_middle() {
        assert_eq!(Scale { from: 1.0, to: 1.0, start: 0.0, end: 10.0 }.at(1.0), 5.0);
    }

    #[test]
    fn a_band_stands_in_the_middle_and_its_picture_stops_at_five_widths() {
        let around = |values: &[f64]| {
            let (from, to) = around_band(1.0, 2.0, values.iter().copied());
            format!("{from:.2} to {to:.2}")
        };
        assert_eq!(around(&[]), "0.45 to 2.55");
        assert_eq!(around(&[2.5]), "0.45 to 2.75");
        assert_eq!(around(&[-40.0, 40.0]), "-1.00 to 4.00");
    }

    #[test]
    fn values_get_a_margin() {
        assert_eq!(around([2.0, 1.0]), (0.9, 2.1));
        assert_eq!(around([2.0]), (1.8, 2.2));
        assert_eq!(around([]), (0.0, 0.0));
    }

    #[test]
    fn ticks_are_round() {
        let written = |from, to| {
            ticks(from, to, 4.0).into_iter().map(|tick| format!("{tick:.3}")).collect::<Vec<_>>()
        };
        assert_eq!(written(0.514, 0.714), ["0.550", "0.600", "0.650", "0.700"]);
        assert_eq!(written(0.0, 4.0), ["0.000", "1.000", "2.000", "3.000", "4.000"]);
        assert_eq!(written(-3.0, 95.0), ["0.000", "50.000"]);
        assert!(written(1.0, 1.0).is_empty());
    }

    #[test]
    fn a_text_steps_aside_the_shorter_way() {
        assert_eq!(beside(50.0, 10.0, None), 50.0);
        assert_eq!(beside(50.0, 10.0, Some((70.0, 90.0))), 50.0);
        assert_eq!(beside(50.0, 10.0, Some((55.0, 90.0))), 45.0);
        assert_eq!(beside(50.0, 10.0, Some((20.0, 45.0))), 55.0);
    }
}
