//! Wear at the land: the track a seal's lip has cut into its shaft.

use measure::{Judgement, Unit};

use crate::formula::evaluate;
use crate::{Basis, Explanation, Figure, Limits, Reading, Refusal};

/// A worn land.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Land {
    /// Diameter beside the track.
    pub sound: Reading,
    /// Diameter in the track.
    pub worn: Reading,
    /// A fingernail catches in it.
    pub nail_catches: bool,
    /// Deepest track the manual allows.
    pub limits: Limits,
}

/// What may be done about it. Common practice, never a verdict.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Remedy {
    /// A ring to see but not to feel: polish, without a lead.
    Polish,
    /// To feel: seal aside on a fresh track, a sleeve, or another shaft.
    FreshTrackSleeveOrShaft,
}

/// What the track says.
#[derive(Clone, Debug, PartialEq)]
pub struct Answer {
    /// Depth of the track, mm on the radius.
    pub depth: Figure,
    /// Verdict on the depth; `None` without a limit.
    pub judgement: Option<Judgement>,
    /// What may be done.
    pub remedy: Remedy,
    /// How it was reckoned.
    pub explanation: Explanation,
}

/// Measures a track.
///
/// # Errors
/// [`Refusal::NotMore`] where the track is larger than the land beside it.
///
/// ```
/// use measure::{Decimal, Unit};
/// use workshop::{Limits, Reading, land::{Land, Remedy, examine}};
/// // 30.00 mm beside, 29.90 in the track: 0.05 mm deep (by hand).
/// let mm = |hundredths| Reading::exact(Decimal::new(hundredths, 2), Unit::Millimetre);
/// let land = Land { sound: mm(3000), worn: mm(2990), nail_catches: true, limits: Limits::default() };
/// let track = examine(&land).unwrap();
/// assert_eq!((track.depth.value, track.judgement), (Decimal::new(5, 2), None));
/// assert_eq!(track.remedy, Remedy::FreshTrackSleeveOrShaft);
/// ```
pub fn examine(land: &Land) -> Result<Answer, Refusal> {
    let sound = land.sound.above_zero("sound land", Unit::Millimetre)?;
    let worn = land.worn.above_zero("worn track", Unit::Millimetre)?;
    if worn.value > sound.value {
        return Err(Refusal::NotMore {
            what: "sound land",
            found: sound.value,
            than: "worn track",
            least: worn.value,
            unit: "mm",
            act: "measure both again, or swap them",
        });
    }
    let depth =
        evaluate("track depth", "mm", &[sound, worn], &|[sound, worn]| (sound - worn) / 2.0)?;
    let judgement = land.limits.judge("track limit", &depth, Unit::Millimetre)?;
    let remedy = if land.nail_catches { Remedy::FreshTrackSleeveOrShaft } else { Remedy::Polish };
    let explanation = Explanation {
        formula: "depth = (sound − worn)/2",
        given: vec![sound, worn],
        basis: Basis::Derived("half the difference of two diameters"),
    };
    Ok(Answer { depth, judgement, remedy, explanation })
}
