//! The readings for a spreadsheet and as text.

use job::files::*;
use job::*;

use super::*;
use crate::bench::mm;

/// A reader of CSV by RFC 4180, nothing else.
fn read(table: &str) -> Vec<Vec<String>> {
    let (mut rows, mut row, mut field, mut quoted) = (vec![], vec![], String::new(), false);
    let mut letters = table.chars().peekable();
    while let Some(letter) = letters.next() {
        match letter {
            '"' if quoted && letters.peek() == Some(&'"') => field.extend(letters.next()),
            '"' => quoted = !quoted,
            ',' if !quoted => row.push(std::mem::take(&mut field)),
            '\r' if !quoted && letters.peek() == Some(&'\n') => {
                letters.next();
                row.push(std::mem::take(&mut field));
                rows.push(std::mem::take(&mut row));
            }
            _ => field.push(letter),
        }
    }
    assert!(!quoted && field.is_empty() && row.is_empty());
    rows
}

#[test]
fn every_value_has_its_line() {
    let [sheet, _, job] = demo();
    let rows = read(&csv([(&job, &Sheet::fold(&sheet))], 0));
    assert!(rows.iter().all(|row| row.len() == rows[0].len()));
    let folded = Job::fold(&job);
    let readings: usize = folded.readings.iter().map(|reading| reading.values.len()).sum();
    assert_eq!(rows.iter().filter(|row| row[6] == "reading").count(), readings);
    let first = rows.iter().find(|row| row[6] == "reading").unwrap();
    assert_eq!(first[..4], ["1", "Demo boat, invented", demo::UNIT, "2026-05-12 10:20"]);
}

#[test]
fn digits_below_zero_and_in_inches_are_numbers() {
    let opened = Fact::JobOpened {
        boat: "=HYPERLINK(\"x\")".into(),
        complaint: "".into(),
        sheet: "s".into(),
        number: 3,
    };
    let typed = |text, unit| measure::Typed::parse(text, unit, measure::Sign::Any).unwrap();
    let inch = measure::Unit::Inch;
    let reading = |check: Check, value: measure::Typed| Fact::ReadingTaken {
        check,
        values: vec![value; check.stops().len()],
        arm: None,
        on: None,
    };
    let play = reading(Check::END_PLAY, mm("-0.02"));
    let depth = reading(Check::Depth, typed("0,0250", inch));
    let book = Book::new(BookId::Job("j".into()));
    let stamp = Stamp { device: "d".into(), at: TEN, act: "a".into() };
    let book = book.clone().with(book.next(vec![opened, play, depth], &stamp).unwrap());
    let table = csv([(&book, &Sheet::default())], 120);
    assert!(table.contains("\"'=HYPERLINK(\"\"x\"\")\""), "{table}");
    assert!(table.contains(",-0.02,mm,-0.02,"), "{table}");
    assert!(table.contains(",0.0250,in,0.635"), "{table}");
    assert!(table.contains(",2026-05-12 12:00,"), "{table}");
    for row in read(&table).iter().skip(1) {
        for cell in row {
            let is_number = cell.parse::<measure::Decimal>().is_ok();
            assert!(is_number || !cell.starts_with(['=', '+', '-', '@', '\t', '\r']), "{cell}");
        }
    }
}

#[test]
fn the_text_says_each_entry_that_counts() {
    let [sheet, _, job] = demo();
    let page = text([(&job, &Sheet::fold(&sheet))], 0);
    assert!(page.starts_with(
        "Job 1: Demo boat, invented. Demo unit 14/21, invented. Opened 12 May 2026.\n"
    ));
    assert_eq!(page.lines().count(), Job::fold(&job).history.len() + 2);
}
