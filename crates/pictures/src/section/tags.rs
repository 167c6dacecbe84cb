//! Tags with their leaders, and the arrow for the way a member moves.

use super::super::drawing::{Anchor, Mark, Point, circle, line, outline, text};
use super::plan::{Place, wide};

/// The tag of a place with the leader to its pack.
pub fn tag(place: &Place) -> Vec<Mark> {
    let (x, y) = wide(place.tag);
    let shim = place.point();
    // Names of three letters need a longer tag.
    let right = x + 14.0 + 9.0 * (place.id.len() as f64 - 2.0);
    let (left, top, bottom) = (x - 14.0, y - 13.0, y + 13.0);
    let cut = left - 6.0;
    let board = [
        (left, top),
        (right, top),
        (right, bottom),
        (left, bottom),
        (cut, bottom - 6.0),
        (cut, top + 6.0),
    ];
    vec![
        line("k-lead", &[(x - 3.0, y), shim]),
        circle("d-fill", shim, 3.2),
        outline("k-tagbox", &board),
        text("k-tag", ((left + right) / 2.0 - 1.0, y + 6.0), Anchor::Middle, place.id),
    ]
}

/// The arrow of a member that goes `(dx, dy)`, with its middle at `(x, y)`.
pub fn moving((dx, dy): Point, (x, y): Point) -> Vec<Mark> {
    let (dx, dy) = (36.0 * dx, 20.0 * dy);
    vec![pointer((x - dx, y - dy), (x + dx, y + dy))]
}

/// Two arrows of parts that close up or, with `parting`, go apart along `(dx, dy)`; the middle is
/// at `(x, y)`.
pub fn gap(parting: bool, (dx, dy): Point, (x, y): Point) -> Vec<Mark> {
    let side = |way: f64| {
        let at = |far: f64| (x + way * far * dx, y + way * far * dy);
        let (near, end) = (at(2.0), at(if dy == 0.0 { 36.0 } else { 24.0 }));
        if parting { pointer(near, end) } else { pointer(end, near) }
    };
    vec![side(-1.0), side(1.0)]
}

/// A broad arrow from `tail` to `tip`.
pub fn pointer(tail: Point, tip: Point) -> Mark {
    let (dx, dy) = (tip.0 - tail.0, tip.1 - tail.1);
    let length = dx.hypot(dy);
    let across = (-dy / length, dx / length);
    let head = length.min(18.8) / length;
    let at = |part: f64, aside: f64| {
        let back = (tail.0 + part * dx, tail.1 + part * dy);
        (back.0 + aside * across.0, back.1 + aside * across.1)
    };
    let neck = 1.0 - head;
    outline(
        "k-arrow",
        &[
            at(0.0, 5.1),
            at(neck, 5.1),
            at(neck, 15.0),
            tip,
            at(neck, -15.0),
            at(neck, -5.1),
            at(0.0, -5.1),
        ],
    )
}
