//! Gear lube: what went in against what should, and what came out.

use measure::{Amount, Decimal, Judgement, Unit};
use words::key;

use crate::formula::evaluate;
use crate::{Basis, Caution, Explanation, Figure, Given, Reading, Refusal};

/// How much oil grows for each kelvin, 10⁻⁴: 7, that is 0.07 %. Common practice, no source.
pub const EXPANSION: Decimal = Decimal::from_parts(7, 0, 0, false, 4);

/// A fill, from the bottom up.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fill {
    /// What went in.
    pub volume: Reading,
    /// What the manual rates.
    pub rated: Reading,
    /// How far the fill may be off, as limits on the fill in % of rated; within 5 % is common practice.
    pub limits: PercentLimits,
    /// Time since the last oil went in.
    pub rested: Amount,
    /// How long the manual lets it rest before the level is read; 10 to 30 min is common practice.
    pub rest: Amount,
}

/// Percent of rated, low and high.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PercentLimits {
    /// No less.
    pub low: Decimal,
    /// No more.
    pub high: Decimal,
}

/// What a fill means.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Meaning {
    /// The level is not steady before the rest is over.
    StillResting,
    /// As rated.
    AsRated,
    /// An air pocket, or the wrong level plug.
    AirPocketOrPlug,
    /// Oil or water was left in, or it is another model.
    LeftInOrOtherModel,
    /// Too near a limit to say.
    ReadAgain,
}

/// What the fill says.
#[derive(Clone, Debug, PartialEq)]
pub struct Answer {
    /// Share of rated, %.
    pub share: Figure,
    /// Verdict on the share.
    pub judgement: Judgement,
    /// What it means.
    pub meaning: Meaning,
    /// Rest still to wait, seconds; zero once over.
    pub left_to_rest: Decimal,
    /// What to say with it.
    pub caution: Caution,
    /// How it was reckoned.
    pub explanation: Explanation,
}

/// Compares a fill with what is rated.
///
/// # Errors
/// [`Refusal`] for a rated volume of zero or less, limits that make no band.
pub fn examine(fill: &Fill) -> Result<Answer, Refusal> {
    let given = [
        fill.volume.not_negative("volume in", Unit::Millilitre)?,
        fill.rated.above_zero("rated volume", Unit::Millilitre)?,
    ];
    let share = evaluate("share of rated", "%", &given, &|[volume, rated]| 100.0 * volume / rated)?;
    let PercentLimits { low, high } = fill.limits;
    let band = measure::Band::new(low, high)
        .map_err(|why| Refusal::Limits { what: "fill limits", why })?;
    let judgement = measure::judge(share.value, share.standard(), &band);
    let seconds = |what, amount| Reading { amount, standard: 0.0 }.not_negative(what, Unit::Second);
    let left = seconds(key!("rest"), fill.rest)?.value - seconds("time rested", fill.rested)?.value;
    let left_to_rest = left.max(Decimal::ZERO);
    let meaning = match judgement.verdict {
        _ if left_to_rest > Decimal::ZERO => Meaning::StillResting,
        measure::Verdict::InBand => Meaning::AsRated,
        measure::Verdict::Out if share.value < low => Meaning::AirPocketOrPlug,
        measure::Verdict::Out => Meaning::LeftInOrOtherModel,
        measure::Verdict::NearLimit | measure::Verdict::CannotProve => Meaning::ReadAgain,
    };
    Ok(Answer {
        judgement,
        meaning,
        left_to_rest,
        caution: Caution::OilOnWater,
        explanation: Explanation {
            formula: "share = volume in / rated",
            given: given.to_vec(),
            basis: Basis::Derived("a share of the rated volume"),
        },
        share,
    })
}

/// How much a volume grows, mL: V·γ·ΔT with γ = 0.07 %/K (common practice, no source).
///
/// # Errors
/// [`Refusal`] for a volume of zero or less or a temperature that cannot be.
///
/// ```
/// use measure::{Decimal, Unit};
/// use workshop::{Reading, lube::expansion};
/// // 1000 mL from 20 to 60 °C: 28 mL (by hand).
/// let celsius = |value| Reading::exact(Decimal::from(value), Unit::Celsius);
/// let litre = Reading::exact(Decimal::ONE, Unit::Litre);
/// assert_eq!(expansion(&litre, &celsius(20), &celsius(60)).unwrap().value, Decimal::from(28));
/// ```
pub fn expansion(volume: &Reading, cold: &Reading, warm: &Reading) -> Result<Figure, Refusal> {
    let given = [
        volume.above_zero(key!("volume"), Unit::Millilitre)?,
        cold.given(key!("cold"), Unit::Kelvin)?,
        warm.given(key!("warm"), Unit::Kelvin)?,
        Given { name: key!("expansion"), value: EXPANSION, unit: "1/K", standard: 0.0 },
    ];
    evaluate(key!("growth"), "mL", &given, &|[volume, cold, warm, gamma]| {
        volume * gamma * (warm - cold)
    })
}

/// Water seen in the drained oil.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Water {
    /// Clear.
    None,
    /// Pale and frothed just after a run: let it stand and look again.
    FrothedAfterRun,
    /// Drops at the bottom after standing.
    Settled,
    /// Milky.
    Milky,
}

/// Metal on the magnet and in the drained oil.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Metal {
    /// None.
    None,
    /// Grey paste or fine hairs.
    Paste,
    /// Slivers, chunks, anything like a pencil's tip.
    Chunks,
}

/// What to do after a drain. Common practice, no source.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Drain {
    /// Nothing out of the common.
    Common,
    /// Let the jar stand, then look again.
    LetStand,
    /// Water comes in: leak test before anything else, and do not run it.
    FindTheWay,
    /// Strip it.
    Strip,
}

/// Reads the first spoonful and the magnet.
pub fn drained(water: Water, metal: Metal) -> (Drain, &'static [Caution]) {
    match (water, metal) {
        (_, Metal::Chunks) => (Drain::Strip, &[Caution::DoNotRun, Caution::OilOnWater]),
        (Water::Settled | Water::Milky, _) => {
            (Drain::FindTheWay, &[Caution::DoNotRun, Caution::OilOnWater])
        }
        (Water::FrothedAfterRun, _) => (Drain::LetStand, &[Caution::OilOnWater]),
        (Water::None, Metal::None | Metal::Paste) => (Drain::Common, &[Caution::OilOnWater]),
    }
}
