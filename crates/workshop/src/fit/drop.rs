//! A part dropped in: how hot or how cold, and whether it stands that.

use measure::{Amount, Decimal, Judgement, Unit};
use words::key;

use super::{Expansion, expansion};
use crate::formula::evaluate;
use crate::{Caution, Explanation, Figure, Limits, Reading, Refusal};

/// What a refusal calls the coldest that a part stands.
pub const COLDEST: &str = words::key!("coldest");
/// What a refusal calls the hottest that a part stands.
pub const HOTTEST: &str = words::key!("hottest");

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
    /// Hottest, or else coldest, that the part is commonly taken, °C; `None` where nothing is common.
    /// Common practice, no source: it is said with a caution and never judged by.
    pub fn common_limit(self, heated: bool) -> Option<Amount> {
        let celsius = |value: i64| Amount { value: Decimal::from(value), unit: Unit::Celsius };
        match (self, heated) {
            (Part::Ring | Part::Case, true) => Some(celsius(120)),
            (Part::WithPolymer, true) => Some(celsius(93)),
            (Part::Ring | Part::WithPolymer, false) => Some(celsius(-54)),
            (Part::Case, false) => None,
        }
    }
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
    /// The part's own coldest and hottest, from its maker; nothing is judged without the one that
    /// counts.
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
    /// Whether its maker allows the temperature to reach; `None` where the limit was not given.
    pub allowed: Option<bool>,
    /// What such a part is commonly taken to, where its maker's limit was not given.
    pub common_limit: Option<Amount>,
    /// How the thermometer stands to the temperature to reach, and to nothing else. `None` without one.
    pub reached: Option<Judgement>,
    /// Whether the thermometer proves the part ready: beyond the temperature to reach, and within its
    /// maker's limit. `None` without either, or where it is not allowed.
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
    needed(drop, true)
}

/// How cold the inner part must be to drop in.
///
/// # Errors
/// As [`heat`].
pub fn cool(drop: &Drop) -> Result<Answer, Refusal> {
    needed(drop, false)
}

fn needed(drop: &Drop, heated: bool) -> Result<Answer, Refusal> {
    let given = [
        drop.diameter.above_zero(key!("diameter"), Unit::Millimetre)?,
        drop.interference.given(key!("interference"), Unit::Millimetre)?,
        drop.clearance.not_negative(key!("clearance"), Unit::Millimetre)?,
        expansion(key!("expansion"), &drop.material),
    ];
    let sign = if heated { 1.0 } else { -1.0 };
    let change = evaluate("temperature change", "K", &given, &|[d, delta, clearance, alpha]| {
        sign * ((delta + clearance).max(0.0)) / (alpha * 1e-6 * d)
    })?;
    let room = drop.room.given(key!("room"), Unit::Celsius)?;
    let from = [room, change.given("temperature change")];
    let reach = evaluate("temperature to reach", "°C", &from, &|[room, change]| room + change)?;

    let thermometer = match drop.thermometer {
        Some(read) => {
            let read = [read.given(key!("thermometer"), Unit::Celsius)?];
            Some(evaluate(key!("thermometer"), "°C", &read, &|[read]| read)?)
        }
        None => None,
    };
    let judge = |limits: Limits| match &thermometer {
        Some(read) => limits.judge("temperature to reach", read, Unit::Celsius),
        None => Ok(None),
    };
    let Limits { low, high } = drop.limits;
    let coldest = low.map(|limit| celsius(COLDEST, limit)).transpose()?;
    let hottest = high.map(|limit| celsius(HOTTEST, limit)).transpose()?;
    let limit = if heated { hottest } else { coldest };
    let common_limit = drop.part.common_limit(heated).filter(|_| limit.is_none());
    let within = |limit: Amount, value: Decimal| {
        if heated { value < limit.value } else { limit.value < value }
    };
    let allowed = limit.map(|limit| within(limit, reach.value));
    let window = |limit| {
        let reach = Some(Amount { value: reach.value, unit: Unit::Celsius });
        if heated { Limits { low: reach, high: limit } } else { Limits { low: limit, high: reach } }
    };
    let ready = if allowed == Some(true) { judge(window(limit))? } else { None };

    let mut cautions = vec![if heated { Caution::HotMetal } else { Caution::ColdMetal }];
    let read = thermometer.as_ref().map_or(reach.value, |read| read.value);
    let beyond = |limit| !within(limit, reach.value) || !within(limit, read);
    if limit.is_some_and(beyond) {
        cautions.push(Caution::BeyondPart);
    }
    if common_limit.is_some_and(beyond) {
        cautions.push(Caution::BeyondPractice);
    }
    let explanation = Explanation {
        formula: "ΔT = (interference + clearance)/(α·D)",
        given: given.to_vec(),
        basis: drop.material.basis,
    };
    let reached = judge(window(None))?;
    Ok(Answer { change, reach, allowed, common_limit, reached, ready, cautions, explanation })
}

/// A limit in °C.
fn celsius(name: &'static str, limit: Amount) -> Result<Amount, Refusal> {
    let given = Reading { amount: limit, standard: 0.0 }.given(name, Unit::Celsius)?;
    Ok(Amount { value: given.value, unit: Unit::Celsius })
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
        drop.diameter.above_zero(key!("diameter"), Unit::Millimetre)?,
        drop.interference.given(key!("interference"), Unit::Millimetre)?,
        expansion(key!("expansion"), &drop.material),
        drop.room.given(key!("room"), Unit::Celsius)?,
        at.given(key!("temperature"), Unit::Celsius)?,
    ];
    let sign = if heated { 1.0 } else { -1.0 };
    evaluate(key!("gap"), "mm", &given, &|[d, delta, alpha, room, at]| {
        sign * alpha * 1e-6 * d * (at - room) - delta
    })
}
