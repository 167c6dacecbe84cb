//! The gearcases that are simulated, one kind for each layout.
//!
//! Signs, shim families, minutes and what comes apart on the way come from [`gearing::layout`].

use gearing::layout::Layout;

/// A place a pack lies in. A case has one position and one check for each, in the same order.
#[derive(Debug)]
pub(crate) struct Place {
    /// Positions that can be the place; one of them is drawn.
    pub members: &'static [&'static str],
    /// What he sets with it.
    pub sets: Sets,
}

/// What a mechanic sets with a pack.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Sets {
    /// The depth gap.
    Depth,
    /// The backlash of a mesh.
    Lash(&'static str),
    /// The end play of a shaft.
    Play(&'static str),
}

const fn place(members: &'static [&'static str], sets: Sets) -> Place {
    Place { members, sets }
}

/// The places of a layout's simulated gearcase, in the order of work.
///
/// Settings that only rolling torque proves are left out, since no gauge reads them.
pub(crate) fn places(layout: &Layout) -> &'static [Place] {
    use Sets::{Depth, Lash, Play};
    static A: [Place; 3] = [
        place(&["A1", "A1b", "A1c", "A1d"], Depth),
        place(&["A2", "A2b"], Lash("main")),
        place(&["A3"], Play("propshaft")),
    ];
    static B: [Place; 3] = [
        place(&["B1", "B1b", "B1c", "B1d"], Depth),
        place(&["B2"], Lash("forward")),
        place(&["B3", "B3b"], Lash("reverse")),
    ];
    static C: [Place; 4] = [
        place(&["C1", "C1b", "C1c", "C1d"], Depth),
        place(&["C2"], Lash("front")),
        place(&["C3", "C3b"], Lash("rear")),
        place(&["C4"], Play("inner shaft")),
    ];
    static D: [Place; 3] = [
        place(&["D1", "D1b"], Depth),
        place(&["D3"], Lash("lower")),
        place(&["D4", "D4b"], Lash("upper")),
    ];
    static E: [Place; 3] = [
        place(&["E1", "E1b"], Depth),
        place(&["E3"], Lash("main")),
        place(&["E4"], Play("propshaft")),
    ];
    match layout.id {
        "a" => &A,
        "b" => &B,
        "c" => &C,
        "d" => &D,
        "e" => &E,
        _ => &[],
    }
}
