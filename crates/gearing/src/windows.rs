//! What keeps the search small: the least probability each check may have, and how far a pack can
//! change for it.

use crate::problem::Wanted;
use crate::reading_model::ReadingModel;
use crate::search::{Search, Target};

impl Search<'_> {
    /// Lets go of candidates that cannot be part of packs with this probability.
    pub fn raise_floors(&mut self, probability: f64) {
        let wanted = Wanted { probability, in_band: self.in_band, free: 0 };
        set_floors(&mut self.targets, wanted, &self.spans);
        self.judged.clear();
    }
}

/// The least probability each check may have, given the most the others can have, and how far
/// outside its band that lets its mean lie.
pub(crate) fn set_floors(targets: &mut [Target], wanted: Wanted, spans: &[[f64; 2]]) {
    let cap = |target: &Target| {
        let half = (target.limits.high - target.limits.low) / 2.0 / target.model.next.sqrt();
        measure::normal::interval(-half, half)
    };
    let caps: Vec<f64> = targets.iter().map(cap).collect();
    for (index, target) in targets.iter_mut().enumerate() {
        let others = caps.iter().enumerate().filter(|(other, _)| *other != index);
        let others: f64 = others.map(|(_, cap)| cap).product();
        // A hair lower, so that rounding rules nothing out.
        target.floor = wanted.probability / others * (1.0 - 1e-9);
        target.reach = if target.floor > 0.5 {
            // Inside by z standard deviations at least; none is narrower than the next reading's.
            -quantile(target.floor) * target.model.next.sqrt()
        } else if wanted.in_band {
            0.0
        } else {
            // Φ(−z) ≤ ½ exp(−z²/2): a mean z standard deviations outside cannot do better.
            let z = (-2.0 * (2.0 * target.floor).ln()).sqrt();
            z * widest_sigma(target.model, spans)
        };
    }
}

/// A standard normal value that is not above the one with this probability below it.
fn quantile(probability: f64) -> f64 {
    let (mut low, mut high) = (0.0, 10.0);
    for _ in 0..40 {
        let middle = (low + high) / 2.0;
        if measure::normal::cdf(middle) < probability {
            low = middle;
        } else {
            high = middle;
        }
    }
    low
}

/// A bound on the standard deviation of a prediction over all changes.
fn widest_sigma(model: &ReadingModel, spans: &[[f64; 2]]) -> f64 {
    let widest = |position: usize| {
        let span = spans.get(position).copied().unwrap_or([0.0; 2]);
        span[0].abs().max(span[1].abs())
    };
    let mut learnt = model.covariance.get(0, 0).sqrt();
    let mut packs = 0.0;
    for slope in &model.slopes {
        let position = slope.formula.position;
        let mut amount = widest(position);
        if let Some(trapped) = &model.trapped {
            // Travel of a trapped gear: its own pack and half of every change of the preload.
            let setting = trapped.effects.iter().map(|effect| widest(effect.position));
            amount += trapped.level.abs() + setting.sum::<f64>();
        }
        learnt += model.slope_sigma(position) * amount;
        packs += 2.0 * (slope.mean * 0.002).powi(2);
    }
    (learnt * learnt + packs + model.next).sqrt()
}

/// Narrows the spans to what the checks leave possible.
pub(crate) fn narrow(targets: &[Target], spans: &mut [[f64; 2]]) {
    for _ in 0..3 {
        for target in targets.iter().filter(|target| target.model.trapped.is_none()) {
            let model = target.model;
            let moved = |position: usize, slope: f64, spans: &[[f64; 2]]| {
                let [a, b] = spans.get(position).copied().unwrap_or([0.0; 2]).map(|x| x * slope);
                [a.min(b), a.max(b)]
            };
            for slope in model.slopes.iter().filter(|slope| slope.mean != 0.0) {
                let position = slope.formula.position;
                let others = model.slopes.iter().filter(|o| o.formula.position != position);
                let [least, most] = others.fold([model.level; 2], |[least, most], other| {
                    let [a, b] = moved(other.formula.position, other.mean, spans);
                    [least + a, most + b]
                });
                let ends = [
                    target.limits.low - target.reach - most,
                    target.limits.high + target.reach - least,
                ]
                .map(|end| end / slope.mean);
                if let Some([low, high]) = spans.get_mut(position) {
                    *low = low.max(ends[0].min(ends[1]) - 1e-9);
                    *high = high.min(ends[0].max(ends[1]) + 1e-9);
                }
            }
        }
    }
}
