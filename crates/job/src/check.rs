//! The checks of layout (b), in the order of work.

use serde::{Deserialize, Serialize};

/// A check: what the gauge reads.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub enum Check {
    /// Gap between the pinion face and the gauge.
    #[serde(rename = "depth")]
    Depth,
    /// Backlash of the forward gear.
    #[serde(rename = "lash-forward")]
    Forward,
    /// Backlash of the reverse gear.
    #[serde(rename = "lash-reverse")]
    Reverse,
    /// End play of the propshaft.
    #[serde(rename = "end-play")]
    EndPlay,
}

/// The shaft the indicator's arm, or the manual's radius, is on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum ArmShaft {
    /// The driveshaft, which carries the pinion.
    Driveshaft,
    /// The propshaft, turned by the gear in mesh.
    Propshaft,
}

impl Check {
    /// Every check, in the order of work.
    pub const ALL: [Check; 4] = [Check::Depth, Check::Forward, Check::Reverse, Check::EndPlay];

    /// The name in files and addresses: `lash-forward`.
    pub fn id(self) -> &'static str {
        match self {
            Check::Depth => "depth",
            Check::Forward => "lash-forward",
            Check::Reverse => "lash-reverse",
            Check::EndPlay => "end-play",
        }
    }

    /// The check of that id.
    pub fn named(id: &str) -> Option<Check> {
        Check::ALL.into_iter().find(|check| check.id() == id)
    }

    /// The name as a heading: "Forward backlash".
    pub fn name(self) -> &'static str {
        match self {
            Check::Depth => "Pinion depth gap",
            Check::Forward => "Forward backlash",
            Check::Reverse => "Reverse backlash",
            Check::EndPlay => "Propshaft end play",
        }
    }

    /// The name inside a sentence: "forward lash".
    pub fn short(self) -> &'static str {
        match self {
            Check::Depth => "depth",
            Check::Forward => "forward lash",
            Check::Reverse => "reverse lash",
            Check::EndPlay => "end play",
        }
    }

    /// Where each reading of a series is taken, in order; a series has one reading at each.
    ///
    /// Common practice, no source: depth at three angles of the block, backlash every quarter turn
    /// of the gear on the same tooth, end play three times.
    pub fn stops(self) -> &'static [&'static str] {
        match self {
            Check::Depth => &["0°", "120°", "240°"],
            Check::Forward | Check::Reverse => &["0°", "90°", "180°", "270°"],
            Check::EndPlay => &["1st", "2nd", "3rd"],
        }
    }

    /// How to read it, the arm on that shaft (common practice, no source).
    pub fn how(self, arm_on: ArmShaft) -> String {
        let free = match self {
            Check::Depth => {
                return "Shaft on its thrust face, block square. Turn it a third between readings."
                    .to_owned();
            }
            Check::EndPlay => {
                return "Turn the shaft, push and pull it, stop, then read. Three times."
                    .to_owned();
            }
            Check::Forward => "reverse",
            Check::Reverse => "forward",
        };
        let held = match arm_on {
            ArmShaft::Driveshaft => "Propshaft",
            ArmShaft::Propshaft => "Driveshaft",
        };
        format!(
            "{held} held, {free} gear free. Turn the gear 90° between readings, same tooth each \
             time."
        )
    }

    /// Whether the reading depends on an arm: the two backlashes.
    pub fn has_arm(self) -> bool {
        self.gear().is_some()
    }

    /// The driven gear whose backlash it is.
    pub(crate) fn gear(self) -> Option<&'static str> {
        match self {
            Check::Forward => Some("forward"),
            Check::Reverse => Some("reverse"),
            Check::Depth | Check::EndPlay => None,
        }
    }
}

impl ArmShaft {
    /// The word in files and on the choice: `driveshaft`.
    pub fn id(self) -> &'static str {
        match self {
            ArmShaft::Driveshaft => "driveshaft",
            ArmShaft::Propshaft => "propshaft",
        }
    }

    /// The shaft of that word.
    pub fn named(id: &str) -> Option<ArmShaft> {
        [ArmShaft::Driveshaft, ArmShaft::Propshaft].into_iter().find(|shaft| shaft.id() == id)
    }
}
