//! What layouts (a), (b) and (c) share: the case with a nose, the driveshaft and the pinion, with
//! the four places its pack can lie in. These are the first four places of each of the three.

use super::super::drawing::Anchor;
use super::plan::Form::*;
use super::plan::{At, Form, Ink, Part, Place, Set, Tells, Turn};

/// The driveshaft with what is fixed on it.
pub const DRIVE: Set = 1;
/// The pinion.
pub const PINION: Set = 2;

/// Its nut.
const NUT: Set = 1 << 15;

/// Above the race.
const ABOVE: Set = 1;
/// Below the race, a ring above it.
const BELOW: Set = 2;
/// Under the flange of the bearing's housing.
const FLANGE: Set = 4;
/// Behind the pinion.
const BEHIND: Set = 8;
/// The slot of the depth pack.
pub const DEPTH: Set = ABOVE | BELOW | FLANGE | BEHIND;

/// What a card shows.
pub const CARD: [f32; 4] = [-146.0, -162.0, 366.0, 272.0];
/// Room for the words under the case.
pub const STRIP: f32 = 20.0;
/// The level axis and the upright one.
pub const AXES: [At; 2] = [(-140.0, 214.0), (-160.0, 70.0)];

/// Arrow and words at the lower left.
pub const LEFT: (At, (At, Anchor)) = ((-86.0, 84.0), ((-140.0, 123.0), Anchor::Start));
/// Arrow and words at the lower right.
pub const RIGHT: (At, (At, Anchor)) = ((130.0, 85.0), ((216.0, 123.0), Anchor::End));

/// The depth packs of a layout, by their names.
pub const fn depth([above, below, flange, behind]: [&'static str; 4]) -> [Place; 4] {
    let place = Place {
        id: above,
        turn: Turn::Up,
        faces: (136.0, 130.0),
        radii: (11.5, 22.5),
        rides: 0,
        shoves: DRIVE | PINION | NUT,
        glows: PINION,
        tells: Tells::Move,
        tag: (95.0, -132.0),
        arrow: RIGHT.0,
        note: RIGHT.1,
    };
    [
        place,
        Place { id: below, faces: (89.7, 95.5), radii: (22.8, 28.0), ..place },
        Place { id: flange, faces: (138.0, 143.5), radii: (28.5, 46.0), ..place },
        Place {
            id: behind,
            faces: (70.5, 64.5),
            radii: (9.0, 15.0),
            shoves: PINION | NUT,
            ..place
        },
    ]
}

/// The pack between the nose shoulder and the front race; layouts shove different groups with it.
pub const NOSE_PACK: Place = Place {
    id: "",
    turn: Turn::Level,
    faces: (-100.0, -94.5),
    radii: (22.0, 40.0),
    rides: 0,
    shoves: 0,
    glows: 0,
    tells: Tells::Move,
    tag: (-109.0, -108.0),
    arrow: LEFT.0,
    note: LEFT.1,
};

/// The pack between the case's seat and the carrier's flange.
pub const SEAT_PACK: Place = Place {
    faces: (176.2, 181.7),
    radii: (52.5, 62.0),
    tag: (192.0, -94.0),
    arrow: RIGHT.0,
    note: RIGHT.1,
    ..NOSE_PACK
};

const NOSE_CASE: &str = "M-46 -150V-86C-70 -76 -112 -62 -130 -28Q-138 0 -130 28C-118 52 -96 64 -70 67L-34 69L-22 106H34L52 69L176 62V-62L66 -71L50 -86V-150Z";
/// When the driveshaft bearing hangs in a flanged housing: a lower top face.
const FLANGED_CASE: &str = "M-46 -138V-86C-70 -76 -112 -62 -130 -28Q-138 0 -130 28C-118 52 -96 64 -70 67L-34 69L-22 106H34L52 69L176 62V-62L66 -71L50 -86V-138Z";

/// The case as a picture of its own, not opened.
pub const CLOSED: Form = Curve(Ink::Case, NOSE_CASE);

/// The hollow from the neck's left foot round to its right one.
static CHAMBER: [At; 12] = [
    (-54.0, -52.0),
    (-54.0, -40.5),
    (-100.5, -40.5),
    (-100.5, -22.0),
    (-108.0, -22.0),
    (-108.0, 22.0),
    (-100.5, 22.0),
    (-100.5, 40.5),
    (-54.0, 40.5),
    (-54.0, 52.0),
    (176.0, 52.0),
    (176.0, -52.0),
];

const fn case(forms: &'static [Form]) -> Part {
    Part::new(0, Turn::Level, forms)
}

const fn upright(group: Set, forms: &'static [Form]) -> Part {
    Part::new(group, Turn::Up, forms)
}

/// Case, driveshaft and its packs: the back of the picture.
pub static BACK: &[Part] = &[
    case(&[CLOSED]).not(FLANGE),
    case(&[Curve(Ink::Case, FLANGED_CASE)]).only(FLANGE),
    case(&[Hollow(&[(13.0, -150.0), (22.5, -136.5)], &CHAMBER)]).only(ABOVE),
    case(&[Hollow(&[(28.0, -150.0), (22.5, -89.5)], &CHAMBER)]).only(BELOW),
    case(&[Hollow(&[(28.5, -138.0), (22.5, -94.0)], &CHAMBER)]).only(FLANGE),
    case(&[Hollow(&[(17.0, -150.0), (22.5, -103.5)], &CHAMBER)]).only(BEHIND),
    upright(DRIVE, &[Solid(Ink::Steel, 58.0, 102.0, 9.0)]),
    upright(
        0,
        &[Ring(Ink::Race, 68.0, 22.0, 9.0, 22.0), Ring(Ink::Roller, 71.0, 16.0, 11.0, 19.0)],
    )
    .not(BEHIND),
    upright(
        0,
        &[
            Ring(Ink::Race, 112.0, 22.0, 9.0, 16.5),
            Ring(Ink::Roller, 115.0, 16.0, 10.5, 15.0),
            Taper(103.0, 71.0, 9.0, 22.5),
        ],
    )
    .only(BEHIND),
    upright(
        DRIVE,
        &[Both(
            Ink::Steel,
            &[
                (151.5, 13.0),
                (151.5, 46.0),
                (143.7, 46.0),
                (143.7, 28.0),
                (96.0, 28.0),
                (96.0, 22.5),
                (129.5, 22.5),
                (129.5, 13.0),
            ],
        )],
    )
    .only(FLANGE),
    upright(DRIVE, &[Taper(129.0, 99.0, 9.0, 22.5), Ring(Ink::Steel, 94.0, 4.5, 9.0, 14.0)])
        .only(ABOVE | FLANGE),
    upright(
        DRIVE,
        &[
            Taper(126.0, 96.0, 9.0, 28.0),
            Ring(Ink::Steel, 127.0, 13.0, 14.0, 28.0),
            Thread(127.0, 28.0),
        ],
    )
    .only(BELOW),
    upright(0, &[Pack(0), Pack(1), Pack(2), Pack(3)]),
];

/// The pinion with its nut: the front of the picture.
pub static FRONT: &[Part] =
    &[upright(PINION, &[Pinion]), upright(NUT, &[Solid(Ink::Steel, 23.0, 6.0, 9.0)])];
