//! The record of a job as one HTML file, from a job file of the app.

use std::collections::BTreeMap;
use std::ffi::OsString;
use std::io::Read;

use job::files::Picture;
use job::procedure::{NEWEST, Plan, Procedure};
use job::report::{Paper, file};
use job::{BookId, Job, Sheet, Shown, unit_choices};
use measure::{Mark, Unit};

use crate::files::taken;

/// What the command says of itself.
pub const REPORT_HELP: &str = "\
shimwright report FILE [OPTIONS]   writes the record of a job as one HTML file to
                                   standard output, as the app saves it

FILE is a job file or a backup of the app (see WIRE.md), or - for standard input.

  --job N           which job, where the file holds several
  --unit UNIT       unit to show a quantity in, such as in or lbf·ft; may be given for
                    each; mm, N·m, kPa, °C and ml where not given
  --mark point|comma  decimal mark; point where not given
  --language en|es  language of the record; English where not given
  --offset MINUTES  how far local time is ahead of UTC; 0 where not given

The record says it was made on the day the file was.
";

/// The published procedures: layout, revision, text.
const PROCEDURES: [(&str, u32, &str); 5] = [
    ("a", 1, include_str!("../../../public/procedures/layout-a-r1.jsonl")),
    ("b", 1, include_str!("../../../public/procedures/layout-b-r1.jsonl")),
    ("c", 1, include_str!("../../../public/procedures/layout-c-r1.jsonl")),
    ("d", 1, include_str!("../../../public/procedures/layout-d-r1.jsonl")),
    ("e", 1, include_str!("../../../public/procedures/layout-e-r1.jsonl")),
];

/// The words of a language besides English.
const SPANISH: &[&str] = &[
    include_str!("../../words/po/es-door.po"),
    include_str!("../../words/po/es-app.po"),
    include_str!("../../words/po/es-steps.po"),
];

/// What was asked for after the file's name.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Asked {
    job: Option<u32>,
    shown: Shown,
    catalogues: &'static [&'static str],
}

impl Asked {
    /// Reads the options.
    ///
    /// # Errors
    /// In a sentence, which option cannot be read.
    pub fn read(options: &[OsString]) -> Result<Asked, String> {
        let mut asked = Asked { job: None, shown: Shown::default(), catalogues: &[] };
        for pair in options.chunks(2) {
            let [name, value] = pair else {
                return Err(format!("found {pair:?} alone, expected a value behind it"));
            };
            let (name, value) = (name.to_string_lossy(), value.to_string_lossy());
            let strange = |expected: &str| format!("{name}: found {value:?}, expected {expected}");
            match name.as_ref() {
                "--job" => {
                    asked.job =
                        Some(value.parse().map_err(|_| strange("the number of a job, such as 3"))?);
                }
                "--unit" => {
                    let offered = Unit::parse(&value)
                        .filter(|unit| unit_choices(unit.quantity()).contains(unit));
                    let unit = offered.ok_or_else(|| strange("a unit such as mm, in or lbf·ft"))?;
                    asked.shown.units = asked.shown.units.with(unit);
                }
                "--mark" => {
                    asked.shown.mark = match value.as_ref() {
                        "point" => Mark::Point,
                        "comma" => Mark::Comma,
                        _ => return Err(strange("point or comma")),
                    };
                }
                "--language" => {
                    asked.catalogues = match value.as_ref() {
                        "en" => &[],
                        "es" => SPANISH,
                        _ => return Err(strange("en or es")),
                    };
                }
                "--offset" => {
                    asked.shown.utc_offset =
                        value.parse().map_err(|_| strange("minutes, such as -210"))?;
                }
                _ => {
                    return Err(format!(
                        "found {name:?}, expected --job, --unit, --mark or --offset"
                    ));
                }
            }
        }
        Ok(asked)
    }
}

/// The record of the one job of a file, or of the one that was asked for.
///
/// # Errors
/// In a sentence, why the file holds no such job or could not be read.
pub fn report(from: impl Read, asked: Asked) -> Result<String, String> {
    for catalogue in asked.catalogues {
        words::learn(catalogue).map_err(|torn| torn.to_string())?;
    }
    let taken = taken(from)?;
    let books = taken.books();
    let of_jobs = books.iter().filter(|book| matches!(book.id(), BookId::Job(_)));
    let jobs: Vec<Job> = of_jobs.map(Job::fold).collect();
    let job = the_job(&jobs, asked.job)?;
    let id = BookId::Sheet(job.sheet.clone());
    let sheet = books.iter().find(|book| *book.id() == id).map(Sheet::fold).unwrap_or_default();
    let at = taken.parcel.head.as_ref().map_or(job.last_at, |head| head.at);
    let photos: BTreeMap<String, Picture> =
        taken.photos.into_iter().map(|photo| (photo.id.clone(), photo)).collect();
    Ok(written(job, &sheet, asked.shown, at, &|id| photos.get(id)?.address()))
}

fn written(
    job: &Job,
    sheet: &Sheet,
    shown: Shown,
    at: i64,
    photos: &dyn Fn(&str) -> Option<String>,
) -> String {
    let plan = plan(job, sheet);
    let record = job::record(job, sheet, plan.as_ref(), shown);
    let owner = job::owner(job, &record, plan.as_ref(), shown);
    let invoice = job::invoice(job, &record, plan.as_ref(), shown);
    let paper = Paper { record: &record, owner: &owner, invoice: &invoice, shown, at };
    file(&paper, photos)
}

/// The steps of the job; `None` while no scope was chosen, or for a later procedure.
fn plan(job: &Job, sheet: &Sheet) -> Option<Plan> {
    let pinned = job.guide.procedure.clone();
    let (layout, revision) = pinned.unwrap_or_else(|| (sheet.layout.clone(), NEWEST));
    let row = PROCEDURES.iter().find(|row| row.0 == layout && row.1 == revision)?;
    let procedure = Procedure::parse(row.0, row.1, row.2).ok()?;
    Some(Plan::of(&procedure, job.guide.scope?, &sheet.changes))
}

fn the_job(jobs: &[Job], number: Option<u32>) -> Result<&Job, String> {
    let numbers: Vec<String> = jobs.iter().map(|job| job.number.to_string()).collect();
    let there = numbers.join(", ");
    match (jobs, number) {
        ([], _) => Err("found no job in the file, expected one; save the job again".to_owned()),
        ([job], None) => Ok(job),
        (_, None) => Err(format!("found jobs {there}; say which one with --job")),
        (_, Some(number)) => jobs
            .iter()
            .find(|job| job.number == number)
            .ok_or_else(|| format!("found no job {number}, expected one of {there}")),
    }
}

#[cfg(test)]
mod tests {
    use job::Units;

    use super::*;

    fn read(options: &[&str]) -> Result<Asked, String> {
        Asked::read(&options.iter().map(Into::into).collect::<Vec<OsString>>())
    }

    #[test]
    fn a_unit_may_be_chosen_for_each_quantity_in_any_spelling() {
        let asked = read(&["--unit", "in", "--unit", "lbf.ft", "--mark", "comma"]).unwrap();
        let units = Units::default().with(Unit::Inch).with(Unit::PoundForceFoot);
        assert_eq!(asked.shown, Shown { units, mark: Mark::Comma, utc_offset: 0 });
        for strange in ["furlong", "K", ""] {
            let sentence =
                format!("--unit: found {strange:?}, expected a unit such as mm, in or lbf·ft");
            assert_eq!(read(&["--unit", strange]), Err(sentence));
        }
    }
}
