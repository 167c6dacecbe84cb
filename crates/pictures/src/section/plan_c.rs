//! Layout (c): twin counter-rotating propshafts, one inside the other, one pinion.

use super::nose;
use super::plan::Form::*;
use super::plan::{At, Ink, Part, Place, Plan, Set, Tells, Turn};

/// The front gear.
const FRONT: Set = 4;
/// The inner shaft with the front bearing.
const INNER: Set = 8;
/// The cone of the inner shaft's rear bearing.
const INNER_CONE: Set = 16;
/// The rear gear.
const REAR: Set = 32;
/// The outer shaft with the gear-side race.
const OUTER: Set = 64;
/// The gear-side cone of the outer shaft.
const GEAR_CONE: Set = 128;
/// The rear cone of the outer shaft, and its nut.
const REAR_CONE: Set = 256;
/// The carrier with the rear race.
const CARRIER: Set = 512;

const C3: Set = 1 << 5;
const C3B: Set = 1 << 6;
const C4: Set = 1 << 7;
const C5: Set = 1 << 8;

/// The plan.
pub static PLAN: Plan = Plan {
    layout: "c",
    start: "Section, nose left.",
    card: nose::CARD,
    strip: nose::STRIP,
    usual: 0b1_1011_0001,
    needed: &[nose::DEPTH, 1 << 4, C3 | C3B],
    parts: &[nose::BACK, PARTS, nose::FRONT],
    places: &PLACES,
    axes: nose::AXES,
};

static PLACES: [Place; 9] = {
    let [above, below, flange, behind] = nose::depth(["C1", "C1b", "C1c", "C1d"]);
    let rear = Place {
        id: "C3",
        faces: (91.7, 86.4),
        radii: (31.0, 40.0),
        shoves: REAR | OUTER | GEAR_CONE | REAR_CONE,
        glows: REAR,
        tag: (127.0, -98.0),
        ..nose::SEAT_PACK
    };
    [
        above,
        below,
        flange,
        behind,
        Place { id: "C2", shoves: FRONT | INNER | INNER_CONE, glows: FRONT, ..nose::NOSE_PACK },
        rear,
        Place {
            id: "C3b",
            shoves: CARRIER | REAR | OUTER | GEAR_CONE | REAR_CONE,
            glows: REAR,
            tag: (192.0, -130.0),
            ..nose::SEAT_PACK
        },
        Place {
            id: "C4",
            faces: (37.6, 43.4),
            radii: (8.0, 15.5),
            rides: INNER,
            shoves: INNER_CONE,
            glows: INNER_CONE,
            tag: (88.0, -98.0),
            ..rear
        },
        Place {
            id: "C5",
            faces: (97.2, 102.8),
            radii: (22.3, 30.0),
            rides: OUTER,
            shoves: REAR_CONE,
            glows: GEAR_CONE | REAR_CONE,
            tells: Tells::Parting,
            tag: (166.0, -98.0),
            ..rear
        },
    ]
};

const fn carrier(flange: f32) -> [At; 12] {
    [
        (54.0, 51.5),
        (flange, 51.5),
        (flange, 62.0),
        (flange + 8.0, 62.0),
        (flange + 8.0, 28.0),
        (136.0, 28.0),
        (136.0, 40.5),
        (113.5, 40.5),
        (113.5, 32.0),
        (92.0, 32.0),
        (92.0, 40.5),
        (54.0, 40.5),
    ]
}

static PLAIN: [At; 12] = carrier(176.0);
static SEATED: [At; 12] = carrier(181.8);

static PARTS: &[Part] = &[
    Part::new(FRONT, Turn::Level, &[Pack(4), Gear(8.0, -93.0, 20.0)]),
    Part::new(INNER, Turn::Level, &[Taper(-94.0, -54.0, 20.0, 40.5)]),
    Part::new(CARRIER, Turn::Level, &[Both(Ink::Steel, &PLAIN)]).not(C3B),
    Part::new(
        CARRIER,
        Turn::Level,
        &[Both(Ink::Steel, &SEATED), Ring(Ink::Steel, 86.4, 5.6, 31.0, 40.5)],
    )
    .only(C3B),
    Part::new(
        OUTER,
        Turn::Level,
        &[
            Solid(Ink::Steel, 30.0, 170.0, 22.0),
            Solid(Ink::Bore, 66.5, 133.5, 11.0),
            Solid(Ink::Bore, 30.0, 36.5, 16.5),
            Cup(86.0, 60.0, 22.0, 40.5),
        ],
    ),
    Part::new(REAR, Turn::Back, &[Gear(22.0, -60.0, 26.0)]),
    Part::new(GEAR_CONE, Turn::Level, &[Cone(86.0, 60.0, 22.0, 40.5)]),
    Part::new(
        CARRIER,
        Turn::Level,
        &[
            Cup(113.5, 135.0, 22.0, 40.5),
            Ring(Ink::Seal, 150.0, 7.0, 22.0, 28.0),
            Ring(Ink::Seal, 161.0, 7.0, 22.0, 28.0),
        ],
    ),
    Part::new(
        REAR_CONE,
        Turn::Level,
        &[Cone(113.5, 135.0, 22.0, 40.5), Ring(Ink::Steel, 136.0, 6.0, 22.0, 27.0)],
    ),
    Part::new(OUTER, Turn::Level, &[Ring(Ink::Steel, 86.6, 10.4, 22.0, 30.0)]).only(C5),
    Part::new(REAR_CONE, Turn::Level, &[Ring(Ink::Steel, 103.0, 10.2, 22.0, 30.0)]).only(C5),
    Part::new(OUTER, Turn::Level, &[Ring(Ink::Steel, 86.6, 26.6, 22.0, 30.0)]).not(C5),
    Part::new(
        INNER,
        Turn::Level,
        &[
            Solid(Ink::Steel, -99.0, 313.0, 7.5),
            Ring(Ink::Steel, 31.0, 6.4, 7.5, 13.0),
            Ring(Ink::Seal, 186.0, 6.0, 7.5, 11.0),
        ],
    ),
    Part::new(INNER, Turn::Level, &[Ring(Ink::Steel, 37.6, 6.0, 8.0, 15.5)]).not(C4),
    Part::new(INNER_CONE, Turn::Level, &[Cone(66.0, 44.0, 7.5, 16.5)]),
    Part::new(OUTER, Turn::Level, &[Cup(66.0, 44.0, 7.5, 16.5)]),
    Part::new(0, Turn::Level, &[Pack(5), Pack(6), Pack(7), Pack(8)]),
];
