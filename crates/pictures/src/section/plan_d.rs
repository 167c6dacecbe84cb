//! Layout (d): an upper unit, its input from the left, two opposed gears, a cone clutch between
//! them on a vertical shaft.

use super::super::drawing::Anchor;
use super::plan::Form::*;
use super::plan::{At, Form, Ink, Part, Place, Plan, Set, Tells, Turn};

/// The pinion.
const PINION: Set = 1;
/// The shaft it is made with.
const INPUT: Set = 2;
/// Its carrier with both races.
const CARRIER: Set = 4;
/// The inner cone.
const INNER_CONE: Set = 8;
/// The outer cone with its nut.
const OUTER_CONE: Set = 16;
/// The lower gear.
const LOWER: Set = 32;
/// Its bearing.
const LOWER_RACE: Set = 64;
/// The upper gear.
const UPPER: Set = 128;
/// Its bearing.
const UPPER_RACE: Set = 256;
/// The top cap.
const CAP: Set = 512;
/// The vertical shaft with the cone.
const SHAFT: Set = 1024;

const D1: Set = 1;
const D1B: Set = 1 << 1;
const D4: Set = 1 << 4;
const D4B: Set = 1 << 5;
const D5: Set = 1 << 6;

/// The plan.
pub static PLAN: Plan = Plan {
    layout: "d",
    start: "Section, input from the left.",
    card: [-202.0, -152.0, 362.0, 292.0],
    strip: 30.0,
    usual: 0b1_1101,
    needed: &[D1 | D1B, 1 << 2, 1 << 3],
    parts: &[PARTS],
    places: &PLACES,
    axes: [(-196.0, 70.0), (-148.0, 138.0)],
};

static PLACES: [Place; 7] = {
    let flange = Place {
        id: "D1",
        turn: Turn::Back,
        faces: (150.3, 155.8),
        radii: (47.5, 70.0),
        rides: 0,
        shoves: PINION | INPUT | CARRIER | INNER_CONE | OUTER_CONE,
        glows: PINION,
        tells: Tells::Move,
        tag: (-172.0, -102.0),
        arrow: (-152.0, 104.0),
        note: ((-196.0, 163.0), Anchor::Start),
    };
    let lower = Place {
        id: "D3",
        turn: Turn::Up,
        faces: (-93.3, -87.6),
        radii: (24.0, 40.0),
        shoves: LOWER | LOWER_RACE,
        glows: LOWER,
        tag: (130.0, 80.0),
        arrow: (126.0, 123.0),
        note: ((156.0, 163.0), Anchor::End),
        ..flange
    };
    [
        flange,
        Place {
            id: "D1b",
            faces: (71.4, 64.8),
            radii: (9.8, 17.0),
            rides: CARRIER,
            shoves: PINION | INPUT,
            tag: (-119.0, -134.0),
            ..flange
        },
        Place {
            id: "D2",
            faces: (100.2, 105.8),
            radii: (9.8, 17.0),
            rides: CARRIER,
            shoves: OUTER_CONE,
            glows: INNER_CONE | OUTER_CONE,
            tells: Tells::Parting,
            tag: (-122.0, -102.0),
            ..flange
        },
        lower,
        Place {
            id: "D4",
            faces: (93.8, 87.6),
            rides: CAP,
            shoves: UPPER | UPPER_RACE,
            glows: UPPER,
            tag: (130.0, -84.0),
            arrow: BETWEEN,
            ..lower
        },
        Place {
            id: "D4b",
            faces: (124.3, 129.8),
            radii: (41.5, 96.0),
            shoves: CAP | UPPER | UPPER_RACE,
            glows: UPPER,
            tag: (126.0, -122.0),
            arrow: BETWEEN,
            ..lower
        },
        Place {
            id: "D5",
            faces: (-26.6, -19.4),
            radii: (9.5, 14.5),
            rides: LOWER,
            shoves: SHAFT,
            glows: SHAFT,
            tag: (130.0, 24.0),
            arrow: BETWEEN,
            ..lower
        },
    ]
};

/// Beside the gears, clear of the tags.
const BETWEEN: At = (130.0, -30.0);

const CASE: &str = "M-96 -124H96V-92H76V104H96V132H-96V104H-76V74H-150V-74H-76V-92H-96Z";
const BORE: &str =
    "M-41 -124H41V-52H57V52H41V93.5H24V112H-24V93.5H-41V52H-57V47H-150V-47H-57V-52H-41Z";

/// The cap's outline, right of the axis; `flange` is the underside of its flange.
const fn cap(flange: f32) -> [At; 6] {
    let top = flange + 13.5;
    [(top, 96.0), (flange, 96.0), (flange, 40.5), (94.0, 40.5), (94.0, 24.0), (112.0, 24.0)]
}

static CAP_DOWN: [At; 6] = cap(124.5);
static CAP_UP: [At; 6] = cap(130.0);

/// The carrier's outline below the axis; `flange` is the inner face of its flange.
const fn carrier(flange: f32) -> [At; 12] {
    [
        (66.0, 46.5),
        (flange, 46.5),
        (flange, 70.0),
        (flange + 9.0, 70.0),
        (flange + 9.0, 24.0),
        (150.0, 24.0),
        (150.0, 32.0),
        (114.0, 32.0),
        (114.0, 23.0),
        (92.0, 23.0),
        (92.0, 32.0),
        (66.0, 32.0),
    ]
}

static FLANGE_OUT: [At; 12] = carrier(156.0);
static FLANGE_IN: [At; 12] = carrier(150.5);

/// A gear with the female cone of the clutch on its face.
const FACED: &[Form] = &[
    Gear(11.0, -84.0, 20.0),
    Both(Ink::Gear, &[(-27.0, 24.0), (-26.5, 16.0), (-9.5, 25.0), (-9.5, 28.0), (-22.0, 29.5)]),
];

static PARTS: &[Part] = &[
    Part::new(0, Turn::Level, &[Curve(Ink::Case, CASE), Curve(Ink::Bore, BORE)]),
    Part::new(CAP, Turn::Up, &[Body(Ink::Steel, &CAP_DOWN)]).not(D4B),
    Part::new(CAP, Turn::Up, &[Body(Ink::Steel, &CAP_UP)]).only(D4B),
    Part::new(CAP, Turn::Up, &[Ring(Ink::Steel, 87.6, 6.4, 24.0, 40.5)]).not(D4),
    Part::new(
        SHAFT,
        Turn::Up,
        &[
            Solid(Ink::Steel, -106.0, 214.0, 9.5),
            Both(
                Ink::Race,
                &[
                    (-19.0, 9.5),
                    (-19.0, 15.0),
                    (-4.0, 23.0),
                    (4.0, 23.0),
                    (19.0, 15.0),
                    (19.0, 9.5),
                ],
            ),
        ],
    ),
    Part::new(LOWER, Turn::Up, FACED),
    Part::new(LOWER, Turn::Up, &[Ring(Ink::Race, -26.6, 6.0, 9.5, 14.5)]).not(D5),
    Part::new(LOWER_RACE, Turn::Up, &[Taper(-87.0, -54.0, 20.0, 40.5)]),
    Part::new(UPPER, Turn::Down, FACED),
    Part::new(UPPER, Turn::Up, &[Ring(Ink::Race, 20.6, 6.0, 9.5, 14.5)]),
    Part::new(UPPER_RACE, Turn::Down, &[Taper(-87.0, -54.0, 20.0, 40.5)]),
    Part::new(0, Turn::Level, &[Pack(3), Pack(4), Pack(5), Pack(6)]),
    Part::new(INPUT, Turn::Back, &[Solid(Ink::Steel, 58.0, 122.0, 9.5)]),
    Part::new(CARRIER, Turn::Back, &[Both(Ink::Steel, &FLANGE_OUT)]).not(D1B),
    Part::new(CARRIER, Turn::Back, &[Both(Ink::Steel, &FLANGE_IN)]).only(D1B),
    Part::new(
        CARRIER,
        Turn::Back,
        &[
            Cup(92.0, 72.0, 9.5, 32.0),
            Cup(114.0, 139.0, 9.5, 32.0),
            Ring(Ink::Seal, 153.0, 5.0, 9.5, 24.0),
        ],
    ),
    Part::new(
        INNER_CONE,
        Turn::Back,
        &[Cone(92.0, 72.0, 9.5, 32.0), Ring(Ink::Steel, 93.0, 7.0, 9.8, 17.0)],
    ),
    Part::new(INNER_CONE, Turn::Back, &[Ring(Ink::Steel, 64.8, 6.8, 9.8, 17.0)]).not(D1B),
    Part::new(
        OUTER_CONE,
        Turn::Back,
        &[
            Cone(114.0, 139.0, 9.5, 32.0),
            Ring(Ink::Steel, 106.0, 7.0, 9.8, 17.0),
            Ring(Ink::Steel, 140.0, 7.0, 9.5, 16.0),
        ],
    ),
    Part::new(0, Turn::Level, &[Pack(0), Pack(1), Pack(2)]),
    Part::new(PINION, Turn::Back, &[Pinion]),
];
