//! Shimwright without a screen: the set-up advice as JSON lines.

mod answer;
mod field;
mod json;
mod line;
mod lines;

use std::io::{self, BufRead, Write};

pub use answer::{AdviceLine, Answer};
pub use field::FieldError;
pub use line::read_case;
use lines::{LONGEST, Line, Lines};
use serde_json::Value;

use crate::json::Json;

/// Answers one line; a line that cannot be answered says why.
pub fn answer(line: &str) -> Answer {
    let value = match serde_json::from_str(line) {
        Ok(Json(value)) => value,
        Err(fault) => return unnamed(not_json(&fault)),
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
pub fn advise_lines(input: impl BufRead, mut output: impl Write) -> io::Result<()> {
    for line in Lines(input) {
        let answer = match line? {
            Line::Text(text) if text.is_empty() => continue,
            Line::Text(text) => answer(&text),
            Line::TooLong => unnamed(format!(
                "found a line of {LONGEST} bytes or more, expected a shorter one; leave out what \
                 this case does not need"
            )),
            Line::NotText { valid } => unnamed(format!(
                "found bytes that are no text after byte {valid}, expected UTF-8; save the file as \
                 UTF-8"
            )),
        };
        serde_json::to_writer(&mut output, &answer)?;
        output.write_all(b"\n")?;
    }
    output.flush()
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
