//! From a plan to marks: what the unit has, and the chosen pack grown with all that it shoves.

use super::super::drawing::{Mark, Point, circle, curve, outline, placed};
use super::pieces;
use super::plan::{At, Form, Ink, Part, Place, Plan, Set, wide};

/// A plan as it is drawn.
#[derive(Clone, Copy)]
pub struct Scene {
    /// The layout.
    pub plan: &'static Plan,
    /// The places the unit has.
    pub unit: Set,
    /// The chosen place.
    pub chosen: Option<usize>,
    /// How much thicker the chosen pack is drawn; less than 0 thinner.
    pub grow: f64,
    /// How far what it shoves is drawn from its place; `grow`, unless the unit's sign is turned.
    pub push: f64,
}

impl Scene {
    /// Everything, back to front.
    pub fn marks(&self) -> Vec<Mark> {
        let [(left, right), (top, bottom)] = self.plan.axes;
        let parts = || self.drawn_parts();
        let mut marks: Vec<Mark> = parts().flat_map(|part| self.part(part)).collect();
        marks.extend(pieces::axes(wide((left, right)), wide((top, bottom))));
        marks.extend(parts().flat_map(|part| self.ghost(part)));
        marks
    }

    /// The parts that the unit has, back to front.
    pub fn drawn_parts(&self) -> impl Iterator<Item = &'static Part> {
        self.plan.parts.iter().copied().flatten().filter(|part| self.has(part))
    }

    /// The chosen place.
    pub fn place(&self) -> Option<&'static Place> {
        self.chosen.and_then(|at| self.plan.places.get(at))
    }

    /// The places that are drawn: those of the unit, and the usual one of each slot none lacks.
    fn drawn(&self) -> Set {
        let usual = |slot: &&Set| self.unit & **slot == 0;
        let missing = self.plan.needed.iter().filter(usual);
        missing.fold(self.unit, |drawn, slot| drawn | (slot & slot.wrapping_neg()))
    }

    fn has(&self, part: &Part) -> bool {
        let drawn = self.drawn();
        (part.only == 0 || drawn & part.only != 0) && drawn & part.not == 0
    }

    fn is_hot(&self, group: Set) -> bool {
        self.place().is_some_and(|place| place.glows & group != 0)
    }

    /// How far a group is drawn from its place.
    fn shift(&self, group: Set) -> Point {
        match self.place() {
            Some(place) if place.shoves & group != 0 => {
                let (dx, dy) = place.grows();
                (dx * self.push, dy * self.push)
            }
            _ => (0.0, 0.0),
        }
    }

    fn part(&self, part: &Part) -> Vec<Mark> {
        let (dx, dy) = self.shift(part.group);
        let hot = self.is_hot(part.group);
        let form = |form: &Form| match form {
            Form::Pack(at) => self.pack(*at),
            _ => placed(forms(form, hot), |point| {
                let (x, y) = part.turn.turned(point);
                (x + dx, y + dy)
            }),
        };
        part.forms.iter().flat_map(form).collect()
    }

    /// The pack of a place; the chosen one grows from its still face toward the other.
    fn pack(&self, at: usize) -> Vec<Mark> {
        let Some(place) = self.plan.places.get(at).filter(|_| self.drawn() & (1 << at) != 0) else {
            return Vec::new();
        };
        let is_chosen = self.chosen == Some(at);
        let (still, shoved) = wide(place.faces);
        let thick = (shoved - still).abs();
        let grown = if is_chosen { (thick + self.grow).max(1.5) } else { thick };
        let start = if shoved < still { still - grown } else { still };
        let ink = if is_chosen { pieces::HOT_SHIM } else { pieces::SHIM };
        let (dx, dy) = self.shift(place.rides);
        placed(pieces::ring(ink, start, grown, wide(place.radii)), |point| {
            let (x, y) = place.turn.turned(point);
            (x + dx, y + dy)
        })
    }

    /// Where the member lay before the change.
    fn ghost(&self, part: &Part) -> Vec<Mark> {
        if self.shift(part.group) == (0.0, 0.0) || !self.is_hot(part.group) {
            return Vec::new();
        }
        let bodies = part.forms.iter().flat_map(|form| forms(form, false));
        let bodies = bodies.filter(|mark| mark.ink != pieces::ROLLER);
        let bodies = bodies.map(|mark| Mark { ink: pieces::GHOST, ..mark });
        placed(bodies.collect(), |point| part.turn.turned(point))
    }
}

/// The marks of a form on a level axis.
pub fn forms(form: &Form, hot: bool) -> Vec<Mark> {
    let part = |value: f32| f64::from(value);
    match *form {
        Form::Body(ink, points) => {
            let back = points.iter().rev().map(|(along, away)| (*along, -away));
            let points: Vec<Point> = points.iter().copied().chain(back).map(wide).collect();
            vec![outline(ink.class(hot), &points)]
        }
        Form::Both(ink, points) => pieces::both(ink.class(hot), &all(points)),
        Form::Ring(ink, start, width, inner, outer) => {
            pieces::ring(ink.class(hot), part(start), part(width), wide((inner, outer)))
        }
        Form::Solid(ink, start, length, radius) => {
            vec![pieces::solid(ink.class(hot), part(start), part(length), part(radius))]
        }
        Form::Taper(back, big, bore, outside) => {
            let radii = wide((bore, outside));
            let cone = pieces::cone(Ink::Race.class(hot), part(back), part(big), radii);
            [cone, pieces::cup(Ink::Race.class(hot), part(back), part(big), radii)].concat()
        }
        Form::Cone(back, big, bore, outside) => {
            pieces::cone(Ink::Race.class(hot), part(back), part(big), wide((bore, outside)))
        }
        Form::Cup(back, big, bore, outside) => {
            pieces::cup(Ink::Race.class(hot), part(back), part(big), wide((bore, outside)))
        }
        Form::Gear(bore, end, hub) => {
            pieces::gear(Ink::Gear.class(hot), part(bore), part(end), part(hub))
        }
        Form::Pinion => placed(pieces::pinion(Ink::Gear.class(hot)), |(x, y)| (-y, x)),
        Form::Curve(ink, data) => vec![curve(ink.class(hot), data)],
        Form::Outline(ink, points) => vec![outline(ink.class(hot), &all(points))],
        Form::Hollow(neck, rest) => vec![pieces::hollow(&all(neck), &all(rest))],
        Form::Thread(start, radius) => pieces::threads(part(start), part(radius)),
        Form::Balls(along, away, radius) => [away, -away]
            .map(|away| circle(Ink::Roller.class(hot), wide((along, away)), part(radius)))
            .to_vec(),
        Form::Pack(_) => Vec::new(),
    }
}

fn all(points: &[At]) -> Vec<Point> {
    points.iter().copied().map(wide).collect()
}
