//! Seeded changes of sound files, lines and numbers, for as long as `SOAK_SECONDS` says; a second
//! each where it does not. `cargo xtask soak` gives ten minutes each.

use std::time::{Duration, Instant};

use job::*;
use measure::{Sign, Typed, Unit};

use super::hostile::{ENTRY, poured, used};
use super::*;

/// A generator of numbers, xorshift64 (Marsaglia 2003), so that every run tries the same.
struct Dice(u64);

impl Dice {
    fn below(&mut self, most: usize) -> usize {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        (self.0 % most.max(1) as u64) as usize
    }

    /// The bytes with a few put in, taken out, doubled or turned.
    fn changed(&mut self, bytes: &[u8]) -> Vec<u8> {
        let mut bytes = bytes.to_vec();
        for _ in 0..=self.below(6) {
            let at = self.below(bytes.len() + 1);
            let end = (at + self.below(40)).min(bytes.len());
            match self.below(5) {
                0 => bytes.insert(at, self.below(256) as u8),
                1 => drop(bytes.drain(at..end)),
                2 => bytes.splice(at..at, bytes[at..end].to_vec()).for_each(drop),
                3 if at < bytes.len() => bytes[at] ^= 1 << self.below(8),
                _ => {
                    let words: [&[u8]; 9] = [
                        b"\"",
                        b"{",
                        b"[[",
                        b"\n",
                        b"9007199254740991",
                        b"-",
                        b",",
                        b"null",
                        b"\\u0000",
                    ];
                    let word = words[self.below(words.len())];
                    bytes.splice(at..at, word.to_vec()).for_each(drop);
                }
            }
        }
        bytes
    }
}

/// Tries for as long as it should, and tells how often.
fn soak(what: &str, mut once: impl FnMut(&mut Dice)) {
    let seconds =
        std::env::var("SOAK_SECONDS").ok().and_then(|text| text.parse().ok()).unwrap_or(1);
    let memory = Memory::from_now();
    let (started, mut dice, mut tries, mut slowest) =
        (Instant::now(), Dice(0x5EED), 0u64, Duration::ZERO);
    while started.elapsed() < Duration::from_secs(seconds) {
        let began = Instant::now();
        once(&mut dice);
        slowest = slowest.max(began.elapsed());
        tries += 1;
    }
    let memory = memory.most();
    println!(
        "{what}: {tries} tries in {seconds} s, none failed, the slowest took {slowest:?}, at most {memory} MB"
    );
    assert!(slowest < Duration::from_secs(20), "{what} hung for {slowest:?}");
    // Beside other tests the process holds theirs as well.
    assert!(seconds == 1 || memory < 64, "{what} took {memory} MB");
}

/// Memory that was taken since a moment, as Linux tells it (proc(5)); 0 where it does not.
struct Memory {
    before: u64,
}

impl Memory {
    fn from_now() -> Memory {
        // 5 sets the peak back to what is held now; refused, the peak is that of the whole run.
        std::fs::write("/proc/self/clear_refs", "5").ok();
        Memory { before: kilobytes("VmRSS:") }
    }

    /// The most that was held beyond what was held before, in MB.
    fn most(&self) -> u64 {
        kilobytes("VmHWM:").saturating_sub(self.before) / 1024
    }
}

fn kilobytes(name: &str) -> u64 {
    let status = std::fs::read_to_string("/proc/self/status").unwrap_or_default();
    let rest = status.lines().find_map(|line| line.strip_prefix(name));
    rest.and_then(|rest| rest.trim().strip_suffix(" kB")?.parse().ok()).unwrap_or_default()
}

#[test]
fn soak_too_large_and_too_deep() {
    const MB: usize = 1024 * 1024;
    let line = format!("{ENTRY}\n");
    // Whole lines, so that everything up to the bound is kept until it is refused.
    let lines = line.repeat(64 * 1024 / line.len()).into_bytes();
    let files: [(&str, String, &[u8]); 4] = [
        ("200 MB of entries", line.clone(), &lines),
        ("200 MB without a line end", line.clone(), &[b'x'; 64 * 1024]),
        ("a photo of 200 MB", format!("{line}{{\"photo\":\""), &[b'A'; 64 * 1024]),
        ("200 MB of brackets", line.clone(), &[b'['; 64 * 1024]),
    ];
    // Tests of every day leave out what is taken nearly whole, which takes a minute unoptimized.
    let skipped = usize::from(std::env::var("SOAK_SECONDS").is_err());
    for (what, first, piece) in files.into_iter().skip(skipped) {
        let (started, memory) = (Instant::now(), Memory::from_now());
        let (why, taken) = poured(&first, piece, 200 * MB);
        let (took, taken, memory) = (started.elapsed(), taken / MB, memory.most());
        println!("{what}: refused in {took:?} after {taken} MB, at most {memory} MB: {why}");
    }
    for depth in [100, 1_000_000] {
        let file = format!("{line}{}", "[".repeat(depth));
        let (started, memory) = (Instant::now(), Memory::from_now());
        let why = taken(file.as_bytes()).unwrap_err();
        let (took, memory) = (started.elapsed(), memory.most());
        println!("{depth} deep: refused in {took:?}, at most {memory} MB: {why}");
    }
}

const LINES: [&str; 3] = [
    include_str!("../../../../../tests/wire/entries-v1.jsonl"),
    include_str!("../../../../../tests/wire/entries-v1-layouts.jsonl"),
    include_str!("../../../../../tests/wire/entries-v2.jsonl"),
];

#[test]
fn soak_the_decoder() {
    let lines: Vec<&str> = LINES.iter().flat_map(|file| file.lines()).collect();
    soak("decoder", |dice| {
        let line = lines[dice.below(lines.len())].as_bytes();
        let line = String::from_utf8_lossy(&dice.changed(line)).into_owned();
        if let Kept::Known(entry) = Kept::from_line(&line) {
            entry.sentence();
            assert_eq!(Kept::from_line(&entry.to_line()), Kept::Known(entry));
        }
    });
}

#[test]
fn soak_the_importer() {
    let golden = include_bytes!("../../../../../tests/wire/backup-v1.jsonl").to_vec();
    let files = [backup(&demo(), &[photo("p1")]).into_bytes(), golden, LINES.concat().into_bytes()];
    soak("importer", |dice| {
        let file = &files[dice.below(files.len())];
        used(&dice.changed(file));
    });
}

#[test]
fn soak_the_number_grammar() {
    let texts = ["0,019 in", "-0.02", "+1.5 mm", "−12,50 N·m", "35°", "100 lbf·ft", "0.0220"];
    soak("number grammar", |dice| {
        let text = texts[dice.below(texts.len())].as_bytes();
        let text = String::from_utf8_lossy(&dice.changed(text)).into_owned();
        let unit = [Unit::Millimetre, Unit::Inch, Unit::Degree][dice.below(3)];
        match Typed::parse(&text, unit, Sign::Any) {
            Ok(typed) => {
                assert_eq!(
                    Typed::parse(typed.text(), typed.unit(), Sign::Any).as_ref(),
                    Ok(&typed)
                );
            }
            Err(why) => assert!(!why.to_string().is_empty()),
        }
    });
}
