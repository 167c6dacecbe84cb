//! Lines of outside text, one at a time, in bounded memory.

use std::io::{self, BufRead, Read};

/// Longest line read, bytes: thousands of shims fit many times over.
pub const LONGEST: usize = 4 * 1024 * 1024;

/// A line of outside text.
#[derive(Debug)]
pub enum Line {
    /// Text, without its line end and without blanks around it.
    Text(String),
    /// Longer than [`LONGEST`]; passed over, not kept.
    TooLong,
    /// Not UTF-8.
    NotText {
        /// Bytes of the line that are.
        valid: usize,
    },
}

/// Lines of a reader; a final line end is not needed.
pub struct Lines<R>(pub R);

impl<R: BufRead> Iterator for Lines<R> {
    type Item = io::Result<Line>;

    fn next(&mut self) -> Option<io::Result<Line>> {
        self.read().transpose()
    }
}

impl<R: BufRead> Lines<R> {
    fn read(&mut self) -> io::Result<Option<Line>> {
        let mut bytes = Vec::new();
        let most = u64::try_from(LONGEST).unwrap_or(u64::MAX);
        if self.0.by_ref().take(most).read_until(b'\n', &mut bytes)? == 0 {
            return Ok(None);
        }
        if bytes.len() == LONGEST && !bytes.ends_with(b"\n") {
            self.0.skip_until(b'\n')?;
            return Ok(Some(Line::TooLong));
        }
        Ok(Some(match String::from_utf8(bytes) {
            Ok(text) => Line::Text(text.trim_start_matches('\u{feff}').trim().to_owned()),
            Err(fault) => Line::NotText { valid: fault.utf8_error().valid_up_to() },
        }))
    }
}
