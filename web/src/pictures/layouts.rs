//! The five layouts as small sketches to choose from, nose or input left.

use super::drawing::{Drawing, Mark, curve, flipped, outline, upright};
use super::section::Section;
use super::section::pieces::*;

/// A layout of the gearcase.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Layout {
    /// One driven gear, threaded ring.
    A,
    /// Forward and reverse gears, sliding dog.
    B,
    /// Twin propshafts, one pinion.
    C,
    /// Upper unit with a cone clutch.
    D,
    /// One driven gear, both shafts preloaded.
    E,
    /// Not opened yet.
    Closed,
}

impl Layout {
    /// The layout named by its letter; `None` for any other word.
    pub fn named(letter: &str) -> Option<Layout> {
        Some(match letter {
            "a" => Layout::A,
            "b" => Layout::B,
            "c" => Layout::C,
            "d" => Layout::D,
            "e" => Layout::E,
            _ => return None,
        })
    }

    /// The sketch; `label` is spoken.
    pub fn draw(self, label: &str) -> Drawing {
        let (view, marks) = match self {
            Layout::A => (NOSE_VIEW, single()),
            Layout::B => (NOSE_VIEW, two_way()),
            Layout::C => (NOSE_VIEW, twin()),
            Layout::D => ([-202.0, -148.0, 362.0, 292.0], upper_unit()),
            Layout::E => ([-146.0, -206.0, 366.0, 318.0], preloaded()),
            Layout::Closed => (NOSE_VIEW, vec![curve(CASE, NOSE_CASE)]),
        };
        Drawing { view, width: None, label: label.to_owned(), marks }
    }
}

const NOSE_VIEW: [f64; 4] = [-146.0, -162.0, 366.0, 272.0];

/// The neck's bore with the pack above the driveshaft race.
const NECK: [(f64, f64); 2] = [(13.0, -150.0), (22.5, -136.5)];

/// What layouts (a) and (c) begin with: case, driveshaft, and the pack in the nose.
fn nose_and_driveshaft() -> Vec<Mark> {
    let nose_pack = ring(SHIM, -100.0, 5.5, (22.0, 40.0));
    [nose_case(NOSE_CASE, &NECK), upright(driveshaft(SHIM, 0.0)), nose_pack].concat()
}

/// What every nose layout ends with: the pinion, in front of everything, and the axes.
fn pinion_and_axes() -> Vec<Mark> {
    [pinion(GEAR), vec![pinion_nut()], axes((-140.0, 214.0), (-160.0, 70.0))].concat()
}

fn two_way() -> Vec<Mark> {
    let mut section = Section::of(["B1", "B2", "B3", "B4"]);
    section.view = super::section::View::Low;
    section.draw().marks
}

fn single() -> Vec<Mark> {
    let carrier =
        [(104.5, 51.5), (150.0, 51.5), (150.0, 20.0), (112.0, 20.0), (112.0, 26.0), (104.5, 26.0)];
    let set_screw = [
        (159.0, -71.0),
        (171.0, -71.0),
        (171.0, -65.0),
        (168.0, -65.0),
        (168.0, -48.0),
        (162.0, -48.0),
        (162.0, -65.0),
        (159.0, -65.0),
    ];
    [
        nose_and_driveshaft(),
        vec![shaft(-99.0, 305.0, 9.5)],
        gear(GEAR, 9.5, -93.0, 20.0),
        taper(-94.0, -54.0, (20.0, 40.5)),
        vec![shaft(-20.0, 89.0, 14.5)],
        taper(96.0, 70.0, (9.5, 51.5)),
        ring(SHIM, 97.0, 7.0, (26.0, 51.0)),
        both(STEEL, &carrier),
        ring(SEAL, 120.0, 7.0, (9.5, 20.0)),
        ring(SEAL, 131.0, 7.0, (9.5, 20.0)),
        ring(RACE, 151.0, 23.0, (26.0, 51.5)),
        threads(151.0, 51.5),
        vec![outline(STEEL, &set_screw)],
        pinion_and_axes(),
    ]
    .concat()
}

fn twin() -> Vec<Mark> {
    let carrier = [
        (54.0, 51.5),
        (176.0, 51.5),
        (176.0, 62.0),
        (184.0, 62.0),
        (184.0, 24.0),
        (136.0, 24.0),
        (136.0, 40.5),
        (113.0, 40.5),
        (113.0, 29.0),
        (92.0, 29.0),
        (92.0, 40.5),
        (54.0, 40.5),
    ];
    let rear_gear = [
        (35.0, 50.0),
        (23.5, 32.0),
        (27.0, 24.0),
        (27.0, 18.0),
        (60.0, 18.0),
        (60.0, 24.0),
        (53.0, 24.0),
        (48.0, 43.0),
    ];
    let outer_shaft = shaft(30.0, 170.0, 18.0);
    let hollow = Mark { ink: BORE, ..shaft(36.0, 164.0, 13.0) };
    [
        nose_and_driveshaft(),
        gear(GEAR, 8.0, -93.0, 20.0),
        taper(-94.0, -54.0, (20.0, 40.5)),
        both(STEEL, &carrier),
        vec![outer_shaft, hollow],
        both(GEAR, &rear_gear),
        flipped(tooth_faces()),
        taper(86.0, 60.0, (18.0, 40.5)),
        ring(SHIM, 86.5, 5.0, (30.0, 40.0)),
        taper(113.5, 135.0, (18.0, 40.5)),
        spacer(87.0, (10.0, 6.0, 10.0), (18.5, 25.0)),
        ring(STEEL, 136.0, 6.0, (18.0, 23.5)),
        ring(SEAL, 150.0, 7.0, (18.0, 24.0)),
        ring(SEAL, 161.0, 7.0, (18.0, 24.0)),
        vec![shaft(-99.0, 313.0, 7.5)],
        taper(66.0, 44.0, (7.5, 13.0)),
        ring(SHIM, 38.0, 5.0, (7.8, 12.5)),
        ring(SEAL, 186.0, 6.0, (7.5, 13.0)),
        pinion_and_axes(),
    ]
    .concat()
}

fn upper_unit() -> Vec<Mark> {
    let case = "M-96 -124H96V-92H76V104H96V132H-96V104H-76V74H-150V-74H-76V-92H-96Z";
    let bore = "M-41 -124H41V-52H57V52H41V93.5H24V112H-24V93.5H-41V52H-57V47H-150V-47H-57V-52H-41Z";
    let cap = "M-96 -138H96V-124.5H40.5V-94H24V-112H-24V-94H-40.5V-124.5H-96Z";
    let cone = [(-19.0, 9.5), (-19.0, 15.0), (-4.0, 23.0), (4.0, 23.0), (19.0, 15.0), (19.0, 9.5)];
    let vertical = [
        vec![shaft(-106.0, 214.0, 9.5)],
        gear(GEAR, 11.0, -84.0, 20.0),
        taper(-87.0, -54.0, (20.0, 40.5)),
        ring(SHIM, -93.0, 5.5, (24.0, 40.0)),
        flipped(gear(GEAR, 11.0, -84.0, 20.0)),
        taper(87.0, 54.0, (20.0, 40.5)),
        ring(SHIM, 87.5, 5.7, (24.0, 40.0)),
        both(RACE, &cone),
    ]
    .concat();
    [
        vec![curve(CASE, case), curve(BORE, bore), curve(STEEL, cap)],
        upright(vertical),
        flipped(input_shaft()),
        upright(pinion(GEAR)),
        axes((-196.0, 70.0), (-146.0, 140.0)),
    ]
    .concat()
}

/// The input of the upper unit with its taper pair and carrier, its flange to the right.
fn input_shaft() -> Vec<Mark> {
    let carrier = [
        (66.0, 46.5),
        (156.0, 46.5),
        (156.0, 70.0),
        (165.0, 70.0),
        (165.0, 24.0),
        (150.0, 24.0),
        (150.0, 32.0),
        (114.0, 32.0),
        (114.0, 23.0),
        (92.0, 23.0),
        (92.0, 32.0),
        (66.0, 32.0),
    ];
    [
        vec![shaft(58.0, 122.0, 9.5)],
        both(STEEL, &carrier),
        taper(92.0, 67.0, (9.5, 32.0)),
        taper(114.0, 139.0, (9.5, 32.0)),
        spacer(93.0, (7.0, 6.0, 7.0), (9.8, 17.0)),
        ring(STEEL, 140.0, 7.0, (9.5, 16.0)),
        ring(SEAL, 153.0, 7.0, (9.5, 24.0)),
        ring(SHIM, 150.5, 5.0, (47.5, 70.0)),
    ]
    .concat()
}

fn preloaded() -> Vec<Mark> {
    let case = "M-62 -196V-88H-126V88H126V-88H62V-196Z";
    let bore = "M-34.5 -196V-126H-25V-105H-34.5V-62H-57V-56H-66V-44.5H-108V-26H-116V26H-108V44.5H-66V56H126V-56H57V-62H34.5V-105H25V-126H34.5V-196Z";
    let carrier = [
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
    ];
    let pinion_shaft = [
        vec![shaft(58.0, 147.0, 9.5)],
        taper(98.5, 70.0, (9.5, 34.0)),
        ring(SHIM, 99.0, 5.5, (20.0, 34.0)),
        taper(126.5, 155.0, (9.5, 34.0)),
        spacer(99.0, (11.0, 6.0, 10.0), (9.8, 17.0)),
        ring(STEEL, 156.0, 11.0, (9.5, 19.0)),
    ]
    .concat();
    [
        vec![curve(CASE, case), curve(BORE, bore)],
        upright(pinion_shaft),
        ring(SHIM, -107.5, 5.5, (26.0, 44.0)),
        vec![shaft(-114.0, 320.0, 9.5)],
        gear(GEAR, 9.5, -72.0, 20.0),
        taper(-101.5, -72.5, (9.5, 44.5)),
        vec![shaft(-18.0, 87.0, 15.0)],
        both(STEEL, &carrier),
        taper(99.5, 70.0, (9.5, 44.5)),
        ring(SHIM, 100.0, 5.5, (28.0, 44.0)),
        ring(SEAL, 120.0, 6.0, (9.5, 20.0)),
        ring(SEAL, 129.0, 6.0, (9.5, 20.0)),
        pinion(GEAR),
        vec![pinion_nut()],
        axes((-140.0, 214.0), (-205.0, 96.0)),
    ]
    .concat()
}

/// A spacer with a pack in it, between two cones: steel, shims, steel.
fn spacer(x: f64, (left, pack, right): (f64, f64, f64), radii: (f64, f64)) -> Vec<Mark> {
    [
        ring(STEEL, x, left, radii),
        ring(SHIM, x + left, pack, radii),
        ring(STEEL, x + left + pack, right, radii),
    ]
    .concat()
}
