//! Numbers that look random, the same for the same seed on every machine.

use rand_distr::uniform::SampleUniform;
use rand_distr::{Distribution, StandardNormal, Uniform};
use rand_pcg::Pcg32;

/// A small generator (PCG XSH RR 64/32).
#[derive(Clone, Debug)]
pub struct Dice(Pcg32);

impl Dice {
    /// The generator of one stream of a seed; streams have nothing in common.
    pub fn new(seed: u64, stream: u64) -> Dice {
        Dice(Pcg32::new(seed, stream))
    }

    /// A number from `low` up to, not including, `high`; `low` where there is none between.
    pub fn between<T: SampleUniform + Copy>(&mut self, low: T, high: T) -> T {
        Uniform::new(low, high).map_or(low, |range| range.sample(&mut self.0))
    }

    /// One of some things; `None` of nothing.
    pub fn pick<T: Copy>(&mut self, from: &[T]) -> Option<T> {
        let place: usize = self.between(0, from.len());
        from.get(place).copied()
    }

    /// A number with mean 0 and this standard deviation, normally distributed.
    pub fn normal(&mut self, sigma: f64) -> f64 {
        let unit: f64 = StandardNormal.sample(&mut self.0);
        sigma * unit
    }
}
