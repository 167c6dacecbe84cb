//! What a thicker pack does to each reading, by the formula.

use measure::{Decimal, real};

use crate::bevel;
use crate::case::{Arm, Case, CheckKind, Gears, Member, Position, Shaft};

/// tan α_n / cos β where an angle is not known: the middle of 0.36 (20°, straight) to 0.57 (25°,
/// 35°).
pub(crate) const UNKNOWN_TANGENT: f64 = 0.465;
/// Standard deviation of a rectangular spread over that range.
pub(crate) const UNKNOWN_TANGENT_SPREAD: f64 = 0.21 / 3.464_101_615_137_754_6;
/// Relative standard deviation of the formula for a gear position.
const GEAR_SPREAD: f64 = 0.05;
/// Relative standard deviation of the formula for a pinion position.
const PINION_SPREAD: f64 = 0.10;

/// The change of one reading for each millimetre of one pack.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Effect {
    /// The position.
    pub position: usize,
    /// By the formula.
    pub slope: f64,
    /// Standard deviation of what the formula leaves out; 0 where it is exact.
    pub own_spread: f64,
    /// What the slope changes with a common error of tan α_n / cos β, one standard deviation of it.
    pub common_spread: f64,
}

/// Two packs on both sides of one gear, which share its travel while the bearings are preloaded.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Trap {
    /// The position behind the gear.
    pub behind: usize,
    /// The position on its face side.
    pub face: usize,
    /// The end play check that names both.
    pub setting: usize,
}

/// Whether a thicker pack at this position changes this reading.
pub(crate) fn touches(position: &Position, kind: &CheckKind) -> bool {
    match kind {
        CheckKind::DepthGap { .. } => position.mesh_sign != 0 && position.moves == Member::Pinion,
        CheckKind::Backlash { mesh, .. } => position.mesh_sign != 0 && moves(position, mesh),
        CheckKind::EndPlay { positions } => {
            position.setting_sign != 0 && positions.contains(&position.id)
        }
    }
}

/// Whether a position moves a member of this mesh.
fn moves(position: &Position, mesh: &str) -> bool {
    match &position.moves {
        Member::Pinion => true,
        Member::Driven(id) => id == mesh,
        Member::Other(_) => false,
    }
}

/// The effects on one check, in the order of the positions.
pub(crate) fn effects(case: &Case, kind: &CheckKind) -> Vec<Effect> {
    let trap = trap(case, kind);
    let of_position = |(index, position): (usize, &Position)| {
        let at_face = trap.is_some_and(|trap| trap.face == index);
        (touches(position, kind) && !at_face).then(|| effect(case, kind, index, position))
    };
    case.positions.iter().enumerate().filter_map(of_position).collect()
}

fn effect(case: &Case, kind: &CheckKind, index: usize, position: &Position) -> Effect {
    let mesh_sign = f64::from(position.mesh_sign);
    let exact = |slope| Effect { position: index, slope, own_spread: 0.0, common_spread: 0.0 };
    match kind {
        CheckKind::DepthGap { from_behind: false } => exact(-mesh_sign),
        CheckKind::DepthGap { from_behind: true } => exact(mesh_sign),
        CheckKind::EndPlay { .. } => exact(-f64::from(position.setting_sign)),
        CheckKind::Backlash { mesh, .. } => {
            let known = known_tangent(&case.gears);
            let tangent = known.unwrap_or(UNKNOWN_TANGENT);
            let (pitch_angle, spread) = match position.moves {
                Member::Pinion => (pitch_angles(&case.gears, mesh).pinion, PINION_SPREAD),
                _ => (pitch_angles(&case.gears, mesh).gear, GEAR_SPREAD),
            };
            let per_tangent =
                -mesh_sign * bevel::lash_per_mm(1.0, pitch_angle) * lever(&case.gears, &case.arm);
            let slope = per_tangent * tangent;
            let common_spread = match known {
                Some(_) => 0.0,
                None => per_tangent * UNKNOWN_TANGENT_SPREAD,
            };
            Effect { position: index, slope, own_spread: spread * slope.abs(), common_spread }
        }
    }
}

/// Two positions that hold the gear of this mesh between them, named by one end play check.
pub(crate) fn trap(case: &Case, kind: &CheckKind) -> Option<Trap> {
    let CheckKind::Backlash { mesh, .. } = kind else {
        return None;
    };
    let find = |setting: &[String], sign: i8| {
        case.positions.iter().position(|position| {
            position.moves == Member::Driven(mesh.clone())
                && position.mesh_sign == sign
                && position.setting_sign == 1
                && setting.contains(&position.id)
        })
    };
    case.checks.iter().enumerate().find_map(|(setting, check)| match &check.kind {
        CheckKind::EndPlay { positions } => {
            Some(Trap { behind: find(positions, 1)?, face: find(positions, -1)?, setting })
        }
        _ => None,
    })
}

/// tan α_n / cos β, if both angles are known.
pub(crate) fn known_tangent(gears: &Gears) -> Option<f64> {
    let normal = real::from_decimal(gears.normal_pressure_angle?);
    let spiral = real::from_decimal(gears.spiral_angle?);
    Some(bevel::tangent(normal, spiral))
}

/// Pitch angles of the pinion and the gear of this mesh.
pub(crate) fn pitch_angles(gears: &Gears, mesh: &str) -> bevel::PitchAngles {
    let teeth = teeth(gears, mesh);
    bevel::pitch_angles(gears.pinion_teeth, teeth, real::from_decimal(gears.shaft_angle))
}

/// What the arm reads for each millimetre at the tooth.
pub(crate) fn lever(gears: &Gears, arm: &Arm) -> f64 {
    let radius = real::from_decimal(gears.pinion_pitch_radius);
    let pitch_radius = match &arm.on {
        Shaft::Pinion => radius,
        Shaft::Driven(id) => radius * f64::from(teeth(gears, id)) / f64::from(gears.pinion_teeth),
    };
    real::from_decimal(arm.radius) / pitch_radius
}

/// Teeth of a driven gear.
fn teeth(gears: &Gears, id: &str) -> u32 {
    gears.driven.iter().find(|gear| gear.id == id).map_or(1, |gear| gear.teeth)
}

/// The limits and the aim of a check at the arm used, mm; `None` only if a radius or gear is
/// missing, which [`crate::validate`] refuses.
pub(crate) fn band_at_arm(case: &Case, check: &crate::case::Check) -> Option<[Decimal; 3]> {
    let aim = check.aim.unwrap_or(check.low / Decimal::TWO + check.high / Decimal::TWO);
    let limits = [check.low, check.high, aim];
    match &check.kind {
        CheckKind::Backlash { band_at: Some(from), .. } => {
            let carry = |limit| crate::backlash::carried(limit, &case.gears, from, &case.arm);
            let [low, high, aim] = limits;
            Some([carry(low)?, carry(high)?, carry(aim)?])
        }
        _ => Some(limits),
    }
}
