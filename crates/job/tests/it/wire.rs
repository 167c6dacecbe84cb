//! The wire format against files that every later version must read.

use job::*;

/// One entry of every kind, written by version 1.
const V1: &str = include_str!("../../../../tests/wire/entries-v1.jsonl");
/// One entry of every kind that version 2 brought: the guided job, the drawer, own steps.
const V2: &str = include_str!("../../../../tests/wire/entries-v2.jsonl");
/// What came to version 2 with the signed consent.
const CONSENT: &str = include_str!("../../../../tests/wire/entries-v2-consent.jsonl");
/// What came to version 2 with the reason of a no.
const REASON: &str = include_str!("../../../../tests/wire/entries-v2-reason.jsonl");
/// Lines of versions to come, of other programs, and broken ones.
const UNREAD: &str = include_str!("../../../../tests/wire/unread.jsonl");

/// What came to version 1 with the other layouts.
const LAYOUTS: &str = include_str!("../../../../tests/wire/entries-v1-layouts.jsonl");

/// What came to version 1 with the archive.
const ARCHIVE: &str = include_str!("../../../../tests/wire/entries-v1-archive.jsonl");

/// What came to version 1 with the leak stages of a sheet.
const LEAK: &str = include_str!("../../../../tests/wire/entries-v1-leak.jsonl");

/// The sentence of each line of the golden files, in their order.
const SENTENCES: [&str; 7] = [
    include_str!("../../../../tests/wire/sentences-v1.txt"),
    include_str!("../../../../tests/wire/sentences-v1-layouts.txt"),
    include_str!("../../../../tests/wire/sentences-v2.txt"),
    include_str!("../../../../tests/wire/sentences-v2-consent.txt"),
    include_str!("../../../../tests/wire/sentences-v2-reason.txt"),
    include_str!("../../../../tests/wire/sentences-v1-archive.txt"),
    include_str!("../../../../tests/wire/sentences-v1-leak.txt"),
];

fn golden() -> impl Iterator<Item = &'static str> {
    [V1, LAYOUTS, V2, CONSENT, REASON, ARCHIVE, LEAK].into_iter().flat_map(str::lines)
}

#[test]
fn every_line_of_either_version_is_read_and_written_the_same() {
    assert!(V1.lines().count() >= 18 && V2.lines().count() >= 40);
    for line in golden() {
        let kept = Kept::from_line(line);
        assert!(matches!(kept, Kept::Known(_)), "{line}");
        assert_eq!(kept.to_line(), line);
    }
}

#[test]
fn every_entry_is_a_sentence() {
    let said: Vec<String> = golden()
        .filter_map(|line| match Kept::from_line(line) {
            Kept::Known(entry) => Some(entry.sentence()),
            Kept::Unread { .. } => None,
        })
        .collect();
    let expected: Vec<&str> = SENTENCES.iter().flat_map(|text| text.lines()).collect();
    for (said, expected) in said.iter().zip(&expected) {
        assert_eq!(said, expected);
    }
    assert_eq!(said.len(), expected.len());
}

#[test]
fn a_guided_fact_with_a_key_less_more_or_of_another_kind_is_kept_unread() {
    let line = |fact: &str| {
        format!(r#"{{"v":2,"book":"job:j","id":"a.0","n":1,"device":"d","at":0,"fact":{fact}}}"#)
    };
    assert!(matches!(Kept::from_line(&line(r#"{"step-done":{"step":"b01"}}"#)), Kept::Known(_)));
    for fact in [
        r#"{"step-done":{}}"#,
        r#"{"step-done":{"step":"b01","mood":"good"}}"#,
        r#"{"step-done":{"step":7}}"#,
        r#"{"step-done":{"step":"b01"},"more":{}}"#,
        r#"{"step-sung":{"step":"b01"}}"#,
        r#"{"scope-chosen":{"scope":"all","reason":""}}"#,
        r#"{"consent-refused":{"step":"","by":"M","how":"here","work":["Seals"],"reason":"","initials":""}}"#,
        r#"{"consent-refused-because":{"step":"","by":"M","how":"here","work":["Seals"],"reason":"","initials":""}}"#,
        r#"{"captured":{"step":"b01","label":"x","value":{"readings":[0.5]}}}"#,
        r#"{"clock-started":{"clock":"c","step":"b","label":"l","marks":[-1]}}"#,
        r#""step-done""#,
    ] {
        assert!(matches!(Kept::from_line(&line(fact)), Kept::Unread { counter: 1, .. }), "{fact}");
    }
    // A kind belongs to the version that brought it.
    let older = line(r#"{"step-done":{"step":"b01"}}"#).replace(r#""v":2"#, r#""v":1"#);
    assert!(matches!(Kept::from_line(&older), Kept::Unread { .. }));
}

#[test]
fn what_is_not_understood_is_kept_counted_and_exported() {
    let lines: Vec<&str> = UNREAD.lines().collect();
    let book = Book::from_lines(BookId::Job("j".into()), lines.iter().copied());
    assert_eq!(book.unread(), lines.len());
    let mut kept: Vec<&str> = book.lines().collect();
    let mut sorted = lines.clone();
    kept.sort_unstable();
    sorted.sort_unstable();
    assert_eq!(kept, sorted);
    assert_eq!(Job::fold(&book).unread, lines.len());
}

#[test]
fn a_new_entry_comes_after_one_that_was_not_understood() {
    let newer = r#"{"v":2,"n":41,"device":"z","fact":{"thing-done":{}}}"#;
    let book = Book::from_lines(BookId::Job("j".into()), [newer]);
    let stamp = Stamp { device: "d".into(), at: 0, act: "a".into() };
    let opened = Fact::JobOpened {
        boat: "Invented".into(),
        complaint: String::new(),
        sheet: "s".into(),
        number: 1,
    };
    let entries = book.next(vec![opened], &stamp).unwrap();
    assert_eq!(entries[0].counter, 42);
}

#[test]
fn books_have_a_text_form() {
    for text in ["tin", "drawer", "sheet:a", "job:b:c"] {
        assert_eq!(BookId::parse(text).unwrap().to_string(), text);
    }
    for text in ["", "tin:", "sheet", "job:", "shelf:a", "Tin"] {
        assert_eq!(BookId::parse(text), None, "{text}");
    }
}
