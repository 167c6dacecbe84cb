//! Where the person stopped, so that the app wakes there.

use crate::scratch;

/// The screen that was open last.
const LAST: &str = "screen";
/// The screen of a job that was open last; the bench offers to carry on there.
const LAST_OF_JOB: &str = "job-screen";
/// After this long the app wakes on the bench.
const WAKE_HOURS: i64 = 12;

/// A screen and when it was opened.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Place {
    /// Address within the app, such as `/job/27/setup`.
    pub path: String,
    /// Milliseconds since 1970, UTC.
    pub at: i64,
}

/// Remembers the screen that is open now.
pub fn note(path: &str, now: i64) {
    let text = format!("{now} {path}");
    if path.starts_with("/job/") && !is_passing(path) {
        scratch::write(LAST_OF_JOB, &text);
    }
    if !is_passing(path) {
        scratch::write(LAST, &text);
    }
}

/// A file comes in or goes out once, and the guide is read: nobody stopped working there.
fn is_passing(path: &str) -> bool {
    path == "/bring-in"
        || path == "/guide"
        || path.ends_with("/send")
        || path.starts_with("/states")
}

/// Forgets the screen that is open now, so that the app wakes on the bench.
pub fn forget() {
    scratch::forget(LAST);
}

/// The screen to go to when the app is opened on the bench's address; none to stay there.
pub fn wake(now: i64) -> Option<String> {
    let place = read(LAST)?;
    (is_recent(place.at, now) && place.path != "/").then_some(place.path)
}

/// The screen of a job that was open last, however long ago.
pub fn carry_on() -> Option<Place> {
    read(LAST_OF_JOB)
}

fn is_recent(at: i64, now: i64) -> bool {
    now.saturating_sub(at) < WAKE_HOURS * 3_600_000
}

fn read(key: &str) -> Option<Place> {
    parse(&scratch::read(key)?)
}

fn parse(text: &str) -> Option<Place> {
    let (at, path) = text.split_once(' ')?;
    // Only a path of this app: the text lies where other scripts of the origin could reach it.
    let own = path.starts_with('/') && !path.starts_with("//");
    own.then(|| Some(Place { path: path.to_owned(), at: at.parse().ok()? }))?
}

#[cfg(test)]
mod tests {
    use wasm_bindgen_test::wasm_bindgen_test as test;

    use super::*;

    #[test]
    fn a_place_is_read_back_and_a_foreign_address_is_not() {
        let place = Place { path: "/job/27/read/lash".to_owned(), at: 5 };
        assert_eq!(parse("5 /job/27/read/lash"), Some(place));
        for text in ["", "5", "x /job/27", "5 //elsewhere", "5 https://elsewhere"] {
            assert_eq!(parse(text), None, "{text}");
        }
    }

    #[test]
    fn after_half_a_day_the_app_wakes_on_the_bench() {
        assert!(is_recent(0, 12 * 3_600_000 - 1));
        assert!(!is_recent(0, 12 * 3_600_000));
    }
}
