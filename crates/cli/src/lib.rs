//! Shimwright without a screen: the set-up advice and the bench checks as JSON lines, and backups read.
//!
//! `bench` answers the bench checks: [`BENCH_HELP`] says how.
//!
//! Advice: one case a line in, one answer a line out. Lengths are millimetres, angles degrees, both decimal
//! numbers in quotes, so that no digit is lost; teeth, counts, signs and minutes are whole numbers.
//!
//! - `gears`: `pinion_teeth`, `pinion_pitch_radius` (the mean one), `driven` (each `id`, `teeth`);
//!   where known `normal_pressure_angle`, `spiral_angle`, `shaft_angle` (90 where absent).
//! - `arm`: `radius`, `on` (`"pinion"` or a driven gear).
//! - `positions`, each `id`, `moves`, `mesh_sign`, `setting_sign`, `family`, `open_minutes`, and
//!   `after` where others come apart first.
//! - `checks`, each `id`, `kind`, `low`, `high`, and `aim` and the gauge's `sigma` where known. A
//!   `"depth_gap"` may have `gauge_side` (`"front"`, `"behind"`); a `"backlash"` has `mesh`, and
//!   `band_radius` with `band_on` where its band does not hold at the arm; an `"end_play"` has
//!   `positions`.
//! - `stock`, each `family`, `thickness`, `count`; `max_shims_in_pack` (4 where absent); `frozen`,
//!   positions that stay as they are; `trials`, each `packs` and `readings` by name.
//!
//! The answer has `status`, `packs`, `opens`, `minutes`, `predicted`, `probability_all_in_band`,
//! `alarms`, `buy`, and `conflicts` or `need` where there are any. A line that cannot be answered
//! gets `error` instead: the field's path, what was found and what was expected. A field of a name
//! not listed here is refused, so that a slip of spelling is never passed over; so is a name that
//! stands twice in one object, and a line of 4 MiB or more.
//!
//! ```
//! let line = r#"{"case":"demo-1","gear":{}}"#;
//! let answer = serde_json::to_string(&shimwright_cli::answer(line))?;
//! assert!(answer.starts_with(
//!     r#"{"case":"demo-1","error":"gear: found a field that is not known here, expected case, gears,"#
//! ));
//! # Ok::<(), serde_json::Error>(())
//! ```

mod answer;
mod bench;
mod field;
mod files;
mod json;
mod line;
mod lines;
mod report;
mod simulate;

use std::io::{self, BufRead, Write};

pub use answer::{AdviceLine, Answer};
pub use bench::{BENCH_HELP, bench};
pub use field::FieldError;
pub use files::{FILES_HELP, View, check, export};
pub use line::read_case;
use lines::{LONGEST, Line, Lines};
pub use report::{Asked, REPORT_HELP, report};
use serde::Serialize;
use serde_json::Value;
pub use simulate::{SIMULATE_HELP, simulate};

use crate::json::Json;

/// Answers one line; a line that cannot be answered says why.
pub fn answer(line: &str) -> Answer {
    let value = match parse(line) {
        Ok(value) => value,
        Err(sentence) => return unnamed(sentence),
    };
    let name = value.get("case").cloned().unwrap_or(Value::Null);
    let case = match read_case(&value) {
        Ok(case) => case,
        Err(fault) => return Answer::Refusal { case: name, error: fault.to_string() },
    };
    match gearing::advise(&case) {
        Ok(advice) => Answer::Advice(Box::new(answer::advice_line(name, &case, advice))),
        Err(fault) => {
            // A line has `band_radius` and `band_on` where the case has one arm.
            let path = fault.path.replace(".band.", ".band_");
            Answer::Refusal { case: name, error: format!("{path}: {}", fault.fault) }
        }
    }
}

/// Answers every line of a text, one line out for each line in; blank lines are skipped.
///
/// # Errors
/// Only if reading or writing fails.
pub fn advise_lines(input: impl BufRead, output: impl Write) -> io::Result<()> {
    each_line(input, output, answer, unnamed)
}

/// Answers every line of a text of bench checks, one line out for each line in; blank lines are skipped.
///
/// # Errors
/// Only if reading or writing fails.
pub fn bench_lines(input: impl BufRead, output: impl Write) -> io::Result<()> {
    each_line(input, output, bench, bench::unnamed)
}

fn each_line<T: Serialize>(
    input: impl BufRead,
    mut output: impl Write,
    answer: fn(&str) -> T,
    unread: fn(String) -> T,
) -> io::Result<()> {
    for line in Lines(input) {
        let answer = match line? {
            Line::Text(text) if text.is_empty() => continue,
            Line::Text(text) => answer(&text),
            Line::TooLong => unread(format!(
                "found a line of {LONGEST} bytes or more, expected a shorter one; leave out what \
                 this case does not need"
            )),
            Line::NotText { valid } => unread(format!(
                "found bytes that are no text after byte {valid}, expected UTF-8; save the file as \
                 UTF-8"
            )),
        };
        serde_json::to_writer(&mut output, &answer)?;
        output.write_all(b"\n")?;
    }
    output.flush()
}

/// One JSON object of a line, each name once.
fn parse(line: &str) -> Result<Value, String> {
    serde_json::from_str(line).map(|Json(value)| value).map_err(|fault| not_json(&fault))
}

/// Refuses a line whose name cannot be read.
fn unnamed(error: String) -> Answer {
    Answer::Refusal { case: Value::Null, error }
}

fn not_json(fault: &serde_json::Error) -> String {
    let text = fault.to_string();
    // The place is given by serde_json as a line and a column, and there is only one line.
    let reason = text.split(" at line ").next().unwrap_or_default();
    format!(
        "column {}: {reason}; expected one JSON object on one line, such as {{\"case\":\"demo-1\",…}}",
        fault.column()
    )
}
