//! Where the packs of layout (b) lie, and what each moves.
//!
//! Signs come from the swelling test: picture the pack growing and see what is shoved which way.
//! Minutes are rough labour, common practice, no source.

use gearing::case::Member;
use serde::{Deserialize, Serialize};

use crate::Check;

/// A pack of the unit, in the order of work. Where it lies is the unit's [`Position`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub enum Slot {
    /// The pinion's depth.
    B1,
    /// The forward gear.
    B2,
    /// The reverse gear.
    B3,
    /// The propshaft's end play.
    B4,
}

/// A place a pack can lie in.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Position {
    /// `B1c`.
    pub id: &'static str,
    /// The pack.
    pub slot: Slot,
    /// What the pack lies between.
    pub between: [&'static str; 2],
    /// +1 a thicker pack moves its member IN (lash falls), −1 OUT, 0 moves nothing in mesh.
    pub mesh_sign: i8,
    /// +1 a thicker pack takes end play away, −1 gives more, 0 neither.
    pub setting_sign: i8,
    /// The way its member goes with a thicker pack: "gear aft".
    pub thicker: &'static str,
    /// The way it goes with a thinner pack: "gear forward".
    pub thinner: &'static str,
    /// The swelling test in words.
    pub swelling: &'static str,
    /// Kind of shim that fits.
    pub family: &'static str,
    /// Own labour to open, minutes.
    pub open_minutes: u32,
    /// Packs that come apart on the way.
    pub after: &'static [Slot],
    /// Checks that go stale when the pack changes.
    pub rereads: &'static [Check],
}

/// Every position of layout (b).
pub(crate) static POSITIONS: [Position; 8] = [
    Position {
        id: "B1",
        slot: Slot::B1,
        between: ["case shoulder above", "race of the driveshaft taper, below it"],
        mesh_sign: 1,
        setting_sign: 0,
        thicker: "pinion down",
        thinner: "pinion up",
        swelling: "Picture the pack growing. The shoulder above it stands still, so the race, the \
                   shaft and the pinion go DOWN, IN to the gear: the depth gap closes, both \
                   lashes fall.",
        family: "driveshaft",
        open_minutes: 30,
        after: &[Slot::B3, Slot::B4],
        rereads: PINION,
    },
    Position {
        id: "B1b",
        slot: Slot::B1,
        between: ["case shoulder below", "race of the driveshaft taper, above it"],
        mesh_sign: -1,
        setting_sign: 0,
        thicker: "pinion up",
        thinner: "pinion down",
        swelling: "Picture the pack growing. The shoulder below it stands still, so the race, the \
                   shaft and the pinion go UP, OUT of the gear: the depth gap opens, both lashes \
                   grow.",
        family: "driveshaft",
        open_minutes: 30,
        after: &[Slot::B3, Slot::B4],
        rereads: PINION,
    },
    Position {
        id: "B1c",
        slot: Slot::B1,
        between: ["case face", "flange of the bolt-on driveshaft bearing housing, above it"],
        mesh_sign: -1,
        setting_sign: 0,
        thicker: "pinion up",
        thinner: "pinion down",
        swelling: "Picture the pack growing. The case stands still, so the flange, the whole \
                   housing and the pinion go UP, OUT of the gear: the depth gap opens, both \
                   lashes grow.",
        family: "driveshaft flange",
        open_minutes: 20,
        after: &[Slot::B3, Slot::B4],
        rereads: PINION,
    },
    Position {
        id: "B1d",
        slot: Slot::B1,
        between: ["cone on the driveshaft, above", "pinion back face, below it"],
        mesh_sign: 1,
        setting_sign: 0,
        thicker: "pinion down",
        thinner: "pinion up",
        swelling: "Picture the pack growing. The cone cannot go up past its race, so the pinion \
                   goes DOWN along its shaft, IN to the gear: the depth gap closes, both lashes \
                   fall.",
        family: "pinion",
        open_minutes: 15,
        after: &[Slot::B3, Slot::B4],
        rereads: PINION,
    },
    Position {
        id: "B2",
        slot: Slot::B2,
        between: ["nose-bore shoulder", "forward-gear race, aft of it"],
        mesh_sign: 1,
        setting_sign: 0,
        thicker: "gear aft",
        thinner: "gear forward",
        swelling: "Picture the pack growing. The nose stands still, so the race and the forward \
                   gear go AFT, IN to the pinion: forward lash falls. The reverse gear does not \
                   move.",
        family: "forward race",
        open_minutes: 20,
        after: &[Slot::B3, Slot::B4],
        rereads: &[Check::Forward],
    },
    Position {
        id: "B3",
        slot: Slot::B3,
        between: ["carrier face", "reverse-gear bearing or thrust race, forward of it"],
        mesh_sign: 1,
        setting_sign: 0,
        thicker: "gear forward",
        thinner: "gear aft",
        swelling: "Picture the pack growing. The carrier stands still, so the bearing and the \
                   reverse gear go FORWARD, IN to the pinion: reverse lash falls. The forward \
                   gear does not move.",
        family: "reverse",
        open_minutes: 20,
        after: &[],
        rereads: &[Check::Reverse],
    },
    Position {
        id: "B3b",
        slot: Slot::B3,
        between: ["case seat", "carrier or its thrust ring, aft of it"],
        mesh_sign: -1,
        setting_sign: -1,
        thicker: "gear aft",
        thinner: "gear forward",
        swelling: "Picture the pack growing. The case seat stands still, so the carrier and the \
                   reverse gear go AFT, OUT of the pinion: reverse lash grows, and the propshaft \
                   gets more end play.",
        family: "carrier",
        open_minutes: 20,
        after: &[],
        rereads: &[Check::Reverse, Check::EndPlay],
    },
    Position {
        id: "B4",
        slot: Slot::B4,
        between: ["shoulder on the propshaft", "thrust face of carrier or gear"],
        mesh_sign: 0,
        setting_sign: 1,
        thicker: "end play smaller",
        thinner: "end play larger",
        swelling: "Picture the washer growing. It fills the gap the propshaft floats in: less end \
                   play. No gear moves.",
        family: "thrust washer",
        open_minutes: 10,
        after: &[Slot::B3],
        rereads: &[Check::EndPlay],
    },
];

const PINION: &[Check] = &[Check::Depth, Check::Forward, Check::Reverse];

impl Slot {
    /// Every pack, in the order of work.
    pub const ALL: [Slot; 4] = [Slot::B1, Slot::B2, Slot::B3, Slot::B4];

    /// The tag: `B2`.
    pub fn tag(self) -> &'static str {
        match self {
            Slot::B1 => "B1",
            Slot::B2 => "B2",
            Slot::B3 => "B3",
            Slot::B4 => "B4",
        }
    }

    /// The pack of that tag.
    pub fn named(tag: &str) -> Option<Slot> {
        Slot::ALL.into_iter().find(|slot| slot.tag() == tag)
    }

    /// The check it is set by.
    pub fn check(self) -> Check {
        match self {
            Slot::B1 => Check::Depth,
            Slot::B2 => Check::Forward,
            Slot::B3 => Check::Reverse,
            Slot::B4 => Check::EndPlay,
        }
    }

    /// The question that says where it lies.
    pub fn question(self) -> &'static str {
        match self {
            Slot::B1 => {
                "Where does the pinion depth pack lie: above the race, below it, under a flange, \
                 or behind the pinion?"
            }
            Slot::B2 => "Is there a pack behind the forward race?",
            Slot::B3 => "Does the pack lie behind the reverse gear, or at the carrier seat?",
            Slot::B4 => "Is there a selectable thrust washer on the propshaft?",
        }
    }

    /// Whether a unit may have no such pack.
    pub fn may_be_absent(self) -> bool {
        matches!(self, Slot::B3 | Slot::B4)
    }

    /// The places it can lie in, the usual one first.
    pub fn positions(self) -> impl Iterator<Item = &'static Position> {
        POSITIONS.iter().filter(move |position| position.slot == self)
    }
}

impl Position {
    /// The position of that id.
    pub fn named(id: &str) -> Option<&'static Position> {
        POSITIONS.iter().find(|position| position.id == id)
    }

    /// What a pack here moves, for the set-up engine.
    pub(crate) fn member(&self) -> Member {
        match self.slot {
            Slot::B1 => Member::Pinion,
            Slot::B2 => Member::Driven("forward".to_owned()),
            Slot::B3 => Member::Driven("reverse".to_owned()),
            Slot::B4 => Member::Other("propshaft".to_owned()),
        }
    }
}
