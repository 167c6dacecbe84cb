//! Rolling torque of bearings: read while turning, on one shaft or through the gears.

use measure::{Decimal, Judgement, Unit};
use words::key;

use crate::formula::evaluate;
use crate::{Basis, Caution, Explanation, Figure, Given, Limits, Reading, Refusal};

/// How the effort was read.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Effort {
    /// A spring scale pulls a cord off a drum.
    Cord {
        /// The steady pull.
        pull: Reading,
        /// Diameter of the drum.
        drum: Reading,
        /// Thickness of the cord.
        cord: Reading,
    },
    /// A beam or dial wrench on the nut's centre; a click wrench cannot read this.
    Wrench(Reading),
}

/// When it was read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum When {
    /// Turning slowly and evenly, about a turn in two seconds, three turns.
    Running,
    /// The peak that starts it.
    BreakAway,
}

/// The seals of the shaft.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Seals {
    /// Not fitted.
    Out,
    /// Fitted, with what they take where that is known.
    In {
        /// Torque the seals take by themselves.
        take: Option<Reading>,
    },
}

/// One reading of rolling torque.
#[derive(Clone, Debug, PartialEq)]
pub struct Drag {
    /// How.
    pub effort: Effort,
    /// When.
    pub when: When,
    /// Seals in or out.
    pub seals: Seals,
    /// Limits of the bearings alone, seals left out.
    pub limits: Limits,
}

/// What it says.
#[derive(Clone, Debug, PartialEq)]
pub struct Answer {
    /// Torque as read, N·m.
    pub read: Figure,
    /// Torque of the bearings alone, N·m; `None` where seals are in and what they take is not known.
    pub bearings: Option<Figure>,
    /// Verdict on the bearings; `None` without limits, for a break-away peak, or with seals of unknown
    /// drag.
    pub judgement: Option<Judgement>,
    /// What to say with it.
    pub cautions: Vec<Caution>,
    /// How it was reckoned.
    pub explanation: Explanation,
}

/// Reads rolling torque.
///
/// T = F·(D + d)/2 with drum D and cord d; bearings = read − seals.
/// Source: common in public maintenance manuals, "rotating, not starting, torque by cord and scale".
///
/// # Errors
/// [`Refusal`] for a pull below zero, a drum of none, another quantity.
///
/// ```
/// use measure::{Decimal, Unit, round};
/// use workshop::{Limits, Reading, drag::{Drag, Effort, Seals, When, examine}};
/// // 14 N on a 50 mm drum with a 2 mm cord: 0.36 N·m = 3.2 lbf·in (own arithmetic).
/// let found = examine(&Drag {
///     effort: Effort::Cord {
///         pull: Reading::exact(Decimal::from(14), Unit::Newton),
///         drum: Reading::exact(Decimal::from(50), Unit::Millimetre),
///         cord: Reading::exact(Decimal::TWO, Unit::Millimetre),
///     },
///     when: When::Running,
///     seals: Seals::Out,
///     limits: Limits::default(),
/// }).unwrap();
/// assert_eq!(round(found.read.value, 2), Decimal::new(36, 2));
/// let pounds = found.read.amount().unwrap().to(Unit::PoundForceInch).unwrap();
/// assert_eq!(round(pounds.value, 1), Decimal::new(32, 1));
/// ```
pub fn examine(drag: &Drag) -> Result<Answer, Refusal> {
    let (given, read) = read(&drag.effort)?;
    let mut cautions = vec![Caution::TorqueIsNotPreload];
    let bearings = match drag.seals {
        Seals::Out => Some(read.clone()),
        Seals::In { take: Some(take) } => Some(less(&read, &take)?),
        Seals::In { take: None } => {
            cautions.push(Caution::SealsIn);
            None
        }
    };
    let judgement = match (&bearings, drag.when) {
        (Some(bearings), When::Running) => {
            drag.limits.judge("rolling torque limit", bearings, Unit::NewtonMetre)?
        }
        _ => None,
    };
    if drag.when == When::BreakAway {
        cautions.push(Caution::BreakAway);
    }
    let explanation = Explanation {
        formula: "T = F·(D + d)/2 with drum D and cord d; bearings = T − seals",
        given,
        basis: Basis::Derived("force times the radius at which the cord's middle runs"),
    };
    Ok(Answer { read, bearings, judgement, cautions, explanation })
}

fn read(effort: &Effort) -> Result<(Vec<Given>, Figure), Refusal> {
    match effort {
        Effort::Wrench(torque) => {
            let given = [torque.not_negative(key!("torque"), Unit::NewtonMetre)?];
            Ok((given.to_vec(), evaluate(key!("torque"), "N·m", &given, &|[torque]| torque)?))
        }
        Effort::Cord { pull, drum, cord } => {
            let given = [
                pull.not_negative(key!("pull"), Unit::Newton)?,
                drum.above_zero(key!("drum"), Unit::Millimetre)?,
                cord.not_negative(key!("cord"), Unit::Millimetre)?,
            ];
            let torque = evaluate(key!("torque"), "N·m", &given, &|[pull, drum, cord]| {
                pull * (drum + cord) / 2000.0
            })?;
            Ok((given.to_vec(), torque))
        }
    }
}

fn less(whole: &Figure, part: &Reading) -> Result<Figure, Refusal> {
    let given = [whole.given(key!("torque")), part.not_negative(key!("seals"), Unit::NewtonMetre)?];
    evaluate(key!("bearings"), "N·m", &given, &|[whole, part]| whole - part)
}

/// What a part of one shaft takes: the reading with it, less the reading without it, N·m.
///
/// # Errors
/// [`Refusal`] for another quantity.
pub fn part_of_shaft(with: &Reading, without: &Reading) -> Result<Figure, Refusal> {
    let given = [
        with.not_negative("torque with it", Unit::NewtonMetre)?,
        without.not_negative("torque without it", Unit::NewtonMetre)?,
    ];
    evaluate("torque of the part", "N·m", &given, &|[with, without]| with - without)
}

/// Both shafts felt at the pinion: T_pinion + T_gear·z_pinion/z_gear, N·m.
///
/// What the mesh itself takes comes on top.
///
/// # Errors
/// [`Refusal`] for a gear without teeth or another quantity.
///
/// ```
/// use measure::{Decimal, Unit};
/// use workshop::{Reading, drag::at_pinion};
/// // 0.35 + 0.60/1.5 = 0.75 N·m (own arithmetic, invented unit of 14 and 21 teeth).
/// let torque = |hundredths| Reading::exact(Decimal::new(hundredths, 2), Unit::NewtonMetre);
/// let total = at_pinion(&torque(35), &torque(60), 14, 21).unwrap();
/// assert_eq!(total.value, Decimal::new(75, 2));
/// ```
pub fn at_pinion(
    pinion: &Reading,
    gear: &Reading,
    pinion_teeth: u32,
    gear_teeth: u32,
) -> Result<Figure, Refusal> {
    if pinion_teeth == 0 || gear_teeth == 0 {
        return Err(Refusal::Count { what: key!("teeth"), found: 0, least: 1, most: 999 });
    }
    let given = [
        pinion.not_negative("torque of the pinion shaft", Unit::NewtonMetre)?,
        gear.not_negative("torque of the gear shaft", Unit::NewtonMetre)?,
        Given::plain("pinion teeth", Decimal::from(pinion_teeth), 0.0),
        Given::plain("gear teeth", Decimal::from(gear_teeth), 0.0),
    ];
    evaluate("torque at the pinion", "N·m", &given, &|[pinion, gear, few, many]| {
        pinion + gear * few / many
    })
}

/// Which way the trials run.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Trend {
    /// The last is above the first by more than their uncertainty.
    Rising,
    /// Below it by more than their uncertainty.
    Falling,
    /// No difference that the gauge could prove.
    Level,
}

/// Compares the last trial with the first: more apart than 1.96 of their combined uncertainty is a
/// trend (95 %, two-sided).
///
/// # Errors
/// [`Refusal::Count`] below two trials.
pub fn trend(trials: &[Figure]) -> Result<(Figure, Trend), Refusal> {
    let (Some(first), Some(last), true) = (trials.first(), trials.last(), trials.len() > 1) else {
        return Err(Refusal::Count {
            what: key!("trials"),
            found: trials.len(),
            least: 2,
            most: 99,
        });
    };
    let given = [last.given("last trial"), first.given("first trial")];
    let change = evaluate(key!("change"), first.unit, &given, &|[last, first]| last - first)?;
    let proven = 1.96 * change.standard();
    let trend = match change.real() {
        by if by > proven => Trend::Rising,
        by if by < -proven => Trend::Falling,
        _ => Trend::Level,
    };
    Ok((change, trend))
}
