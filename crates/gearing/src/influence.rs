//! How each pack moves each reading, and where that number comes from.

use measure::Decimal;

use crate::case::{Case, CheckKind, Member};
use crate::case_error::CaseError;
use crate::effect::{Effect, effects, known_tangent, lever, pitch_angles, trap};
use crate::effect::{UNKNOWN_TANGENT, UNKNOWN_TANGENT_SPREAD};
use crate::model::Model;

/// The change of one reading for each millimetre that one pack grows.
#[derive(Clone, Debug, PartialEq)]
pub struct Influence {
    /// The check.
    pub check: usize,
    /// The position.
    pub position: usize,
    /// By the formula, mm for each mm.
    pub formula: f64,
    /// Standard deviation of the formula; 0 where it is exact.
    pub formula_sigma: f64,
    /// After the trials, mm for each mm.
    pub slope: f64,
    /// Standard deviation after the trials; 0 where it is exact.
    pub sigma: f64,
    /// The formula and what went into it.
    pub source: Source,
}

/// Where a slope comes from.
#[derive(Clone, Debug, PartialEq)]
pub enum Source {
    /// The depth gap changes as the pack does: −s, or s where the gauge reads from behind.
    Depth {
        /// Mesh sign s of the position.
        sign: i8,
        /// The gauge reads from behind.
        from_behind: bool,
    },
    /// The end play changes as the pack does: −p.
    EndPlay {
        /// Setting sign p of the position.
        sign: i8,
    },
    /// Backlash at the arm: −s · 2 · sin δ · tan α_n / cos β · R/r.
    Backlash {
        /// Mesh sign s of the position.
        sign: i8,
        /// Pitch angle δ of the member moved, degrees.
        pitch_angle: f64,
        /// tan α_n / cos β.
        tangent: f64,
        /// Standard deviation of that where an angle is not known; 0 where both are.
        tangent_sigma: f64,
        /// Arm radius over pitch radius, R/r.
        lever: f64,
    },
    /// The face-side pack of a trapped gear: it moves the gear only by what the preload changes.
    FaceSide,
}

/// Every influence of a position on a check, checks in their order, then positions.
///
/// # Errors
/// [`CaseError`] for a case that makes no sense.
pub fn influences(case: &Case) -> Result<Vec<Influence>, CaseError> {
    let model = Model::of(case)?;
    let still = vec![0.0; case.positions.len()];
    let mut influences = Vec::new();
    for (check, asked) in case.checks.iter().enumerate() {
        let reading = model.readings.get(check).and_then(Option::as_ref);
        for effect in effects(case, &asked.kind) {
            let position = effect.position;
            let formula_sigma = effect.own_spread.hypot(effect.common_spread);
            influences.push(Influence {
                check,
                position,
                formula: effect.slope,
                formula_sigma,
                slope: reading.map_or(effect.slope, |r| r.slope_at(&still, position)),
                sigma: reading.map_or(formula_sigma, |r| r.slope_sigma(position)),
                source: source(case, &asked.kind, &effect),
            });
        }
        if let Some(trap) = trap(case, &asked.kind) {
            influences.push(Influence {
                check,
                position: trap.face,
                formula: 0.0,
                formula_sigma: 0.0,
                slope: reading.map_or(0.0, |r| r.slope_at(&still, trap.face)),
                sigma: 0.0,
                source: Source::FaceSide,
            });
        }
    }
    influences.sort_by_key(|influence| (influence.check, influence.position));
    Ok(influences)
}

fn source(case: &Case, kind: &CheckKind, effect: &Effect) -> Source {
    let position = case.positions.get(effect.position);
    let mesh_sign = position.map_or(0, |position| position.mesh_sign);
    match kind {
        CheckKind::DepthGap { from_behind } => {
            Source::Depth { sign: mesh_sign, from_behind: *from_behind }
        }
        CheckKind::EndPlay { .. } => {
            Source::EndPlay { sign: position.map_or(0, |position| position.setting_sign) }
        }
        CheckKind::Backlash { mesh, .. } => {
            let angles = pitch_angles(&case.gears, mesh);
            let of_pinion = position.is_some_and(|position| position.moves == Member::Pinion);
            let known = known_tangent(&case.gears);
            Source::Backlash {
                sign: mesh_sign,
                pitch_angle: if of_pinion { angles.pinion } else { angles.gear },
                tangent: known.unwrap_or(UNKNOWN_TANGENT),
                tangent_sigma: if known.is_some() { 0.0 } else { UNKNOWN_TANGENT_SPREAD },
                lever: lever(&case.gears, &case.arm),
            }
        }
    }
}

/// The first guess of a pack after new parts, mm:
/// t_old − h · dH − s · dM + s · dD.
///
/// `stand_height` is how much taller the new bearing stands, `mounting_mark` how much larger the
/// new gear's mounting distance is than the old one's, `case_mark` how much larger the new case's
/// distance is. `height_sign` is +1 where a taller bearing moves the member as a thicker pack does,
/// −1 the other way and 0 without a bearing in series; `mesh_sign` is the position's. A first guess
/// is a trial with a wide spread, not a result.
///
/// ```
/// use measure::Decimal;
/// let hundredths = |n| Decimal::new(n, 2);
/// let guess = |sign| gearing::first_guess(
///     hundredths(62), 1, sign, hundredths(6), hundredths(3), Decimal::ZERO);
/// assert_eq!(guess(1), Some(hundredths(53)));
/// assert_eq!(guess(-1), Some(hundredths(59)));
/// ```
pub fn first_guess(
    old: Decimal,
    height_sign: i8,
    mesh_sign: i8,
    stand_height: Decimal,
    mounting_mark: Decimal,
    case_mark: Decimal,
) -> Option<Decimal> {
    let height = Decimal::from(height_sign).checked_mul(stand_height)?;
    let marks = case_mark.checked_sub(mounting_mark)?;
    let marks = Decimal::from(mesh_sign).checked_mul(marks)?;
    old.checked_sub(height)?.checked_add(marks)
}
