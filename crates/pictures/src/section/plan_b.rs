//! Layout (b): forward and reverse gears with a sliding dog.

use super::nose;
use super::plan::Form::*;
use super::plan::{At, Ink, Part, Place, Plan, Set, Tells, Turn};

/// The forward gear.
const FORWARD: Set = 4;
/// Its bearing.
const FRONT: Set = 8;
/// The carrier.
const CARRIER: Set = 16;
/// The reverse gear.
const REVERSE: Set = 32;
/// Its bearing.
const REAR: Set = 64;

const B3: Set = 1 << 5;
const B3B: Set = 1 << 6;
const B4: Set = 1 << 7;

/// The plan.
pub static PLAN: Plan = Plan {
    layout: "b",
    start: "Section, nose left.",
    card: nose::CARD,
    strip: nose::STRIP,
    usual: 0b1011_0001,
    needed: &[nose::DEPTH, 1 << 4],
    parts: &[nose::BACK, PARTS, nose::FRONT],
    places: &PLACES,
    axes: nose::AXES,
};

static PLACES: [Place; 8] = {
    let [above, below, flange, behind] = nose::depth(["B1", "B1b", "B1c", "B1d"]);
    let rear = Place {
        id: "B3",
        faces: (81.2, 75.0),
        radii: (24.5, 40.0),
        shoves: REVERSE | REAR,
        glows: REVERSE,
        tag: (115.0, -94.0),
        ..nose::SEAT_PACK
    };
    [
        above,
        below,
        flange,
        behind,
        Place { id: "B2", shoves: FORWARD | FRONT, glows: FORWARD, ..nose::NOSE_PACK },
        rear,
        Place { id: "B3b", shoves: CARRIER | REVERSE | REAR, glows: REVERSE, ..nose::SEAT_PACK },
        // It shoves nothing: the gap behind it is the end play.
        Place {
            id: "B4",
            faces: (80.2, 85.0),
            radii: (9.5, 21.0),
            shoves: 0,
            glows: 0,
            tells: Tells::Closing,
            tag: (153.0, -94.0),
            ..rear
        },
    ]
};

/// The carrier's outline; `face` carries the pack or the bearing, `flange` the seat.
const fn carrier(face: f32, flange: f32) -> [At; 10] {
    [
        (52.0, 51.5),
        (flange, 51.5),
        (flange, 62.0),
        (flange + 8.0, 62.0),
        (flange + 8.0, 18.0),
        (93.0, 18.0),
        (93.0, 24.0),
        (face, 24.0),
        (face, 40.5),
        (52.0, 40.5),
    ]
}

static PLAIN: [At; 10] = carrier(75.0, 176.0);
static POCKETED: [At; 10] = carrier(81.4, 176.0);
static SEATED: [At; 10] = carrier(75.0, 181.8);

static PARTS: &[Part] = &[
    Part::new(0, Turn::Level, &[Pack(4), Solid(Ink::Steel, -99.0, 305.0, 9.5)]),
    Part::new(FORWARD, Turn::Level, &[Gear(11.0, -93.0, 20.0)]),
    Part::new(FRONT, Turn::Level, &[Taper(-94.0, -54.0, 20.0, 40.5)]),
    Part::new(CARRIER, Turn::Level, &[Both(Ink::Steel, &PLAIN)]).not(B3 | B3B),
    Part::new(CARRIER, Turn::Level, &[Both(Ink::Steel, &POCKETED)]).only(B3),
    Part::new(CARRIER, Turn::Level, &[Both(Ink::Steel, &SEATED)]).only(B3B),
    Part::new(
        CARRIER,
        Turn::Level,
        &[
            Ring(Ink::Race, 97.0, 30.0, 9.5, 18.0),
            Ring(Ink::Roller, 100.0, 24.0, 11.5, 16.0),
            Ring(Ink::Seal, 150.0, 7.0, 9.5, 18.0),
            Ring(Ink::Seal, 160.0, 7.0, 9.5, 18.0),
        ],
    ),
    Part::new(REVERSE, Turn::Back, &[Gear(11.0, -74.0, 20.0)]),
    Part::new(
        REAR,
        Turn::Level,
        &[
            Ring(Ink::Race, 54.0, 20.0, 20.0, 26.0),
            Ring(Ink::Race, 54.0, 20.0, 34.0, 40.5),
            Balls(64.0, 30.0, 6.5),
        ],
    ),
    Part::new(0, Turn::Level, &[Pack(5), Pack(6), Pack(7)]),
    Part::new(0, Turn::Level, &[Ring(Ink::Steel, 76.5, 3.5, 9.5, 16.0)]).only(B4),
    Part::new(0, Turn::Level, &[Ring(Ink::Race, -18.0, 36.0, 9.5, 20.0)]),
];
