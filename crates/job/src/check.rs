//! The checks of every layout: what is read, its names, and where each reading is taken.

use measure::Unit;
use serde::{Deserialize, Serialize};
use words::{key, say, t};

use crate::by_id::by_id;

/// A check: what the gauge reads.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Check {
    /// Gap between the pinion face and the gauge.
    Depth,
    /// Backlash of a mesh.
    Lash(Mesh),
    /// End play of a bearing setting; a preload is an end play below zero.
    Setting(Bearings),
    /// Torque that turns the whole gearcase slowly, N·m.
    Torque,
}

/// A pair of gears in mesh, named by its driven gear.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[expect(missing_docs, reason = "the table below says what each one is")]
pub enum Mesh {
    Main,
    Forward,
    Reverse,
    Front,
    Rear,
    Upper,
    Lower,
}

/// Bearings whose end play or preload is set.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[expect(missing_docs, reason = "the table below says what each one is")]
pub enum Bearings {
    Driveshaft,
    PinionPair,
    Propshaft,
    InnerShaft,
    OuterShaft,
    Vertical,
}

/// The shaft the indicator's arm, or the manual's radius, is on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum ArmShaft {
    /// The shaft that carries the pinion.
    Driveshaft,
    /// The shaft turned by the gear in mesh.
    Propshaft,
}

/// What a check is called.
struct Row {
    check: Check,
    /// In files and addresses.
    id: &'static str,
    /// As a heading.
    name: &'static str,
    /// Inside a sentence.
    short: &'static str,
    /// The mesh or the bearings, as the layouts call them.
    part: &'static str,
    /// The check, as the layouts call it.
    words: &'static [&'static str],
}

static ROWS: [Row; 15] = {
    use Bearings::*;
    use Check::{Depth, Lash, Setting, Torque};
    use Mesh::*;
    [
        row(Depth, "depth", "Pinion depth gap", key!("depth"), "", &["depth"]),
        row(Lash(Main), "lash-main", "Backlash", key!("lash"), "main", &["backlash"]),
        row(
            Lash(Forward),
            "lash-forward",
            "Forward backlash",
            "forward lash",
            "forward",
            &["forward backlash"],
        ),
        row(
            Lash(Reverse),
            "lash-reverse",
            "Reverse backlash",
            "reverse lash",
            "reverse",
            &["reverse backlash"],
        ),
        row(
            Lash(Front),
            "lash-front",
            "Front backlash",
            "front lash",
            "front",
            &["front backlash"],
        ),
        row(Lash(Rear), "lash-rear", "Rear backlash", "rear lash", "rear", &["rear backlash"]),
        row(
            Lash(Upper),
            "lash-upper",
            "Upper backlash",
            "upper lash",
            "upper",
            &["upper backlash"],
        ),
        row(
            Lash(Lower),
            "lash-lower",
            "Lower backlash",
            "lower lash",
            "lower",
            &["lower backlash"],
        ),
        row(
            Setting(Driveshaft),
            "driveshaft-setting",
            "Driveshaft setting",
            "driveshaft setting",
            "driveshaft",
            &["driveshaft pair setting"],
        ),
        row(
            Setting(PinionPair),
            "pinion-setting",
            "Pinion bearing setting",
            "pinion setting",
            "pinion pair",
            &["pinion preload"],
        ),
        row(
            Setting(Propshaft),
            "end-play",
            "Propshaft end play",
            "end play",
            "propshaft",
            &["end play", "propshaft setting"],
        ),
        row(
            Setting(InnerShaft),
            "inner-setting",
            "Inner shaft setting",
            "inner setting",
            "inner shaft",
            &["inner setting"],
        ),
        row(
            Setting(OuterShaft),
            "outer-setting",
            "Outer shaft setting",
            "outer setting",
            "outer shaft",
            &["outer setting"],
        ),
        row(
            Setting(Vertical),
            "vertical-setting",
            "Vertical bearing setting",
            "vertical setting",
            "vertical bearings",
            &["vertical setting"],
        ),
        row(
            Torque,
            "rolling-torque",
            "Rolling torque",
            "rolling torque",
            "",
            &["total rolling torque"],
        ),
    ]
};

const fn row(
    check: Check,
    id: &'static str,
    name: &'static str,
    short: &'static str,
    part: &'static str,
    words: &'static [&'static str],
) -> Row {
    Row { check, id, name, short, part, words }
}

impl Check {
    /// Backlash of the forward gear.
    pub const FORWARD: Check = Check::Lash(Mesh::Forward);
    /// Backlash of the reverse gear.
    pub const REVERSE: Check = Check::Lash(Mesh::Reverse);
    /// End play, or preload, of the propshaft.
    pub const END_PLAY: Check = Check::Setting(Bearings::Propshaft);

    fn row(self) -> &'static Row {
        // Every check has its row, which a test proves; the fallback is never reached.
        let [first, ..] = &ROWS;
        ROWS.iter().find(|row| row.check == self).unwrap_or(first)
    }

    /// The name in files and addresses: `lash-forward`.
    pub fn id(self) -> &'static str {
        self.row().id
    }

    /// The check of that id.
    pub fn named(id: &str) -> Option<Check> {
        ROWS.iter().find(|row| row.id == id).map(|row| row.check)
    }

    /// The name as a heading: "Forward backlash".
    pub fn name(self) -> &'static str {
        t(self.row().name)
    }

    /// The name in tables for other programs, which stays English.
    pub(crate) fn written(self) -> &'static str {
        self.row().name
    }

    /// The name inside a sentence: "forward lash".
    pub fn short(self) -> &'static str {
        t(self.row().short)
    }

    /// The mesh or the bearings as the layouts call them; empty for the others.
    pub(crate) fn part(self) -> &'static str {
        self.row().part
    }

    /// The check as the layouts call it.
    pub(crate) fn words(self) -> &'static [&'static str] {
        self.row().words
    }

    /// Whether it is among checks as the layouts call them.
    pub(crate) fn is_among(self, words: &[&str]) -> bool {
        self.words().iter().any(|word| words.contains(word))
    }

    /// The unit its numbers are worked out in: N·m for the rolling torque, else mm.
    pub fn unit(self) -> Unit {
        match self {
            Check::Torque => Unit::NewtonMetre,
            Check::Depth | Check::Lash(_) | Check::Setting(_) => Unit::Millimetre,
        }
    }

    /// Where each reading of a series is taken, in order; a series has one reading at each. The
    /// words are those that drafts go by, and are turned where they are shown.
    ///
    /// Common practice, no source: depth at three angles of the block, backlash every quarter turn
    /// of the gear on the same tooth, end play and torque three times.
    pub fn stops(self) -> &'static [&'static str] {
        match self {
            Check::Depth => &["0°", "120°", "240°"],
            Check::Lash(_) => &["0°", "90°", "180°", "270°"],
            Check::Setting(_) | Check::Torque => &[key!("1st"), key!("2nd"), key!("3rd")],
        }
    }

    /// How to read it, the arm on that shaft (common practice, no source).
    pub fn how(self, arm_on: ArmShaft) -> String {
        let mesh = match self {
            Check::Depth => {
                return t(
                    "Shaft on its thrust face, block square. Turn it a third between readings.",
                )
                .to_owned();
            }
            Check::Setting(_) => {
                return t("Turn the shaft, push and pull it, stop, then read. Three times.")
                    .to_owned();
            }
            Check::Torque => {
                return t(
                    "No seals. Turn slowly and evenly, read while it turns, not as it breaks \
                        away. Three times.",
                )
                .to_owned();
            }
            Check::Lash(mesh) => mesh,
        };
        let (pinion, driven) = match mesh {
            Mesh::Upper | Mesh::Lower => (t("Input shaft"), t("Gear")),
            _ => (t("Driveshaft"), t("Propshaft")),
        };
        let held = if arm_on == ArmShaft::Driveshaft { driven } else { pinion };
        let free = match mesh {
            Mesh::Main => "",
            Mesh::Forward => t(", reverse gear free"),
            Mesh::Reverse => t(", forward gear free"),
            Mesh::Front => t(", rear shaft free"),
            Mesh::Rear => t(", front shaft free"),
            Mesh::Upper => t(", lower gear held off"),
            Mesh::Lower => t(", upper gear out"),
        };
        say!("{held} held{free}. Turn the gear 90° between readings, same tooth each time.")
    }

    /// Whether the reading depends on an arm: a backlash.
    pub fn has_arm(self) -> bool {
        matches!(self, Check::Lash(_))
    }

    /// Whether a reading may be below zero: a preload, worked out from the play before it.
    pub fn may_be_below_zero(self) -> bool {
        matches!(self, Check::Setting(_))
    }

    /// The driven gear whose backlash it is.
    pub(crate) fn gear(self) -> Option<&'static str> {
        self.has_arm().then(|| self.part())
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

by_id!(Check);

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_check_has_one_row_and_its_file_name_is_its_id() {
        for row in &ROWS {
            assert_eq!(row.check.id(), row.id);
            assert_eq!(Check::named(row.id), Some(row.check));
            let written = serde_json::to_string(&row.check).unwrap();
            assert_eq!(written, format!("\"{}\"", row.id));
            assert_eq!(serde_json::from_str::<Check>(&written).unwrap(), row.check);
        }
        assert!(serde_json::from_str::<Check>("\"lash\"").is_err());
    }

    #[test]
    fn the_free_gear_is_named_where_there_is_one() {
        let how = |mesh| Check::Lash(mesh).how(ArmShaft::Driveshaft);
        assert!(how(Mesh::Forward).starts_with("Propshaft held, reverse gear free. "));
        assert!(how(Mesh::Main).starts_with("Propshaft held. "));
        assert!(how(Mesh::Lower).starts_with("Gear held, upper gear out. "));
    }
}
