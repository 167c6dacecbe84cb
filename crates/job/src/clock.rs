//! Times of day and dates, from milliseconds and the distance from UTC.

use words::{say, t};

const MINUTE: i64 = 60_000;
const DAY: i64 = 24 * 60 * MINUTE;
const MONTHS: [&str; 12] =
    ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

/// The time of day: "10:05". `utc_offset` is minutes ahead of UTC.
pub fn hour_minute(at: i64, utc_offset: i32) -> String {
    let minutes = local(at, utc_offset).rem_euclid(DAY) / MINUTE;
    format!("{:02}:{:02}", minutes / 60, minutes % 60)
}

/// The date: "12 May 2026". `utc_offset` is minutes ahead of UTC.
pub fn date(at: i64, utc_offset: i32) -> String {
    let (year, month, day) = civil(day(at, utc_offset));
    say!("{day} {month} {year}", month = month_name(month))
}

/// Date and time as tables sort them: "2026-05-12 10:05". `utc_offset` is minutes ahead of UTC.
pub(crate) fn iso_minute(at: i64, utc_offset: i32) -> String {
    format!("{} {}", iso_day(at, utc_offset), hour_minute(at, utc_offset))
}

/// The date as tables sort it: "2026-05-12". `utc_offset` is minutes ahead of UTC.
pub(crate) fn iso_day(at: i64, utc_offset: i32) -> String {
    let (year, month, day) = civil(day(at, utc_offset));
    format!("{year:04}-{:02}-{day:02}", month + 1)
}

/// Which day of something that began at `from` the time `at` is, counted from 1.
pub fn day_number(from: i64, at: i64, utc_offset: i32) -> i64 {
    (day(at, utc_offset) - day(from, utc_offset)).max(0) + 1
}

/// How long ago `at` was, in the one unit that says most: "2 min ago".
pub fn ago(at: i64, now: i64) -> String {
    match now.saturating_sub(at) / MINUTE {
        ..1 => t("just now").to_owned(),
        minutes @ 1..60 => say!("{minutes} min ago"),
        minutes @ 60..1440 => say!("{} h ago", minutes / 60),
        1440..2880 => t("1 day ago").to_owned(),
        minutes => say!("{} days ago", minutes / 1440),
    }
}

/// The time of day of `at`, with the date where `other` is not on the same day.
pub fn apart(at: i64, other: i64, utc_offset: i32) -> String {
    let time = hour_minute(at, utc_offset);
    if day(at, utc_offset) == day(other, utc_offset) {
        return time;
    }
    let (_, month, day) = civil(day(at, utc_offset));
    say!("{day} {month} {time}", month = month_name(month))
}

/// A month's short name, counted from 0.
fn month_name(month: usize) -> &'static str {
    MONTHS.get(month).map_or("", |month| t(month))
}

fn local(at: i64, utc_offset: i32) -> i64 {
    at.saturating_add(i64::from(utc_offset) * MINUTE)
}

/// Days since 1 January 1970.
fn day(at: i64, utc_offset: i32) -> i64 {
    local(at, utc_offset).div_euclid(DAY)
}

/// Year, month from 0, and day of the month of the proleptic Gregorian calendar.
///
/// Counts 400-year cycles from 1 March 0000, so that the leap day ends a year (Hinnant's
/// `civil_from_days`, public domain, from memory; the tests hold known dates against it).
fn civil(days: i64) -> (i64, usize, i64) {
    let days = days + 719_468;
    let cycle = days.div_euclid(146_097);
    let of_cycle = days.rem_euclid(146_097);
    let year = (of_cycle - of_cycle / 1460 + of_cycle / 36_524 - of_cycle / 146_096) / 365;
    let of_year = of_cycle - (365 * year + year / 4 - year / 100);
    let from_march = (5 * of_year + 2) / 153;
    let day = of_year - (153 * from_march + 2) / 5 + 1;
    let month = if from_march < 10 { from_march + 2 } else { from_march - 10 };
    let year = year + cycle * 400 + i64::from(month < 2);
    (year, usize::try_from(month).unwrap_or_default(), day)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn known_dates() {
        let at = |days: i64| days * DAY;
        assert_eq!(date(0, 0), "1 Jan 1970");
        assert_eq!(date(at(11_016), 0), "29 Feb 2000");
        assert_eq!(date(at(19_782), 0), "29 Feb 2024");
        assert_eq!(date(at(19_783), 0), "1 Mar 2024");
        assert_eq!(date(-1, 0), "31 Dec 1969");
        // 1 000 000 000 seconds is 9 September 2001, 01:46:40 UTC.
        assert_eq!(date(1_000_000_000_000, 0), "9 Sep 2001");
        assert_eq!(hour_minute(1_000_000_000_000, 0), "01:46");
    }

    #[test]
    fn the_offset_moves_the_clock_and_the_date() {
        assert_eq!(hour_minute(0, 120), "02:00");
        assert_eq!(hour_minute(0, -210), "20:30");
        assert_eq!(date(0, -210), "31 Dec 1969");
        assert_eq!(day_number(0, 0, -210), 1);
        assert_eq!(day_number(0, 4 * 60 * MINUTE, -210), 2);
        assert_eq!(apart(0, DAY, 0), "1 Jan 00:00");
        assert_eq!(apart(0, 1, 0), "00:00");
    }

    #[test]
    fn how_long_ago_is_said_in_one_unit() {
        let said = |minutes: i64| ago(0, minutes * MINUTE);
        let cases = [
            (-5, "just now"),
            (0, "just now"),
            (1, "1 min ago"),
            (59, "59 min ago"),
            (60, "1 h ago"),
            (1439, "23 h ago"),
            (1440, "1 day ago"),
            (2880, "2 days ago"),
        ];
        for (minutes, words) in cases {
            assert_eq!(said(minutes), words);
        }
    }

    #[test]
    fn any_time_at_all() {
        for at in [i64::MIN, i64::MAX] {
            assert!(date(at, i32::MAX).len() > 8);
            assert!(!ago(at, 0).is_empty());
        }
    }
}
