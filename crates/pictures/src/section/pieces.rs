//! The pieces every layout is put together from, nose left, axis at zero.

use super::super::drawing::{Mark, Point, line, outline, rect};

/// Cut metal of the case.
pub const CASE: &str = "k-case";
/// Air and lube.
pub const BORE: &str = "k-bore";
/// Shafts and carriers.
pub const STEEL: &str = "k-steel";
/// Gears.
pub const GEAR: &str = "k-gear";
/// Races, cones, dogs.
pub const RACE: &str = "k-race";
/// Rollers, balls and the tooth faces in mesh.
pub const ROLLER: &str = "k-roll";
/// Seals.
pub const SEAL: &str = "k-seal";
/// Shims.
pub const SHIM: &str = "k-shim";
/// The chosen shim.
pub const HOT_SHIM: &str = "k-shim k-shimhot";
/// Where a member lay before the change.
pub const GHOST: &str = "k-ghost";
/// Thin lines.
pub const LEAD: &str = "k-lead";

/// An outline and its image on the other side of the axis.
pub fn both(ink: &'static str, points: &[Point]) -> Vec<Mark> {
    let upper = outline(ink, points);
    let lower = upper.clone().placed(|(x, y)| (x, -y));
    vec![upper, lower]
}

/// A ring round the axis, cut: from `x`, `width` wide, between two radii.
pub fn ring(ink: &'static str, x: f64, width: f64, (inner, outer): (f64, f64)) -> Vec<Mark> {
    let right = x + width;
    both(ink, &[(x, inner), (right, inner), (right, outer), (x, outer)])
}

/// A rectangle with the axis in its middle.
pub fn solid(ink: &'static str, x: f64, length: f64, radius: f64) -> Mark {
    rect(ink, x, -radius, length, 2.0 * radius)
}

/// Cone and rollers of a taper bearing; the rollers' big ends are at `big`.
pub fn cone(ink: &'static str, back: f64, big: f64, radii: Point) -> Vec<Mark> {
    let at = |part| part_way(radii, part);
    [
        both(ink, &[(back, at(0.0)), (big, at(0.0)), (big, at(0.34)), (back, at(0.13))]),
        both(ROLLER, &[(back, at(0.17)), (big, at(0.38)), (big, at(0.8)), (back, at(0.53))]),
    ]
    .concat()
}

/// Its cup, thick at its back.
pub fn cup(ink: &'static str, back: f64, big: f64, radii: Point) -> Vec<Mark> {
    let at = |part| part_way(radii, part);
    both(ink, &[(back, at(0.57)), (big, at(0.84)), (big, at(1.0)), (back, at(1.0))])
}

fn part_way((bore, outside): Point, part: f64) -> f64 {
    bore + part * (outside - bore)
}

/// The body of a driven gear ahead of the pinion, teeth aft; its hub ends at `hub_end`.
pub fn gear_body(ink: &'static str, bore: f64, hub_end: f64, hub: f64) -> Vec<Mark> {
    let profile = [
        (-35.0, -50.0),
        (-23.5, -32.0),
        (-27.0, -24.0),
        (-27.0, -bore),
        (hub_end, -bore),
        (hub_end, -hub),
        (-53.0, -hub),
        (-48.0, -43.0),
    ];
    both(ink, &profile)
}

/// A driven gear ahead of the pinion: body and tooth faces.
pub fn gear(ink: &'static str, bore: f64, hub_end: f64, hub: f64) -> Vec<Mark> {
    [gear_body(ink, bore, hub_end, hub), tooth_faces()].concat()
}

/// The tooth faces of a driven gear ahead of the pinion.
pub fn tooth_faces() -> Vec<Mark> {
    both(ROLLER, &[(-35.0, -50.0), (-23.5, -32.0), (-28.5, -30.0), (-41.0, -47.2)])
}

/// The outline of the pinion above the propshaft axis.
pub fn pinion_body(ink: &'static str) -> Mark {
    let right =
        [(15.0, -29.0), (20.0, -33.5), (30.5, -50.5), (26.0, -59.0), (13.0, -59.0), (13.0, -64.0)];
    let left = right.iter().rev().map(|(x, y)| (-x, *y));
    outline(ink, &right.iter().copied().chain(left).collect::<Vec<_>>())
}

/// The pinion: body and tooth faces.
pub fn pinion(ink: &'static str) -> Vec<Mark> {
    let teeth = [(-30.5, -50.5), (-20.0, -33.5), (-15.0, -33.5), (-25.0, -51.0)];
    let face = outline(ROLLER, &teeth);
    vec![pinion_body(ink), face.clone(), face.placed(|(x, y)| (-x, y))]
}

/// The hollow of a case: the neck's steps by radius and top, and the rest of the outline from the
/// neck's left foot round to its right one.
pub fn hollow(neck: &[Point], rest: &[Point]) -> Mark {
    let foot = rest.first().map_or(0.0, |point| point.1);
    let mut left = Vec::new();
    for (index, (radius, top)) in neck.iter().enumerate() {
        let bottom = neck.get(index + 1).map_or(foot, |(_, next)| *next);
        left.extend([(-radius, *top), (-radius, bottom)]);
    }
    let right: Vec<Point> = left.iter().rev().map(|(x, y)| (-x, *y)).collect();
    outline(BORE, &[&left, rest, &right].concat())
}

/// The thread of a ring, on both sides of the axis, from `x` on.
pub fn threads(x: f64, radius: f64) -> Vec<Mark> {
    let teeth: Vec<_> = (0..=10_u8)
        .map(|step| (x + 2.0 * f64::from(step), radius - if step % 2 == 0 { 0.0 } else { 3.4 }))
        .collect();
    let upper = line(LEAD, &teeth);
    vec![upper.clone().placed(|(x, y)| (x, -y)), upper]
}

/// The dashed lines the shafts turn on: one level, one upright.
pub fn axes((left, right): Point, (top, bottom): Point) -> Vec<Mark> {
    let level = line("k-axis", &[(left, 0.0), (right, 0.0)]);
    let upright = line("k-axis", &[(0.0, top), (0.0, bottom)]);
    vec![level, upright]
}
