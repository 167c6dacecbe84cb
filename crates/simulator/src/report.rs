//! Many gearcases in one run, and what came of them.

use gearing::CaseError;
use gearing::layout::Layout;

use crate::dice::Dice;
use crate::gearcase::Gearcase;
use crate::play::{Correction, Played, Policy, play};
use crate::sheet::Geometry;
use crate::trip::{FaultKind, Met, trip};

/// What to run.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Run {
    /// How the gearcases are built.
    pub layout: &'static Layout,
    /// Gearcases.
    pub cases: u32,
    /// Seed: the same one gives the same figures.
    pub seed: u64,
    /// Whether the angles are on the sheet.
    pub geometry: Geometry,
    /// What goes wrong in the cases of the alarm.
    pub fault: FaultKind,
}

/// What came of a run.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Report {
    /// By advice.
    pub advice: Builds,
    /// One position at a time.
    pub one_by_one: Builds,
    /// Faults in the first correction.
    pub faults: Faults,
    /// Corrections by advice with nothing wrong.
    pub sound: Alarms,
    /// What advice said of its own packs.
    pub advised: Calibration,
    /// What [`gearing::evaluate`] said of the other's packs, from his readings.
    pub evaluated: Calibration,
}

/// Dry builds of one policy.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Builds {
    /// Gearcases.
    pub cases: u32,
    /// Dry builds of all of them.
    pub builds: u64,
    /// Gearcases in band by the second build.
    pub by_second: u32,
    /// Gearcases that never came into band.
    pub unfinished: u32,
}

/// Alarms among corrections.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Alarms {
    /// Corrections.
    pub of: u32,
    /// Those that raised an alarm.
    pub raised: u32,
}

/// What became of faults.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Faults {
    /// Faults of any size.
    pub all: Alarms,
    /// Those larger than three standard deviations.
    pub large: Alarms,
    /// Of the large ones, how many were named as the first cause.
    pub named_first: u32,
    /// How many were among the first three.
    pub named_in_three: u32,
}

/// Probabilities said beforehand against what happened, by tenths.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Calibration(pub [Tenth; 10]);

/// Corrections whose stated probability lies in one tenth.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Tenth {
    /// Corrections.
    pub cases: u32,
    /// Sum of the stated probabilities.
    pub stated: f64,
    /// Corrections that brought every check into band.
    pub landed: u32,
}

/// Runs it.
///
/// # Errors
/// Only if the simulator drew a case that makes no sense.
pub fn run(run: Run) -> Result<Report, CaseError> {
    let mut report = Report::default();
    for case in 0..u64::from(run.cases) {
        // Four streams for each case: who needs more numbers changes nothing for the others.
        let dice = |stream: u64| Dice::new(run.seed, 4 * case + stream);
        let mut drawn = dice(0);
        let gearcase = Gearcase::draw(run.layout, run.geometry, &mut drawn);
        let first = gearcase.build(&gearcase.found, None, &mut drawn);
        let ours = play(&gearcase, &first, Policy::Advice, &mut dice(1))?;
        report.advice.add(&ours);
        for correction in ours.corrections {
            report.sound.of += 1;
            report.sound.raised += u32::from(correction.alarmed);
            report.advised.add(correction);
        }
        let his = play(&gearcase, &first, Policy::OneByOne, &mut dice(2))?;
        report.one_by_one.add(&his);
        his.corrections.into_iter().for_each(|correction| report.evaluated.add(correction));
        if let Some(met) = trip(&gearcase, &first, run.fault, &mut dice(3))? {
            report.faults.add(met);
        }
    }
    Ok(report)
}

impl Report {
    /// Mean builds by advice over mean builds one by one.
    pub fn ratio(&self) -> f64 {
        self.advice.mean() / self.one_by_one.mean()
    }
}

impl Builds {
    fn add(&mut self, played: &Played) {
        self.cases += 1;
        self.builds += played.builds as u64;
        self.by_second += u32::from(played.finished && played.builds <= 2);
        self.unfinished += u32::from(!played.finished);
    }

    /// Mean dry builds; those never in band count as they were given up.
    pub fn mean(&self) -> f64 {
        self.builds as f64 / f64::from(self.cases)
    }

    /// Part in band by the second build.
    pub fn part_by_second(&self) -> f64 {
        f64::from(self.by_second) / f64::from(self.cases)
    }
}

impl Alarms {
    fn add(&mut self, raised: bool) {
        self.of += 1;
        self.raised += u32::from(raised);
    }

    /// Part that raised an alarm; not a number of none.
    pub fn part(&self) -> f64 {
        f64::from(self.raised) / f64::from(self.of)
    }
}

impl Faults {
    fn add(&mut self, met: Met) {
        self.all.add(met.alarmed);
        if met.large {
            self.large.add(met.alarmed);
            self.named_first += u32::from(met.rank == Some(0));
            self.named_in_three += u32::from(met.rank.is_some_and(|rank| rank < 3));
        }
    }
}

impl Calibration {
    fn add(&mut self, correction: Correction) {
        let tenth = ((correction.probability * 10.0) as usize).min(9);
        if let Some(tenth) = self.0.get_mut(tenth) {
            tenth.cases += 1;
            tenth.stated += correction.probability;
            tenth.landed += u32::from(correction.landed);
        }
    }
}
