//! How sure the thickness of a pack is.

use measure::{Decimal, Typed, Unit, real};

use crate::{FittedShim, Tin};

/// What stands after "±" of a pack's thickness, mm: twice its standard uncertainty.
///
/// Each shim has the step of its micrometer readings, rectangular, at one or two places; the
/// micrometer's zero is the same error in every shim, so it counts as often as there are shims.
///
/// ```
/// # use job::{FittedShim, Tin, pack_spread};
/// # use measure::{Sign, Typed, Unit};
/// let shim = |text| FittedShim::Measured(Typed::parse(text, Unit::Millimetre, Sign::Any).unwrap());
/// // Two shims to 0.01 mm: 2 · √2 · 0.01/√12.
/// let spread = pack_spread(&Tin::default(), &[shim("0.50"), shim("0.10")]);
/// assert_eq!(spread.to_string(), "0.008165");
/// ```
pub fn pack_spread(tin: &Tin, shims: &[FittedShim]) -> Decimal {
    let (mut own, mut zero) = (0.0, 0.0);
    for shim in shims {
        match shim {
            FittedShim::Measured(net) => own += rectangular(net).powi(2),
            FittedShim::FromTin { shim, .. } => {
                let Some(shim) = tin.shim(shim) else { continue };
                let [one, other] = &shim.places;
                own += (rectangular(one).powi(2) + rectangular(other).powi(2)) / 4.0;
                // The same micrometer read it: "0" is written shorter, not read coarser.
                zero += rectangular(&shim.zero).min(rectangular(one));
            }
        }
    }
    crate::reading::length(2.0 * (own + zero * zero).sqrt())
}

/// Standard uncertainty of one step of the last digit typed, mm.
fn rectangular(typed: &Typed) -> f64 {
    let step = typed.step();
    let step = step.to(Unit::Millimetre).map_or(step.value, |step| step.value);
    real::from_decimal(step) / 12f64.sqrt()
}
