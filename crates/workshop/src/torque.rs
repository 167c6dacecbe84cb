//! What to set on a torque wrench, with an offset head or without.

use measure::{Amount, Decimal, Unit};
use words::key;

use crate::formula::evaluate;
use crate::{Basis, Caution, Explanation, Figure, Given, Reading, Refusal};

/// An offset head on a wrench.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OffsetTool {
    /// L: middle of the grip to the wrench's drive.
    pub wrench: Reading,
    /// E: the drive to the middle of the fastener.
    pub head: Reading,
    /// a: 0° straight ahead, 90° square, 180° turned back over the handle.
    pub angle: Reading,
}

/// What the threads are like.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Threads {
    /// Clean and dry.
    Dry,
    /// Oiled.
    Oil,
    /// Thread-locker on them.
    Locker,
}

/// What to set.
#[derive(Clone, Debug, PartialEq)]
pub struct Answer {
    /// On the wrench, N·m, one for each stage, in order.
    pub set: Vec<Figure>,
    /// What to say with it.
    pub cautions: Vec<Caution>,
    /// How it was reckoned, for the last stage.
    pub explanation: Explanation,
}

/// The wrench's setting for a torque at the fastener, stage by stage.
///
/// T_W = T·L/(L + E·cos a), for a pull square to the wrench at its grip mark. Without a tool the
/// setting is the torque. Source: US Army TM 9-254, general maintenance procedures, torque wrenches,
/// figure 46.
///
/// `manual` is what the manual's value is for, `here` what the threads are: where they differ a caution
/// says so and no value is changed.
///
/// # Errors
/// [`Refusal::NoLever`] where L + E·cos a is zero or less; no stage, stages that do not rise, an angle
/// beyond 180°, another quantity.
///
/// ```
/// use measure::{Decimal, Unit, round};
/// use workshop::{Reading, torque::{OffsetTool, Threads, examine}};
/// // 80 N·m, 40 cm, 5 cm straight ahead: 71.1 (a public worked example).
/// let tool = OffsetTool {
///     wrench: Reading::exact(Decimal::from(400), Unit::Millimetre),
///     head: Reading::exact(Decimal::from(50), Unit::Millimetre),
///     angle: Reading::exact(Decimal::ZERO, Unit::Degree),
/// };
/// let stages = [Reading::exact(Decimal::from(80), Unit::NewtonMetre)];
/// let found = examine(&stages, Some(&tool), Threads::Dry, Threads::Dry).unwrap();
/// assert_eq!(round(found.set[0].value, 1), Decimal::new(711, 1));
/// ```
pub fn examine(
    stages: &[Reading],
    tool: Option<&OffsetTool>,
    manual: Threads,
    here: Threads,
) -> Result<Answer, Refusal> {
    let mut set = Vec::new();
    let mut before: Option<Decimal> = None;
    let mut given = Vec::new();
    for stage in stages {
        let torque = stage.above_zero(key!("torque"), Unit::NewtonMetre)?;
        if let Some(least) = before.filter(|least| torque.value <= *least) {
            return Err(Refusal::NotMore {
                what: key!("stage"),
                found: torque.value,
                than: "stage before it",
                least,
                unit: "N·m",
                act: "write the stages in rising order",
            });
        }
        before = Some(torque.value);
        let (inputs, setting) = scaled(torque, tool, Way::ToWrench)?;
        set.push(setting);
        given = inputs;
    }
    if set.is_empty() {
        return Err(Refusal::Count { what: key!("stages"), found: 0, least: 1, most: 9 });
    }
    let mut cautions = vec![Caution::WrenchSlips];
    if manual != here {
        cautions.push(Caution::ThreadsDiffer);
    }
    let explanation = Explanation {
        formula: "set = T·L/(L + E·cos a)",
        given,
        basis: Basis::Published("US Army TM 9-254, torque wrench section, figure 46"),
    };
    Ok(Answer { set, cautions, explanation })
}

/// The torque that reaches the fastener when the wrench shows `wrench`, N·m.
///
/// # Errors
/// As [`examine`].
pub fn at_fastener(wrench: &Reading, tool: Option<&OffsetTool>) -> Result<Figure, Refusal> {
    let torque = wrench.not_negative("torque on the wrench", Unit::NewtonMetre)?;
    Ok(scaled(torque, tool, Way::ToFastener)?.1)
}

#[derive(Clone, Copy, PartialEq)]
enum Way {
    ToWrench,
    ToFastener,
}

fn scaled(
    torque: Given,
    tool: Option<&OffsetTool>,
    way: Way,
) -> Result<(Vec<Given>, Figure), Refusal> {
    let Some(tool) = tool else {
        return Ok((vec![torque], evaluate(key!("torque"), "N·m", &[torque], &|[torque]| torque)?));
    };
    let wrench = tool.wrench.above_zero("wrench length", Unit::Millimetre)?;
    let head = tool.head.not_negative("head length", Unit::Millimetre)?;
    let angle = tool.angle.not_negative("head angle", Unit::Degree)?;
    if angle.value > Decimal::from(180) {
        return Err(Refusal::Range {
            what: "head angle",
            found: angle.value,
            least: Decimal::ZERO,
            most: Decimal::from(180),
            unit: "°",
        });
    }
    let lever = wrench.real() + head.real() * angle.real().to_radians().cos();
    // Less than a hair's breadth of lever is none: the cosine of 180° is not exact.
    if lever < 1e-9 {
        let found = measure::real::to_decimal(lever, 6).unwrap_or_default();
        return Err(Refusal::NoLever { found });
    }
    let given = [torque, wrench, head, angle];
    let figure = evaluate(key!("torque"), "N·m", &given, &|[torque, wrench, head, angle]| {
        let ratio = wrench / (wrench + head * angle.to_radians().cos());
        if way == Way::ToWrench { torque * ratio } else { torque / ratio }
    })?;
    Ok((given.to_vec(), figure))
}

/// Degrees to turn after a snug torque, in steps.
#[derive(Clone, Debug, PartialEq)]
pub struct Turn {
    /// The snug torque, N·m at the fastener.
    pub snug: Amount,
    /// All steps together, degrees.
    pub total: Decimal,
    /// Where the paint mark stands after each step, degrees past snug.
    pub marks: Vec<Decimal>,
    /// What to say before.
    pub caution: Caution,
}

/// Plans torque plus angle: snug, paint a line, turn by each step.
///
/// # Errors
/// [`Refusal`] for a snug torque or a step of zero or less, or no step.
pub fn torque_and_angle(snug: &Reading, steps: &[Reading]) -> Result<Turn, Refusal> {
    let torque = snug.above_zero("snug torque", Unit::NewtonMetre)?;
    let mut total = Decimal::ZERO;
    let mut marks = Vec::new();
    for step in steps {
        total += step.above_zero(key!("turn"), Unit::Degree)?.value;
        marks.push(total);
    }
    if marks.is_empty() {
        return Err(Refusal::Count { what: key!("turns"), found: 0, least: 1, most: 9 });
    }
    let snug = Amount { value: torque.value, unit: Unit::NewtonMetre };
    Ok(Turn { snug, total, marks, caution: Caution::AngleNeedsSnug })
}

/// Break-out torque as found, as a share of the torque the manual asks, %.
///
/// Recorded, never judged: corrosion raises it and a lost clamp lowers it (common practice).
///
/// # Errors
/// [`Refusal`] for a torque asked of zero or less.
pub fn break_out(found: &Reading, asked: &Reading) -> Result<Figure, Refusal> {
    let given = [
        found.not_negative("break-out torque", Unit::NewtonMetre)?,
        asked.above_zero("torque asked", Unit::NewtonMetre)?,
    ];
    evaluate("share of the torque asked", "%", &given, &|[found, asked]| 100.0 * found / asked)
}
