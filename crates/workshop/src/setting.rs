//! Setting of a bearing pair: end play or preload, the pack that makes it, what heat does to it.
//!
//! End play is above zero, preload below.

use measure::{Decimal, Judgement, Series, Uncertainty, Unit, real};
use words::key;

use crate::formula::evaluate;
use crate::{Basis, Caution, Explanation, Figure, Given, Limits, Reading, Refusal};

/// A setting or a pack.
#[derive(Clone, Debug, PartialEq)]
pub struct Answer {
    /// The figure asked for, mm.
    pub figure: Figure,
    /// Verdict; `None` without limits.
    pub judgement: Option<Judgement>,
    /// What to say with it.
    pub cautions: &'static [Caution],
    /// How it was reckoned.
    pub explanation: Explanation,
}

/// An answer without a verdict.
fn answer(figure: Figure, formula: &'static str, given: Vec<Given>) -> Answer {
    let basis = Basis::Derived("plain geometry of two bearings that face each other");
    Answer {
        figure,
        judgement: None,
        cautions: &[Caution::TorqueIsNotPreload],
        explanation: Explanation { formula, given, basis },
    }
}

/// Readings of one push and one pull.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PushPull {
    /// Indicator while pushed.
    pub pushed: Reading,
    /// Indicator while pulled.
    pub pulled: Reading,
}

/// End play from one or more pushes and pulls, mm, and its verdict where there are limits.
///
/// Push and pull with the same force while swinging the shaft, stop, read; turn it first, so that the
/// rollers seat against the rib (common practice).
///
/// # Errors
/// [`Refusal`] without a reading, or for another quantity.
pub fn end_play(readings: &[PushPull], limits: &Limits) -> Result<Answer, Refusal> {
    let (mut plays, mut inputs) = (Vec::new(), Vec::new());
    let mut step: f64 = 0.0;
    for reading in readings {
        let given = [
            reading.pulled.given("indicator, pulled", Unit::Millimetre)?,
            reading.pushed.given("indicator, pushed", Unit::Millimetre)?,
        ];
        let play = evaluate("end play", "mm", &given, &|[pulled, pushed]| (pulled - pushed).abs())?;
        step = step.max(play.standard());
        plays.push(play.value);
        inputs.extend(given);
    }
    let count = plays.len();
    let series = Series::new(plays).map_err(|_| Refusal::Count {
        what: "push and pull",
        found: count,
        least: 1,
        most: 99,
    })?;
    let mut uncertainty = Uncertainty::default().with("resolution", step);
    if let Some(deviation) = series.deviation() {
        uncertainty = uncertainty.repeatability(deviation, count);
    }
    let play = Figure { value: series.mean(), unit: "mm", uncertainty };
    let judgement = limits.judge("end play limit", &play, Unit::Millimetre)?;
    Ok(Answer { judgement, ..answer(play, "mean of pulled − pushed", inputs) })
}

/// How much the controlling pack must change, mm, in the direction that closes play: e − s.
///
/// `wanted` is end play above zero or preload below. Multiply by the position's setting sign for the
/// pack itself.
///
/// # Errors
/// [`Refusal`] for another quantity.
///
/// ```
/// use measure::{Decimal, Unit};
/// use workshop::{Reading, setting::change};
/// // End play 0.20 mm, wanted preload 0.05 mm: 0.25 mm (own arithmetic).
/// let mm = |hundredths| Reading::exact(Decimal::new(hundredths, 2), Unit::Millimetre);
/// assert_eq!(change(&mm(20), &mm(-5)).unwrap().figure.value, Decimal::new(25, 2));
/// ```
pub fn change(play: &Reading, wanted: &Reading) -> Result<Answer, Refusal> {
    let given = [
        play.given("end play", Unit::Millimetre)?,
        wanted.given("wanted setting", Unit::Millimetre)?,
    ];
    let figure = evaluate("change of the pack", "mm", &given, &|[play, wanted]| play - wanted)?;
    Ok(answer(figure, "e − s", given.to_vec()))
}

/// The pack for a setting, from a test pack that gave play: t = t₀ + p·(E₀ − wanted), mm.
///
/// `setting_sign` is the position's: +1 where a thicker pack closes play, −1 where it opens it. Prove
/// the result by rolling torque.
///
/// # Errors
/// [`Refusal::Range`] for another sign, [`Refusal::NotAboveZero`] for a test pack without play: then
/// nothing is known about how tight it was.
pub fn pack(
    test_pack: &Reading,
    play: &Reading,
    wanted: &Reading,
    setting_sign: i8,
) -> Result<Answer, Refusal> {
    if !matches!(setting_sign, -1 | 1) {
        return Err(Refusal::Range {
            what: "setting sign",
            found: Decimal::from(setting_sign),
            least: Decimal::NEGATIVE_ONE,
            most: Decimal::ONE,
            unit: "",
        });
    }
    let given = [
        test_pack.not_negative("test pack", Unit::Millimetre)?,
        play.above_zero("end play", Unit::Millimetre)?,
        wanted.given("wanted setting", Unit::Millimetre)?,
    ];
    let sign = f64::from(setting_sign);
    let figure = evaluate(key!("pack"), "mm", &given, &|[pack, play, wanted]| {
        pack + sign * (play - wanted)
    })?;
    Ok(answer(figure, "t = t0 + p·(E0 − wanted)", given.to_vec()))
}

/// One row of tapered rollers.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Row {
    /// Outside diameter of the cup.
    pub cup: Reading,
    /// Half the angle of the cup's cone.
    pub half_angle: Reading,
}

/// How the pair is mounted, by what a longer housing does to it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Mounting {
    /// A housing that grows longer than the shaft loosens the pair.
    LongerLoosens,
    /// It tightens the pair.
    LongerTightens,
}

/// How a setting changes when housing and shaft warm up together, mm; above zero is looser.
///
/// ΔS = (α_H − α_S)·ΔT·(Σ ½·D·cot a ± L). Derived from the geometry of a cone in a growing bore; bearing
/// makers' manuals give the same with cot a written as K/0.39 (from memory). Which mounting takes +
/// is a trap: show the sketch.
///
/// `housing` and `shaft` are expansion coefficients in 10⁻⁶/K.
///
/// # Errors
/// [`Refusal`] for an angle of zero or less, or another quantity.
pub fn warmed(
    rows: &[Row],
    spread: &Reading,
    mounting: Mounting,
    [housing, shaft]: [&crate::fit::Expansion; 2],
    rise: Decimal,
) -> Result<Answer, Refusal> {
    let by = (real::from_decimal(housing.per_million) - real::from_decimal(shaft.per_million))
        * 1e-6
        * real::from_decimal(rise);
    let (mut radial, mut given) = (0.0, Vec::new());
    for row in rows {
        let cup = row.cup.above_zero(key!("cup"), Unit::Millimetre)?;
        let angle = row.half_angle.above_zero("cup half-angle", Unit::Degree)?;
        if angle.value >= Decimal::from(90) {
            let (found, most) = (angle.value, Decimal::from(90));
            return Err(Refusal::Range {
                what: "cup half-angle",
                found,
                least: Decimal::ZERO,
                most,
                unit: "°",
            });
        }
        radial += cup.real() / 2.0 / angle.real().to_radians().tan();
        given.extend([cup, angle]);
    }
    let spread = spread.not_negative("spread of the rows", Unit::Millimetre)?;
    let axial = match mounting {
        Mounting::LongerLoosens => spread.real(),
        Mounting::LongerTightens => -spread.real(),
    };
    let doubt = ((housing.standard * 1e-6).hypot(shaft.standard * 1e-6)
        * real::from_decimal(rise)
        * (radial + axial))
        .abs();
    let uncertainty = Uncertainty::default().with("expansion coefficients", doubt);
    given.push(spread);
    let figure = Figure::new("change of setting", by * (radial + axial), "mm", uncertainty)?;
    Ok(answer(figure, "(αH − αS)·ΔT·(Σ ½·D·cot a ± L)", given))
}
