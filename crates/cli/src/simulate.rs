//! Virtual gearcases in one run, and what came of them as one JSON object.

use std::borrow::Cow;
use std::ffi::OsString;

use gearing::layout::{LAYOUTS, Layout};
use serde_json::{Value, json};
use simulator::{Alarms, Builds, Calibration, FaultKind, Geometry, Report, Run, Tenth, run};

/// What `simulate --help` says.
pub const SIMULATE_HELP: &str = "\
shimwright simulate: how many dry builds until every check is in band

Usage: shimwright simulate [OPTIONS]

  --cases N            gearcases, 1 to 1000000 (1000)
  --seed S             a whole number; the same one gives the same figures (1)
  --layout L           how they are built: a, b, c, d or e (b)
  --geometry WORD      known, or unknown: no pressure and spiral angle on the
                       unit sheet (known)
  --fault WORD         what goes wrong in the first correction of the cases
                       that try the alarm: wrong-sign, mislabelled, unseated
                       or swapped (wrong-sign)

Every gearcase is invented and hides slopes, shims and a scatter of readings
that differ from what is known. It is set up twice from the same first build:
by advice, and by a mechanic who corrects the first check out of band with its
own pack, a millimetre for a millimetre, then builds again. The first build
counts as one. A gearcase is done when the mean of every check is in its band,
and is given up after 12 builds. Then one thing goes wrong in the first
advised correction: \"alarm\" says how often the next reading told, and
\"false_alarms\" how often it told with nothing wrong. \"large\" faults move a
reading by more than three standard deviations; for a wrong sign it is the
planned change that must. \"stated\" is the mean probability given beforehand,
\"landed\" how often every check then came into band.
";

/// Most gearcases of one run.
const MOST_CASES: u32 = 1_000_000;
/// Decimals of a figure.
const PLACES: f64 = 1e4;

/// Runs what the options say; the report as JSON, with a line end.
///
/// # Errors
/// A sentence about the first option that is not understood.
pub fn simulate(options: &[OsString]) -> Result<String, String> {
    let asked = read(options)?;
    let report =
        run(asked).map_err(|fault| format!("simulated a case that is refused: {fault}"))?;
    let value = answer(asked, &report);
    serde_json::to_string_pretty(&value)
        .map(|text| text + "\n")
        .map_err(|fault| format!("could not write the report: {fault}"))
}

fn read(options: &[OsString]) -> Result<Run, String> {
    let mut run = Run {
        layout: Layout::find("b").ok_or("found no layout b")?,
        cases: 1000,
        seed: 1,
        geometry: Geometry::Known,
        fault: FaultKind::WrongSign,
    };
    let mut words = options.iter().map(|word| word.to_string_lossy());
    while let Some(option) = words.next() {
        let given = Given { word: words.next(), option: &option };
        match &*option {
            "--cases" => {
                let cases = given.whole(1, u64::from(MOST_CASES))?;
                run.cases = u32::try_from(cases).unwrap_or(MOST_CASES);
            }
            "--seed" => run.seed = given.whole(0, u64::MAX)?,
            "--layout" => run.layout = given.one_of(&LAYOUTS.map(|layout| (layout.id, layout)))?,
            "--geometry" => run.geometry = given.one_of(&GEOMETRIES)?,
            "--fault" => run.fault = given.one_of(&FAULTS)?,
            _ => {
                return Err(format!(
                    "found {option:?}, expected --cases, --seed, --layout, --geometry, --fault or \
                     --help"
                ));
            }
        }
    }
    Ok(run)
}

const GEOMETRIES: [(&str, Geometry); 2] =
    [("known", Geometry::Known), ("unknown", Geometry::Unknown)];
const FAULTS: [(&str, FaultKind); 4] = [
    ("wrong-sign", FaultKind::WrongSign),
    ("mislabelled", FaultKind::Mislabelled),
    ("unseated", FaultKind::Unseated),
    ("swapped", FaultKind::Swapped),
];

/// The word after an option.
struct Given<'a> {
    option: &'a str,
    word: Option<Cow<'a, str>>,
}

impl Given<'_> {
    fn whole(&self, least: u64, most: u64) -> Result<u64, String> {
        let number = self.word.as_deref().and_then(|word| word.parse().ok());
        let number = number.filter(|number| (least..=most).contains(number));
        number.ok_or_else(|| self.instead_of(&format!("a whole number from {least} to {most}")))
    }

    fn one_of<T: Copy>(&self, known: &[(&str, T)]) -> Result<T, String> {
        let found = known.iter().find(|(name, _)| Some(*name) == self.word.as_deref());
        let names = || known.iter().map(|(name, _)| *name).collect::<Vec<_>>().join(", ");
        found
            .map(|(_, value)| *value)
            .ok_or_else(|| self.instead_of(&format!("one of {}", names())))
    }

    fn instead_of(&self, expected: &str) -> String {
        let found = self.word.as_ref().map_or("nothing".to_owned(), |word| format!("{word:?}"));
        format!("found {found} after {}, expected {expected}", self.option)
    }
}

/// The name of a value in a table of names.
fn name<T: PartialEq>(known: &[(&'static str, T)], value: &T) -> Option<&'static str> {
    known.iter().find(|(_, known)| known == value).map(|(name, _)| *name)
}

fn answer(asked: Run, report: &Report) -> Value {
    let alarm = |alarms: &Alarms| json!({"of": alarms.of, "part": figure(alarms.part())});
    let faults = &report.faults;
    let of_large = |part: u32| figure(f64::from(part) / f64::from(faults.large.of));
    json!({
        "layout": asked.layout.id,
        "cases": asked.cases,
        "seed": asked.seed,
        "geometry": name(&GEOMETRIES, &asked.geometry),
        "advice": builds(&report.advice),
        "one_by_one": builds(&report.one_by_one),
        "ratio_of_means": figure(report.ratio()),
        "alarm": {
            "fault": name(&FAULTS, &asked.fault),
            "any_size": alarm(&faults.all),
            "large": alarm(&faults.large),
            "large_named_first": of_large(faults.named_first),
            "large_named_in_first_three": of_large(faults.named_in_three),
        },
        "false_alarms": alarm(&report.sound),
        "probability": {
            "of_advised_packs": calibration(&report.advised),
            "of_packs_one_by_one": calibration(&report.evaluated),
        },
    })
}

fn builds(builds: &Builds) -> Value {
    json!({
        "mean_builds": figure(builds.mean()),
        "done_by_second": figure(builds.part_by_second()),
        "given_up": builds.unfinished,
    })
}

/// One row for each tenth in which there is something.
fn calibration(calibration: &Calibration) -> Vec<Value> {
    let rows = calibration.0.iter().enumerate().filter(|(_, tenth)| tenth.cases > 0);
    let row = |(place, tenth): (usize, &Tenth)| {
        let of = f64::from(tenth.cases);
        json!({
            "from": figure(place as f64 / 10.0),
            "builds": tenth.cases,
            "stated": figure(tenth.stated / of),
            "landed": figure(f64::from(tenth.landed) / of),
        })
    };
    rows.map(row).collect()
}

/// A figure with four decimals; null where it is not a number.
fn figure(value: f64) -> Value {
    json!((value * PLACES).round() / PLACES)
}
