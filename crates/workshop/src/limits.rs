//! Limits from the unit sheet, and the verdict on a figure.

use measure::{Amount, Band, Decimal, Judgement, Unit, judge};

use crate::{Figure, Reading, Refusal};

/// The limits of the unit's own manual: either, both or none.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Limits {
    /// No less than this.
    pub low: Option<Amount>,
    /// No more than this.
    pub high: Option<Amount>,
}

impl Limits {
    /// No more than this.
    pub fn at_most(high: Amount) -> Limits {
        Limits { low: None, high: Some(high) }
    }

    /// Between these two.
    pub fn between(low: Amount, high: Amount) -> Limits {
        Limits { low: Some(low), high: Some(high) }
    }

    /// Judges a figure by [`measure::judge`]; `None` where there is no limit.
    ///
    /// # Errors
    /// [`Refusal`] for a limit of another quantity, or limits that make no band.
    pub fn judge(
        &self,
        what: &'static str,
        figure: &Figure,
        unit: Unit,
    ) -> Result<Option<Judgement>, Refusal> {
        let in_unit = |limit: Option<Amount>| match limit {
            Some(amount) => {
                Reading { amount, standard: 0.0 }.given(what, unit).map(|g| Some(g.value))
            }
            None => Ok(None),
        };
        let (low, high) = (in_unit(self.low)?, in_unit(self.high)?);
        if low.is_none() && high.is_none() {
            return Ok(None);
        }
        // A side without a limit lies as far off as a number can.
        let band = Band::new(low.unwrap_or(Decimal::MIN), high.unwrap_or(Decimal::MAX))
            .map_err(|why| Refusal::Limits { what, why })?;
        Ok(Some(judge(figure.value, figure.standard(), &band)))
    }
}
