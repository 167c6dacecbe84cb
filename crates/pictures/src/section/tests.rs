//! Every pack of every layout has its place, and goes the way the layout's table says.

use gearing::layout::{LAYOUTS, Position};

use super::*;
use crate::drawing::Shape;

/// A unit with every place of a layout that may lie beside the one asked about.
fn unit(layout: &gearing::layout::Layout, position: &Position) -> Section {
    let others = layout.slots.iter().filter(|slot| slot.id != position.slot);
    let ids = others.filter_map(|slot| slot.members.first().copied());
    Section::of(ids.chain([position.id])).choosing(position.id)
}

fn every(mut check: impl FnMut(&Section, &Position)) {
    for layout in LAYOUTS {
        for position in layout.positions {
            check(&unit(layout, position), position);
        }
    }
}

/// Middle of the corners of everything drawn in an ink.
fn middle(marks: &[Mark], ink: impl Fn(&str) -> bool) -> Option<Point> {
    let corners: Vec<Point> = marks
        .iter()
        .filter(|mark| ink(mark.ink))
        .flat_map(|mark| match &mark.shape {
            Shape::Outline(points) => points.clone(),
            _ => Vec::new(),
        })
        .collect();
    let count = corners.len() as f64;
    let sum = corners.iter().fold((0.0, 0.0), |sum, at| (sum.0 + at.0, sum.1 + at.1));
    (count > 0.0).then(|| (sum.0 / count, sum.1 / count))
}

/// How far what glows has gone at a change of the pack.
fn gone(section: &Section, change: f64) -> Option<Point> {
    let hot = |change| {
        let drawn = Section { change, ..section.clone() }.draw();
        middle(&drawn.marks, |ink| ink.ends_with("k-hot"))
    };
    let (before, after) = (hot(0.0)?, hot(change)?);
    Some((after.0 - before.0, after.1 - before.1))
}

/// Which way an arrow points: its tip less the middle of its tail.
fn pointed(mark: &Mark) -> Point {
    match &mark.shape {
        Shape::Outline(points) => {
            let (first, tip, last) = (points[0], points[3], points[6]);
            (tip.0 - (first.0 + last.0) / 2.0, tip.1 - (first.1 + last.1) / 2.0)
        }
        _ => (0.0, 0.0),
    }
}

fn arrows(section: &Section, change: f64, turned: bool) -> Vec<Point> {
    let note = "that way".to_owned();
    let drawn = Section { change, turned, note, ..section.clone() }.draw();
    drawn.marks.iter().filter(|mark| mark.ink == "k-arrow").map(pointed).collect()
}

fn along(one: Point, other: Point) -> f64 {
    one.0 * other.0 + one.1 * other.1
}

#[test]
fn every_position_of_every_layout_has_one_place_with_its_tag_and_its_ring() {
    every(|section, position| {
        let drawn = section.draw();
        let tagged = |mark: &&Mark| match &mark.shape {
            Shape::Text(_, _, words) => mark.ink == "k-tag" && words == position.id,
            _ => false,
        };
        assert_eq!(drawn.marks.iter().filter(tagged).count(), 1, "{}", position.id);
        let ringed = drawn.marks.iter().filter(|mark| mark.ink == pieces::HOT_SHIM).count();
        assert_eq!(ringed, 2, "{}", position.id);
    });
    let places: usize = PLANS.iter().map(|plan| plan.places.len()).sum();
    let positions: usize = LAYOUTS.iter().map(|layout| layout.positions.len()).sum();
    assert_eq!(places, positions);
}

// IN is toward the mate: of the pinion all driven gears, of a driven gear the pinion. The signs
// are those of the layouts' table (swelling test, common practice, no source).
#[test]
fn a_thicker_pack_moves_its_gear_toward_its_mate_where_the_sign_says_in() {
    every(|section, position| {
        if position.mesh_sign == 0 {
            return;
        }
        let drawn = section.draw();
        let member = middle(&drawn.marks, |ink| ink == "k-gear k-hot").expect("a gear glows");
        let mate = match position.moves == "pinion" {
            // The level axis and the upright one cross where the gears' axes do.
            true => (0.0, 0.0),
            false => middle(&super::scene::forms(&plan::Form::Pinion, false), |_| true)
                .map(|(along, away)| pinion_turn(section).turned((along, away)))
                .expect("a pinion"),
        };
        let toward = (mate.0 - member.0, mate.1 - member.1);
        let moved = gone(section, 0.1).expect("a member glows");
        assert!((along(moved, moved).sqrt() - 4.0).abs() < 1e-9, "{}: {moved:?}", position.id);
        let sign = along(moved, toward).signum();
        assert_eq!(sign, f64::from(position.mesh_sign), "{} goes {moved:?}", position.id);
    });
}

fn pinion_turn(section: &Section) -> plan::Turn {
    match section.plan.layout {
        "d" => plan::Turn::Back,
        _ => plan::Turn::Up,
    }
}

#[test]
fn the_arrow_goes_with_the_member_and_turns_with_a_thinner_pack_or_an_overridden_sign() {
    every(|section, position| {
        let thicker = arrows(section, 0.1, false);
        let place = section.scene().place().expect("a place");
        let back: Vec<Point> = thicker.iter().map(|way| (-way.0, -way.1)).collect();
        assert!(!thicker.is_empty(), "{}", position.id);
        if place.tells == Tells::Move {
            let moved = gone(section, 0.1).expect("a member glows");
            assert!(along(thicker[0], moved) > 0.0, "{}", position.id);
        }
        assert_eq!(arrows(section, 0.0, false), thicker, "{}", position.id);
        assert_eq!(arrows(section, -0.1, false), back, "{}", position.id);
        assert_eq!(arrows(section, 0.1, true), back, "{}", position.id);
        assert_eq!(arrows(section, -0.1, true), thicker, "{}", position.id);
        let close = Section { view: View::Close, ..section.clone() };
        assert_eq!(arrows(&close, 0.1, false), thicker, "{}", position.id);
    });
}

// Words of the table against the picture: aft is right, down is down.
#[test]
fn the_arrow_agrees_with_the_words_of_the_table() {
    every(|section, position| {
        let way = arrows(section, 0.1, false)[0];
        let words = position.thicker;
        for (word, (x, y)) in [
            (" aft", (1.0, 0.0)),
            (" forward", (-1.0, 0.0)),
            (" down", (0.0, 1.0)),
            (" up", (0.0, -1.0)),
            (" outward", (-1.0, 0.0)),
            (" inward", (1.0, 0.0)),
        ] {
            // "Closes up" is no way.
            if words.ends_with(word) && !words.ends_with("closes up") {
                assert!(along(way, (x, y)) > 0.0, "{}: {words}", position.id);
            }
        }
    });
}

#[test]
fn a_pack_that_moves_no_gear_shows_what_it_does_to_the_gap() {
    let told = |id| {
        let section = Section::of([id]).choosing(id);
        section.scene().place().map(|place| place.tells)
    };
    let apart = ["C5", "D2", "E2"].map(told);
    assert_eq!(apart, [Some(Tells::Parting); 3]);
    assert_eq!(told("B4"), Some(Tells::Closing));
    every(|section, position| {
        if position.mesh_sign == 0 {
            let drawn = section.draw();
            assert!(drawn.marks.iter().all(|mark| mark.ink != "k-gear k-hot"), "{}", position.id);
        }
    });
}

#[test]
fn a_place_that_the_unit_lacks_is_not_drawn() {
    for layout in LAYOUTS {
        let needed = layout.slots.iter().filter(|slot| !slot.may_be_absent);
        let ids = needed.clone().filter_map(|slot| slot.members.first().copied());
        let drawn = Section::of(ids).draw();
        let shims = drawn.marks.iter().filter(|mark| mark.ink == pieces::SHIM).count();
        assert_eq!(shims, 2 * needed.count(), "{}", layout.id);
    }
    assert_eq!(Section::of(["Z9"]).choosing("Z9").chosen, None);
}

// A shaft may run out of it.
#[test]
fn packs_members_tags_and_words_lie_within_the_picture() {
    every(|section, position| {
        let section = Section { change: 0.2, note: position.thicker.to_owned(), ..section.clone() };
        let drawn = section.draw();
        let [x, y, wide, tall] = drawn.view;
        for mark in drawn.marks.iter().filter(|mark| !mark.ink.starts_with("k-steel")) {
            let points = match &mark.shape {
                Shape::Outline(points) => points.clone(),
                Shape::Text(at, ..) => vec![*at],
                _ => Vec::new(),
            };
            for at in points {
                let is_in = at.0 >= x && at.0 <= x + wide && at.1 >= y && at.1 <= y + tall;
                assert!(is_in, "{}: {} at {at:?}", position.id, mark.ink);
            }
        }
    });
}

#[test]
fn the_sentence_says_where_the_pack_lies_and_which_way_it_pushes() {
    let section = Section::of(["A2b", "A3"]).choosing("A2b");
    let starts = "Section, nose left. A2b lies between nose-bore shoulder and front race, aft of \
                  it. Thicker: gear aft, out of the mesh.";
    assert_eq!(section.draw().label, starts);
    let thinner = Section { change: -0.1, note: "gear forward 0.10".to_owned(), ..section };
    let says = format!("{starts} Drawn with a thinner pack: gear forward 0.10.");
    assert_eq!(thinner.draw().label, says);
    let none = Section::of(["D1", "D3"]).draw().label;
    assert_eq!(none, "Section, input from the left. The packs D1, D3 where they lie.");
}

#[test]
fn the_first_page_sees_what_the_low_strip_of_its_unit_shows() {
    let packs = Section::of(["B1", "B2", "B3", "B4"]);
    assert_eq!(Section { view: View::Low, ..packs }.draw(), glance());
}
