//! What a layout's section is written down as: parts back to front, and the places of its packs.

use super::super::drawing::{Anchor, Point};

/// A point of a table: along the part's axis and away from it.
pub type At = (f32, f32);

/// Some of a plan's places, or of the groups that move together: a bit each.
pub type Set = u16;

/// The section of one layout.
pub struct Plan {
    /// `b`, as the layout is named everywhere.
    pub layout: &'static str,
    /// How the spoken sentence begins.
    pub start: &'static str,
    /// Left, top, width and height of what is shown on a card.
    pub card: [f32; 4],
    /// How much lower the picture reaches where there is an arrow with its words.
    pub strip: f32,
    /// The places a card shows packs in.
    pub usual: Set,
    /// Slots that no unit lacks: where the unit names none of their places, the lowest is drawn.
    pub needed: &'static [Set],
    /// Everything drawn, from the back to the front.
    pub parts: &'static [&'static [Part]],
    /// Where packs can lie.
    pub places: &'static [Place],
    /// Ends of the level axis and of the upright one.
    pub axes: [At; 2],
}

/// Shapes that stand or move together.
pub struct Part {
    /// Drawn only in a unit that has one of these places; none named, in every unit.
    pub only: Set,
    /// Not drawn in a unit that has one of these.
    pub not: Set,
    /// The groups it moves and glows with.
    pub group: Set,
    /// How its axis lies.
    pub turn: Turn,
    /// What it is made of.
    pub forms: &'static [Form],
}

/// How an axis lies in the picture.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Turn {
    /// As written.
    Level,
    /// Right and left changed over.
    Back,
    /// Its right end on top.
    Up,
    /// Its right end below.
    Down,
}

/// The metal a form is inked as.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ink {
    /// Cut metal of the case.
    Case,
    /// Air and lube.
    Bore,
    /// Shafts, spacers, carriers.
    Steel,
    /// Gears.
    Gear,
    /// Races, cones, rings, dogs.
    Race,
    /// Rollers and needles.
    Roller,
    /// Seals.
    Seal,
}

/// One shape round the part's axis; lengths along the axis, then radii.
pub enum Form {
    /// One outline: the points given, then their images across the axis on the way back.
    Body(Ink, &'static [At]),
    /// An outline and its image across the axis.
    Both(Ink, &'static [At]),
    /// A cut ring: start, width, inner and outer radius.
    Ring(Ink, f32, f32, f32, f32),
    /// A rectangle on the axis: start, length, radius.
    Solid(Ink, f32, f32, f32),
    /// A taper bearing: back of the cup, big end of the rollers, bore, outside.
    Taper(f32, f32, f32, f32),
    /// Only its cone and rollers.
    Cone(f32, f32, f32, f32),
    /// Only its cup.
    Cup(f32, f32, f32, f32),
    /// A driven gear with its teeth to the right: bore, end of the hub, radius of the hub.
    Gear(f32, f32, f32),
    /// The pinion, its shaft to the right.
    Pinion,
    /// Path data, never moved.
    Curve(Ink, &'static str),
    /// An outline on one side only.
    Outline(Ink, &'static [At]),
    /// The hollow of a case: radius and top of each step of the neck, then the rest from the
    /// neck's left foot round to its right one.
    Hollow(&'static [At], &'static [At]),
    /// A thread on both sides: start, radius.
    Thread(f32, f32),
    /// A ball on both sides: along, away, radius.
    Balls(f32, f32, f32),
    /// The pack of the place with this number.
    Pack(usize),
}

/// A place that holds a pack.
#[derive(Clone, Copy)]
pub struct Place {
    /// `B1c`.
    pub id: &'static str,
    /// How its axis lies.
    pub turn: Turn,
    /// The face that stands still, and the face that the pack shoves.
    pub faces: (f32, f32),
    /// Inner and outer radius.
    pub radii: (f32, f32),
    /// What its still face moves with.
    pub rides: Set,
    /// What a thicker pack shoves.
    pub shoves: Set,
    /// What glows when it is chosen.
    pub glows: Set,
    /// What the arrow tells.
    pub tells: Tells,
    /// Middle of its tag.
    pub tag: At,
    /// Middle of its arrow.
    pub arrow: At,
    /// Where the arrow's words hang.
    pub note: (At, Anchor),
}

/// What the arrow of a place tells of a thicker pack.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Tells {
    /// A member goes the way the pack grows.
    Move,
    /// A gap closes.
    Closing,
    /// Two parts go apart.
    Parting,
}

impl Part {
    /// A part on an axis.
    pub const fn new(group: Set, turn: Turn, forms: &'static [Form]) -> Part {
        Part { only: 0, not: 0, group, turn, forms }
    }

    /// The same, drawn only where the unit has one of `places`.
    pub const fn only(self, places: Set) -> Part {
        Part { only: places, ..self }
    }

    /// The same, drawn only where the unit has none of `places`.
    pub const fn not(self, places: Set) -> Part {
        Part { not: places, ..self }
    }
}

impl Turn {
    /// A point of the part in the picture.
    pub fn turned(self, (along, away): Point) -> Point {
        match self {
            Turn::Level => (along, away),
            Turn::Back => (-along, away),
            Turn::Up => (away, -along),
            Turn::Down => (away, along),
        }
    }
}

impl Place {
    /// Which way in the picture it grows, a step of one.
    pub fn grows(&self) -> Point {
        let step = if self.faces.1 < self.faces.0 { -1.0 } else { 1.0 };
        self.turn.turned((step, 0.0))
    }

    /// The point of the pack its leader ends at: the upper half, or the right one.
    pub fn point(&self) -> Point {
        let along = (self.faces.0 + self.faces.1) / 2.0;
        let away = (self.radii.0 + self.radii.1) / 2.0;
        let side = match self.turn {
            Turn::Level | Turn::Back => -1.0,
            Turn::Up | Turn::Down => 1.0,
        };
        self.turn.turned(wide((along, side * away)))
    }
}

impl Ink {
    /// Its class in the style sheet; `hot` on the member that the chosen pack moves.
    pub fn class(self, hot: bool) -> &'static str {
        match (self, hot) {
            (Ink::Case, _) => "k-case",
            (Ink::Bore, _) => "k-bore",
            (Ink::Steel, false) => "k-steel",
            (Ink::Steel, true) => "k-steel k-hot",
            (Ink::Gear, false) => "k-gear",
            (Ink::Gear, true) => "k-gear k-hot",
            (Ink::Race, false) => "k-race",
            (Ink::Race, true) => "k-race k-hot",
            (Ink::Roller, _) => "k-roll",
            (Ink::Seal, _) => "k-seal",
        }
    }
}

/// A point of a table as a point of a picture.
pub fn wide((along, away): At) -> Point {
    (along.into(), away.into())
}
