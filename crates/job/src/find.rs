//! Finding a job by what is known of it.

use crate::clock::iso_day;
use words::t;

use crate::{JobSummary, date};

impl JobSummary {
    /// Whether every word that was typed stands on the job: anywhere in its boat, its tags or what
    /// its unit sheet is called, or as its number, or in the day it was opened or last written in
    /// ("12 May 2026", "2026-05-12", "may", "2026-05"). Capitals make no difference; nothing typed
    /// finds every job. `utc_offset` is minutes ahead of UTC.
    pub fn has_words(&self, typed: &str, unit: &str, utc_offset: i32) -> bool {
        let names = [self.boat.as_str(), unit].into_iter();
        let names: Vec<String> =
            names.chain(self.tags.iter().map(String::as_str)).map(str::to_lowercase).collect();
        let number = self.number.to_string();
        let is_there = |word: &str| {
            word == "job"
                || word == t("job")
                || word == number
                || names.iter().any(|name| name.contains(word))
                || [self.opened_at, self.last_at].into_iter().any(|at| is_day(word, at, utc_offset))
        };
        typed.to_lowercase().split_whitespace().all(is_there)
    }
}

/// Whether a word is part of a day as people write it. A number is taken whole: "2" is no 2026.
fn is_day(word: &str, at: i64, utc_offset: i32) -> bool {
    if word.contains('-') {
        return iso_day(at, utc_offset).starts_with(word);
    }
    let is_number = word.starts_with(|first: char| first.is_ascii_digit());
    date(at, utc_offset).to_lowercase().split(' ').any(|part| match is_number {
        true => part == word,
        false => part.starts_with(word),
    })
}
