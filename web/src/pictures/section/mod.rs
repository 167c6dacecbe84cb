//! The section sketch: where each pack lies, and what the chosen one moves.

mod layout_b;
mod pack;
pub mod pieces;
mod tags;

use super::drawing::{Anchor, Drawing, Point, text};
use super::scale::held;
use layout_b::LayoutB;
use pack::Member;
pub use pack::Pack;
pub use tags::pointer;

/// Drawn px for a millimetre of pack: 0.1 mm is seen as 4 px, some forty times too much.
const EXAGGERATION: f64 = 40.0;

/// The section sketch of layout (b), nose left.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Section {
    /// The packs this unit has, each where it lies.
    pub packs: Vec<Pack>,
    /// The pack that is ringed; its member glows.
    pub chosen: Option<Pack>,
    /// How much thicker than it lies the chosen pack is thought, mm; less than 0 thinner.
    pub change: f64,
    /// The words at the arrow, up to some 16 letters: "gear aft". Without them no arrow is drawn.
    pub note: String,
    /// How much of the unit is shown.
    pub view: View,
    /// What is spoken in place of the picture's own sentence.
    pub label: Option<String>,
}

/// How much of the unit is shown.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum View {
    /// All of it, with tags, arrow and note.
    #[default]
    Whole,
    /// A low strip with the gears, for a card.
    Low,
    /// The chosen pack and its member, with the arrow.
    Close,
}

impl Section {
    /// The sketch of the packs named; names that layout (b) does not have are left out.
    pub fn of<'a>(ids: impl IntoIterator<Item = &'a str>) -> Section {
        Section { packs: ids.into_iter().filter_map(Pack::named).collect(), ..Section::default() }
    }

    /// The same with the pack of that name chosen.
    pub fn choosing(self, id: &str) -> Section {
        Section { chosen: Pack::named(id), ..self }
    }

    /// The drawing.
    pub fn draw(&self) -> Drawing {
        let grow = held(self.change * EXAGGERATION, -4.0, 8.0);
        let mut marks = LayoutB { packs: &self.packs, chosen: self.chosen, grow }.marks();
        if self.view == View::Whole {
            marks.extend(tags::tags(&self.packs));
        }
        if let Some(pack) = self.chosen
            && !self.note.is_empty()
            && self.view != View::Low
        {
            let way = if self.change < 0.0 { pack.way().turned() } else { pack.way() };
            let (arrow, note) = self.arrow_place(pack);
            marks.extend(tags::arrow(way, arrow));
            marks.extend(note.map(|(at, anchor)| text("k-note", at, anchor, &*self.note)));
        }
        Drawing { view: self.frame(), width: None, label: self.spoken(), marks }
    }

    fn frame(&self) -> [f64; 4] {
        match (self.view, self.chosen) {
            (View::Low, _) => [-146.0, -72.0, 366.0, 144.0],
            (View::Close, Some(Pack::B1 | Pack::B1b | Pack::B1c)) => [-125.0, -166.0, 250.0, 160.0],
            (View::Close, Some(Pack::B1d)) => [-125.0, -140.0, 250.0, 160.0],
            (View::Close, Some(Pack::B2)) => [-146.0, -80.0, 250.0, 160.0],
            (View::Close, Some(_)) => [-30.0, -80.0, 250.0, 160.0],
            (View::Whole, _) | (View::Close, None) => [-146.0, -162.0, 366.0, 282.0],
        }
    }

    /// Middle of the arrow, and where the note hangs if there is room for it.
    fn arrow_place(&self, pack: Pack) -> (Point, Option<(Point, Anchor)>) {
        match (self.view, pack.member()) {
            (View::Whole, Member::Forward) => {
                ((-86.0, 84.0), Some(((-140.0, 116.0), Anchor::Start)))
            }
            (View::Whole, Member::Pinion) => ((66.0, 95.0), Some(((86.0, 102.0), Anchor::Start))),
            (View::Whole, _) => ((116.0, 84.0), Some(((216.0, 116.0), Anchor::End))),
            (_, Member::Forward) => ((-32.0, 62.0), None),
            (_, Member::Pinion) => ((84.0, -108.0), None),
            (_, Member::Reverse | Member::Float) => ((32.0, 62.0), None),
        }
    }

    fn spoken(&self) -> String {
        if let Some(label) = &self.label {
            return label.clone();
        }
        let start = "Section, nose left.";
        match self.chosen {
            Some(pack) if self.note.is_empty() => format!("{start} {}", pack.sentence()),
            Some(pack) => {
                let drawn = match self.change {
                    change if change > 0.0 => "Drawn with a thicker pack",
                    change if change < 0.0 => "Drawn with a thinner pack",
                    _ => "The arrow shows",
                };
                format!("{start} {} {drawn}: {}.", pack.sentence(), self.note)
            }
            None => {
                let ids: Vec<_> = self.packs.iter().map(|pack| pack.id()).collect();
                format!("{start} The packs {} where they lie.", ids.join(", "))
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use wasm_bindgen_test::wasm_bindgen_test as test;

    use super::*;
    use crate::pictures::drawing::{Mark, Shape};

    fn sketch(pack: Pack, change: f64) -> Drawing {
        let packs = vec![pack, Pack::B2, Pack::B3, Pack::B4];
        Section { packs, chosen: Some(pack), change, ..Section::default() }.draw()
    }

    /// Middle of everything drawn in an ink.
    fn middle(drawing: &Drawing, ink: &str) -> Option<Point> {
        let inked = |mark: &&Mark| mark.ink == ink;
        let points: Vec<Point> = drawing
            .marks
            .iter()
            .filter(inked)
            .flat_map(|mark| match &mark.shape {
                Shape::Outline(points) => points.clone(),
                _ => Vec::new(),
            })
            .collect();
        let count = points.len() as f64;
        let sum = points.iter().fold((0.0, 0.0), |sum, point| (sum.0 + point.0, sum.1 + point.1));
        (count > 0.0).then(|| (sum.0 / count, sum.1 / count))
    }

    // The ways follow from the swelling test: picture the pack growing and see what it shoves
    // (common practice, no source).
    #[test]
    fn a_thicker_pack_is_seen_to_move_its_member_its_way() {
        for (pack, dx, dy) in [
            (Pack::B1, 0.0, 4.0),
            (Pack::B1b, 0.0, -4.0),
            (Pack::B1c, 0.0, -4.0),
            (Pack::B1d, 0.0, 4.0),
            (Pack::B2, 4.0, 0.0),
            (Pack::B3, -4.0, 0.0),
            (Pack::B3b, 4.0, 0.0),
        ] {
            let before = middle(&sketch(pack, 0.0), pieces::HOT_GEAR).expect("a member glows");
            let after = middle(&sketch(pack, 0.1), pieces::HOT_GEAR).expect("a member glows");
            let moved = (after.0 - before.0, after.1 - before.1);
            assert!((moved.0 - dx).abs() < 1e-9, "{pack:?} went {moved:?}");
            assert!((moved.1 - dy).abs() < 1e-9, "{pack:?} went {moved:?}");
        }
    }

    #[test]
    fn the_washer_moves_no_gear() {
        assert_eq!(middle(&sketch(Pack::B4, 0.05), pieces::HOT_GEAR), None);
        assert!(middle(&sketch(Pack::B4, 0.05), pieces::HOT_SHIM).is_some());
    }

    #[test]
    fn a_thinner_pack_turns_the_arrow() {
        let arrow = |change| {
            let section = Section::of(["B1", "B2"]).choosing("B2");
            let note = "gear".to_owned();
            let drawing = Section { change, note, ..section }.draw();
            drawing.marks.into_iter().find(|mark| mark.ink == "k-arrow").expect("an arrow").path()
        };
        assert_eq!(arrow(0.0), arrow(0.05));
        assert_ne!(arrow(0.0), arrow(-0.05));
    }

    #[test]
    fn every_pack_is_drawn_and_tagged_where_the_unit_has_it() {
        for pack in Pack::ALL {
            let drawing = Section { packs: vec![pack], ..Section::default() }.draw();
            let tags = drawing.marks.iter().filter(|mark| mark.ink == "k-tag").count();
            assert_eq!(tags, 1, "{pack:?}");
            assert_eq!(Pack::named(pack.id()), Some(pack));
        }
        assert_eq!(Pack::named("A1"), None);
    }
}
