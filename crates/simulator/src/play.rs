//! One gearcase, dry build after dry build, until every check is in band.

use gearing::advice::{Advice, Alarm, Cause};
use gearing::case::{Case, Trial};
use gearing::{CaseError, advise, evaluate};
use measure::{Band, Decimal, Series};

use crate::dice::Dice;
use crate::gearcase::Gearcase;
use crate::mechanic;

/// Builds after which anyone gives up.
pub const MOST_BUILDS: usize = 12;

/// Who says which packs come next.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Policy {
    /// [`gearing::advise`], which learns from every build.
    Advice,
    /// One position at a time, a millimetre for a millimetre.
    OneByOne,
}

/// How a gearcase went.
#[derive(Clone, Debug, PartialEq)]
pub struct Played {
    /// Dry builds, the first one counted.
    pub builds: usize,
    /// Whether every check came into band.
    pub finished: bool,
    /// Every build after the first.
    pub corrections: Vec<Correction>,
}

/// One build after the first.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Correction {
    /// The probability that [`gearing`] gave it beforehand of bringing every check into band.
    pub probability: f64,
    /// Whether it did.
    pub landed: bool,
    /// Whether the readings raised the alarm that something is not as planned.
    pub alarmed: bool,
}

/// Sets up a gearcase from its first build on.
///
/// # Errors
/// Only if the simulator drew a case that makes no sense.
pub fn play(
    gearcase: &Gearcase,
    first: &Trial,
    policy: Policy,
    dice: &mut Dice,
) -> Result<Played, CaseError> {
    let mut case = gearcase.case(std::slice::from_ref(first));
    let bands = gearing::bands(&case)?;
    let mut played =
        Played { builds: 1, finished: in_band(first, &bands), corrections: Vec::new() };
    while !played.finished && played.builds < MOST_BUILDS {
        let (packs, probability) = match policy {
            Policy::Advice => {
                let Advice { packs, probability, .. } = advise(&case)?;
                (packs, probability)
            }
            Policy::OneByOne => {
                let Some(packs) = mechanic::correct(&case, &bands) else { break };
                let probability = evaluate(&case, &packs)?.probability;
                (packs, probability)
            }
        };
        case = next(gearcase, &case, &packs, dice);
        played.builds += 1;
        played.finished = case.trials.last().is_some_and(|trial| in_band(trial, &bands));
        let alarmed = policy == Policy::Advice && surprise(&advise(&case)?).is_some();
        played.corrections.push(Correction { probability, landed: played.finished, alarmed });
    }
    Ok(played)
}

/// The case after one more build.
fn next(gearcase: &Gearcase, case: &Case, packs: &[Vec<Decimal>], dice: &mut Dice) -> Case {
    let built = gearcase.build(packs, None, dice);
    gearcase.case(&[&case.trials[..], &[built]].concat())
}

/// Whether every mean lies in its band.
pub(crate) fn in_band(trial: &Trial, bands: &[Band]) -> bool {
    trial.readings.iter().zip(bands).all(|(readings, band)| {
        Series::new(readings.clone()).is_ok_and(|series| band.contains(series.mean()))
    })
}

/// The causes of a surprise, if there is one.
pub(crate) fn surprise(advice: &Advice) -> Option<&[Cause]> {
    advice.alarms.iter().find_map(|alarm| match alarm {
        Alarm::Surprise { causes, .. } => Some(&causes[..]),
        _ => None,
    })
}
