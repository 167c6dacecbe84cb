//! Layout (e): one reduction with a preloaded taper pair on either shaft.

use super::super::drawing::Anchor;
use super::plan::Form::*;
use super::plan::{At, Ink, Part, Place, Plan, Set, Tells, Turn};

/// The pinion.
const PINION: Set = 1;
/// Its shaft.
const SHAFT: Set = 2;
/// The race near the pinion.
const INNER_RACE: Set = 4;
/// The cone near the pinion.
const INNER_CONE: Set = 8;
/// The other cone with its nut.
const OUTER_CONE: Set = 16;
/// A cartridge with both races.
const CARTRIDGE: Set = 32;
/// The driven gear.
const GEAR: Set = 64;
/// Its shaft with both cones.
const TRAIN: Set = 128;
/// The race behind the gear.
const BEHIND: Set = 256;
/// The race on its face side.
const FACE: Set = 512;

const E1: Set = 1;
const E1B: Set = 1 << 1;
const E2: Set = 1 << 2;

/// The plan.
pub static PLAN: Plan = Plan {
    layout: "e",
    start: "Section, nose left.",
    card: [-146.0, -210.0, 366.0, 306.0],
    strip: 48.0,
    usual: 0b1_1101,
    needed: &[E1 | E1B, E2, 1 << 3, 1 << 4],
    parts: &[PARTS],
    places: &PLACES,
    axes: [(-140.0, 214.0), (-208.0, 92.0)],
};

static PLACES: [Place; 5] = {
    let race = Place {
        id: "E1",
        turn: Turn::Up,
        faces: (104.8, 99.2),
        radii: (20.0, 34.0),
        rides: 0,
        shoves: PINION | SHAFT | INNER_RACE | INNER_CONE | OUTER_CONE,
        glows: PINION,
        tells: Tells::Move,
        tag: (116.0, -112.0),
        arrow: (-104.0, 116.0),
        note: ((-56.0, 122.0), Anchor::Start),
    };
    let behind = Place {
        id: "E3",
        turn: Turn::Level,
        faces: (-107.8, -102.2),
        radii: (26.0, 44.0),
        shoves: BEHIND | TRAIN | GEAR,
        glows: GEAR,
        tag: (-109.0, -120.0),
        ..race
    };
    [
        race,
        Place {
            id: "E1b",
            faces: (186.3, 191.8),
            radii: (42.0, 62.0),
            shoves: race.shoves | CARTRIDGE,
            tag: (116.0, -186.0),
            ..race
        },
        Place {
            id: "E2",
            faces: (110.2, 115.8),
            radii: (9.8, 17.0),
            rides: SHAFT,
            shoves: OUTER_CONE,
            glows: INNER_CONE | OUTER_CONE,
            tells: Tells::Parting,
            tag: (116.0, -148.0),
            ..race
        },
        behind,
        Place {
            id: "E4",
            faces: (105.8, 100.2),
            radii: (29.0, 44.0),
            shoves: FACE | TRAIN | GEAR,
            tag: (170.0, -112.0),
            ..behind
        },
    ]
};

const CASE: &str = "M-62 -186V-88H-126V88H126V-88H62V-186Z";

/// The hollow from the neck's left foot round to its right one.
static CHAMBER: [At; 14] = [
    (-57.0, -62.0),
    (-57.0, -56.0),
    (-66.0, -56.0),
    (-66.0, -44.5),
    (-108.0, -44.5),
    (-108.0, -26.0),
    (-116.0, -26.0),
    (-116.0, 26.0),
    (-108.0, 26.0),
    (-108.0, 44.5),
    (-66.0, 44.5),
    (-66.0, 56.0),
    (126.0, 56.0),
    (126.0, -56.0),
];

static PARTS: &[Part] = &[
    Part::new(0, Turn::Level, &[Curve(Ink::Case, CASE)]),
    Part::new(
        0,
        Turn::Level,
        &[Hollow(&[(34.5, -186.0), (25.0, -126.0), (34.5, -105.0)], &CHAMBER)],
    )
    .not(E1B),
    Part::new(0, Turn::Level, &[Hollow(&[(41.5, -186.0)], &CHAMBER)]).only(E1B),
    Part::new(
        CARTRIDGE,
        Turn::Up,
        &[Both(
            Ink::Steel,
            &[
                (66.0, 41.0),
                (192.0, 41.0),
                (192.0, 62.0),
                (200.0, 62.0),
                (200.0, 34.0),
                (126.0, 34.0),
                (126.0, 25.0),
                (99.0, 25.0),
                (99.0, 34.0),
                (66.0, 34.0),
            ],
        )],
    )
    .only(E1B),
    Part::new(SHAFT, Turn::Up, &[Solid(Ink::Steel, 58.0, 147.0, 9.5)]),
    Part::new(INNER_RACE, Turn::Up, &[Cup(98.5, 70.0, 9.5, 34.0)]),
    Part::new(INNER_CONE, Turn::Up, &[Cone(98.5, 70.0, 9.5, 34.0)]),
    Part::new(CARTRIDGE, Turn::Up, &[Cup(126.5, 155.0, 9.5, 34.0)]),
    Part::new(
        OUTER_CONE,
        Turn::Up,
        &[Cone(126.5, 155.0, 9.5, 34.0), Ring(Ink::Steel, 156.0, 11.0, 9.5, 19.0)],
    ),
    Part::new(SHAFT, Turn::Up, &[Ring(Ink::Steel, 99.0, 11.0, 9.8, 17.0)]),
    Part::new(OUTER_CONE, Turn::Up, &[Ring(Ink::Steel, 116.0, 10.0, 9.8, 17.0)]),
    Part::new(0, Turn::Level, &[Pack(0), Pack(1), Pack(2), Pack(3)]),
    Part::new(TRAIN, Turn::Level, &[Solid(Ink::Steel, -114.0, 320.0, 9.5)]),
    Part::new(GEAR, Turn::Level, &[Gear(9.5, -72.0, 20.0)]),
    Part::new(
        TRAIN,
        Turn::Level,
        &[Cone(-101.5, -72.5, 9.5, 44.5), Solid(Ink::Steel, -18.0, 87.0, 15.0)],
    ),
    Part::new(BEHIND, Turn::Level, &[Cup(-101.5, -72.5, 9.5, 44.5)]),
    Part::new(
        0,
        Turn::Level,
        &[
            Both(
                Ink::Steel,
                &[
                    (66.0, 55.5),
                    (126.5, 55.5),
                    (126.5, 72.0),
                    (136.0, 72.0),
                    (136.0, 20.0),
                    (118.0, 20.0),
                    (118.0, 28.0),
                    (106.0, 28.0),
                    (106.0, 44.5),
                    (66.0, 44.5),
                ],
            ),
            Ring(Ink::Seal, 120.0, 6.0, 9.5, 20.0),
            Ring(Ink::Seal, 129.0, 6.0, 9.5, 20.0),
        ],
    ),
    Part::new(TRAIN, Turn::Level, &[Cone(99.5, 70.0, 9.5, 44.5)]),
    Part::new(FACE, Turn::Level, &[Cup(99.5, 70.0, 9.5, 44.5), Pack(4)]),
    Part::new(SHAFT, Turn::Up, &[Solid(Ink::Steel, 23.0, 6.0, 9.0)]),
    Part::new(PINION, Turn::Up, &[Pinion]),
];
