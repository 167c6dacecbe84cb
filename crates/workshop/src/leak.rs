//! Leak test: pressure or vacuum held in the closed case, corrected for temperature and weather.
//!
//! All pressures are worked with as absolute and all temperatures in kelvin. A pass needs the whole
//! time, the shafts turned, the rod moved, and soap without a bubble: a still test can hide a bad lip
//! (common practice), and a gauge sees far less than soap does. What the stages are, how hard and how
//! long, is the unit sheet's.

mod blind;
mod gas;
mod outcome;
mod rate;

pub use blind::{bubbles_a_second, one_bubble_in_ten_seconds};
pub use gas::{corrected, drop, per_kelvin};
pub use outcome::{Answer, Blank, Hose, Missing, Outcome, Point, Test, blank, examine};
pub use rate::{Reference, molar_flow, rate, standard_flow};

use measure::{Amount, Quantity, Unit};
use words::key;

use crate::{Caution, Reading, Refusal};

/// Which way the case is loaded.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Stage {
    /// A little pressure: small leaks show before the lips are forced shut.
    Low,
    /// The working pressure.
    Working,
    /// Vacuum: the lips load the other way.
    Vacuum,
}

/// What the unit sheet asks of one stage.
#[derive(Clone, Debug, PartialEq)]
pub enum Plan {
    /// Do it like this.
    Hold(Hold),
    /// This unit has no such stage, for the reason typed.
    NotApplicable {
        /// The reason: "one-way input seal, manual p. 40".
        because: String,
    },
}

/// One stage to hold.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hold {
    /// Which way.
    pub stage: Stage,
    /// Pressure over, or vacuum under, the air outside.
    pub pressure: Amount,
    /// How long.
    pub time: Amount,
    /// The most that may be lost in that time, corrected.
    pub most_lost: Amount,
    /// Never beyond this.
    pub limit: Amount,
}

/// One line of the log.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Entry {
    /// Time since the clock began.
    pub at: Amount,
    /// The gauge: pressure over, or vacuum under, the air outside; above zero for both.
    pub gauge: Reading,
    /// Temperature of the case.
    pub case: Reading,
    /// The air outside, absolute. Where it was not read again, repeat the first, with an uncertainty
    /// for what the weather may have done: 0.1 kPa is 1 hPa.
    pub barometer: Reading,
}

impl Hold {
    /// Refuses a plan that asks for more than its own limit, or for no time at all.
    ///
    /// # Errors
    /// [`Refusal`], with what to do.
    pub fn checked(&self) -> Result<Hold, Refusal> {
        within(self.limit, self.pressure)?;
        let exact = |amount| Reading { amount, standard: 0.0 };
        exact(self.pressure).above_zero("test pressure", Unit::Kilopascal)?;
        exact(self.time).above_zero("time to hold", Unit::Second)?;
        exact(self.most_lost).above_zero("loss allowed", Unit::Kilopascal)?;
        Ok(*self)
    }

    /// What to say before this stage.
    pub fn cautions(&self) -> &'static [Caution] {
        match self.stage {
            Stage::Low | Stage::Working => {
                &[Caution::StoredPressure, Caution::Temperature, Caution::GaugeIsBlind]
            }
            Stage::Vacuum => {
                &[Caution::VacuumOneWaySeal, Caution::CoolingHidesVacuumLeak, Caution::GaugeIsBlind]
            }
        }
    }
}

/// Refuses a pressure or vacuum beyond the limit, whatever else of the plan is known.
///
/// # Errors
/// [`Refusal::OverPressure`]; [`Refusal::Quantity`] where one of them is no pressure.
pub fn within(limit: Amount, found: Amount) -> Result<(), Refusal> {
    let kilopascal = |what, amount: Amount| {
        let takes = Quantity::Pressure;
        let converted = amount.to(Unit::Kilopascal).map(|converted| converted.value);
        converted.ok_or(Refusal::Quantity { what, found: amount.unit, takes })
    };
    if kilopascal(key!("pressure"), found)? > kilopascal("pressure limit", limit)? {
        return Err(Refusal::OverPressure { found, limit });
    }
    Ok(())
}
