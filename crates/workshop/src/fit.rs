//! Thermal fits: how hot or cold, what the parts stand, what holds when the unit is warm.
//!
//! Interference is on the diameter, in millimetres, and above zero where the parts overlap.

use measure::{Amount, Decimal, Judgement, Unit};

use crate::formula::evaluate;
use crate::{Basis, Caution, Explanation, Figure, Given, Limits, Reading, Refusal};

/// How a material grows, with where that is written.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Expansion {
    /// Coefficient of linear expansion, 10⁻⁶/K.
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

/// A part to be heated or cooled, by what is in it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Part {
    /// A bare steel ring, nothing of polymer in it.
    Ring,
    /// With a polymer cage, a seal or an O-ring.
    WithPolymer,
    /// The case.
    Case,
}

impl Part {
    /// Coldest and hottest the part is commonly taken, °C. Common practice, no source; the part's own
    /// maker goes first.
    pub fn common_limits(self) -> (Option<Amount>, Amount) {
        let celsius = |value: i64| Amount { value: Decimal::from(value), unit: Unit::Celsius };
        match self {
            Part::Ring => (Some(celsius(-54)), celsius(120)),
            Part::WithPolymer => (Some(celsius(-54)), celsius(93)),
            Part::Case => (None, celsius(120)),
        }
    }
}

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
        diameter.above_zero("diameter", Unit::Millimetre)?,
        expansion("expansion", material),
        kelvin(rise),
    ];
    evaluate("growth", "mm", &given, &|[diameter, alpha, rise]| diameter * alpha * 1e-6 * rise)
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

fn expansion(name: &'static str, material: &Expansion) -> Given {
    Given { name, value: material.per_million, unit: "10⁻⁶/K", standard: material.standard }
}

fn kelvin(rise: Decimal) -> Given {
    Given { name: "temperature change", value: rise, unit: "K", standard: 0.0 }
}

/// A race to be dropped in, or a part to be slipped on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Drop {
    /// Diameter of the fit.
    pub diameter: Reading,
    /// Interference on the diameter.
    pub interference: Reading,
    /// Room wanted on the diameter, so that it drops by itself.
    pub clearance: Reading,
    /// Temperature both parts start from.
    pub room: Reading,
    /// What is heated, or cooled.
    pub material: Expansion,
    /// What is in the part that is heated or cooled.
    pub part: Part,
    /// The part's own coldest and hottest, from its maker; common practice where there is none.
    pub limits: Limits,
    /// A thermometer on the part itself, never a guess; `None` before it was read.
    pub thermometer: Option<Reading>,
}

/// How hot, how cold, and whether that is allowed.
#[derive(Clone, Debug, PartialEq)]
pub struct Answer {
    /// Temperature change needed, K: above zero to heat the outer part by, and below zero to cool the
    /// inner part by.
    pub change: Figure,
    /// The temperature to reach, °C.
    pub reach: Figure,
    /// The limits that hold, °C: the maker's, else common practice.
    pub limits: Limits,
    /// Those limits are common practice, for the maker's were not given.
    pub limits_are_common_practice: bool,
    /// Whether the temperature to reach lies within the limits.
    pub allowed: bool,
    /// Whether the thermometer proves the part ready: beyond the temperature to reach, and within
    /// limits. `None` without a thermometer, or where it is not allowed.
    pub ready: Option<Judgement>,
    /// What to say with it.
    pub cautions: Vec<Caution>,
    /// How it was reckoned.
    pub explanation: Explanation,
}

/// How hot the outer part must be for the inner to drop in: ΔT = (δ + clearance)/(α·D).
///
/// # Errors
/// [`Refusal`] for a diameter of zero or less, a clearance below zero, a temperature that cannot be.
pub fn heat(drop: &Drop) -> Result<Answer, Refusal> {
    needed(drop, 1.0)
}

/// How cold the inner part must be to drop in.
///
/// # Errors
/// As [`heat`].
pub fn cool(drop: &Drop) -> Result<Answer, Refusal> {
    needed(drop, -1.0)
}

fn needed(drop: &Drop, sign: f64) -> Result<Answer, Refusal> {
    let given = [
        drop.diameter.above_zero("diameter", Unit::Millimetre)?,
        drop.interference.given("interference", Unit::Millimetre)?,
        drop.clearance.not_negative("clearance", Unit::Millimetre)?,
        expansion("expansion", &drop.material),
    ];
    let change = evaluate("temperature change", "K", &given, &|[d, delta, clearance, alpha]| {
        sign * ((delta + clearance).max(0.0)) / (alpha * 1e-6 * d)
    })?;
    let room = drop.room.given("room", Unit::Celsius)?;
    let from = [room, change.given("temperature change")];
    let reach = evaluate("temperature to reach", "°C", &from, &|[room, change]| room + change)?;

    let (coldest, hottest) = drop.part.common_limits();
    let common = drop.limits.low.is_none() && drop.limits.high.is_none();
    let limits = if common { Limits { low: coldest, high: Some(hottest) } } else { drop.limits };
    let in_celsius = |limit: Option<Amount>| match limit {
        Some(amount) => {
            let exact = Reading { amount, standard: 0.0 };
            exact.given("temperature limit", Unit::Celsius).map(|given| Some(given.value))
        }
        None => Ok(None),
    };
    let (low, high) = (in_celsius(limits.low)?, in_celsius(limits.high)?);
    let allowed =
        low.is_none_or(|low| low < reach.value) && high.is_none_or(|high| reach.value < high);
    let celsius = |value| Amount { value, unit: Unit::Celsius };
    let window = if sign > 0.0 {
        Limits { low: Some(celsius(reach.value)), high: limits.high }
    } else {
        Limits { low: limits.low, high: Some(celsius(reach.value)) }
    };
    let ready = match drop.thermometer {
        Some(thermometer) if allowed => {
            let read = [thermometer.given("thermometer", Unit::Celsius)?];
            let read = evaluate("thermometer", "°C", &read, &|[read]| read)?;
            window.judge("temperature to reach", &read, Unit::Celsius)?
        }
        _ => None,
    };
    let mut cautions = vec![if sign > 0.0 { Caution::HotMetal } else { Caution::ColdMetal }];
    if !allowed {
        cautions.push(Caution::BeyondPart);
    }
    let explanation = Explanation {
        formula: "ΔT = (interference + clearance)/(α·D)",
        given: given.to_vec(),
        basis: drop.material.basis,
    };
    Ok(Answer {
        change,
        reach,
        limits,
        limits_are_common_practice: common,
        allowed,
        ready,
        cautions,
        explanation,
    })
}

/// Room on the diameter while the one part is at a temperature and the other still at the room's, mm;
/// zero or less holds.
///
/// `heated` is the outer part heated; else the inner part is cooled.
///
/// # Errors
/// As [`heat`].
///
/// ```
/// use measure::{Decimal, Unit, round};
/// use workshop::{Limits, Reading, fit::{CAST_ALUMINIUM, Drop, Part, gap}};
/// // 0.05 mm on 72 mm, cast aluminium from 20 to 120 °C: 0.1548 − 0.05 mm (own arithmetic).
/// let mm = |value, places| Reading::exact(Decimal::new(value, places), Unit::Millimetre);
/// let celsius = |value| Reading::exact(Decimal::from(value), Unit::Celsius);
/// let drop = Drop {
///     diameter: mm(72, 0),
///     interference: mm(5, 2),
///     clearance: mm(3, 2),
///     room: celsius(20),
///     material: CAST_ALUMINIUM,
///     part: Part::Case,
///     limits: Limits::default(),
///     thermometer: None,
/// };
/// assert_eq!(round(gap(&drop, true, &celsius(120)).unwrap().value, 4), Decimal::new(1048, 4));
/// ```
pub fn gap(drop: &Drop, heated: bool, at: &Reading) -> Result<Figure, Refusal> {
    let given = [
        drop.diameter.above_zero("diameter", Unit::Millimetre)?,
        drop.interference.given("interference", Unit::Millimetre)?,
        expansion("expansion", &drop.material),
        drop.room.given("room", Unit::Celsius)?,
        at.given("temperature", Unit::Celsius)?,
    ];
    let sign = if heated { 1.0 } else { -1.0 };
    evaluate("gap", "mm", &given, &|[d, delta, alpha, room, at]| {
        sign * alpha * 1e-6 * d * (at - room) - delta
    })
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
        interference.given("interference", Unit::Millimetre)?,
        diameter.above_zero("diameter", Unit::Millimetre)?,
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
