//! Seals: the map of a layout with its lips as arrows, and one seal in its bore with its depths.

use words::{say, t};

use crate::drawing::{
    Anchor, Drawing, Mark, Point, circle, flipped, line, moved, outline, rect, text,
};
use crate::section::{SealAt, Section, pointer};

/// Room under the section for tags and arrows.
const FOOT: f64 = 92.0;
/// Width of a tag with its arrow.
const COLUMN: f64 = 96.0;

/// The seal map of a section: each seal with its tag, S1 nearest the crossing of the shafts, and an
/// arrow for where its lip looks; `to_oil` tells it by the tag, `None` where it is not recorded.
pub fn map(section: &Section, to_oil: impl Fn(&str) -> Option<bool>) -> Drawing {
    let mut drawing = section.draw_bare();
    let [left, top, width, height] = drawing.view;
    let seals = section.seals();
    let mut said = Vec::new();
    for (at, seal) in seals.iter().enumerate() {
        let tag = format!("S{}", at + 1);
        let oil = to_oil(&tag);
        said.push(match oil {
            Some(true) => say!("{tag} looks to the oil."),
            Some(false) => say!("{tag} looks to the water."),
            None => say!("{tag} is not recorded."),
        });
        let row = at as f64;
        let x = match seal.oil < 0.0 {
            // The last stands at the edge that the water is at.
            true => left + width - 4.0 - COLUMN * (seals.len() as f64 - row - 0.5),
            false => left + 4.0 + COLUMN * (seals.len() as f64 - row - 0.5),
        };
        drawing.marks.extend(column(seal, (x, top + height + 22.0), tag, oil));
    }
    drawing.view = [left, top, width, height + FOOT];
    drawing.label = say!(
        "Seal map. {} {} Other seals are not in this cut.",
        t(section.plan.start),
        said.join(" ")
    );
    drawing
}

/// Tag, leader, arrow and word of a seal.
fn column(seal: &SealAt, (x, y): Point, tag: String, to_oil: Option<bool>) -> Vec<Mark> {
    let mut marks = vec![
        line("k-lead", &[seal.at, (x, y - 13.0)]),
        circle("d-fill", seal.at, 3.2),
        rect("o-plate", x - 22.0, y - 13.0, 44.0, 26.0),
        text("c-tb", (x, y + 6.0), Anchor::Middle, tag),
    ];
    let word = match to_oil {
        Some(oil) => {
            let way = if oil { seal.oil } else { -seal.oil };
            marks.push(pointer((x - 24.0 * way, y + 30.0), (x + 24.0 * way, y + 30.0)));
            if oil { t("oil") } else { t("water") }
        }
        None => t("not known"),
    };
    marks.push(text("c-t", (x, y + 62.0), Anchor::Middle, word));
    marks
}

/// One seal in its bore.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Seat {
    /// Its lip looks to the oil, else to the water; `None`: not known.
    pub to_oil: Option<bool>,
    /// Depths as typed, from 12 o'clock on; empty where none was read.
    pub depths: Vec<String>,
}

/// Middle of the seal, and of the dial.
const SEAL: f64 = -86.0;
const DIAL: Point = (100.0, -72.0);

impl Seat {
    /// The drawing: oil left, water right; beside it the depths round the turn.
    pub fn draw(&self) -> Drawing {
        let mut marks = vec![
            rect("k-case", -168.0, -146.0, 164.0, 42.0),
            rect("o-oil", -168.0, -104.0, 82.0, 72.0),
            rect("o-water", SEAL, -104.0, 82.0, 72.0),
            rect("k-steel", -168.0, -31.0, 164.0, 40.0),
        ];
        marks.extend(self.lip());
        for (x, word) in [(-142.0_f64, t("OIL")), (-45.0, t("WATER"))] {
            let half = 6.0 * word.chars().count() as f64 + 6.0;
            let x = x.max(half - 168.0);
            marks.push(rect("o-plate", x - half, 13.0, 2.0 * half, 26.0));
            marks.push(text("c-tb", (x, 32.0), Anchor::Middle, word));
        }
        marks.extend(self.dial());
        let view = [-170.0, -152.0, 380.0, 198.0];
        Drawing { view, width: None, label: self.spoken(), marks }
    }

    /// The seal with its lip to the left, or turned over; without a lip where it is not known.
    fn lip(&self) -> Vec<Mark> {
        let body = [
            (-20.0, -104.0),
            (20.0, -104.0),
            (20.0, -58.0),
            (12.0, -58.0),
            (12.0, -96.0),
            (-20.0, -96.0),
        ];
        let lip = [
            (16.0, -64.0),
            (4.0, -40.0),
            (-14.0, -32.0),
            (-20.0, -32.0),
            (-6.0, -48.0),
            (12.0, -58.0),
        ];
        let mut seal = vec![outline("k-steel", &body)];
        if self.to_oil.is_some() {
            seal.push(outline("k-seal", &lip));
            seal.push(circle("o-spring", (-13.0, -48.0), 5.5));
            seal.push(pointer((24.0, -125.0), (-24.0, -125.0)));
        }
        let seal = if self.to_oil == Some(false) { flipped(seal) } else { seal };
        moved(seal, SEAL, 0.0)
    }

    fn dial(&self) -> Vec<Mark> {
        let (x, y) = DIAL;
        let mut marks = vec![
            circle("k-race", DIAL, 40.0),
            circle("k-bore", DIAL, 26.0),
            circle("k-steel", DIAL, 15.0),
        ];
        let places = [
            ((x, y - 47.0), Anchor::Middle),
            ((x + 45.0, y + 6.0), Anchor::Start),
            ((x, y + 60.0), Anchor::Middle),
            ((x - 45.0, y + 6.0), Anchor::End),
        ];
        let depths = self.depths.iter().zip(places);
        marks.extend(depths.map(|(depth, (at, anchor))| text("c-tb", at, anchor, depth)));
        marks
    }

    fn spoken(&self) -> String {
        let lip = match self.to_oil {
            Some(true) => t("Lip and spring look left, to the oil."),
            Some(false) => t("Lip and spring look right, to the water."),
            None => t("Which way the lip looks is not known."),
        };
        let at = ["12 h", "3 h", "6 h", "9 h"].iter().zip(&self.depths);
        let read: Vec<String> = at
            .filter(|(_, depth)| !depth.is_empty())
            .map(|(place, depth)| format!("{place} {depth}"))
            .collect();
        let depths = match read.is_empty() {
            true => t("No depth read.").to_owned(),
            false => say!("Depth at {}.", read.join(", ")),
        };
        say!("Lip seal in its bore, oil left, water right. {lip} {depths}")
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drawing::Shape;

    #[test]
    fn every_layout_has_its_seals_outward_from_the_crossing() {
        for (letter, count, oil) in
            [("a", 2, -1.0), ("b", 2, -1.0), ("c", 3, -1.0), ("d", 1, 1.0), ("e", 2, -1.0)]
        {
            let section = Section::card(letter).unwrap();
            let seals = section.seals();
            assert_eq!(seals.len(), count, "{letter}");
            assert!(seals.iter().all(|seal| seal.oil == oil), "{letter}: oil is inside the case");
            assert!(seals.windows(2).all(|pair| pair[0].at.0.abs() < pair[1].at.0.abs()));
        }
    }

    #[test]
    fn a_lip_is_an_arrow_only_where_it_is_recorded() {
        let section = Section::card("b").unwrap();
        let drawing = map(&section, |tag| (tag == "S1").then_some(true));
        let arrows = drawing.marks.iter().filter(|mark| mark.ink == "k-arrow").count();
        assert_eq!(arrows, 1);
        assert!(drawing.label.contains("S1 looks to the oil. S2 is not recorded."));
    }

    #[test]
    fn the_lip_points_where_it_looks() {
        let tip = |to_oil| {
            let drawing = Seat { to_oil: Some(to_oil), ..Seat::default() }.draw();
            let lip = drawing.marks.iter().find(|mark| mark.ink == "k-seal").unwrap().clone();
            let Shape::Outline(points) = lip.shape else { panic!("no outline") };
            points.iter().fold((0.0, f64::MIN), |low, at| if at.1 > low.1 { *at } else { low }).0
        };
        assert!(tip(true) < SEAL && tip(false) > SEAL, "oil left, water right");
    }
}
