//! Tags with their leaders, and the arrow for the way a member moves.

use super::super::drawing::{Anchor, Mark, Point, circle, line, outline, text};
use super::pack::{Pack, Way};

/// The tags of the packs in a unit, each with the leader to where its pack lies.
pub fn tags(packs: &[Pack]) -> Vec<Mark> {
    packs.iter().flat_map(|pack| tag(*pack, packs.contains(&Pack::B3b))).collect()
}

fn tag(pack: Pack, seated: bool) -> Vec<Mark> {
    let ((x, y), shim) = hung(pack, seated);
    let id = pack.id();
    // Names of three letters need a longer tag.
    let right = x + 14.0 + 9.0 * (id.len() as f64 - 2.0);
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
        text("k-tag", ((left + right) / 2.0 - 1.0, y + 6.0), Anchor::Middle, id),
    ]
}

/// Middle of a pack's tag and the point of the pack its leader ends at.
fn hung(pack: Pack, seated: bool) -> (Point, Point) {
    match pack {
        Pack::B1 => ((95.0, -132.0), (18.0, -133.0)),
        Pack::B1b => ((95.0, -130.0), (26.0, -92.5)),
        Pack::B1c => ((95.0, -132.0), (40.0, -140.8)),
        Pack::B1d => ((95.0, -130.0), (12.5, -67.5)),
        Pack::B2 => ((-109.0, -108.0), (-97.0, -33.0)),
        Pack::B3 => ((115.0, -94.0), (78.0, -33.0)),
        Pack::B3b => ((192.0, -94.0), (179.0, -57.0)),
        // The pack at the carrier seat needs the corner that is B4's otherwise.
        Pack::B4 if seated => ((127.0, -94.0), (86.0, -15.0)),
        Pack::B4 => ((175.0, -88.0), (86.0, -15.0)),
    }
}

/// The arrow of a way with the middle at `(x, y)`.
pub fn arrow(way: Way, (x, y): Point) -> Vec<Mark> {
    let (left, right) = ((x - 36.0, y), (x + 36.0, y));
    let (above, below) = ((x, y - 20.0), (x, y + 20.0));
    let (near_left, near_right) = ((x - 2.0, y), (x + 2.0, y));
    match way {
        Way::Aft => vec![pointer(left, right)],
        Way::Ahead => vec![pointer(right, left)],
        Way::Down => vec![pointer(above, below)],
        Way::Up => vec![pointer(below, above)],
        Way::Closing => vec![pointer(left, near_left), pointer(right, near_right)],
        Way::Opening => vec![pointer(near_left, left), pointer(near_right, right)],
    }
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
