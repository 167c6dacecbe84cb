//! Geometry and sensitivities against published formulae and a numerical mesh model.

use gearing::backlash::{at_arm, at_tooth, carried, degrees, from_degrees, pitch_radius};
use gearing::bevel::*;
use gearing::case::{Arm, Driven, Gears, Shaft};
use measure::{Decimal, real, round};

fn near(found: f64, expected: f64, within: f64) {
    assert!((found - expected).abs() <= within, "found {found}, expected {expected}");
}

// Pitch angles calculated two ways apart from this code: atan2, and a root of
// sin δ₁ · z₂ = sin(Σ − δ₁) · z₁. The formula stands in public bevel-geometry references
// (ISO 23509 uses the same symbols, from memory).
#[test]
fn pitch_angles_at_right_angles() {
    for (pinion, gear, expected) in [
        (20, 40, 26.56505),
        (13, 26, 26.56505),
        (14, 28, 26.56505),
        (13, 24, 28.44293),
        (12, 21, 29.74488),
        (14, 39, 19.74684),
        (20, 20, 45.0),
    ] {
        let angles = pitch_angles(pinion, gear, 90.0);
        near(angles.pinion, expected, 1e-5);
        near(angles.gear, 90.0 - expected, 1e-5);
    }
}

// sin δ₁ / sin δ₂ = z₁ / z₂ holds at any shaft angle.
#[test]
fn pitch_angles_at_any_shaft_angle() {
    for shaft_angle in [60.0, 75.0, 90.0, 105.0, 120.0, 150.0] {
        let angles = pitch_angles(13, 24, shaft_angle);
        let ratio = angles.pinion.to_radians().sin() / angles.gear.to_radians().sin();
        near(ratio, 13.0 / 24.0, 1e-12);
        near(angles.pinion + angles.gear, shaft_angle, 1e-12);
    }
}

// The first is a well-known handbook example (from memory), all recalculated apart from this code.
#[test]
fn transverse_pressure_angles() {
    near(transverse_pressure_angle(20.0, 35.0), 23.95680, 1e-5);
    near(transverse_pressure_angle(20.0, 30.0), 22.79588, 1e-5);
    near(transverse_pressure_angle(17.5, 30.0), 20.00533, 1e-5);
    near(transverse_pressure_angle(20.0, 0.0), 20.0, 1e-12);
}

// Worked numbers of the sensitivity formulae; the derivation from flank normals and a mesh
// simulation agree with them.
#[test]
fn sensitivities() {
    // teeth, module, pressure angle, spiral, face; cone distances, slopes, normal slopes.
    let rows = [
        ((13, 26, 4.0, 20.0, 0.0, 18.0), [58.13777, 49.13777, 0.32554, 0.65109, 0.3059, 0.6118]),
        ((13, 26, 4.0, 20.0, 35.0, 18.0), [58.13777, 49.13777, 0.39742, 0.79483, 0.3059, 0.6118]),
        ((13, 24, 3.5, 20.0, 35.0, 16.0), [47.76570, 39.76570, 0.42325, 0.78138, 0.3258, 0.6015]),
    ];
    for ((pinion, gear, module, normal, spiral, face), expected) in rows {
        let angles = pitch_angles(pinion, gear, 90.0);
        let tangent = tangent(normal, spiral);
        let outer = outer_cone_distance(module, pinion, angles.pinion);
        near(outer, expected[0], 1e-5);
        near(outer_cone_distance(module, gear, angles.gear), expected[0], 1e-5);
        near(mean_cone_distance(outer, face), expected[1], 1e-5);
        near(lash_per_mm(tangent, angles.pinion), expected[2], 1e-5);
        near(lash_per_mm(tangent, angles.gear), expected[3], 1e-5);
        near(normal_lash_per_mm(normal, angles.pinion), expected[4], 1e-4);
        near(normal_lash_per_mm(normal, angles.gear), expected[5], 1e-4);
    }
}

#[test]
fn travel_for_a_backlash() {
    let gear = pitch_angles(13, 26, 90.0).gear;
    near(travel(0.150, tangent(20.0, 0.0), gear), 0.23038, 1e-5);
    near(travel(0.150, tangent(20.0, 35.0), gear), 0.18872, 1e-5);
    // j_t 0.200 at 20°, 35°: both ways of saying it give the same axial play.
    let normal = normal_lash(0.200, 20.0, 35.0);
    near(normal, 0.15395, 1e-5);
    near(travel(0.200, tangent(20.0, 35.0), gear), 0.25162, 1e-5);
    near(normal / normal_lash_per_mm(20.0, gear), 0.25162, 1e-5);
    near(lash_from_normal(normal, 20.0, 35.0), 0.200, 1e-15);
    let play = pitch_plane_play(0.200, tangent(20.0, 35.0));
    near(play / gear.to_radians().sin(), 0.25162, 1e-5);
}

#[test]
fn a_trade_that_keeps_the_backlash() {
    for (shaft_angle, spiral) in [(90.0, 0.0), (90.0, 35.0), (105.0, 20.0)] {
        let angles = pitch_angles(13, 24, shaft_angle);
        let tangent = tangent(20.0, spiral);
        let gear_travel = gear_travel_that_keeps_lash(-0.05, 13, 24);
        let change = -0.05 * lash_per_mm(tangent, angles.pinion)
            + gear_travel * lash_per_mm(tangent, angles.gear);
        near(change, 0.0, 1e-12);
    }
}

// A mesh simulation that does not use the formula: spherical-involute flanks searched for contact.
// The formula is met to 1e-5, the simulation held at the pitch point to 0.5 %.
#[test]
fn against_a_mesh_simulation() {
    let rows = [
        ((13, 26, 20.0, 0.0), (0.06511, 0.03255), (0.065365, 0.032537)),
        ((13, 24, 20.0, 35.0), (0.07814, 0.04232), (0.078396, 0.042288)),
    ];
    for ((pinion, gear, normal, spiral), formula, simulated) in rows {
        let angles = pitch_angles(pinion, gear, 90.0);
        let tangent = tangent(normal, spiral);
        let by_gear = 0.1 * lash_per_mm(tangent, angles.gear);
        let by_pinion = 0.1 * lash_per_mm(tangent, angles.pinion);
        near(by_gear, formula.0, 1e-5);
        near(by_pinion, formula.1, 1e-5);
        near(by_gear, simulated.0, 0.005 * simulated.0);
        near(by_pinion, simulated.1, 0.005 * simulated.1);
    }
}

/// An invented unit: 14/21 teeth, pitch radii 24 and 36 mm.
fn gears() -> Gears {
    Gears {
        pinion_teeth: 14,
        pinion_pitch_radius: Decimal::from(24),
        driven: vec![Driven { id: "forward".into(), teeth: 21 }],
        normal_pressure_angle: Some(Decimal::from(20)),
        spiral_angle: Some(Decimal::from(35)),
        shaft_angle: Decimal::from(90),
    }
}

fn arm(radius: i64, on: Shaft) -> Arm {
    Arm { radius: Decimal::from(radius), on }
}

// Calculated by hand for the invented unit with a 30 mm arm on the pinion shaft.
#[test]
fn an_invented_unit_by_hand() {
    let gears = gears();
    let thirty = arm(30, Shaft::Pinion);
    let forward = Shaft::Driven("forward".into());
    let tooth = at_tooth(Decimal::new(45, 2), &gears, &thirty).unwrap();
    assert_eq!(tooth, Decimal::new(36, 2));
    near(degrees(tooth, &gears, &Shaft::Pinion).unwrap(), 0.859, 5e-4);
    near(degrees(tooth, &gears, &forward).unwrap(), 0.573, 5e-4);
    near(from_degrees(0.8594367, &gears, &Shaft::Pinion).unwrap(), 0.360, 1e-6);
    assert_eq!(pitch_radius(&gears, &forward), Some(Decimal::from(36)));

    let sheet = arm(22, Shaft::Pinion);
    let band = [20, 35].map(|limit| {
        let carried = carried(Decimal::new(limit, 2), &gears, &sheet, &thirty).unwrap();
        round(carried, 3)
    });
    assert_eq!(band, [Decimal::new(273, 3), Decimal::new(477, 3)]);

    let angles = pitch_angles(14, 21, 90.0);
    let tangent = tangent(20.0, 35.0);
    let per_gear = lash_per_mm(tangent, angles.gear);
    near(per_gear, 0.7394, 5e-5);
    near(lash_per_mm(tangent, angles.pinion), 0.4929, 5e-5);
    near(per_gear * 30.0 / 24.0, 0.9243, 5e-5);
    // From 0.45 to the middle of the band at this arm, 0.375: a pack thicker by 0.081.
    near((0.45 - 0.375) / (per_gear * 30.0 / 24.0), 0.081, 5e-4);
    // 0.10 at the pinion pack.
    near(0.10 * lash_per_mm(tangent, angles.pinion), 0.049, 5e-4);
    near(0.10 * lash_per_mm(tangent, angles.pinion) * 30.0 / 24.0, 0.062, 5e-4);
}

// 0.15 mm on a 104 mm circle is 9.9166 minutes at the gear and 19.833 at a 13/26 pinion; 0.25 mm
// read at 60 mm on a 52 mm pitch radius is 0.21667 at the tooth, 0.20360 normal to it.
#[test]
fn angle_and_lever() {
    let gears = Gears {
        pinion_teeth: 13,
        pinion_pitch_radius: Decimal::from(26),
        driven: vec![Driven { id: "gear".into(), teeth: 26 }],
        ..gears()
    };
    let gear = Shaft::Driven("gear".into());
    let tooth = Decimal::new(15, 2);
    near(degrees(tooth, &gears, &gear).unwrap() * 60.0, 9.9166, 1e-4);
    near(degrees(tooth, &gears, &Shaft::Pinion).unwrap() * 60.0, 19.833, 1e-3);
    let read = at_tooth(Decimal::new(25, 2), &gears, &arm(60, gear.clone())).unwrap();
    assert_eq!(round(read, 5), Decimal::new(21667, 5));
    near(normal_lash(real::from_decimal(read), 20.0, 0.0), 0.20360, 1e-5);
    let back = at_arm(read, &gears, &arm(60, gear)).unwrap();
    assert_eq!(round(back, 12), Decimal::new(25, 2));
}

#[test]
fn what_cannot_be_said_is_none() {
    let gears = gears();
    let thirty = arm(30, Shaft::Pinion);
    let unknown = arm(30, Shaft::Driven("reverse".into()));
    assert_eq!(at_arm(Decimal::ONE, &gears, &unknown), None);
    assert_eq!(at_tooth(Decimal::ONE, &gears, &arm(0, Shaft::Pinion)), None);
    assert_eq!(carried(Decimal::MAX, &gears, &thirty, &thirty), None);
    let toothless = Gears { pinion_teeth: 0, ..gears };
    assert_eq!(at_arm(Decimal::ONE, &toothless, &thirty), None);
}
