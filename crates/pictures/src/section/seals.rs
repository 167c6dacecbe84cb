//! Where the seals of a unit lie in its section.

use super::super::drawing::Point;
use super::Section;
use super::plan::{Form, Ink, wide};

/// A seal of the section.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SealAt {
    /// The middle of its cut below the axis.
    pub at: Point,
    /// Which way along x the oil lies: −1 left, 1 right. Oil is inside, toward the crossing of the
    /// shafts.
    pub oil: f64,
}

impl Section {
    /// The seals of the unit, the nearest to the crossing of the shafts first.
    pub fn seals(&self) -> Vec<SealAt> {
        let scene = self.scene();
        let mut found = Vec::new();
        for part in scene.drawn_parts() {
            for form in part.forms {
                let Form::Ring(Ink::Seal, start, width, inner, outer) = form else { continue };
                let middle = wide((start + width / 2.0, (inner + outer) / 2.0));
                let at = part.turn.turned(middle);
                found.push(SealAt { at, oil: if at.0 < 0.0 { 1.0 } else { -1.0 } });
            }
        }
        found.sort_by(|one, other| one.at.0.abs().total_cmp(&other.at.0.abs()));
        found
    }
}
