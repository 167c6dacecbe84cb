//! The questions that can be asked about a case.

use measure::{Band, Decimal};

use crate::advice::{Advice, Choice, Prediction, Status};
use crate::case::Case;
use crate::case_error::CaseError;
use crate::choose::{choice, choose};
use crate::model::Model;

/// Which packs to fit next.
///
/// # Errors
/// [`CaseError`] for a case that makes no sense.
pub fn advise(case: &Case) -> Result<Advice, CaseError> {
    let model = Model::of(case)?;
    let outcome = choose(case, &model);
    let status = Status::Fit;
    let choice = match outcome {
        Some(outcome) => outcome.choice,
        None => choice(case, &model, model.last.clone()),
    };
    Ok(Advice {
        status,
        packs: choice.packs,
        opens: choice.opens,
        minutes: choice.minutes,
        predicted: choice.predicted,
        probability: choice.probability,
        others: Vec::new(),
        alarms: Vec::new(),
        buy: Vec::new(),
        conflicts: Vec::new(),
        need: Vec::new(),
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
    Ok(choice(case, &model, packs.to_vec()))
}
