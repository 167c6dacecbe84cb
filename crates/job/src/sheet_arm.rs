//! A unit sheet's limits, and how they are carried to the arm.

use gearing::case::{Arm, Driven, Gears, Shaft};
use measure::{Band, Decimal, Unit};

use crate::{ArmShaft, Check, Field, Sheet, field, plan};

impl Sheet {
    /// The limits of a check as typed, in [`Check::unit`], with their aim; `None` while one is missing or they make
    /// no band.
    pub fn band(&self, check: Check) -> Option<Band> {
        let (low, high, aim) = field::limits(check);
        let in_unit = |field| self.number(field).map(|typed| typed.in_unit(check.unit()));
        let band = Band::new(in_unit(low)?, in_unit(high)?).ok()?;
        match aim.and_then(in_unit) {
            Some(aim) => band.with_aim(aim).ok(),
            None => Some(band),
        }
    }

    /// The limits of a check at the sheet's arm, mm: a backlash band is carried there from its
    /// radius.
    pub fn band_at_arm(&self, check: Check) -> Option<Band> {
        if check.has_arm() { self.band_at(check, &self.arm(check)?) } else { self.band(check) }
    }

    /// The limits of a backlash at some arm, mm.
    pub(crate) fn band_at(&self, check: Check, to: &Arm) -> Option<Band> {
        let (band, gears, from) = (self.band(check)?, self.gears()?, self.sheet_arm(check)?);
        let carried = |limit| gearing::backlash::carried(limit, &gears, &from, to);
        Band::new(carried(band.low())?, carried(band.high())?).ok()
    }

    /// What a reading at the sheet's arm is multiplied by to be one at another arm; 1 without arms.
    pub(crate) fn lever(&self, check: Check, to: Option<&Arm>) -> Decimal {
        let lever = || {
            let (gears, from) = (self.gears()?, self.arm(check)?);
            gearing::backlash::carried(Decimal::ONE, &gears, &from, to?)
        };
        lever().unwrap_or(Decimal::ONE)
    }

    /// The gears, once their teeth and the pinion's radius are typed.
    pub(crate) fn gears(&self) -> Option<Gears> {
        let driven = plan::checks(self.layout())
            .iter()
            .filter_map(|check| match check {
                Check::Lash(mesh) => Some((check.part(), Field::Teeth(*mesh))),
                _ => None,
            })
            .filter_map(|(id, field)| Some(Driven { id: id.to_owned(), teeth: self.count(field)? }))
            .collect();
        Some(Gears {
            pinion_teeth: self.count(Field::PinionTeeth)?,
            pinion_pitch_radius: self.millimetres(Field::PinionRadius)?,
            driven,
            normal_pressure_angle: self.degrees(Field::PressureAngle),
            spiral_angle: self.degrees(Field::SpiralAngle),
            shaft_angle: Decimal::from(90),
        })
    }

    /// The arm a check is read on, as the sheet says.
    pub(crate) fn arm(&self, check: Check) -> Option<Arm> {
        let on = ArmShaft::named(self.word(Field::ArmShaft)?)?;
        arm(check, self.millimetres(Field::ArmRadius)?, on)
    }

    /// Where the sheet's backlash band holds.
    pub(crate) fn sheet_arm(&self, check: Check) -> Option<Arm> {
        let (radius, shaft) = field::band_at(check)?;
        arm(check, self.millimetres(radius)?, ArmShaft::named(self.word(shaft)?)?)
    }

    /// Whether the limits of a check are those of a preload, which no gauge reads.
    pub fn is_preload(&self, check: Check) -> bool {
        matches!(check, Check::Setting(_))
            && self.band(check).is_some_and(|band| band.high() <= Decimal::ZERO)
    }

    fn degrees(&self, field: Field) -> Option<Decimal> {
        self.number(field).map(|typed| typed.in_unit(Unit::Degree))
    }
}

/// An arm of a check: on the propshaft it turns with the gear in mesh.
pub(crate) fn arm(check: Check, radius: Decimal, on: ArmShaft) -> Option<Arm> {
    let on = match on {
        ArmShaft::Driveshaft => Shaft::Pinion,
        ArmShaft::Propshaft => Shaft::Driven(check.gear()?.to_owned()),
    };
    Some(Arm { radius, on })
}
