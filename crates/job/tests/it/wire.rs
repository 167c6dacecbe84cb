//! The wire format against files that every later version must read.

use job::*;

/// One entry of every kind, written by version 1.
const V1: &str = include_str!("../../../../tests/wire/entries-v1.jsonl");
/// Lines of versions to come, of other programs, and broken ones.
const UNREAD: &str = include_str!("../../../../tests/wire/unread.jsonl");

/// The sentence of each line of the golden file, in its order.
const SENTENCES: &str = include_str!("../../../../tests/wire/sentences-v1.txt");
/// What came to version 1 with the other layouts, and its sentences.
const LAYOUTS: &str = include_str!("../../../../tests/wire/entries-v1-layouts.jsonl");
const LAYOUT_SENTENCES: &str = include_str!("../../../../tests/wire/sentences-v1-layouts.txt");

#[test]
fn every_line_of_version_1_is_read_and_written_the_same() {
    assert!(V1.lines().count() >= 18);
    for line in V1.lines().chain(LAYOUTS.lines()) {
        let kept = Kept::from_line(line);
        assert!(matches!(kept, Kept::Known(_)), "{line}");
        assert_eq!(kept.to_line(), line);
    }
}

#[test]
fn every_entry_is_a_sentence() {
    let said: Vec<String> = V1
        .lines()
        .chain(LAYOUTS.lines())
        .filter_map(|line| match Kept::from_line(line) {
            Kept::Known(entry) => Some(entry.sentence()),
            Kept::Unread { .. } => None,
        })
        .collect();
    let expected: Vec<&str> = SENTENCES.lines().chain(LAYOUT_SENTENCES.lines()).collect();
    assert_eq!(said, expected);
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
    for text in ["tin", "sheet:a", "job:b:c"] {
        assert_eq!(BookId::parse(text).unwrap().to_string(), text);
    }
    for text in ["", "tin:", "sheet", "job:", "shelf:a", "Tin"] {
        assert_eq!(BookId::parse(text), None, "{text}");
    }
}
