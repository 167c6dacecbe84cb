//! A case with what its trials teach: predictions and probabilities.

use measure::{Band, Decimal, normal, real};

use crate::advice::Prediction;
use crate::case::{Case, CheckKind, Trial};
use crate::case_error::{CaseError, Fault};
use crate::effect::band_at_arm;
use crate::learn::learn;
use crate::reading_model::{ReadingModel, bit};
use crate::validate::validate;

/// The bands at the arm and what the trials teach about each check.
#[derive(Clone, Debug)]
pub(crate) struct Model {
    /// Bands at the arm used.
    pub bands: Vec<Band>,
    /// One for each check; `None` where it was never read.
    pub readings: Vec<Option<ReadingModel>>,
    /// The same while a trapped gear keeps its end play; `None` where that makes no difference.
    pub with_play: Vec<Option<ReadingModel>>,
    /// The packs of the last trial.
    pub last: Vec<Vec<Decimal>>,
}

impl Model {
    /// Checks a case and learns from all its trials.
    pub fn of(case: &Case) -> Result<Model, CaseError> {
        validate(case)?;
        Model::from_trials(case, &case.trials)
    }

    /// Learns from some trials of a case that has been checked.
    pub fn from_trials(case: &Case, trials: &[Trial]) -> Result<Model, CaseError> {
        let broken = || CaseError::new("trials", Fault::Unlearnable);
        let readings = learn(case, trials).ok_or_else(broken)?;
        Ok(Model {
            bands: bands_of(case)?,
            with_play: readings.iter().map(|model| model.as_ref()?.with_play()).collect(),
            readings,
            last: trials.last().map(|trial| trial.packs.clone()).ok_or_else(broken)?,
        })
    }

    /// The readings to expect with these changes of the packs.
    pub fn predict_change(&self, change: &[f64], changed: u16) -> Vec<Option<Prediction>> {
        let predict = |(model, band): (&Option<ReadingModel>, &Band)| {
            let model = model.as_ref()?;
            let (mean, sigma) = (model.mean(change), model.sigma(change, changed));
            let [low, high] = [band.low(), band.high()].map(real::from_decimal);
            let probability = normal::interval((low - mean) / sigma, (high - mean) / sigma);
            Some(Prediction { mean, sigma, probability })
        };
        self.readings.iter().zip(&self.bands).map(predict).collect()
    }

    /// Changes of the totals, mm, and the mask of the packs that are others.
    pub fn change(&self, packs: &[Vec<Decimal>]) -> (Vec<f64>, u16) {
        let mut mask = 0;
        let mut change = Vec::with_capacity(packs.len());
        for (position, (pack, last)) in packs.iter().zip(&self.last).enumerate() {
            let [total, before] = [pack, last].map(|pack| pack.iter().sum::<Decimal>());
            change.push(real::from_decimal(total - before));
            if !same_shims(pack, last) {
                mask |= bit(position);
            }
        }
        (change, mask)
    }
}

/// Whether two packs hold the same shims, in whatever order.
pub(crate) fn same_shims(a: &[Decimal], b: &[Decimal]) -> bool {
    let sorted = |pack: &[Decimal]| {
        let mut pack = pack.to_vec();
        pack.sort();
        pack
    };
    sorted(a) == sorted(b)
}

/// The band of each check at the arm used, its aim inside.
fn bands_of(case: &Case) -> Result<Vec<Band>, CaseError> {
    let band = |(index, check)| {
        let fault = || {
            let found = case.arm.radius;
            let most = Decimal::from(1000);
            CaseError::new("arm.radius", Fault::OutOfRange { found, least: Decimal::ZERO, most })
        };
        let [low, high, aim] = band_at_arm(case, check).ok_or_else(fault)?;
        let band = Band::new(low, high).and_then(|band| band.with_aim(aim));
        let unusable =
            |_| CaseError::new(format!("checks[{index}].low"), Fault::LowAboveHigh { low, high });
        band.map_err(unusable)
    };
    case.checks.iter().enumerate().map(band).collect()
}

/// Labour to change the packs of a mask, minutes: each position once, with those that come apart
/// on the way.
pub(crate) fn minutes(case: &Case, changed: u16) -> u32 {
    let mut opened = changed;
    loop {
        let mut grown = opened;
        for (index, position) in case.positions.iter().enumerate() {
            if opened & bit(index) == 0 {
                continue;
            }
            for (other, candidate) in case.positions.iter().enumerate() {
                if position.after.contains(&candidate.id) {
                    grown |= bit(other);
                }
            }
        }
        if grown == opened {
            break;
        }
        opened = grown;
    }
    let open = case.positions.iter().enumerate().filter(|(index, _)| opened & bit(*index) != 0);
    open.map(|(_, position)| position.open_minutes).sum()
}

/// Whether a check is one where a higher reading is the looser one.
pub(crate) fn loose_high(kind: &CheckKind) -> bool {
    !matches!(kind, CheckKind::DepthGap { .. })
}
