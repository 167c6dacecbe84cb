//! Tooth print: what was seen is recorded; only the height on the tooth gives advice.
//!
//! Places are on the driven gear. High is toward the tip, low toward the root. Toe is the inner, heel
//! the outer end. Public sources agree on the height and contradict each other lengthwise, for it
//! depends on how the teeth were cut, and on what a move of the gear does to the height; neither gives
//! advice here.

use crate::{Basis, Caution};

/// How the teeth were cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Family {
    /// Tooth depth tapers toward the toe; often face-milled.
    Tapered,
    /// Same depth all along; often face-hobbed.
    EvenDepth,
    /// Not known.
    Unknown,
}

/// Height of the print.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Height {
    /// Toward the tip.
    Tip,
    /// In the middle.
    Middle,
    /// Toward the root.
    Root,
}

/// Place along the tooth.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Length {
    /// Inner end.
    Toe,
    /// Middle.
    Middle,
    /// Outer end.
    Heel,
}

/// The print on one flank.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Print {
    /// How high.
    pub height: Height,
    /// How far along, for the record.
    pub length: Length,
}

/// What was seen.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Seen {
    /// Family of teeth.
    pub family: Family,
    /// Flank pushed when driving ahead.
    pub drive: Print,
    /// The other flank.
    pub coast: Print,
    /// Gears that have run together before.
    pub used: bool,
}

/// Which way to move the pinion.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Advice {
    /// Height is in the middle on both flanks: nothing to do about depth.
    Leave,
    /// Both flanks high: pinion in, toward the crossing of the shafts; bring the backlash back with the
    /// gear.
    PinionIn,
    /// Both flanks low: pinion out; bring the backlash back with the gear.
    PinionOut,
    /// The flanks do not agree: wipe, paint thin, print again.
    PrintAgain,
    /// One flank at the toe, the other at the heel, at one height: shafts may be out of line, or this is
    /// how a shallow or deep pinion shows in these teeth. Read the depth gap before anything else.
    LookAtTheShafts,
    /// A used set: aim for the old print, give no shim advice.
    AimForOldPrint,
}

/// What the print says.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Answer {
    /// The direction. How much comes from the depth gap, never from the print.
    pub advice: Advice,
    /// What to say with it.
    pub cautions: &'static [Caution],
    /// Where the rule is from.
    pub basis: Basis,
}

/// Reads a tooth print; the height first, and never toe or heel alone.
///
/// ```
/// use workshop::pattern::{Advice, Family, Height, Length, Print, Seen, read};
/// // High on both flanks, wherever along the tooth: the pinion sits too shallow.
/// let print = |length| Print { height: Height::Tip, length };
/// let seen = |family| Seen {
///     family, drive: print(Length::Heel), coast: print(Length::Toe), used: false,
/// };
/// for family in [Family::Tapered, Family::EvenDepth, Family::Unknown] {
///     assert_eq!(read(&seen(family)).advice, Advice::PinionIn);
/// }
/// ```
pub fn read(seen: &Seen) -> Answer {
    let advice = match (seen.drive.height, seen.coast.height) {
        _ if seen.used => Advice::AimForOldPrint,
        (Height::Tip, Height::Tip) => Advice::PinionIn,
        (Height::Root, Height::Root) => Advice::PinionOut,
        (Height::Middle, Height::Middle) if opposite(seen) => Advice::LookAtTheShafts,
        (Height::Middle, Height::Middle) => Advice::Leave,
        _ => Advice::PrintAgain,
    };
    let cautions: &[Caution] = if seen.used {
        &[Caution::UsedGears, Caution::LengthwiseMeansNothing]
    } else {
        &[Caution::LengthwiseMeansNothing]
    };
    let basis = Basis::Published(
        "public ring-and-pinion guidance; ANSI/AGMA 2008, assembling bevel gears (scope read only)",
    );
    Answer { advice, cautions, basis }
}

fn opposite(seen: &Seen) -> bool {
    matches!(
        (seen.drive.length, seen.coast.length),
        (Length::Toe, Length::Heel) | (Length::Heel, Length::Toe)
    )
}
