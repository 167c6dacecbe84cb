//! The rows of the unit sheet: every field of every layout, once.

use crate::Field::{self, *};
use crate::leak_field::LEAK;
use crate::{Bearings, Check, FieldFacts, Group, Kind, Mesh};

/// The first row.
pub(crate) static FIRST: FieldFacts =
    row(PinionTeeth, "pinion-teeth", "Pinion teeth", "pinion teeth", Kind::Teeth, GEARS, LASHES);

/// Every field, in the order of the sheet.
pub(crate) fn all() -> impl Iterator<Item = &'static FieldFacts> + Clone {
    [FIRST_ROW, &TEETH, &SHAFTS_ROWS, &DEPTH].into_iter().chain(LIMITS).chain(LEAK).flatten()
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
            $label,
            $name,
            Kind::Teeth,
            GEARS,
            &[Check::Lash(Mesh::$mesh)],
        )
    };
}

static TEETH: [FieldFacts; 7] = [
    teeth!(Main, "main", "driven gear teeth", "Driven gear teeth"),
    teeth!(Forward, "forward", "forward gear teeth", "Forward gear teeth"),
    teeth!(Reverse, "reverse", "reverse gear teeth", "Reverse gear teeth"),
    teeth!(Front, "front", "front gear teeth", "Front gear teeth"),
    teeth!(Rear, "rear", "rear gear teeth", "Rear gear teeth"),
    teeth!(Lower, "lower", "lower gear teeth", "Lower gear teeth"),
    teeth!(Upper, "upper", "upper gear teeth", "Upper gear teeth"),
];

/// Low, high and source of one check, with what stands between them. The names are whole texts,
/// since other languages put the words in another order.
macro_rules! limits {
    ($check:expr, $id:literal, [$low:literal, $high:literal, $source:literal], $kind:expr
        $(, $between:expr)*) => {
        &[
            row(
                Low($check),
                concat!($id, "-low"),
                "Low",
                $low,
                $kind,
                Group::Limits($check),
                &[$check],
            ),
            row(
                High($check),
                concat!($id, "-high"),
                "High",
                $high,
                $kind,
                Group::Limits($check),
                &[$check],
            ),
            $($between,)*
            row(
                Source($check),
                concat!($id, "-source"),
                "Source",
                $source,
                Kind::Text,
                Group::Limits($check),
                &[],
            ),
        ]
    };
}

/// The limits of one backlash, with the radius and the shaft they hold at.
macro_rules! lash {
    ($mesh:ident, $id:literal, [$radius:literal, $shaft:literal], $names:tt, $shafts:expr) => {
        limits!(
            Check::Lash(Mesh::$mesh),
            $id,
            $names,
            LASH,
            row(
                Radius(Mesh::$mesh),
                concat!($id, "-radius"),
                "At radius",
                $radius,
                RADIUS,
                Group::Limits(Check::Lash(Mesh::$mesh)),
                &[Check::Lash(Mesh::$mesh)],
            ),
            row(
                Shaft(Mesh::$mesh),
                concat!($id, "-shaft"),
                "On",
                $shaft,
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
        lash!(
            Main,
            "main",
            ["backlash radius", "backlash shaft"],
            ["backlash low limit", "backlash high limit", "backlash source"],
            SHAFTS
        ),
        lash!(
            Forward,
            "forward",
            ["forward radius", "forward shaft"],
            ["forward low limit", "forward high limit", "forward source"],
            SHAFTS
        ),
        lash!(
            Reverse,
            "reverse",
            ["reverse radius", "reverse shaft"],
            ["reverse low limit", "reverse high limit", "reverse source"],
            SHAFTS
        ),
        lash!(
            Front,
            "front",
            ["front radius", "front shaft"],
            ["front low limit", "front high limit", "front source"],
            SHAFTS
        ),
        lash!(
            Rear,
            "rear",
            ["rear radius", "rear shaft"],
            ["rear low limit", "rear high limit", "rear source"],
            SHAFTS
        ),
        lash!(
            Lower,
            "lower",
            ["lower radius", "lower shaft"],
            ["lower low limit", "lower high limit", "lower source"],
            INPUT
        ),
        lash!(
            Upper,
            "upper",
            ["upper radius", "upper shaft"],
            ["upper low limit", "upper high limit", "upper source"],
            INPUT
        ),
        limits!(
            DRIVESHAFT,
            "driveshaft-setting",
            [
                "driveshaft setting low limit",
                "driveshaft setting high limit",
                "driveshaft setting source"
            ],
            Kind::Play
        ),
        limits!(
            PINION,
            "pinion-setting",
            ["pinion setting low limit", "pinion setting high limit", "pinion setting source"],
            Kind::Play
        ),
        limits!(
            PROPSHAFT,
            "end-play",
            ["end play low limit", "end play high limit", "end play source"],
            Kind::Play
        ),
        limits!(
            INNER,
            "inner-setting",
            ["inner setting low limit", "inner setting high limit", "inner setting source"],
            Kind::Play
        ),
        limits!(
            OUTER,
            "outer-setting",
            ["outer setting low limit", "outer setting high limit", "outer setting source"],
            Kind::Play
        ),
        limits!(
            VERTICAL,
            "vertical-setting",
            [
                "vertical setting low limit",
                "vertical setting high limit",
                "vertical setting source"
            ],
            Kind::Play
        ),
        limits!(
            Check::Torque,
            "rolling-torque",
            ["rolling torque low limit", "rolling torque high limit", "rolling torque source"],
            Kind::Torque
        ),
    ]
};

pub(crate) const fn row(
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
