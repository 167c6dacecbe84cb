//! Shimwright without a screen: the set-up advice as JSON lines.

mod answer;
mod field;
mod line;

use std::io::{self, BufRead, Write};

pub use answer::{AdviceLine, Answer};
pub use field::FieldError;
pub use line::read_case;
use serde_json::Value;

/// Answers one line; a line that cannot be answered says why.
pub fn answer(line: &str) -> Answer {
    let refusal = |case: Value, error: String| Answer::Refusal { case, error };
    let value: Value = match serde_json::from_str(line.trim_start_matches('\u{feff}')) {
        Ok(value) => value,
        Err(at) => {
            let message = format!(
                "found text that is not JSON at column {}, expected one object on one line, such \
                 as {{\"case\":\"demo-1\",…}}",
                at.column()
            );
            return refusal(Value::Null, message);
        }
    };
    let name = value.get("case").cloned().unwrap_or(Value::Null);
    let case = match read_case(&value) {
        Ok(case) => case,
        Err(fault) => return refusal(name, fault.to_string()),
    };
    match gearing::advise(&case) {
        Ok(advice) => Answer::Advice(Box::new(answer::advice_line(name, &case, advice))),
        Err(fault) => refusal(name, fault.to_string()),
    }
}

/// Answers every line of a text, one line out for each line in; blank lines are skipped.
///
/// # Errors
/// Only if reading or writing fails.
pub fn advise_lines(mut input: impl BufRead, mut output: impl Write) -> io::Result<()> {
    let mut bytes = Vec::new();
    loop {
        bytes.clear();
        if input.read_until(b'\n', &mut bytes)? == 0 {
            return output.flush();
        }
        let line = String::from_utf8_lossy(&bytes);
        if !line.trim().is_empty() {
            serde_json::to_writer(&mut output, &answer(line.trim()))?;
            output.write_all(b"\n")?;
        }
    }
}
