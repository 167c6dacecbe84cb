//! Runout: what an indicator reads round one turn of a shaft.
//!
//! A once-per-turn wave is a centre off the line the shaft turns on; what is left when that wave is
//! taken out is form. Readings are millimetres; angles are degrees in the direction the marks count.

mod cause;
mod fit;

pub use cause::{Along, Cause, Face, Finding, tell_apart};

use measure::{Amount, Decimal, Judgement, Uncertainty, Unit};
use words::key;

use crate::{Basis, Caution, Explanation, Figure, Limits, Reading, Refusal};
use fit::{Wave, waves};

/// Fewest and most angles.
const ANGLES: (usize, usize) = (4, 12);
/// From so many angles on two humps can be told from noise.
const ENOUGH_FOR_LOBES: usize = 6;

/// One turn of readings.
#[derive(Clone, Debug, PartialEq)]
pub struct Turn {
    /// Angle and indicator reading, 4 to 12 of them, each angle once.
    pub readings: Vec<(Amount, Reading)>,
    /// The first angle read again after the turn.
    pub closing: Option<Reading>,
    /// Total indicated runout allowed.
    pub limits: Limits,
}

/// What one turn says.
#[derive(Clone, Debug, PartialEq)]
pub struct Answer {
    /// Highest less lowest reading, mm: what a drawing calls total runout (ISO 1101, ASME Y14.5, from
    /// memory).
    pub total: Figure,
    /// Mean reading, mm.
    pub mean: Figure,
    /// How far the centre of the surface lies off the line it turns on, mm; the total it causes is
    /// twice that.
    pub off_centre: Figure,
    /// Where it is highest, degrees from 0 up to 360; `None` where nothing stands out.
    pub high_spot: Option<Figure>,
    /// Height of two humps in a turn, mm; `None` below six angles.
    pub two_lobes: Option<Figure>,
    /// What is left at each angle when the fitted circle is taken out, mm, in the order read.
    pub left: Vec<Decimal>,
    /// Closing reading less first reading, mm.
    pub drift: Option<Figure>,
    /// Verdict on the total; `None` without a limit.
    pub judgement: Option<Judgement>,
    /// What to say with it.
    pub cautions: Vec<Caution>,
    /// How it was reckoned.
    pub explanation: Explanation,
    /// Both waves, to compare with another place.
    pub(crate) wave: Wave,
    pub(crate) lobes: Option<Wave>,
}

/// Fits one turn.
///
/// r = r₀ + a·cos θ + b·sin θ by least squares; e = √(a² + b²), high spot at atan2(b, a).
/// Source: NIST/SEMATECH e-Handbook 2.3.4.4, roundness measurements. The scatter is that of the
/// residuals, √(Σres²/(n − 3)), or the indicator's own step where that is more.
///
/// # Errors
/// [`Refusal`]: fewer than 4 or more than 12 angles, an angle twice, another quantity.
///
/// ```
/// use measure::{Amount, Decimal, Unit, round};
/// use workshop::{Limits, Reading, runout::{Turn, examine}};
/// // 4 steps, 0.001 in: 0.5 2.0 3.5 2.0 → off centre 1.5, high spot 180°, total 3.0 (by hand).
/// let reading = |(angle, tenths)| (
///     Amount { value: Decimal::from(angle), unit: Unit::Degree },
///     Reading::exact(Decimal::new(tenths, 4), Unit::Inch),
/// );
/// let readings = [(0, 5), (90, 20), (180, 35), (270, 20)].map(reading).to_vec();
/// let turn = examine(&Turn { readings, closing: None, limits: Limits::default() }).unwrap();
/// let inches = |mm| round(mm / Decimal::new(254, 1), 9);
/// assert_eq!(inches(turn.off_centre.value), Decimal::new(15, 4));
/// assert_eq!(inches(turn.total.value), Decimal::new(3, 3));
/// assert_eq!(round(turn.high_spot.unwrap().value, 9), Decimal::from(180));
/// ```
pub fn examine(turn: &Turn) -> Result<Answer, Refusal> {
    let count = turn.readings.len();
    if count < ANGLES.0 || count > ANGLES.1 {
        let (least, most) = ANGLES;
        return Err(Refusal::Count { what: key!("angles"), found: count, least, most });
    }
    let angles = angles(turn)?;
    let given = turn
        .readings
        .iter()
        .map(|(_, reading)| reading.given(key!("reading"), Unit::Millimetre))
        .collect::<Result<Vec<_>, _>>()?;
    let heights: Vec<f64> = given.iter().map(|given| given.real()).collect();
    let step = given.iter().map(|given| given.standard).fold(0.0, f64::max);

    let once =
        waves(&angles, &heights, step, 1).ok_or(Refusal::TooLarge { what: key!("reading") })?;
    let lobes = if count >= ENOUGH_FOR_LOBES { waves(&angles, &heights, step, 2) } else { None };
    let wave = once.once;
    let least = given.iter().map(|given| given.value).min().unwrap_or_default();
    let most = given.iter().map(|given| given.value).max().unwrap_or_default();
    let total = Figure {
        value: most - least,
        unit: "mm",
        uncertainty: Uncertainty::default()
            .with("highest reading", step)
            .with("lowest reading", step),
    };
    let drift = drift(turn)?;
    let moved = drift.as_ref().is_some_and(|drift| drift.real().abs() > 2.0 * drift.standard());
    let length = |name, value, u| {
        Figure::new(name, value, "mm", Uncertainty::default().with("scatter round the circle", u))
    };
    let lobes = lobes.and_then(|fit| fit.twice);
    Ok(Answer {
        judgement: turn.limits.judge("runout limit", &total, Unit::Millimetre)?,
        mean: length(key!("mean"), once.mean, once.mean_standard)?,
        off_centre: length("off centre", wave.height(), wave.standard_height())?,
        high_spot: wave.stands_out().then(|| high_spot(&wave)).transpose()?,
        two_lobes: lobes
            .map(|twice| length("two humps", twice.height(), twice.standard_height()))
            .transpose()?,
        left: once.left.iter().filter_map(|left| measure::real::to_decimal(*left, 6)).collect(),
        drift,
        cautions: if moved { vec![Caution::ZeroMoved] } else { Vec::new() },
        explanation: Explanation {
            formula: "r = r0 + a·cos θ + b·sin θ, least squares; e = √(a² + b²), total about 2e",
            given,
            basis: Basis::Published("NIST/SEMATECH e-Handbook 2.3.4.4, roundness measurements"),
        },
        total,
        wave,
        lobes,
    })
}

/// Angles in radians, each once.
fn angles(turn: &Turn) -> Result<Vec<f64>, Refusal> {
    let mut seen: Vec<Decimal> = Vec::new();
    for (angle, _) in &turn.readings {
        let exact = Reading { amount: *angle, standard: 0.0 };
        let degrees = exact.given(key!("angle"), Unit::Degree)?.value % Decimal::from(360);
        let degrees = if degrees < Decimal::ZERO { degrees + Decimal::from(360) } else { degrees };
        if seen.contains(&degrees) {
            return Err(Refusal::SameAngle { angle: degrees });
        }
        seen.push(degrees);
    }
    let mut sorted = seen.clone();
    sorted.sort();
    let round = sorted.first().map(|first| first + Decimal::from(360));
    let next = sorted.iter().copied().skip(1).chain(round);
    let gap = sorted.iter().zip(next).map(|(from, to)| to - from).max().unwrap_or_default();
    if gap > Decimal::from(180) {
        return Err(Refusal::Gap { found: gap });
    }
    Ok(seen.into_iter().map(|degrees| measure::real::from_decimal(degrees).to_radians()).collect())
}

fn drift(turn: &Turn) -> Result<Option<Figure>, Refusal> {
    let (Some(closing), Some((_, first))) = (&turn.closing, turn.readings.first()) else {
        return Ok(None);
    };
    let given = [
        closing.given("closing reading", Unit::Millimetre)?,
        first.given("first reading", Unit::Millimetre)?,
    ];
    crate::formula::evaluate(key!("drift"), "mm", &given, &|[closing, first]| closing - first)
        .map(Some)
}

fn high_spot(wave: &Wave) -> Result<Figure, Refusal> {
    let doubt =
        Uncertainty::default().with("scatter round the circle", wave.standard_angle().to_degrees());
    Figure::new("high spot", wave.angle().to_degrees().rem_euclid(360.0), "°", doubt)
}
