//! The section sketch: where each pack lies, and what the chosen one moves.

mod layout_b;
mod pack;
pub mod pieces;
mod tags;

use super::drawing::{Anchor, Drawing, Point, text};
use layout_b::LayoutB;
pub use pack::{Member, Pack, Way};
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
        let grow = (self.change * EXAGGERATION).clamp(-4.0, 8.0);
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
                ((-86.0, 84.0), Some(((-140.0, 113.0), Anchor::Start)))
            }
            (View::Whole, Member::Pinion) => ((66.0, 95.0), Some(((86.0, 102.0), Anchor::Start))),
            (View::Whole, _) => ((116.0, 84.0), Some(((216.0, 113.0), Anchor::End))),
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
            Some(pack) => format!("{start} {} The arrow shows: {}.", pack.sentence(), self.note),
            None => {
                let ids: Vec<_> = self.packs.iter().map(|pack| pack.id()).collect();
                format!("{start} The packs {} where they lie.", ids.join(", "))
            }
        }
    }
}
