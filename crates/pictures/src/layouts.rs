//! The five layouts as small sketches to choose from, nose or input left.

use super::drawing::Drawing;
use super::section::{Section, closed};

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
        let letter = match self {
            Layout::A => "a",
            Layout::B => "b",
            Layout::C => "c",
            Layout::D => "d",
            Layout::E => "e",
            Layout::Closed => return closed(label),
        };
        let drawing = Section::card(letter).map(|section| section.draw()).unwrap_or_default();
        Drawing { label: label.to_owned(), ..drawing }
    }
}
