//! What can hurt a person, the unit or the answer, as keys with their plain words.

use std::fmt;
use words::t;

/// Said before every act that can hurt someone.
pub const MANUAL_FIRST: &str = "The unit's own manual and local rules win.";

/// A caution to show before or beside an act.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Caution {
    /// Compressed air in a case.
    StoredPressure,
    /// Vacuum where a seal works one way only.
    VacuumOneWaySeal,
    /// A temperature that was not steady.
    Temperature,
    /// Cooling under vacuum.
    CoolingHidesVacuumLeak,
    /// What a gauge is blind to.
    GaugeIsBlind,
    /// Break-away in place of running torque.
    BreakAway,
    /// Seals left in while the bearings are judged.
    SealsIn,
    /// Torque does not follow preload in proportion.
    TorqueIsNotPreload,
    /// The indicator did not come back to where it began.
    ZeroMoved,
    /// Threads in another state than the manual's value is for.
    ThreadsDiffer,
    /// A bar or wrench that slips.
    WrenchSlips,
    /// Degrees do not mend a wrong snug torque.
    AngleNeedsSnug,
    /// A part that crushes is judged by rolling torque.
    CrushPart,
    /// Hot metal, open flame, vapour.
    HotMetal,
    /// Very cold metal.
    ColdMetal,
    /// Too hot or too cold for what is in the part.
    BeyondPart,
    /// Hotter or colder than such parts are commonly taken.
    BeyondPractice,
    /// The race may turn in the warm case.
    LooseWhenWarm,
    /// A press can throw parts.
    Press,
    /// Diametral, not radial, interference.
    DiametralInterference,
    /// Rings beyond the usual squeeze, stretch or fill.
    RingOutsidePractice,
    /// Published lists differ about this ring.
    SourcesDisagree,
    /// Oil must not reach the water.
    OilOnWater,
    /// Water in the oil: do not run it.
    DoNotRun,
    /// Which way a lip looks is not guessed.
    LipAsRecorded,
    /// No shim advice from toe or heel.
    LengthwiseMeansNothing,
    /// A worn print misleads.
    UsedGears,
    /// Chemicals of thread-lockers and primers.
    Chemicals,
    /// Shore power in the water.
    ShorePower,
}

impl fmt::Display for Caution {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Caution::StoredPressure => {
                t("Air under pressure throws plugs. Glasses on, hand pump only, stay out of line with plugs.")
            }
            Caution::VacuumOneWaySeal => {
                t("No vacuum on one-way or labyrinth seals unless the manual says so.")
            }
            Caution::Temperature => {
                t("Sun on the case hides a leak; a cooling case fakes one. Read the case, not the air.")
            }
            Caution::CoolingHidesVacuumLeak => t("Under vacuum a cooling case hides a leak."),
            Caution::GaugeIsBlind => {
                t("A gauge cannot see one bubble in ten seconds. Soap every joint.")
            }
            Caution::BreakAway => {
                t("Break-away is not rolling torque. Turn slowly, three turns, and read while it runs.")
            }
            Caution::SealsIn => t("Seals drag too. Measure without them, or subtract what they take."),
            Caution::TorqueIsNotPreload => {
                t("Twice the torque is not twice the preload. Never scale one into the other.")
            }
            Caution::ZeroMoved => {
                t("The indicator did not come back to its first reading. Clamp it again and start over.")
            }
            Caution::ThreadsDiffer => {
                t("Wet threads clamp harder at the same torque. Look in the manual; no value is changed here.")
            }
            Caution::WrenchSlips => t("Pull, do not push, and keep hands clear should it slip."),
            Caution::AngleNeedsSnug => {
                t("Snug first, then paint a line, then turn. Degrees do not mend a wrong snug torque.")
            }
            Caution::CrushPart => {
                t("A part that crushes? Then rolling torque rules, never the angle.")
            }
            Caution::HotMetal => {
                t("Hot metal burns and vapour catches fire. Solvent away, gloves on, no flame, heat evenly.")
            }
            Caution::ColdMetal => t("Very cold metal and ice burn the skin. Gloves on, room aired."),
            Caution::BeyondPart => {
                t("That is outside what the part stands. Split it between heat and cold, or find another way.")
            }
            Caution::BeyondPractice => {
                t("That is beyond common practice, which has no source. Ask its maker, split it between heat and cold, or find another way.")
            }
            Caution::LooseWhenWarm => {
                t("At running temperature the race has no hold left and may turn in its bore.")
            }
            Caution::Press => {
                t("A press throws what slips. Push on the fitted ring only, and stop if the force jumps.")
            }
            Caution::DiametralInterference => {
                t("Interference here is on the diameter. A value on the radius is half of it.")
            }
            Caution::RingOutsidePractice => {
                t("This is outside common practice. Measure ring and groove again; the manual goes first.")
            }
            Caution::SourcesDisagree => {
                t("Published lists differ about this ring. Measure it before you order.")
            }
            Caution::OilOnWater => t("No drop on the water: tray first. A sheen is against the law."),
            Caution::DoNotRun => t("Do not run it. Find the way in first."),
            Caution::LipAsRecorded => {
                t("No rule of thumb here. The as-found photo or your manual decides which way a lip looks.")
            }
            Caution::LengthwiseMeansNothing => {
                t("No advice from toe or heel: it depends on how the teeth were cut.")
            }
            Caution::UsedGears => t("A worn print misleads. On used gears aim for the old print."),
            Caution::Chemicals => t("Gloves and air. Read the label of locker and primer."),
            Caution::ShorePower => {
                t("Shore power in the water can kill. Unplug before a hand goes in.")
            }
        })
    }
}
