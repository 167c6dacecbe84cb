//! Press fits: pressure between two rings, stress in the hub, force to push (Lamé).

use std::f64::consts::PI;
use words::key;

use measure::{Decimal, Unit};

use crate::formula::evaluate;
use crate::{Basis, Caution, Explanation, Figure, Given, Reading, Refusal};

/// How stiff a material is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Elastic {
    /// Modulus of elasticity, GPa.
    pub modulus: Decimal,
    /// Poisson's ratio.
    pub poisson: Decimal,
}

/// Steel: 207 GPa, 0.29 (handbook, from memory).
pub const STEEL: Elastic = Elastic {
    modulus: Decimal::from_parts(207, 0, 0, false, 0),
    poisson: Decimal::from_parts(29, 0, 0, false, 2),
};
/// Aluminium: 71 GPa, 0.33 (handbook, from memory).
pub const ALUMINIUM: Elastic = Elastic {
    modulus: Decimal::from_parts(71, 0, 0, false, 0),
    poisson: Decimal::from_parts(33, 0, 0, false, 2),
};

/// Two rings, one pressed into the other.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Press {
    /// Interference on the **diameter**: race outside less bore inside, both at 20 °C.
    pub interference: Reading,
    /// Bore of the inner ring; zero for a solid shaft.
    pub bore: Reading,
    /// Diameter where they meet.
    pub meeting: Reading,
    /// Outside diameter of the hub or of the metal round the race.
    pub outside: Reading,
    /// Length of the contact.
    pub length: Reading,
    /// Friction coefficient, about 0.1 to 0.2 for clean metal (common practice).
    pub friction: Decimal,
    /// Inner ring or shaft.
    pub inner: Elastic,
    /// Hub.
    pub outer: Elastic,
}

/// What the fit does.
#[derive(Clone, Debug, PartialEq)]
pub struct Answer {
    /// Pressure between them, MPa.
    pub pressure: Figure,
    /// Hoop stress at the hub's bore, MPa.
    pub hub_stress: Figure,
    /// Force to push it home, N, at the end of the stroke.
    pub force: Figure,
    /// Torque before it slips, N·m.
    pub slip_torque: Figure,
    /// What to say with it.
    pub cautions: &'static [Caution],
    /// How it was reckoned.
    pub explanation: Explanation,
}

/// Interference on the diameter: outside of the inner part less the bore it goes into, mm.
///
/// # Errors
/// [`Refusal::NotMore`] where the inner part is not the larger one.
///
/// ```
/// use measure::{Decimal, Unit};
/// use workshop::{Reading, press::interference};
/// // 72.04 in 72.00 mm: 0.04 mm (by hand).
/// let mm = |hundredths| Reading::exact(Decimal::new(hundredths, 2), Unit::Millimetre);
/// assert_eq!(interference(&mm(7204), &mm(7200)).unwrap().value, Decimal::new(4, 2));
/// ```
pub fn interference(outside: &Reading, hole: &Reading) -> Result<Figure, Refusal> {
    let given = [
        outside.above_zero("outside of the inner part", Unit::Millimetre)?,
        hole.above_zero("bore it goes into", Unit::Millimetre)?,
    ];
    let [more, less] = given;
    if more.value <= less.value {
        return Err(Refusal::NotMore {
            what: more.name,
            found: more.value,
            than: less.name,
            least: less.value,
            unit: "mm",
            act: "measure both again at one temperature",
        });
    }
    evaluate(key!("interference"), "mm", &given, &|[outside, hole]| outside - hole)
}

/// Works out a press fit.
///
/// p = δ_r/{R·[(1/E_o)((r_o²+R²)/(r_o²−R²)+ν_o) + (1/E_i)((R²+r_i²)/(R²−r_i²)−ν_i)]} with the **radial**
/// interference δ_r = δ/2. Hoop = p(r_o²+R²)/(r_o²−R²), F = 2πRLfp, T = F·R.
/// Source: Budynas & Nisbett, Shigley's Mechanical Engineering Design, section 3-16.
///
/// # Errors
/// [`Refusal::NotMore`] where outside, meeting and bore do not follow each other; zero or less where
/// more is needed.
pub fn examine(press: &Press) -> Result<Answer, Refusal> {
    let given = inputs(press)?;
    let pressure = evaluate(key!("pressure"), "MPa", &given, &|values| pressure(press, values))?;
    let hub_stress = evaluate("hub stress", "MPa", &given, &|values| {
        let [_, _, meeting, outside, ..] = values;
        let (meeting, outside) = (meeting * meeting, outside * outside);
        self::pressure(press, values) * (outside + meeting) / (outside - meeting)
    })?;
    let force = evaluate(key!("force"), "N", &given, &|values| force(press, values))?;
    let slip_torque = evaluate("slip torque", "N·m", &given, &|values| {
        let [_, _, meeting, ..] = values;
        self::force(press, values) * meeting / 2000.0
    })?;
    Ok(Answer {
        pressure,
        hub_stress,
        force,
        slip_torque,
        cautions: &[Caution::Press, Caution::DiametralInterference],
        explanation: Explanation {
            formula: "p = (δ/2)/{R·[(1/Eo)((ro²+R²)/(ro²−R²)+νo) + (1/Ei)((R²+ri²)/(R²−ri²)−νi)]}; F = 2πRLfp",
            given: given.to_vec(),
            basis: Basis::Published("Shigley's Mechanical Engineering Design, section 3-16"),
        },
    })
}

/// Interference, bore, meeting, outside, length, friction.
fn inputs(press: &Press) -> Result<[Given; 6], Refusal> {
    let bore = press.bore.not_negative(key!("bore"), Unit::Millimetre)?;
    let meeting = press.meeting.above_zero(key!("diameter"), Unit::Millimetre)?;
    let outside = press.outside.above_zero("outside diameter", Unit::Millimetre)?;
    for (more, less) in [(meeting, bore), (outside, meeting)] {
        if more.value <= less.value {
            return Err(Refusal::NotMore {
                what: more.name,
                found: more.value,
                than: less.name,
                least: less.value,
                unit: "mm",
                act: "measure both again",
            });
        }
    }
    for (what, value) in [
        (key!("friction"), press.friction),
        ("modulus of the inner part", press.inner.modulus),
        ("modulus of the hub", press.outer.modulus),
    ] {
        let most = if what == "friction" { Decimal::ONE } else { Decimal::ONE_THOUSAND };
        if value <= Decimal::ZERO || value > most {
            let unit = if what == "friction" { "" } else { "GPa" };
            return Err(Refusal::Range {
                what,
                found: value,
                least: Decimal::new(1, 2),
                most,
                unit,
            });
        }
    }
    Ok([
        press.interference.above_zero(key!("interference"), Unit::Millimetre)?,
        bore,
        meeting,
        outside,
        press.length.above_zero(key!("length"), Unit::Millimetre)?,
        Given::plain(key!("friction"), press.friction, 0.0),
    ])
}

/// MPa.
fn pressure(press: &Press, [interference, bore, meeting, outside, ..]: [f64; 6]) -> f64 {
    let real = measure::real::from_decimal;
    let share = |ring: &Elastic, ratio: f64, poisson_sign: f64| {
        (ratio + poisson_sign * real(ring.poisson)) / (real(ring.modulus) * 1000.0)
    };
    let square = |diameter: f64| diameter * diameter;
    let around =
        |inner: f64, outer: f64| (square(outer) + square(inner)) / (square(outer) - square(inner));
    let give = share(&press.outer, around(meeting, outside), 1.0)
        + share(&press.inner, around(bore, meeting), -1.0);
    interference / meeting / give
}

/// N.
fn force(press: &Press, values: [f64; 6]) -> f64 {
    let [_, _, meeting, _, length, friction] = values;
    PI * meeting * length * friction * pressure(press, values)
}
