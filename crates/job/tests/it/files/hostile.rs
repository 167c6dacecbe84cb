//! Files made to harm.

use job::files::*;
use job::*;
use proptest::prelude::*;

use super::*;

pub const ENTRY: &str = r#"{"v":1,"book":"job:j","id":"a.0","n":1,"device":"d","at":0,"fact":{"note-written":{"text":"x"}}}"#;

fn refused(file: &[u8]) -> String {
    taken(file).unwrap_err().to_string()
}

#[test]
fn a_file_of_another_program_is_refused_by_its_first_line() {
    assert_eq!(refused(b""), "The file is empty. Choose a backup of this app, or make it again.");
    for start in
        ["hello", "{}", "[]", "\u{1f}\u{8b}", "{\"shimwright\":7}", "{\"photo\":\"p\"}", "<html>"]
    {
        assert!(refused(start.as_bytes()).starts_with("The file begins with "), "{start}");
    }
    assert_eq!(
        refused(b"\xFF\xD8\xFF\xE0 not text"),
        "Line 1 is no UTF-8 text. The file is damaged or of another program: choose another copy."
    );
    let newer = r#"{"shimwright":"backup","format":2,"colour":"red"}"#;
    assert!(
        refused(newer.as_bytes())
            .starts_with("The file is of format 2, and this version reads format 1.")
    );
}

#[test]
fn a_file_a_hundred_deep_is_refused_at_once() {
    for open in ["[", "{\"a\":"] {
        for depth in [33, 100, 200_000] {
            let file = format!("{ENTRY}\n{}", open.repeat(depth));
            let answer = refused(file.as_bytes());
            assert!(answer.starts_with("Line 2 is nested deeper"), "{answer}");
        }
    }
    // Brackets inside a text nest nothing.
    let text = ENTRY.replace("\"x\"", &format!("\"{}\\\"{}\"", "[".repeat(100), "{".repeat(100)));
    assert_eq!(taken(text.as_bytes()).unwrap().0.coming.len(), 1);
}

/// Takes pieces until one is refused: the sentence, the bytes taken.
pub fn poured(first: &str, piece: &[u8], most: usize) -> (String, usize) {
    let mut incoming = Incoming::new();
    incoming.push(first.as_bytes()).unwrap();
    for taken in 0..most / piece.len() {
        if let Err(why) = incoming.push(piece) {
            return (why.to_string(), taken * piece.len());
        }
    }
    panic!("{most} bytes were taken")
}

#[test]
fn a_file_of_200_mb_is_refused_within_its_bounds() {
    const MB: usize = 1024 * 1024;
    // Bounded in bytes taken, which bounds time too and does not depend on the machine.
    // One line without an end: let go of after one line's bound.
    let (why, taken) = poured(&format!("{ENTRY}\n"), &[b'x'; 64 * 1024], 200 * MB);
    assert!(why.starts_with("Line 2 is longer") && taken <= MB, "{why} {taken}");
    let photo = format!("{ENTRY}\n{{\"photo\":\"");
    let (why, taken) = poured(&photo, &[b'A'; 64 * 1024], 200 * MB);
    assert!(why.starts_with("Line 2 is longer") && taken <= 16 * MB, "{why} {taken}");
    // Nothing but line ends: nothing is kept of it, and it ends at the bound.
    let (why, taken) = poured(ENTRY, &[b'\n'; 64 * 1024], 200 * MB);
    assert!(why.starts_with("The file is over 192 MB") && taken <= 192 * MB, "{why} {taken}");
}

#[test]
fn a_place_that_no_bench_comes_to_is_refused() {
    // Kept, it would leave no place for anything written after it.
    let last = ENTRY.replace("\"n\":1,", "\"n\":9007199254740991,");
    let file = format!("{ENTRY}\n{last}");
    assert!(refused(file.as_bytes()).starts_with("Line 2 claims place 9007199254740991"));
}

#[test]
fn hostile_text_stays_text() {
    let texts = [
        "<script>alert(1)</script>".to_owned(),
        "\u{202e}evil\u{2066}".to_owned(),
        "=cmd|' /C calc'!A0".to_owned(),
        "a\nb\r\nc\u{0}".to_owned(),
        "n".repeat(100 * 1024),
    ];
    for boat in texts {
        let opened = Fact::JobOpened {
            boat: boat.clone(),
            complaint: boat.clone(),
            sheet: "s".into(),
            number: 1,
        };
        let book = Book::new(BookId::Job("j".into()));
        let stamp = Stamp { device: "d".into(), at: 0, act: "a".into() };
        let book = book.clone().with(book.next(vec![opened], &stamp).unwrap());
        let (parcel, _) = taken(backup([&book], &[]).as_bytes()).unwrap();
        let changes = Changes::of(&parcel.coming, &here([]));
        assert_eq!(changes.books[0].title, boat);
        let page = text([(&book, &Sheet::default())], 0);
        assert_eq!(page.lines().count(), 3);
        assert!(!page.contains('\u{202e}'));
    }
}

/// Everything that is made of what came in; none of it may fail.
pub fn used(file: &[u8]) {
    let Ok((parcel, _)) = taken(file) else { return };
    let changes = Changes::of(&parcel.coming, &here(&demo()));
    let (mut jobs, mut sheets) = (Vec::new(), vec![Sheet::default()]);
    for change in &changes.books {
        let lines = parcel.coming.iter().filter(|coming| coming.book == change.book.to_string());
        let book = Book::from_lines(change.book.clone(), lines.map(|coming| coming.line.as_str()));
        for pair in &change.beside {
            pair.judged(pair.unjudged());
        }
        match change.book {
            BookId::Job(_) => jobs.push(book),
            BookId::Sheet(_) => sheets.push(Sheet::fold(&book)),
            _ => {}
        }
    }
    for book in &jobs {
        for sheet in &sheets {
            let (job, tin) = (Job::fold(book), Tin::default());
            let seen = setup(&job, sheet, &tin, Shown::default());
            assert!(!seen.next.words().is_empty());
            record(&job, sheet, None, Shown::default());
            csv([(book, sheet)], 0);
            text([(book, sheet)], 0);
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn any_bytes_are_taken_or_refused(bytes in proptest::collection::vec(any::<u8>(), 0..3000)) {
        used(&bytes);
        used(&[ENTRY.as_bytes(), b"\n", &bytes].concat());
    }

    #[test]
    fn a_backup_with_changed_bytes_is_taken_or_refused(
        changes in proptest::collection::vec((any::<prop::sample::Index>(), any::<u8>()), 1..9),
    ) {
        let mut file = backup(&demo(), &[photo("p1")]).into_bytes();
        for (at, byte) in changes {
            let at = at.index(file.len());
            file[at] = byte;
        }
        used(&file);
    }
}
