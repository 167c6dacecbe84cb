//! A series of readings judged against its band.

use gearing::case::Arm;
use measure::{Band, Decimal, Series, Typed, Uncertainty, Unit, judge, near_width, real};

use crate::{ArmShaft, Check, CheckState, Reading, Sheet, sheet_arm};

/// A series with its verdict, in [`Check::unit`] as the gauge reads it, at the arm it was read on.
#[derive(Clone, Debug, PartialEq)]
pub struct Judged {
    /// The readings in the order taken.
    pub readings: Vec<Decimal>,
    /// Their mean.
    pub mean: Decimal,
    /// Largest less smallest.
    pub spread: Decimal,
    /// What stands after "±": twice the standard uncertainty.
    pub expanded: Decimal,
    /// What the uncertainty is made of: names with standard uncertainties, mm.
    pub parts: Vec<(String, f64)>,
    /// The band at this arm.
    pub band: Option<Band>,
    /// How far inside a limit a mean must lie to be proven.
    pub near: Decimal,
    /// The verdict: in band, near limit, out, cannot prove, tight spot; no band without one.
    pub state: CheckState,
    /// A preload worked out from the play that was read before the packs were changed.
    pub worked_out: bool,
}

/// Lengths worked out in floating point are kept to a millionth of a millimetre.
pub(crate) const PLACES: u32 = 6;

/// Judges a series of a check; `None` without a reading.
///
/// The uncertainty is made of the scatter of the mean, the step of the finest reading, and for a
/// backlash the arm's radius, known to half the last digit typed (model of the set-up, R1.2).
pub(crate) fn judged(
    sheet: &Sheet,
    check: Check,
    values: &[Typed],
    arm: Option<(&Typed, ArmShaft)>,
) -> Option<Judged> {
    let readings = values.iter().map(|value| value.in_unit(check.unit())).collect();
    let series = Series::new(readings).ok()?;
    let mut uncertainty = Uncertainty::default();
    if let Some(deviation) = series.deviation() {
        uncertainty = uncertainty.repeatability(deviation, values.len());
    }
    let step = step(check, values)?;
    uncertainty = uncertainty.resolution(real::from_decimal(step));
    if let (true, Some((radius, _))) = (check.has_arm(), arm) {
        let share = real::from_decimal(millimetres(radius.step()))
            / 2.0
            / real::from_decimal(radius.in_unit(Unit::Millimetre));
        uncertainty =
            uncertainty.rectangular("arm radius", share * real::from_decimal(series.mean()));
    }
    let band = match arm {
        Some((radius, on)) if check.has_arm() => {
            let radius = radius.in_unit(Unit::Millimetre);
            sheet_arm::arm(check, radius, on).and_then(|arm| sheet.band_at(check, &arm))
        }
        _ if check.has_arm() => None,
        _ => sheet.band(check),
    };
    let u = uncertainty.standard();
    let state = band.map_or(CheckState::NoBand, |band| {
        let state = CheckState::from(judge(series.mean(), u, &band).verdict);
        let is_tight = check.has_arm() && series.min() < band.low();
        if is_tight && state != CheckState::Out { CheckState::TightSpot } else { state }
    });
    Some(Judged {
        readings: series.values().to_vec(),
        mean: series.mean(),
        spread: series.spread(),
        expanded: length(uncertainty.expanded()),
        parts: uncertainty.parts().to_vec(),
        band,
        near: length(near_width(u)),
        state,
        worked_out: false,
    })
}

impl Reading {
    /// The series judged; `None` without a reading.
    pub fn judged(&self, sheet: &Sheet) -> Option<Judged> {
        judged(sheet, self.check, &self.values, self.arm.as_ref().zip(self.on))
    }

    /// The arm it was read on.
    pub(crate) fn arm(&self) -> Option<Arm> {
        let radius = self.arm.as_ref()?.in_unit(Unit::Millimetre);
        sheet_arm::arm(self.check, radius, self.on?)
    }

    /// The readings carried to another arm, mm.
    pub(crate) fn carried(&self, sheet: &Sheet, to: Option<&Arm>) -> Option<Vec<Decimal>> {
        let Some(to) = to.filter(|_| self.check.has_arm()) else {
            return Some(self.millimetres());
        };
        let (gears, from) = (sheet.gears()?, self.arm()?);
        if from == *to {
            return Some(self.millimetres());
        }
        let carried = |reading| gearing::backlash::carried(reading, &gears, &from, to);
        self.millimetres().into_iter().map(carried).collect()
    }
}

/// The finest step of the readings, in the check's unit: whoever writes 0.5 after 0.45 has left out a zero.
pub(crate) fn step(check: Check, values: &[Typed]) -> Option<Decimal> {
    let in_unit = |amount: measure::Amount| {
        amount.to(check.unit()).map_or(amount.value, |amount| amount.value)
    };
    values.iter().map(|value| in_unit(value.step())).min()
}

/// A length that was worked out in floating point.
pub(crate) fn length(real: f64) -> Decimal {
    real::to_decimal(real, PLACES).unwrap_or_default()
}

fn millimetres(amount: measure::Amount) -> Decimal {
    amount.to(Unit::Millimetre).map_or(amount.value, |amount| amount.value)
}
