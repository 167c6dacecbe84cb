//! Thread-locker: what it was put on, and how long until it holds.
//!
//! Times come from the product's own label; the round figures of the trade are shown beside them and
//! decide nothing: handling about 10 min, full about 24 h at room temperature, slower on stainless and in
//! the cold, and a release at 230 to 315 °C for the strong kind, above what a case or a seal stands
//! (common practice, no source).

use measure::{Amount, Decimal, Unit};

use crate::{Caution, Reading, Refusal};

/// The metal of the threads.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Metal {
    /// Plain steel, brass: cures fast.
    Active,
    /// Stainless, plated, aluminium oxide: cures slowly.
    Passive,
}

/// A fastener with thread-locker on it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Joint {
    /// Threads degreased and dry.
    pub clean: bool,
    /// Metal of the threads.
    pub metal: Metal,
    /// Primer used.
    pub primed: bool,
    /// Time to full strength, from the label, for these conditions.
    pub full: Amount,
    /// Time since it was tightened.
    pub since: Amount,
    /// Temperature of the joint.
    pub joint: Reading,
    /// Coldest the label gives that time for.
    pub coldest: Amount,
}

/// What to do.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum State {
    /// Take it apart, degrease, start over.
    Clean,
    /// Colder than the label's time is for: warm it, or wait for longer than the clock says.
    TooCold,
    /// Wait.
    Curing,
    /// The label's time has passed.
    Cured,
}

/// State of a joint, seconds left, and what to say with it.
///
/// # Errors
/// [`Refusal`] for a time of zero or less, a temperature that cannot be.
///
/// ```
/// use measure::{Amount, Decimal, Unit};
/// use workshop::{Reading, locker::{Joint, Metal, State, examine}};
/// let hours = |value| Amount { value: Decimal::from(value), unit: Unit::Hour };
/// let celsius = |value| Amount { value: Decimal::from(value), unit: Unit::Celsius };
/// let joint = Joint {
///     clean: true, metal: Metal::Active, primed: false, full: hours(24), since: hours(20),
///     joint: Reading { amount: celsius(21), standard: 1.0 }, coldest: celsius(15),
/// };
/// assert_eq!(examine(&joint).unwrap().0, State::Curing);
/// assert_eq!(examine(&joint).unwrap().1, Decimal::from(4 * 3600));
/// assert_eq!(examine(&Joint { since: hours(24), ..joint }).unwrap().0, State::Cured);
/// ```
pub fn examine(joint: &Joint) -> Result<(State, Decimal, &'static [Caution]), Refusal> {
    let exact = |amount| Reading { amount, standard: 0.0 };
    let full = exact(joint.full).above_zero("time to cure", Unit::Second)?.value;
    let since = exact(joint.since).not_negative("time since", Unit::Second)?.value;
    let celsius = joint.joint.given("joint temperature", Unit::Celsius)?;
    let coldest = exact(joint.coldest).given("coldest on the label", Unit::Celsius)?;
    let left = (full - since).max(Decimal::ZERO);
    let state = if !joint.clean {
        State::Clean
    } else if celsius.value < coldest.value {
        State::TooCold
    } else if left > Decimal::ZERO {
        State::Curing
    } else {
        State::Cured
    };
    Ok((state, left, &[Caution::Chemicals]))
}

impl Joint {
    /// Whether common practice would use a primer here: slow metal and none used.
    pub fn wants_primer(&self) -> bool {
        self.metal == Metal::Passive && !self.primed
    }
}
