//! Phases of the job, and scopes that shorten it.

use words::{key, t};

/// A phase of the job.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[allow(missing_docs, reason = "the names are the phases")]
pub enum Phase {
    Intake,
    Diagnose,
    Quote,
    Remove,
    Teardown,
    Clean,
    Inspect,
    Decide,
    SetUp,
    Seal,
    Reassemble,
    Test,
    Fill,
    Run,
    Paper,
}

/// How much of the unit is done.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Scope {
    /// Seals and O-rings; same bearings and gears. Old packs go back, backlash is still proved.
    Reseal,
    /// Seals and bearings: a full strip and set-up.
    Bearings,
    /// A gear set: a full strip and set-up.
    GearSet,
    /// A complete unit is swapped.
    Exchange,
}

const PHASES: [(Phase, &str, &str); 15] = [
    (Phase::Intake, key!("intake"), "Look"),
    (Phase::Diagnose, key!("diagnose"), "Look"),
    (Phase::Quote, key!("quote"), "Look"),
    (Phase::Remove, key!("remove"), "Strip"),
    (Phase::Teardown, key!("teardown"), "Strip"),
    (Phase::Clean, key!("clean"), "Judge"),
    (Phase::Inspect, key!("inspect"), "Judge"),
    (Phase::Decide, key!("decide"), "Judge"),
    (Phase::SetUp, key!("set-up"), "Shim"),
    (Phase::Seal, key!("seal"), "Close"),
    (Phase::Reassemble, key!("reassemble"), "Close"),
    (Phase::Test, key!("test"), "Prove"),
    (Phase::Fill, key!("fill"), "Prove"),
    (Phase::Run, key!("run"), "Prove"),
    (Phase::Paper, key!("paper"), "Prove"),
];

const SCOPES: [(Scope, &str, &str); 4] = [
    (Scope::Reseal, "reseal", "Seals only"),
    (Scope::Bearings, "bearings", "Seals and bearings"),
    (Scope::GearSet, "gearset", "Gear set"),
    (Scope::Exchange, "exchange", "Exchange unit"),
];

impl Phase {
    /// The phase of a name in files: `set-up`.
    pub fn named(name: &str) -> Option<Phase> {
        PHASES.iter().find(|row| row.1 == name).map(|row| row.0)
    }

    /// Its name in files.
    pub fn name(self) -> &'static str {
        PHASES.iter().find(|row| row.0 == self).map_or("", |row| row.1)
    }

    /// Its name on the screen.
    pub fn words(self) -> &'static str {
        match self {
            // As an adjective it is what a surface can be.
            Phase::Clean => t("cleaning"),
            _ => t(self.name()),
        }
    }

    /// The stage of the job it belongs to: "Look", "Strip", "Judge", "Shim", "Close", "Prove".
    pub fn stage(self) -> &'static str {
        PHASES.iter().find(|row| row.0 == self).map_or("", |row| t(row.2))
    }
}

impl Scope {
    /// Every scope, the smallest first.
    pub const ALL: [Scope; 4] = [Scope::Reseal, Scope::Bearings, Scope::GearSet, Scope::Exchange];

    /// The scope of a name in files: `gearset`.
    pub fn named(name: &str) -> Option<Scope> {
        SCOPES.iter().find(|row| row.1 == name).map(|row| row.0)
    }

    /// Its name in files.
    pub fn name(self) -> &'static str {
        SCOPES.iter().find(|row| row.0 == self).map_or("", |row| row.1)
    }

    /// Its name on the screen: "Seals only".
    pub fn words(self) -> &'static str {
        t(self.written())
    }

    /// Its name as an agreement keeps it.
    pub(crate) fn written(self) -> &'static str {
        SCOPES.iter().find(|row| row.0 == self).map_or("", |row| row.2)
    }

    /// What holds in this scope and must be said.
    pub fn rule(self) -> &'static str {
        match self {
            Scope::Reseal => {
                t("Same bearings and gears: the old packs normally hold and go back as found. \
                 Backlash is still proved.")
            }
            Scope::Bearings => t(
                "New bearings: every pack is set up again. The gears stay, so aim for the worn-in \
                 backlash.",
            ),
            Scope::GearSet => t("New gears: every pack is set up again to the manual's bands."),
            Scope::Exchange => t("A complete unit: match it, prove it, join it."),
        }
    }
}
