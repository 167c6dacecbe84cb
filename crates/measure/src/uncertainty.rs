//! Standard uncertainty from named contributions.

/// Root-sum-of-squares of named standard uncertainties, all in one unit (JCGM 100:2008, 5.1.2).
///
/// ```
/// use measure::Uncertainty;
/// // Four readings with s = 0.008 mm on a gauge that steps 0.01 mm.
/// let lash = Uncertainty::default().repeatability(0.008, 4).resolution(0.01);
/// assert!((lash.standard() - 0.004932883).abs() < 1e-9);
/// assert!((lash.expanded() - 0.009865766).abs() < 1e-9);
/// ```
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Uncertainty {
    parts: Vec<(String, f64)>,
}

impl Uncertainty {
    /// Adds a standard uncertainty.
    #[must_use]
    pub fn with(mut self, name: &str, standard: f64) -> Self {
        self.parts.push((name.to_owned(), standard));
        self
    }

    /// Adds the half width of a rectangular spread: divided by √3 (JCGM 100:2008, 4.3.7).
    #[must_use]
    pub fn rectangular(self, name: &str, half_width: f64) -> Self {
        self.with(name, half_width / 3f64.sqrt())
    }

    /// Adds a reading's resolution: step/√12, half a step either way (JCGM 100:2008, F.2.2.1).
    #[must_use]
    pub fn resolution(self, step: f64) -> Self {
        self.rectangular("resolution", step / 2.0)
    }

    /// Adds the scatter of a mean of `n` readings: s/√n (JCGM 100:2008, 4.2.3).
    #[must_use]
    pub fn repeatability(self, deviation: f64, n: usize) -> Self {
        self.with("repeatability", deviation / (n.max(1) as f64).sqrt())
    }

    /// Combined standard uncertainty u, one sigma; zero without parts.
    pub fn standard(&self) -> f64 {
        self.parts.iter().map(|(_, part)| part * part).sum::<f64>().sqrt()
    }

    /// What a person is shown after "±": 2u (coverage factor k = 2).
    pub fn expanded(&self) -> f64 {
        2.0 * self.standard()
    }

    /// What it is made of, to explain it.
    pub fn parts(&self) -> &[(String, f64)] {
        &self.parts
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn parts_are_named_and_kept_in_order() {
        let lash = Uncertainty::default()
            .repeatability(0.006, 4)
            .resolution(0.01)
            .rectangular("arm radius", 0.003)
            .with("re-seating", 0.01);
        let names: Vec<_> = lash.parts().iter().map(|(name, _)| name.as_str()).collect();
        assert_eq!(names, ["repeatability", "resolution", "arm radius", "re-seating"]);
        let squares = 0.003f64.powi(2) + 0.01f64.powi(2) / 12.0 + 0.003f64.powi(2) / 3.0 + 1e-4;
        assert!((lash.standard() - squares.sqrt()).abs() < 1e-15);
        assert!((lash.expanded() - 2.0 * squares.sqrt()).abs() < 1e-15);
    }

    #[test]
    fn without_parts_it_is_zero() {
        assert_eq!(Uncertainty::default().standard(), 0.0);
    }
}
