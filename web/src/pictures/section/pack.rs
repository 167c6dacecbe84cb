//! The places a pack can lie in layout (b): what it moves, which way, and the words for it.

/// A place of layout (b) that holds a pack.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Pack {
    /// Above the driveshaft race.
    B1,
    /// Below the driveshaft race, a ring above it.
    B1b,
    /// Under the flange of the driveshaft bearing housing.
    B1c,
    /// Between pinion and cone.
    B1d,
    /// Between nose shoulder and forward-gear race.
    B2,
    /// Between carrier face and reverse-gear bearing.
    B3,
    /// Between case seat and carrier.
    B3b,
    /// The thrust washer on the propshaft.
    B4,
}

/// What a pack moves in the sketch.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Member {
    /// The pinion, up or down.
    Pinion,
    /// The forward gear.
    Forward,
    /// The reverse gear.
    Reverse,
    /// No gear: the propshaft's float.
    Float,
}

/// Which way a thicker pack moves its member.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Way {
    /// Toward the pinion gear's mates.
    Down,
    /// Away from them.
    Up,
    /// Toward the propeller.
    Aft,
    /// Toward the nose.
    Ahead,
    /// A gap closes.
    Closing,
    /// A gap opens.
    Opening,
}

impl Pack {
    /// Every place, in the order of the letters.
    pub const ALL: [Pack; 8] =
        [Pack::B1, Pack::B1b, Pack::B1c, Pack::B1d, Pack::B2, Pack::B3, Pack::B3b, Pack::B4];

    /// The place named `id`; `None` where layout (b) has no such place.
    pub fn named(id: &str) -> Option<Pack> {
        Pack::ALL.into_iter().find(|pack| pack.id() == id)
    }

    /// Its name: `B2`.
    pub fn id(self) -> &'static str {
        match self {
            Pack::B1 => "B1",
            Pack::B1b => "B1b",
            Pack::B1c => "B1c",
            Pack::B1d => "B1d",
            Pack::B2 => "B2",
            Pack::B3 => "B3",
            Pack::B3b => "B3b",
            Pack::B4 => "B4",
        }
    }

    /// What it moves.
    pub fn member(self) -> Member {
        match self {
            Pack::B1 | Pack::B1b | Pack::B1c | Pack::B1d => Member::Pinion,
            Pack::B2 => Member::Forward,
            Pack::B3 | Pack::B3b => Member::Reverse,
            Pack::B4 => Member::Float,
        }
    }

    /// Which way its member goes when the pack is thicker.
    pub fn way(self) -> Way {
        match self {
            Pack::B1 | Pack::B1d => Way::Down,
            Pack::B1b | Pack::B1c => Way::Up,
            Pack::B2 | Pack::B3b => Way::Aft,
            Pack::B3 => Way::Ahead,
            Pack::B4 => Way::Closing,
        }
    }

    /// Where it lies and what a thicker one does, as it is spoken.
    pub fn sentence(self) -> &'static str {
        match self {
            Pack::B1 => {
                "B1 lies between the case shoulder and the driveshaft race below it. Thicker B1 moves the pinion down, into the mesh; the depth gap closes and both lashes fall."
            }
            Pack::B1b => {
                "B1b lies under the driveshaft race, a ring above it. Thicker B1b moves the pinion up, out of the mesh; the depth gap opens and both lashes grow."
            }
            Pack::B1c => {
                "B1c lies under the flange of the driveshaft bearing housing. Thicker B1c moves the pinion up, out of the mesh; the depth gap opens and both lashes grow."
            }
            Pack::B1d => {
                "B1d lies behind the pinion, under the cone. Thicker B1d moves the pinion down, into the mesh; the depth gap closes and both lashes fall."
            }
            Pack::B2 => {
                "B2 lies between the nose shoulder and the front race. Thicker B2 moves the forward gear aft, toward the pinion; forward lash falls."
            }
            Pack::B3 => {
                "B3 lies between the carrier and the reverse gear's bearing. Thicker B3 moves the reverse gear forward, toward the pinion; reverse lash falls."
            }
            Pack::B3b => {
                "B3b lies between the case seat and the carrier. Thicker B3b moves carrier and reverse gear aft, away from the pinion; reverse lash and end play grow."
            }
            Pack::B4 => {
                "B4 is the thrust washer on the propshaft. Thicker B4 takes end play away; no gear moves."
            }
        }
    }
}

impl Way {
    /// The way of a thinner pack.
    pub fn turned(self) -> Way {
        match self {
            Way::Down => Way::Up,
            Way::Up => Way::Down,
            Way::Aft => Way::Ahead,
            Way::Ahead => Way::Aft,
            Way::Closing => Way::Opening,
            Way::Opening => Way::Closing,
        }
    }
}
