//! Thermal fits: how hot or cold, what the parts stand, what holds when the unit is warm.
//!
//! Interference is on the diameter, in millimetres, and above zero where the parts overlap.

mod drop;

use measure::{Decimal, Unit};
use words::key;

use crate::formula::evaluate;
use crate::{Basis, Caution, Explanation, Figure, Given, Reading, Refusal};

pub use drop::{Answer, COLDEST, Drop, HOTTEST, Part, cool, gap, heat};

/// How a material grows, with where that is written.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Expansion {
    /// Coefficient of linear expansion, 10⁻⁶/K, which is µm/m·K.
    pub per_million: Decimal,
    /// Its standard uncertainty, 10⁻⁶/K.
    pub standard: f64,
    /// Where it is from.
    pub basis: Basis,
}

const CALLISTER: Basis = Basis::Published(
    "W. D. Callister, Fundamentals of Materials Science and Engineering, 3rd ed., table B.6",
);

/// Cast aluminium 356.0: 21.5·10⁻⁶/K. Other casting alloys differ by about 2 %.
pub const CAST_ALUMINIUM: Expansion = Expansion {
    per_million: Decimal::from_parts(215, 0, 0, false, 1),
    standard: 0.4,
    basis: CALLISTER,
};
/// Bearing bronze C93200: 18.0·10⁻⁶/K.
pub const BRONZE: Expansion = Expansion {
    per_million: Decimal::from_parts(180, 0, 0, false, 1),
    standard: 0.3,
    basis: CALLISTER,
};
/// Bearing steel: 12.0·10⁻⁶/K, from memory; lists go up to 12.5.
pub const BEARING_STEEL: Expansion = Expansion {
    per_million: Decimal::from_parts(120, 0, 0, false, 1),
    standard: 0.3,
    basis: Basis::Derived("handbook value for bearing steel, from memory"),
};

/// Free growth of a diameter, mm: α·D·ΔT. Below zero for cooling.
///
/// # Errors
/// [`Refusal`] for a diameter of zero or less.
///
/// ```
/// use measure::{Decimal, Unit, round};
/// use workshop::{Reading, fit::{CAST_ALUMINIUM, growth}};
/// // A 72 mm bore in cast aluminium, 100 K warmer: 0.15480 mm (own arithmetic).
/// let bore = Reading::exact(Decimal::from(72), Unit::Millimetre);
/// let grown = growth(&bore, &CAST_ALUMINIUM, Decimal::from(100)).unwrap();
/// assert_eq!(round(grown.value, 5), Decimal::new(15480, 5));
/// ```
pub fn growth(diameter: &Reading, material: &Expansion, rise: Decimal) -> Result<Figure, Refusal> {
    let given = [
        diameter.above_zero(key!("diameter"), Unit::Millimetre)?,
        expansion(key!("expansion"), material),
        kelvin(rise),
    ];
    evaluate(key!("growth"), "mm", &given, &|[diameter, alpha, rise]| {
        diameter * alpha * 1e-6 * rise
    })
}

/// How much warmer the second temperature is, K; below zero for colder.
///
/// # Errors
/// [`Refusal::BelowAbsoluteZero`] for either.
///
/// ```
/// use measure::{Decimal, Unit};
/// use workshop::{Reading, fit::rise};
/// // 68 °F is 20 °C.
/// let at = |value, unit| Reading::exact(Decimal::from(value), unit);
/// let warmer = rise(&at(68, Unit::Fahrenheit), &at(80, Unit::Celsius)).unwrap();
/// assert_eq!(warmer, Decimal::from(60));
/// assert!(rise(&at(20, Unit::Celsius), &at(-300, Unit::Celsius)).is_err());
/// ```
pub fn rise(from: &Reading, to: &Reading) -> Result<Decimal, Refusal> {
    let from = from.given("temperature now", Unit::Celsius)?;
    Ok(to.given("temperature it runs at", Unit::Celsius)?.value - from.value)
}

impl Expansion {
    /// A coefficient as it was read, from a data sheet or a book.
    ///
    /// # Errors
    /// [`Refusal`] for zero or less.
    pub fn read(coefficient: &Reading) -> Result<Expansion, Refusal> {
        let given = coefficient.above_zero(key!("expansion"), Unit::PerMillionKelvin)?;
        let basis = Basis::Derived("the expansion typed here");
        Ok(Expansion { per_million: given.value, standard: given.standard, basis })
    }
}

fn expansion(name: &'static str, material: &Expansion) -> Given {
    let unit = Unit::PerMillionKelvin.symbol();
    Given { name, value: material.per_million, unit, standard: material.standard }
}

fn kelvin(rise: Decimal) -> Given {
    Given { name: "temperature change", value: rise, unit: "K", standard: 0.0 }
}

/// What is left of a fit when warm.
#[derive(Clone, Debug, PartialEq)]
pub struct Warm {
    /// Interference left on the diameter, mm; zero or less is loose.
    pub left: Figure,
    /// Where it is not proven to hold.
    pub caution: Option<Caution>,
    /// How it was reckoned.
    pub explanation: Explanation,
}

/// Interference left when race and case are both warmer by `rise` kelvin, mm; zero or less is loose.
///
/// δ − (α_case − α_race)·D·ΔT.
///
/// # Errors
/// [`Refusal`] for a diameter of zero or less.
///
/// ```
/// use measure::{Decimal, Unit, round};
/// use workshop::{Caution, Reading, fit::{BEARING_STEEL, CAST_ALUMINIUM, when_warm}};
/// // A 72 mm steel race in cast aluminium, 0.040 mm, 60 K warmer: −0.00104 mm (own arithmetic).
/// let mm = |value, places| Reading::exact(Decimal::new(value, places), Unit::Millimetre);
/// let warm =
///     when_warm(&mm(40, 3), &mm(72, 0), &CAST_ALUMINIUM, &BEARING_STEEL, Decimal::from(60)).unwrap();
/// assert_eq!(round(warm.left.value, 5), Decimal::new(-104, 5));
/// assert_eq!(warm.caution, Some(Caution::LooseWhenWarm));
/// ```
pub fn when_warm(
    interference: &Reading,
    diameter: &Reading,
    case: &Expansion,
    race: &Expansion,
    rise: Decimal,
) -> Result<Warm, Refusal> {
    let given = [
        interference.given(key!("interference"), Unit::Millimetre)?,
        diameter.above_zero(key!("diameter"), Unit::Millimetre)?,
        expansion("expansion of the case", case),
        expansion("expansion of the race", race),
        kelvin(rise),
    ];
    let left = evaluate("interference left", "mm", &given, &|[delta, d, case, race, rise]| {
        delta - (case - race) * 1e-6 * d * rise
    })?;
    // Not proven to hold is as good as loose, to a mechanic.
    let holds = left.real() > 1.645 * left.standard();
    let explanation = Explanation {
        formula: "left = δ − (α of the case − α of the race)·D·ΔT",
        given: given.to_vec(),
        basis: case.basis,
    };
    Ok(Warm { left, caution: (!holds).then_some(Caution::LooseWhenWarm), explanation })
}
