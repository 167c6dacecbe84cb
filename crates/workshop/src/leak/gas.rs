//! The ideal gas law for a closed case.
//!
//! Air departs from it by 0.01 kPa for a change of 5 K at 70 kPa on the gauge, and by less than 0.1 kPa
//! for 25 K at 110 kPa: `tests/external` measures it against air's equation of state.

use measure::Unit;
use words::key;

use super::{Entry, Stage};
use crate::formula::evaluate;
use crate::{Figure, Given, Reading, Refusal};

const KILOPASCAL: &str = "kPa";

/// Gauge, case temperature and barometer of one log line, in kPa and K, named for the first or a
/// later line.
pub(super) fn state(
    stage: Stage,
    entry: &Entry,
    names: [&'static str; 3],
) -> Result<[Given; 3], Refusal> {
    let [gauge, case, barometer] = names;
    let state = [
        entry.gauge.not_negative(gauge, Unit::Kilopascal)?,
        entry.case.given(case, Unit::Kelvin)?,
        entry.barometer.above_zero(barometer, Unit::Kilopascal)?,
    ];
    let [vacuum, _, outside] = state;
    if stage == Stage::Vacuum && vacuum.value >= outside.value {
        return Err(Refusal::NotMore {
            what: barometer,
            found: outside.value,
            than: key!("vacuum"),
            least: vacuum.value,
            unit: "kPa",
            act: "read both again, for there is no less than nothing",
        });
    }
    Ok(state)
}

/// Names of the inputs of the first and of a later line.
pub(super) const FIRST: [&str; 3] = ["pressure at first", "case at first", "barometer at first"];
pub(super) const LATER: [&str; 3] = ["pressure now", "case now", "barometer now"];

/// Absolute pressure: barometer plus gauge, or barometer less vacuum.
pub(super) fn absolute(stage: Stage, gauge: f64, barometer: f64) -> f64 {
    match stage {
        Stage::Low | Stage::Working => barometer + gauge,
        Stage::Vacuum => barometer - gauge,
    }
}

/// What the gauge would show now, had case and weather stayed as at first, kPa.
///
/// P₂·T₁/T₂ − P_atm,₁ with absolute P and T; below the air outside for vacuum.
///
/// # Errors
/// [`Refusal`] for a quantity that cannot be.
///
/// ```
/// use measure::{Amount, Decimal, Unit, round};
/// use workshop::{Reading, leak::{Entry, Stage, corrected}};
/// // 70 kPa at 24 °C reading 66 at 19 °C is a true loss of only 1.1 kPa (own arithmetic, barometer
/// // 101.325 kPa).
/// let line = |seconds, kpa, celsius| Entry {
///     at: Amount { value: Decimal::from(seconds), unit: Unit::Second },
///     gauge: Reading::exact(Decimal::from(kpa), Unit::Kilopascal),
///     case: Reading::exact(Decimal::from(celsius), Unit::Celsius),
///     barometer: Reading::exact(Decimal::new(101_325, 3), Unit::Kilopascal),
/// };
/// let now = corrected(Stage::Working, &line(0, 70, 24), &line(600, 66, 19)).unwrap();
/// assert_eq!(round(Decimal::from(70) - now.value, 1), Decimal::new(11, 1));
/// ```
pub fn corrected(stage: Stage, first: &Entry, later: &Entry) -> Result<Figure, Refusal> {
    let [_, t1, b1] = state(stage, first, FIRST)?;
    let [p2, t2, b2] = state(stage, later, LATER)?;
    evaluate("corrected pressure", KILOPASCAL, &[t1, b1, p2, t2, b2], &|[t1, b1, p2, t2, b2]| {
        let over = absolute(stage, p2, b2) * t1 / t2 - b1;
        if stage == Stage::Vacuum { -over } else { over }
    })
}

/// Loss of pressure, or of vacuum, that temperature and weather do not explain, kPa; above zero is a
/// leak.
///
/// ΔP = P₁ − P₂·T₁/T₂; for vacuum the other way round.
/// Source: 40 CFR 1065.644, vacuum-decay leak rate; EN 13184 (pressure change method, from memory).
///
/// # Errors
/// [`Refusal`] for a quantity that cannot be.
pub fn drop(stage: Stage, first: &Entry, later: &Entry) -> Result<Figure, Refusal> {
    evaluate(key!("loss"), KILOPASCAL, &inputs(stage, first, later)?, &|values| loss(stage, values))
}

/// The six inputs of [`drop`].
pub(super) fn inputs(stage: Stage, first: &Entry, later: &Entry) -> Result<[Given; 6], Refusal> {
    let ([p1, t1, b1], [p2, t2, b2]) = (state(stage, first, FIRST)?, state(stage, later, LATER)?);
    Ok([p1, t1, b1, p2, t2, b2])
}

/// [`drop`] in floats, kPa.
pub(super) fn loss(stage: Stage, [p1, t1, b1, p2, t2, b2]: [f64; 6]) -> f64 {
    let lost = absolute(stage, p1, b1) - absolute(stage, p2, b2) * t1 / t2;
    if stage == Stage::Vacuum { -lost } else { lost }
}

/// How much a closed case changes for each kelvin, kPa: P/T, absolute.
///
/// # Errors
/// [`Refusal`] for a quantity that cannot be.
pub fn per_kelvin(
    pressure: &Reading,
    barometer: &Reading,
    case: &Reading,
) -> Result<Figure, Refusal> {
    let given = [
        pressure.given(key!("pressure"), Unit::Kilopascal)?,
        barometer.above_zero(key!("barometer"), Unit::Kilopascal)?,
        case.given(key!("case"), Unit::Kelvin)?,
    ];
    evaluate("change for each kelvin", KILOPASCAL, &given, &|[gauge, barometer, case]| {
        (gauge + barometer) / case
    })
}
