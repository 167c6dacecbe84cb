//! The questions that can be asked about a case.

use measure::{Band, Decimal, real};

use crate::advice::{Advice, Alarm, Choice, Prediction, Status};
use crate::case::Case;
use crate::case_error::CaseError;
use crate::causes::surprise;
use crate::choose::{choice, choose, choose_unlikely, fits};
use crate::conflict::conflicts;
use crate::model::Model;
use crate::reading_model::bit;
use crate::{buy, status, validate};

/// Packs less likely than this are not worth knowing.
const WORTH_KNOWING: f64 = 0.05;
/// Positions whose every set is looked at.
const MOST_SETS: usize = 6;

/// Below this the packs are more likely to miss than to land.
const DOUBTFUL: f64 = 0.5;

/// Which packs to fit next.
///
/// # Errors
/// [`CaseError`] for a case that makes no sense.
pub fn advise(case: &Case) -> Result<Advice, CaseError> {
    let model = Model::of(case)?;
    let as_it_is = || choice(case, &model, model.last.clone());
    let mut alarms = surprise(case)?;
    alarms.extend(status::alarms(case, &model));

    let need = status::needed(case);
    if !need.is_empty() {
        return Ok(Advice { need, ..answer(Status::NeedReading, as_it_is(), alarms) });
    }
    if status::all_in_band(case, &model) {
        return Ok(answer(Status::Done, as_it_is(), alarms));
    }
    let chosen = choose(case, &model)?;
    if chosen.as_ref().is_some_and(|chosen| in_band(&model, chosen)) || fits(case, &model)? {
        let chosen = chosen.unwrap_or_else(|| choose_unlikely(case, &model));
        let mut buy = Vec::new();
        if chosen.probability < DOUBTFUL {
            alarms.push(Alarm::Doubtful);
            buy = buy::one_better(case, &model, chosen.probability)?;
        }
        return Ok(Advice { buy, ..answer(Status::Fit, chosen, alarms) });
    }
    let conflicts = conflicts(case, &model);
    if !conflicts.is_empty() {
        return Ok(Advice { conflicts, ..answer(Status::Conflict, as_it_is(), alarms) });
    }
    let chosen = chosen.unwrap_or_else(|| choose_unlikely(case, &model));
    let buy = buy::fewest(case, &model)?;
    Ok(Advice { buy, ..answer(Status::StockShort, chosen, alarms) })
}

/// Advice to fit some packs.
fn answer(status: Status, choice: Choice, alarms: Vec<Alarm>) -> Advice {
    Advice {
        status,
        packs: choice.packs,
        opens: choice.opens,
        minutes: choice.minutes,
        predicted: choice.predicted,
        probability: choice.probability,
        alarms,
        buy: Vec::new(),
        conflicts: Vec::new(),
        need: Vec::new(),
    }
}

/// Whether some packs put every mean inside its band.
fn in_band(model: &Model, choice: &Choice) -> bool {
    choice.predicted.iter().zip(&model.bands).all(|(prediction, band)| {
        let [low, high] = [band.low(), band.high()].map(real::from_decimal);
        prediction.is_some_and(|prediction| (low..=high).contains(&prediction.mean))
    })
}

/// The band of each check at the arm used, its aim inside.
///
/// # Errors
/// [`CaseError`] for a case that makes no sense.
pub fn bands(case: &Case) -> Result<Vec<Band>, CaseError> {
    Ok(Model::of(case)?.bands)
}

/// What each gauge will read with these packs, one for each position; `None` for a check that was
/// never read.
///
/// # Errors
/// [`CaseError`] for a case that makes no sense.
pub fn predict(case: &Case, packs: &[Vec<Decimal>]) -> Result<Vec<Option<Prediction>>, CaseError> {
    Ok(evaluate(case, packs)?.predicted)
}

/// What these packs would give, one for each position.
///
/// # Errors
/// [`CaseError`] for a case that makes no sense.
pub fn evaluate(case: &Case, packs: &[Vec<Decimal>]) -> Result<Choice, CaseError> {
    let model = Model::of(case)?;
    validate::packs(case, packs)?;
    Ok(choice(case, &model, packs.to_vec()))
}

/// Other packs worth knowing: for each other set of positions to open, what it would reach; the
/// likeliest first. Sets that reach no more than fewer minutes do are left out.
///
/// Each is found exactly, as if the other positions were frozen.
///
/// # Errors
/// [`CaseError`] for a case that makes no sense.
pub fn others(case: &Case) -> Result<Vec<Choice>, CaseError> {
    let model = Model::of(case)?;
    if !status::needed(case).is_empty() {
        return Ok(Vec::new());
    }
    let chosen = choose(case, &model)?;
    let open: Vec<&String> =
        case.positions.iter().map(|p| &p.id).filter(|id| !case.frozen.contains(id)).collect();
    let mut found: Vec<Choice> = chosen.iter().cloned().collect();
    for opened in 0_u16..1 << open.len().min(MOST_SETS) {
        let kept = open.iter().enumerate().filter(|(index, _)| opened & bit(*index) == 0);
        let kept = kept.map(|(_, id)| (*id).clone());
        let frozen = case.frozen.iter().cloned().chain(kept).collect();
        found.extend(choose(&Case { frozen, ..case.clone() }, &model)?);
    }
    found.sort_by(|a, b| b.probability.total_cmp(&a.probability).then(a.minutes.cmp(&b.minutes)));
    let mut kept: Vec<Choice> = Vec::new();
    for (index, choice) in found.iter().enumerate() {
        let better = |other: &Choice| {
            other.minutes < choice.minutes && other.probability >= choice.probability
        };
        let again = kept.iter().chain(&chosen).any(|other| other.packs == choice.packs);
        if !again && choice.probability >= WORTH_KNOWING && !found.iter().take(index).any(better) {
            kept.push(choice.clone());
        }
    }
    Ok(kept)
}
