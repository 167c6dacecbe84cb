//! A formula's value, its uncertainty, and how it explains itself.

use measure::{Amount, Decimal, Uncertainty, Unit, real};

use crate::Refusal;

/// Decimals kept of a result: finer than any gauge, coarse enough to hide the last bits of a float.
const PLACES: u32 = 12;

/// One input of a formula, in the unit the formula uses.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Given {
    /// What it is: `wrench length`.
    pub name: &'static str,
    /// The number.
    pub value: Decimal,
    /// The unit's symbol; empty for a plain number.
    pub unit: &'static str,
    /// Standard uncertainty, same unit.
    pub standard: f64,
}

/// A result.
#[derive(Clone, Debug, PartialEq)]
pub struct Figure {
    /// The number.
    pub value: Decimal,
    /// The unit's symbol; empty for a plain number.
    pub unit: &'static str,
    /// Standard uncertainty and what it is made of, same unit.
    pub uncertainty: Uncertainty,
}

/// Where a formula or a figure comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Basis {
    /// A published source, named.
    Published(&'static str),
    /// Worked out from plain geometry or arithmetic, in the words given.
    Derived(&'static str),
    /// What the trade does. It has no source and never becomes a verdict.
    CommonPractice,
}

/// How a result came about, as plain data.
#[derive(Clone, Debug, PartialEq)]
pub struct Explanation {
    /// The formula, in the names of the inputs.
    pub formula: &'static str,
    /// What went in.
    pub given: Vec<Given>,
    /// Where the formula comes from.
    pub basis: Basis,
}

impl Given {
    /// A plain number, such as a friction coefficient.
    pub(crate) fn plain(name: &'static str, value: Decimal, standard: f64) -> Given {
        Given { name, value, unit: "", standard }
    }

    pub(crate) fn real(&self) -> f64 {
        real::from_decimal(self.value)
    }
}

impl Figure {
    /// The figure as an amount, where its unit is one a person may type.
    pub fn amount(&self) -> Option<Amount> {
        Unit::parse(self.unit).map(|unit| Amount { value: self.value, unit })
    }

    /// Standard uncertainty, one sigma.
    pub fn standard(&self) -> f64 {
        self.uncertainty.standard()
    }

    pub(crate) fn real(&self) -> f64 {
        real::from_decimal(self.value)
    }

    /// A figure as an input of a further formula.
    pub(crate) fn given(&self, name: &'static str) -> Given {
        Given { name, value: self.value, unit: self.unit, standard: self.standard() }
    }

    pub(crate) fn new(
        name: &'static str,
        value: f64,
        unit: &'static str,
        uncertainty: Uncertainty,
    ) -> Result<Figure, Refusal> {
        match real::to_decimal(value, PLACES) {
            Some(value) => Ok(Figure { value, unit, uncertainty }),
            None => Err(Refusal::TooLarge { what: name }),
        }
    }
}

/// Evaluates a formula and the uncertainty its inputs give it.
///
/// Each input is moved by its own uncertainty, up and down, and half of what the result changes is
/// its part (JCGM 100:2008, 5.1.3, note 2).
pub(crate) fn evaluate<const N: usize>(
    name: &'static str,
    unit: &'static str,
    given: &[Given; N],
    formula: &dyn Fn([f64; N]) -> f64,
) -> Result<Figure, Refusal> {
    let middle = given.map(|input| input.real());
    let moved = |index: usize, by: f64| {
        let mut inputs = middle;
        if let Some(input) = inputs.get_mut(index) {
            *input += by;
        }
        formula(inputs)
    };
    let mut uncertainty = Uncertainty::default();
    for (index, input) in given.iter().enumerate().filter(|(_, input)| input.standard > 0.0) {
        let part = (moved(index, input.standard) - moved(index, -input.standard)) / 2.0;
        uncertainty = uncertainty.with(input.name, part.abs());
    }
    Figure::new(name, formula(middle), unit, uncertainty)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// 0.15 mm ± 0.003 at 30 mm ± 0.5 on a pitch radius of 24 mm: parts 0.0024 and 0.002, by hand.
    #[test]
    fn each_input_brings_its_part() {
        let given = [
            Given { name: "reading", value: Decimal::new(15, 2), unit: "mm", standard: 0.003 },
            Given { name: "arm", value: Decimal::from(30), unit: "mm", standard: 0.5 },
            Given { name: "pitch radius", value: Decimal::from(24), unit: "mm", standard: 0.0 },
        ];
        let found = evaluate("backlash", "mm", &given, &|[y, arm, pitch]| y * pitch / arm).unwrap();
        assert_eq!(found.value, Decimal::new(12, 2));
        let parts = found.uncertainty.parts();
        assert_eq!(parts.len(), 2, "an exact input has no part");
        assert!((parts[0].1 - 0.0024).abs() < 1e-12);
        assert!((parts[1].1 - 0.0020).abs() < 1e-6);
    }
}
