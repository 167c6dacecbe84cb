//! What a layout asks of a unit: its checks and its fields, in the order of work.

use gearing::layout::Layout;

use crate::{Bearings, Check, Mesh};

/// The checks of each layout, in the order of work.
pub(crate) static CHECKS: [(&str, &[Check]); 5] = {
    use Bearings::{Driveshaft, InnerShaft, OuterShaft, PinionPair, Vertical};
    use Check::{Depth, Lash, Setting, Torque};
    use Mesh::{Front, Lower, Main, Rear, Upper};
    const PLAY: Check = Check::END_PLAY;
    [
        ("a", &[Setting(Driveshaft), Depth, Lash(Main), PLAY, Torque]),
        ("b", &[Setting(Driveshaft), Depth, Check::FORWARD, Check::REVERSE, PLAY]),
        (
            "c",
            &[
                Setting(Driveshaft),
                Depth,
                Lash(Front),
                Setting(InnerShaft),
                Lash(Rear),
                Setting(OuterShaft),
            ],
        ),
        ("d", &[Setting(PinionPair), Depth, Lash(Lower), Lash(Upper), Setting(Vertical), Torque]),
        ("e", &[Setting(PinionPair), Depth, Lash(Main), PLAY, Torque]),
    ]
};

/// The layout taken before a sheet says which: the most usual one.
pub(crate) fn usual() -> &'static Layout {
    let [_, usual, ..] = gearing::layout::LAYOUTS;
    usual
}

/// The checks of a layout.
pub(crate) fn checks(layout: &Layout) -> &'static [Check] {
    CHECKS.iter().find(|(id, _)| *id == layout.id).map_or(&[], |(_, checks)| checks)
}
