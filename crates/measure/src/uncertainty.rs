//! Standard uncertainty from named contributions.

/// Root-sum-of-squares of named standard uncertainties, all in one unit.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Uncertainty { parts: Vec<(String, f64)> }

impl Uncertainty {
    /// Adds a standard uncertainty.
    pub fn with(self, _name: &str, _standard: f64) -> Self { todo!() }
    /// Adds the half width of a rectangular spread: divided by √3.
    pub fn rectangular(self, _name: &str, _half_width: f64) -> Self { todo!() }
    /// Adds a reading's resolution: step/√12.
    pub fn resolution(self, _step: f64) -> Self { todo!() }
    /// Adds s/√n.
    pub fn repeatability(self, _deviation: f64, _n: usize) -> Self { todo!() }
    /// Combined standard uncertainty.
    pub fn standard(&self) -> f64 { todo!() }
    /// What it is made of, to explain it.
    pub fn parts(&self) -> &[(String, f64)] { &self.parts }
}
