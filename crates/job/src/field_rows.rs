//! The rows of the unit sheet: every field of every layout, once.

use crate::Field::{self, *};
use crate::{Bearings, Check, FieldFacts, Group, Kind, Mesh};

/// The first row.
pub(crate) static FIRST: FieldFacts =
    row(PinionTeeth, "pinion-teeth", "Pinion teeth", "pinion teeth", Kind::Teeth, GEARS, LASHES);

/// Every field, in the order of the sheet.
pub(crate) fn all() -> impl Iterator<Item = &'static FieldFacts> + Clone {
    [FIRST_ROW, &TEETH, &SHAFTS_ROWS, &DEPTH].into_iter().chain(LIMITS).flatten()
}

const FIRST_ROW: &[FieldFacts] = std::slice::from_ref(&FIRST);

const GEARS: Group = Group::Gears;
const LASHES: &[Check] = &[
    Check::Lash(Mesh::Main),
    Check::Lash(Mesh::Forward),
    Check::Lash(Mesh::Reverse),
    Check::Lash(Mesh::Front),
    Check::Lash(Mesh::Rear),
    Check::Lash(Mesh::Upper),
    Check::Lash(Mesh::Lower),
];
const RADIUS: Kind = Kind::Length { least: 6_000, most: 400_000 };
const LASH: Kind = Kind::Length { least: 50, most: 2_000 };
const GAP: Kind = Kind::Length { least: 100, most: 5_000 };
const SHAFTS: Kind = Kind::Choice(&[("driveshaft", "Driveshaft"), ("propshaft", "Propshaft")]);
/// The shafts of an upper unit.
pub(crate) const INPUT_SHAFTS: &[(&str, &str)] =
    &[("driveshaft", "Input shaft"), ("propshaft", "Gear")];
const INPUT: Kind = Kind::Choice(INPUT_SHAFTS);
const SIDES: Kind = Kind::Choice(&[("mesh", "Mesh side"), ("behind", "Behind the pinion")]);

static SHAFTS_ROWS: [FieldFacts; 5] = [
    row(
        PinionRadius,
        "pinion-radius",
        "Pinion mean pitch radius",
        "pinion pitch radius",
        RADIUS,
        GEARS,
        LASHES,
    ),
    row(
        PressureAngle,
        "pressure-angle",
        "Normal pressure angle",
        "pressure angle",
        Kind::Angle,
        GEARS,
        &[],
    ),
    row(SpiralAngle, "spiral-angle", "Spiral angle", "spiral angle", Kind::Angle, GEARS, &[]),
    row(ArmRadius, "arm-radius", "Arm radius", "arm radius", RADIUS, Group::Arm, LASHES),
    row(ArmShaft, "arm-shaft", "Arm is on", "arm shaft", SHAFTS, Group::Arm, LASHES),
];

static DEPTH: [FieldFacts; 5] = {
    const GROUP: Group = Group::Limits(Check::Depth);
    const NEEDED: &[Check] = &[Check::Depth];
    [
        row(Low(Check::Depth), "depth-low", "Low", "depth low limit", GAP, GROUP, NEEDED),
        row(High(Check::Depth), "depth-high", "High", "depth high limit", GAP, GROUP, NEEDED),
        row(Aim(Check::Depth), "depth-aim", "Aim", "depth aim", GAP, GROUP, &[]),
        row(DepthSide, "depth-side", "Gauge is on", "depth gauge side", SIDES, GROUP, NEEDED),
        row(Source(Check::Depth), "depth-source", "Source", "depth source", Kind::Text, GROUP, &[]),
    ]
};

/// Teeth of one driven gear.
macro_rules! teeth {
    ($mesh:ident, $id:literal, $name:literal, $label:literal) => {
        row(
            Teeth(Mesh::$mesh),
            concat!($id, "-teeth"),
            concat!($label, " teeth"),
            concat!($name, " teeth"),
            Kind::Teeth,
            GEARS,
            &[Check::Lash(Mesh::$mesh)],
        )
    };
}

static TEETH: [FieldFacts; 7] = [
    teeth!(Main, "main", "driven gear", "Driven gear"),
    teeth!(Forward, "forward", "forward gear", "Forward gear"),
    teeth!(Reverse, "reverse", "reverse gear", "Reverse gear"),
    teeth!(Front, "front", "front gear", "Front gear"),
    teeth!(Rear, "rear", "rear gear", "Rear gear"),
    teeth!(Lower, "lower", "lower gear", "Lower gear"),
    teeth!(Upper, "upper", "upper gear", "Upper gear"),
];

/// Low, high and source of one check, with what stands between them.
macro_rules! limits {
    ($check:expr, $id:literal, $name:literal, $kind:expr $(, $between:expr)*) => {
        &[
            row(
                Low($check),
                concat!($id, "-low"),
                "Low",
                concat!($name, " low limit"),
                $kind,
                Group::Limits($check),
                &[$check],
            ),
            row(
                High($check),
                concat!($id, "-high"),
                "High",
                concat!($name, " high limit"),
                $kind,
                Group::Limits($check),
                &[$check],
            ),
            $($between,)*
            row(
                Source($check),
                concat!($id, "-source"),
                "Source",
                concat!($name, " source"),
                Kind::Text,
                Group::Limits($check),
                &[],
            ),
        ]
    };
}

/// The limits of one backlash, with the radius and the shaft they hold at.
macro_rules! lash {
    ($mesh:ident, $id:literal, $name:literal, $shafts:expr) => {
        limits!(
            Check::Lash(Mesh::$mesh),
            $id,
            $name,
            LASH,
            row(
                Radius(Mesh::$mesh),
                concat!($id, "-radius"),
                "At radius",
                concat!($name, " radius"),
                RADIUS,
                Group::Limits(Check::Lash(Mesh::$mesh)),
                &[Check::Lash(Mesh::$mesh)],
            ),
            row(
                Shaft(Mesh::$mesh),
                concat!($id, "-shaft"),
                "On",
                concat!($name, " shaft"),
                $shafts,
                Group::Limits(Check::Lash(Mesh::$mesh)),
                &[Check::Lash(Mesh::$mesh)],
            )
        )
    };
}

static LIMITS: [&[FieldFacts]; 14] = {
    use Bearings::*;
    const fn of(bearings: Bearings) -> Check {
        Check::Setting(bearings)
    }
    const DRIVESHAFT: Check = of(Driveshaft);
    const PINION: Check = of(PinionPair);
    const PROPSHAFT: Check = of(Propshaft);
    const INNER: Check = of(InnerShaft);
    const OUTER: Check = of(OuterShaft);
    const VERTICAL: Check = of(Vertical);
    [
        lash!(Main, "main", "backlash", SHAFTS),
        lash!(Forward, "forward", "forward", SHAFTS),
        lash!(Reverse, "reverse", "reverse", SHAFTS),
        lash!(Front, "front", "front", SHAFTS),
        lash!(Rear, "rear", "rear", SHAFTS),
        lash!(Lower, "lower", "lower", INPUT),
        lash!(Upper, "upper", "upper", INPUT),
        limits!(DRIVESHAFT, "driveshaft-setting", "driveshaft setting", Kind::Play),
        limits!(PINION, "pinion-setting", "pinion setting", Kind::Play),
        limits!(PROPSHAFT, "end-play", "end play", Kind::Play),
        limits!(INNER, "inner-setting", "inner setting", Kind::Play),
        limits!(OUTER, "outer-setting", "outer setting", Kind::Play),
        limits!(VERTICAL, "vertical-setting", "vertical setting", Kind::Play),
        limits!(Check::Torque, "rolling-torque", "rolling torque", Kind::Torque),
    ]
};

const fn row(
    field: Field,
    id: &'static str,
    label: &'static str,
    name: &'static str,
    kind: Kind,
    group: Group,
    needed_by: &'static [Check],
) -> FieldFacts {
    FieldFacts { field, id, label, name, kind, group, needed_by }
}
