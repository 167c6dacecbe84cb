//! Leak rate: pascal cubic metres a second, standard cubic centimetres a minute, moles.

use measure::Unit;
use words::key;

use super::{Entry, Stage, gas};
use crate::formula::evaluate;
use crate::{Figure, Given, Reading, Refusal};

/// Molar gas constant, J/(mol·K): exact since 2019 (SI brochure, 9th edition).
const GAS_CONSTANT: f64 = 8.314_462_618_153_24;

/// Standard pressure, kPa.
const STANDARD_PRESSURE: f64 = 101.325;

/// At which temperature a "standard" cubic centimetre is counted; the pressure is 101.325 kPa.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Reference {
    /// At the temperature of the gas itself.
    AsItIs,
    /// At 0 °C.
    ZeroCelsius,
}

impl Reference {
    /// The unit with its reference, for no such figure may stand without it.
    pub fn unit(self) -> &'static str {
        match self {
            Reference::AsItIs => "cm³/min at 101.325 kPa and the gas's temperature",
            Reference::ZeroCelsius => "cm³/min at 101.325 kPa and 0 °C",
        }
    }
}

/// Leak rate Q = V·ΔP/Δt, in Pa·m³/s at the first temperature; above zero is a leak.
///
/// ΔP is the corrected [`drop`](super::drop). 1 Pa·m³/s is 10 mbar·L/s.
///
/// # Errors
/// [`Refusal`] for a volume or time of zero or less.
pub fn rate(
    stage: Stage,
    volume: &Reading,
    first: &Entry,
    later: &Entry,
) -> Result<Figure, Refusal> {
    let given = inputs(stage, volume, first, later)?;
    // kPa·L/s and Pa·m³/s are the same.
    evaluate("leak rate", "Pa·m³/s", &given, &|[p1, t1, b1, p2, t2, b2, volume, time]| {
        volume * gas::loss(stage, [p1, t1, b1, p2, t2, b2]) / time
    })
}

/// The amount of gas lost each second, mol/s: (V/R)·(P₁/T₁ − P₂/T₂)/Δt; for vacuum, gained.
///
/// # Errors
/// As [`rate`].
pub fn molar_flow(
    stage: Stage,
    volume: &Reading,
    first: &Entry,
    later: &Entry,
) -> Result<Figure, Refusal> {
    let given = inputs(stage, volume, first, later)?;
    evaluate("gas lost", "mol/s", &given, &|[p1, t1, b1, p2, t2, b2, volume, time]| {
        volume * gas::loss(stage, [p1, t1, b1, p2, t2, b2]) / (GAS_CONSTANT * t1 * time)
    })
}

/// A leak rate in standard cubic centimetres a minute, with its reference in the unit.
///
/// # Errors
/// [`Refusal`] for a temperature that cannot be.
///
/// ```
/// use measure::{Decimal, Unit, round};
/// use workshop::{Reading, leak::{Reference, standard_flow}};
/// // 1 Pa·m³/s = 592.154 cm³/min at 101.325 kPa and the gas's own temperature (own arithmetic,
/// // 60·10⁶/101325).
/// let room = Reading::exact(Decimal::from(20), Unit::Celsius);
/// let one = workshop::Figure { value: Decimal::ONE, unit: "Pa·m³/s", uncertainty: Default::default() };
/// let flow = standard_flow(&one, &room, Reference::AsItIs).unwrap();
/// assert_eq!(round(flow.value, 3), Decimal::new(592_154, 3));
/// ```
pub fn standard_flow(
    rate: &Figure,
    gas: &Reading,
    reference: Reference,
) -> Result<Figure, Refusal> {
    let given = [rate.given("leak rate"), gas.given("gas temperature", Unit::Kelvin)?];
    evaluate("standard flow", reference.unit(), &given, &|[rate, kelvin]| {
        let as_it_is = rate * 60e3 / STANDARD_PRESSURE;
        match reference {
            Reference::AsItIs => as_it_is,
            Reference::ZeroCelsius => as_it_is * 273.15 / kelvin,
        }
    })
}

/// The six inputs of the loss, the volume and the time.
fn inputs(
    stage: Stage,
    volume: &Reading,
    first: &Entry,
    later: &Entry,
) -> Result<[Given; 8], Refusal> {
    let [p1, t1, b1, p2, t2, b2] = gas::inputs(stage, first, later)?;
    let volume = volume.above_zero("volume of air", Unit::Litre)?;
    Ok([p1, t1, b1, p2, t2, b2, volume, lasted(first, later)?])
}

/// Time from one line of the log to a later one, seconds.
pub(super) fn lasted(first: &Entry, later: &Entry) -> Result<Given, Refusal> {
    let seconds = |entry: &Entry| {
        Reading { amount: entry.at, standard: 0.0 }.given(key!("time"), Unit::Second)
    };
    let (from, to) = (seconds(first)?, seconds(later)?);
    if to.value <= from.value {
        return Err(Refusal::NotMore {
            what: key!("time"),
            found: to.value,
            than: "line before it",
            least: from.value,
            unit: "s",
            act: "log each line after the one before",
        });
    }
    Ok(Given { value: to.value - from.value, ..to })
}
