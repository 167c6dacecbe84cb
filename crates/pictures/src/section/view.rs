//! How much of a section is shown.

use super::super::drawing::{Point, Shape};
use super::plan::{Place, Plan};
use super::scene::Scene;
use super::words::LEADING;

/// How much of the unit is shown.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum View {
    /// All of it, with tags, arrow and note.
    #[default]
    Whole,
    /// All of it, bare.
    Card,
    /// A low strip with the gears.
    Low,
    /// The chosen pack and its member, with the arrow.
    Close,
}

/// The least that is shown close.
const CLOSE: Point = (250.0, 160.0);
/// What is left free round the member.
const MARGIN: f64 = 12.0;
/// Height of the low strip, the axis in its middle.
const LOW: f64 = 144.0;

impl View {
    /// Left, top, width and height of what is shown of a scene whose note has `lines` lines.
    pub fn frame(self, scene: &Scene, lines: usize) -> [f64; 4] {
        let [left, top, width, height] = scene.plan.card.map(f64::from);
        match self {
            View::Card => [left, top, width, height],
            View::Low => View::low(scene.plan),
            View::Close if scene.place().is_some() => close(scene),
            View::Whole | View::Close => {
                let more = LEADING * lines.saturating_sub(1) as f64;
                [left, top, width, height + f64::from(scene.plan.strip) + more]
            }
        }
    }

    /// What the low strip of a plan shows.
    pub fn low(plan: &Plan) -> [f64; 4] {
        let [left, _, width, _] = plan.card.map(f64::from);
        [left, -LOW / 2.0, width, LOW]
    }
}

/// The chosen pack and its member with some room round them, within the picture. What it does not
/// depend on is the change, so that it stands still while the pack grows.
fn close(scene: &Scene) -> [f64; 4] {
    let still = Scene { grow: 0.0, push: 0.0, ..*scene };
    let [left, top, width, height] = scene.plan.card.map(f64::from);
    let (mut least, mut most) = ((f64::MAX, f64::MAX), (f64::MIN, f64::MIN));
    for mark in still.marks() {
        if let Shape::Outline(points) = &mark.shape
            && (mark.ink.ends_with("hot"))
        {
            for (x, y) in points {
                least = (least.0.min(*x), least.1.min(*y));
                most = (most.0.max(*x), most.1.max(*y));
            }
        }
    }
    let wide = (most.0 - least.0 + 2.0 * MARGIN).max(CLOSE.0);
    let tall = (most.1 - least.1 + 2.0 * MARGIN).max(CLOSE.1);
    let (wide, tall) = (wide.max(tall * CLOSE.0 / CLOSE.1), tall.max(wide * CLOSE.1 / CLOSE.0));
    let x = ((least.0 + most.0 - wide) / 2.0).max(left).min(left + width - wide);
    let y = ((least.1 + most.1 - tall) / 2.0).max(top).min(top + height - tall);
    [x, y, wide, tall]
}

/// Where the arrow of a place stands when it is seen close: under the member or right of it.
pub fn close_arrow(place: &Place, [x, y, wide, tall]: [f64; 4]) -> Point {
    match place.grows().1 == 0.0 {
        true => (x + wide / 2.0, y + tall - 18.0),
        false => (x + wide - 41.0, y + tall / 2.0),
    }
}
