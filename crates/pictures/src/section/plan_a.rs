//! Layout (a): one driven gear, its shaft held by a stack behind a threaded ring.

use super::nose;
use super::plan::Form::*;
use super::plan::{Ink, Part, Place, Plan, Set, Turn};

/// The driven gear.
const GEAR: Set = 4;
/// The propshaft with its cones, and the front race.
const TRAIN: Set = 8;
/// The rear race.
const REAR: Set = 16;
/// The spacer of the stack.
const SPACER: Set = 32;
/// A carrier with a flange.
const CARRIER: Set = 64;

const A2: Set = 1 << 4;
const A2B: Set = 1 << 5;
const A3: Set = 1 << 6;
const A3B: Set = 1 << 7;

/// The plan.
pub static PLAN: Plan = Plan {
    layout: "a",
    start: "Section, nose left.",
    card: nose::CARD,
    strip: nose::STRIP,
    usual: 0b101_0001,
    needed: &[nose::DEPTH, A2 | A2B],
    parts: &[nose::BACK, PARTS, nose::FRONT],
    places: &PLACES,
    axes: nose::AXES,
};

static PLACES: [Place; 8] = {
    let [above, below, flange, behind] = nose::depth(["A1", "A1b", "A1c", "A1d"]);
    let front = Place { id: "A2", shoves: GEAR | TRAIN, glows: GEAR, ..nose::NOSE_PACK };
    let rear = Place {
        id: "A3",
        faces: (109.8, 103.2),
        radii: (30.0, 51.0),
        shoves: REAR | SPACER,
        glows: REAR,
        tag: (115.0, -94.0),
        ..nose::SEAT_PACK
    };
    let seat = Place { id: "A3b", shoves: CARRIER | REAR, glows: CARRIER, ..nose::SEAT_PACK };
    [
        above,
        below,
        flange,
        behind,
        front,
        Place { id: "A2b", arrow: nose::RIGHT.0, note: nose::RIGHT.1, ..front },
        rear,
        seat,
    ]
};

static PARTS: &[Part] = &[
    Part::new(TRAIN, Turn::Level, &[Pack(4), Pack(5), Solid(Ink::Steel, -99.0, 305.0, 9.5)]),
    Part::new(GEAR, Turn::Level, &[Gear(9.5, -93.0, 20.0)]).not(A2B),
    Part::new(
        TRAIN,
        Turn::Level,
        &[Taper(-94.0, -54.0, 20.0, 40.5), Solid(Ink::Steel, -20.0, 89.0, 14.5)],
    )
    .not(A2B),
    Part::new(
        TRAIN,
        Turn::Level,
        &[Taper(-94.0, -54.0, 9.5, 40.5), Solid(Ink::Steel, -53.0, 80.0, 14.5)],
    )
    .only(A2B),
    Part::new(GEAR, Turn::Back, &[Gear(9.5, -69.0, 20.0)]).only(A2B),
    Part::new(TRAIN, Turn::Level, &[Cone(96.0, 70.0, 9.5, 51.5)]),
    Part::new(REAR, Turn::Level, &[Cup(96.0, 70.0, 9.5, 51.5)]),
    Part::new(SPACER, Turn::Level, &[Ring(Ink::Steel, 96.4, 6.6, 30.0, 51.0)]).only(A3),
    Part::new(0, Turn::Level, &[Ring(Ink::Steel, 96.4, 13.4, 30.0, 51.0)]).not(A3 | A3B),
    Part::new(
        0,
        Turn::Level,
        &[
            Both(
                Ink::Steel,
                &[
                    (110.0, 51.5),
                    (152.0, 51.5),
                    (152.0, 20.0),
                    (117.0, 20.0),
                    (117.0, 28.0),
                    (110.0, 28.0),
                ],
            ),
            Ring(Ink::Seal, 123.0, 7.0, 9.5, 20.0),
            Ring(Ink::Seal, 134.0, 7.0, 9.5, 20.0),
            Ring(Ink::Race, 153.0, 21.0, 26.0, 51.5),
            Thread(153.0, 51.5),
            Outline(
                Ink::Steel,
                &[
                    (159.0, -71.0),
                    (171.0, -71.0),
                    (171.0, -65.0),
                    (168.0, -65.0),
                    (168.0, -48.0),
                    (162.0, -48.0),
                    (162.0, -65.0),
                    (159.0, -65.0),
                ],
            ),
        ],
    )
    .not(A3B),
    Part::new(
        CARRIER,
        Turn::Level,
        &[
            Both(
                Ink::Steel,
                &[
                    (96.6, 51.5),
                    (181.8, 51.5),
                    (181.8, 62.0),
                    (189.8, 62.0),
                    (189.8, 18.0),
                    (117.0, 18.0),
                    (117.0, 28.0),
                    (96.6, 28.0),
                ],
            ),
            Ring(Ink::Seal, 150.0, 7.0, 9.5, 18.0),
            Ring(Ink::Seal, 161.0, 7.0, 9.5, 18.0),
        ],
    )
    .only(A3B),
    Part::new(0, Turn::Level, &[Pack(6), Pack(7)]),
];
