//! The section sketch: where each pack lies, and what the chosen one moves.

mod nose;
pub mod pieces;
mod plan;
mod plan_a;
mod plan_b;
mod plan_c;
mod plan_d;
mod plan_e;
mod scene;
mod seals;
mod tags;
#[cfg(test)]
mod tests;
mod view;
mod words;

use super::drawing::{Drawing, Mark, Point, text};
use super::scale::held;
use ::words::t;
pub use plan::Plan;
use plan::{Place, Set, Tells, wide};
use scene::Scene;
pub use seals::SealAt;
pub use tags::pointer;
pub use view::View;

/// Drawn px for a millimetre of pack: 0.1 mm is seen as 4 px, some forty times too much.
const EXAGGERATION: f64 = 40.0;

/// Every layout's plan.
static PLANS: [&Plan; 5] =
    [&plan_a::PLAN, &plan_b::PLAN, &plan_c::PLAN, &plan_d::PLAN, &plan_e::PLAN];

/// The section sketch of a unit.
#[derive(Clone)]
pub struct Section {
    /// The layout.
    pub plan: &'static Plan,
    /// The places of packs that the unit has, a bit each.
    pub unit: Set,
    /// The place that is ringed; its member glows.
    pub chosen: Option<usize>,
    /// How much thicker than it lies the chosen pack is thought, mm; less than 0 thinner.
    pub change: f64,
    /// A person has found that the chosen pack pushes the other way: the arrow is turned.
    pub turned: bool,
    /// The words at the arrow: "gear aft". Without them no arrow is drawn.
    pub note: String,
    /// How much of the unit is shown.
    pub view: View,
    /// What is spoken in place of the picture's own sentence.
    pub label: Option<String>,
}

impl Default for Section {
    fn default() -> Section {
        Section {
            plan: &plan_b::PLAN,
            unit: 0,
            chosen: None,
            change: 0.0,
            turned: false,
            note: String::new(),
            view: View::Whole,
            label: None,
        }
    }
}

impl Section {
    /// The sketch of the packs named: of the layout the first known name belongs to. Names that
    /// it does not have are left out.
    pub fn of<'a>(ids: impl IntoIterator<Item = &'a str>) -> Section {
        let mut section = Section::default();
        for id in ids {
            if section.unit == 0 {
                let with = PLANS.into_iter().find(|plan| plan.number(id).is_some());
                section.plan = with.unwrap_or(section.plan);
            }
            section.unit |= section.plan.number(id).map_or(0, |at| 1 << at);
        }
        section
    }

    /// The sketch of a layout, `a` to `e`, as its card shows it; `None` for any other word.
    pub fn card(layout: &str) -> Option<Section> {
        let plan = PLANS.into_iter().find(|plan| plan.layout == layout)?;
        Some(Section { plan, unit: plan.usual, view: View::Card, ..Section::default() })
    }

    /// The same with the pack of that name chosen.
    pub fn choosing(self, id: &str) -> Section {
        Section { chosen: self.plan.number(id), ..self }
    }

    /// The drawing.
    pub fn draw(&self) -> Drawing {
        let scene = self.scene();
        let mut marks = scene.marks();
        if self.view == View::Whole {
            marks.extend(self.places().flat_map(tags::tag));
        }
        let lines = words::lines(&self.note);
        let view = self.view.frame(&scene, lines.len());
        if let Some(place) = scene.place()
            && !self.note.is_empty()
        {
            match self.view {
                View::Whole => {
                    marks.extend(self.arrow(place, wide(place.arrow)));
                    marks.extend(note(place, &lines));
                }
                View::Close => {
                    marks.extend(self.arrow(place, view::close_arrow(place, view)));
                }
                View::Low | View::Card => {}
            }
        }
        Drawing { view, width: None, label: self.spoken(), marks }
    }

    /// The drawing of the card, without tags and arrow; the caller says what it shows.
    pub fn draw_bare(&self) -> Drawing {
        let scene = self.scene();
        let view = View::Card.frame(&scene, 0);
        Drawing { view, width: None, label: String::new(), marks: scene.marks() }
    }

    fn scene(&self) -> Scene {
        let push = held(self.change * EXAGGERATION, -3.5, 8.0);
        // The sketch does not know where a pack lies that pushes the other way: it keeps its size.
        let (grow, push) = if self.turned { (0.0, -push) } else { (push, push) };
        Scene { plan: self.plan, unit: self.unit, chosen: self.chosen, grow, push }
    }

    /// The places of the unit's packs.
    fn places(&self) -> impl Iterator<Item = &'static Place> {
        let all = self.plan.places.iter().enumerate();
        all.filter(|(at, _)| self.unit & (1 << at) != 0).map(|(_, place)| place)
    }

    /// The arrow of a place with its middle at `at`.
    fn arrow(&self, place: &Place, at: Point) -> Vec<Mark> {
        let is_back = (self.change < 0.0) != self.turned;
        let (dx, dy) = place.grows();
        match place.tells {
            Tells::Move if is_back => tags::moving((-dx, -dy), at),
            Tells::Move => tags::moving((dx, dy), at),
            tells => tags::gap((tells == Tells::Parting) != is_back, (dx.abs(), dy.abs()), at),
        }
    }
}

/// The words of an arrow, line by line.
fn note(place: &Place, lines: &[String]) -> Vec<Mark> {
    let (at, anchor) = place.note;
    let (x, y) = wide(at);
    let line = |(row, words): (usize, &String)| {
        text("k-note", (x, y + words::LEADING * row as f64), anchor, words.clone())
    };
    lines.iter().enumerate().map(line).collect()
}

impl Plan {
    /// The number of the place named `id`.
    fn number(&self, id: &str) -> Option<usize> {
        self.places.iter().position(|place| place.id == id)
    }
}

/// The low strip of layout (b) with its packs, for the first page: it must not wait for the other
/// layouts.
pub fn glance() -> Drawing {
    let plan = &plan_b::PLAN;
    let scene = Scene { plan, unit: plan.usual, chosen: None, grow: 0.0, push: 0.0 };
    let label = t("Section, nose left. The packs B1, B2, B3, B4 where they lie.").to_owned();
    Drawing { view: View::low(plan), width: None, label, marks: scene.marks() }
}

/// A case with a nose that has not been opened; `label` is spoken.
pub fn closed(label: &str) -> Drawing {
    let marks = scene::forms(&nose::CLOSED, false);
    Drawing { view: nose::CARD.map(f64::from), width: None, label: label.to_owned(), marks }
}
