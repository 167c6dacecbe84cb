//! The shop's PIN: how it is kept, what wrong ones cost, how long the right one opens.
//!
//! It keeps honest hands off and is no encryption: whoever can read the browser's own storage
//! reads the jobs without it.

use std::fmt;
use words::{say, t};

use base64::Engine;
use base64::engine::general_purpose::STANDARD;

/// How many digits a PIN has.
const DIGITS: std::ops::RangeInclusive<usize> = 4..=12;

/// So many wrong ones are free.
const FREE: u32 = 3;
const FIRST_WAIT: i64 = 30_000;
const LONGEST_WAIT: i64 = 3_600_000;
/// How long after it was said to be forgotten a PIN can be taken away without it.
const FORGOTTEN: i64 = 24 * 3_600_000;
/// How long after the last touch the right one stays given.
const UNTOUCHED: i64 = 3 * 60_000;

/// A PIN as it is kept: never itself, only what it is held against; with the wrong tries.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Pin {
    rounds: u32,
    salt: Vec<u8>,
    hash: Vec<u8>,
    /// Wrong ones in a row.
    wrong: u32,
    /// When the last was tried, milliseconds since 1970, UTC.
    tried_at: i64,
    /// When it was said to be forgotten; 0: it was not.
    forgotten_at: i64,
}

impl Pin {
    /// Iterations of PBKDF2-HMAC-SHA-256 for a new PIN: the least that the OWASP Password Storage
    /// Cheat Sheet asks of it since 2023.
    pub const ROUNDS: u32 = 600_000;

    /// A new PIN: its random salt, and what came of [`Pin::ROUNDS`] iterations over both.
    pub fn new(salt: Vec<u8>, hash: Vec<u8>) -> Pin {
        Pin { rounds: Pin::ROUNDS, salt, hash, ..Pin::default() }
    }

    /// The text it is kept as.
    pub fn text(&self) -> String {
        let Pin { rounds, wrong, tried_at, forgotten_at, .. } = self;
        let (salt, hash) = (STANDARD.encode(&self.salt), STANDARD.encode(&self.hash));
        format!("1 {rounds} {salt} {hash} {wrong} {tried_at} {forgotten_at}")
    }

    /// Reads the text back. One that cannot be read is a PIN that nobody knows: it does not open,
    /// and can be taken away as a forgotten one.
    pub fn read(text: &str) -> Pin {
        read(text).unwrap_or_default()
    }

    /// Iterations that what is tried is to go through.
    pub fn rounds(&self) -> u32 {
        self.rounds.max(1)
    }

    /// The salt that what is tried is to be mixed with.
    pub fn salt(&self) -> &[u8] {
        &self.salt
    }

    /// How long until the next is taken, in milliseconds: no time for the first three, then 30 s,
    /// doubled each time, an hour at most. A clock that was set back makes nobody wait longer.
    pub fn wait(&self, now: i64) -> i64 {
        let doubled = self.wrong.checked_sub(FREE).map(|more| FIRST_WAIT << more.min(7));
        let whole = doubled.unwrap_or_default().min(LONGEST_WAIT);
        self.tried_at.saturating_add(whole).saturating_sub(now).clamp(0, whole)
    }

    /// The same as a sentence; `None` where the next is taken at once.
    pub fn waits(&self, now: i64) -> Option<String> {
        let wait = self.wait(now);
        (wait > 0)
            .then(|| say!("{} wrong tries. The next is taken in {}.", self.wrong, lasting(wait)))
    }

    /// Another one is tried. It counts as wrong until it is found right, so that stopping the app
    /// in between gains nothing. `None` while none is taken.
    pub fn tried(&self, now: i64) -> Option<Pin> {
        let wrong = self.wrong.saturating_add(1);
        (self.wait(now) == 0).then(|| Pin { wrong, tried_at: now, ..self.clone() })
    }

    /// Whether what came of the one tried is right: then nothing counts against it any more, and
    /// it is not forgotten.
    pub fn opened(&self, hash: &[u8]) -> Option<Pin> {
        let is_right = !self.hash.is_empty() && self.hash == hash;
        is_right.then(|| Pin { wrong: 0, tried_at: 0, forgotten_at: 0, ..self.clone() })
    }

    /// Somebody says that it is forgotten.
    pub fn forgotten(&self, now: i64) -> Pin {
        Pin { forgotten_at: now.max(1), ..self.clone() }
    }

    /// It was found again.
    pub fn remembered(&self) -> Pin {
        Pin { forgotten_at: 0, ..self.clone() }
    }

    /// How a forgotten PIN stands.
    pub fn release(&self, now: i64) -> Release {
        if self.forgotten_at == 0 {
            return Release::NotAsked;
        }
        match self.forgotten_at.saturating_add(FORGOTTEN).saturating_sub(now).clamp(0, FORGOTTEN) {
            0 => Release::Due,
            left => Release::In(lasting(left)),
        }
    }
}

/// How a forgotten PIN stands.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Release {
    /// Nobody said that it is forgotten.
    NotAsked,
    /// It can be taken away after so long, such as "23 h 10 min".
    In(String),
    /// It can be taken away now.
    Due,
}

/// Why a new PIN is not taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PinRefusal {
    /// Something in it is no digit.
    NotDigits,
    /// It has so many digits.
    Length(usize),
    /// The second is another one.
    Another,
}

impl fmt::Display for PinRefusal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (least, most) = (DIGITS.start(), DIGITS.end());
        match self {
            PinRefusal::NotDigits => f.write_str(&say!(
                "There is more than digits in it. Type {least} to {most} digits."
            )),
            PinRefusal::Length(0) => {
                f.write_str(&say!("Nothing is typed. Type {least} to {most} digits."))
            }
            PinRefusal::Length(1) => {
                f.write_str(&say!("That is 1 digit. A PIN has {least} to {most}: type it again."))
            }
            PinRefusal::Length(found) => f.write_str(&say!(
                "Those are {found} digits. A PIN has {least} to {most}: type it again."
            )),
            PinRefusal::Another => f.write_str(t(
                "The two are not the same. Type the new PIN again, below it once more.",
            )),
        }
    }
}

/// Whether a new PIN, typed twice, can be taken.
///
/// # Errors
/// What is wrong with it.
pub fn new_pin(first: &str, again: &str) -> Result<(), PinRefusal> {
    if !first.chars().all(|typed| typed.is_ascii_digit()) {
        return Err(PinRefusal::NotDigits);
    }
    if !DIGITS.contains(&first.len()) {
        return Err(PinRefusal::Length(first.len()));
    }
    if first == again { Ok(()) } else { Err(PinRefusal::Another) }
}

/// Whether a PIN that was given still opens: until nothing was touched for three minutes, or the
/// clock was set back.
pub fn stays_given(touched_at: i64, now: i64) -> bool {
    (0..UNTOUCHED).contains(&now.saturating_sub(touched_at))
}

fn read(text: &str) -> Option<Pin> {
    let mut words = text.split(' ');
    let is_known = words.next()? == "1";
    let pin = Pin {
        rounds: words.next()?.parse().ok()?,
        salt: STANDARD.decode(words.next()?).ok()?,
        hash: STANDARD.decode(words.next()?).ok()?,
        wrong: words.next()?.parse().ok()?,
        tried_at: words.next()?.parse().ok()?,
        forgotten_at: words.next()?.parse().ok()?,
    };
    (is_known && words.next().is_none()).then_some(pin)
}

/// "28 s", "4 min", "23 h 10 min"; rounded up, so that it is never over sooner than said.
fn lasting(milliseconds: i64) -> String {
    let seconds = milliseconds.saturating_add(999) / 1000;
    let minutes = seconds.saturating_add(59) / 60;
    match (seconds, minutes) {
        (..=90, _) => format!("{seconds} s"),
        (_, ..=60) => format!("{minutes} min"),
        _ => say!("{} h {} min", minutes / 60, minutes % 60),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const MINUTE: i64 = 60_000;

    fn pin() -> Pin {
        Pin::new(vec![1; 16], vec![2; 32])
    }

    fn wrong(times: u32) -> Pin {
        (0..times).fold(pin(), |pin, _| {
            let later = pin.tried_at + LONGEST_WAIT;
            pin.tried(later).unwrap()
        })
    }

    #[test]
    fn it_is_read_back_as_it_was_kept() {
        let kept = wrong(4).forgotten(9);
        assert_eq!(Pin::read(&kept.text()), kept);
        assert_eq!(kept.rounds(), 600_000);
    }

    #[test]
    fn what_cannot_be_read_opens_for_nobody_and_can_be_taken_away() {
        let newer = format!("{} 5", pin().text());
        for text in ["", "1", "2 1 AA== AA== 0 0 0", "1 x AA== AA== 0 0 0", "1 1 ? ? 0 0 0", &newer]
        {
            let pin = Pin::read(text);
            assert_eq!((pin.opened(&[]), pin.opened(&[0])), (None, None), "{text}");
            assert!(pin.rounds() > 0);
            assert_eq!(pin.forgotten(1).release(1 + FORGOTTEN), Release::Due);
        }
    }

    #[test]
    fn the_right_one_opens_and_clears_the_wrong_tries() {
        let tried = wrong(2).forgotten(5).tried(LONGEST_WAIT * 5).unwrap();
        assert_eq!(tried.opened(&[3; 32]), None);
        assert_eq!(tried.opened(&[2; 32]), Some(pin()));
    }

    #[test]
    fn three_are_free_then_the_wait_doubles_up_to_an_hour() {
        let waits: Vec<i64> =
            (0..13).map(|times| wrong(times).wait(wrong(times).tried_at)).collect();
        let seconds = [0, 0, 0, 30, 60, 120, 240, 480, 960, 1920, 3600, 3600, 3600];
        assert_eq!(waits, seconds.map(|seconds| seconds * 1000));
        let third = wrong(3);
        assert_eq!(third.tried(third.tried_at + 29_999), None);
        assert!(third.tried(third.tried_at + 30_000).is_some());
        let says = third.waits(third.tried_at + 1_500).unwrap();
        assert_eq!(says, "3 wrong tries. The next is taken in 29 s.");
        let sixth = wrong(6);
        let says = sixth.waits(sixth.tried_at).unwrap();
        assert_eq!(says, "6 wrong tries. The next is taken in 4 min.");
        assert_eq!(third.waits(third.tried_at + 30_000), None);
    }

    #[test]
    fn a_clock_set_back_adds_nothing_to_the_wait() {
        let third = wrong(3);
        assert_eq!(third.wait(third.tried_at - 1000 * LONGEST_WAIT), 30_000);
        assert_eq!(third.wait(i64::MIN), 30_000);
        assert_eq!(third.wait(i64::MAX), 0);
    }

    #[test]
    fn a_forgotten_one_can_be_taken_away_after_a_day() {
        assert_eq!(pin().release(0), Release::NotAsked);
        let forgotten = pin().forgotten(1000);
        assert_eq!(forgotten.release(1000 + 50 * MINUTE), Release::In("23 h 10 min".to_owned()));
        assert_eq!(forgotten.release(1000 + FORGOTTEN - 1), Release::In("1 s".to_owned()));
        assert_eq!(forgotten.release(1000 + FORGOTTEN), Release::Due);
        assert_eq!(forgotten.remembered(), pin());
        // A clock at the beginning of time is a clock too.
        assert_ne!(pin().forgotten(0).release(0), Release::NotAsked);
    }

    #[test]
    fn a_new_one_is_four_to_twelve_digits_typed_twice() {
        assert_eq!(new_pin("4821", "4821"), Ok(()));
        assert_eq!(new_pin("123456789012", "123456789012"), Ok(()));
        let says = |first, again| new_pin(first, again).unwrap_err().to_string();
        assert_eq!(says("", ""), "Nothing is typed. Type 4 to 12 digits.");
        assert_eq!(says("482", "482"), "Those are 3 digits. A PIN has 4 to 12: type it again.");
        assert_eq!(says("48 21", "48 21"), "There is more than digits in it. Type 4 to 12 digits.");
        assert_eq!(says("٤٨٢١", "٤٨٢١"), "There is more than digits in it. Type 4 to 12 digits.");
        assert_eq!(
            says("4821", "4812"),
            "The two are not the same. Type the new PIN again, below it once more."
        );
    }

    #[test]
    fn it_stays_given_until_nothing_was_touched_for_three_minutes() {
        assert!(stays_given(0, 3 * MINUTE - 1));
        assert!(!stays_given(0, 3 * MINUTE));
        assert!(!stays_given(1, 0));
    }
}
