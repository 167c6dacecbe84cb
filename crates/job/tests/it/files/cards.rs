//! A unit sheet as a code.

use job::files::*;
use job::*;

use super::*;

fn stamp() -> Stamp {
    Stamp { device: "tablet".into(), at: TEN, act: "card".into() }
}

fn fact(text: &str) -> Result<Vec<Fact>, String> {
    Card::from_text(text).facts().map_err(|why| why.to_string())
}

#[test]
fn a_sheet_comes_back_from_its_card_as_it_stands() {
    let [sheet, ..] = demo();
    let card = Card::of(&sheet);
    let id = BookId::Sheet("new".into());
    let came = Card::from_text(card.text()).book(id, &stamp()).unwrap();
    let (ours, theirs) = (Sheet::fold(&sheet), Sheet::fold(&came));
    assert_eq!((&ours.name, &ours.layout), (&theirs.name, &theirs.layout));
    assert_eq!(ours.positions(), theirs.positions());
    for facts in ours.fields() {
        assert_eq!(ours.value(facts.field), theirs.value(facts.field), "{}", facts.id);
    }
    assert_eq!(Card::of(&came), card);
}

#[test]
fn a_usual_sheet_fits_a_code() {
    let [sheet, ..] = demo();
    let address = "https://shimwright.example/bring-in#sheet=";
    let code = Card::of(&sheet).code(address).unwrap();
    assert!(code.len() <= 117, "{}", code.len());
    assert!(code.iter().all(|row| row.len() == code.len()));
    // ISO/IEC 18004: a finder of seven dark squares in three corners; a light one beside it.
    let last = code.len() - 7;
    for (x, y) in [(0, 0), (last, 0), (0, last)] {
        assert!((0..7).all(|at| code[y][x + at] && code[y + at][x]), "{x} {y}");
    }
    assert!(!code[7][0]);
}

/// Read by `rqrr`, a reader that shares nothing with the writer: three dots a square, as a camera
/// would see it, with the light edge that ISO/IEC 18004 asks for, four squares wide.
#[test]
fn another_reader_gets_the_address_out_of_the_code() {
    const DOTS: usize = 3;
    const EDGE: usize = 4;
    let [sheet, ..] = demo();
    let address = "https://shimwright.example/bring-in#sheet=";
    let card = Card::of(&sheet);
    let code = card.code(address).unwrap();
    let size = (code.len() + 2 * EDGE) * DOTS;
    let dark = |at: usize| (at / DOTS).checked_sub(EDGE);
    let is_dark = |x, y| Some(*code.get(dark(y)?)?.get(dark(x)?)?);
    let mut seen = rqrr::PreparedImage::prepare_from_greyscale(size, size, |x, y| {
        if is_dark(x, y) == Some(true) { 20 } else { 235 }
    });
    let grids = seen.detect_grids();
    assert_eq!(grids.len(), 1);
    let (_, read) = grids[0].decode().unwrap();
    assert_eq!(read, format!("{address}{}", card.text()));
}

#[test]
fn a_sheet_that_does_not_fit_says_what_to_do() {
    let [sheet, ..] = demo();
    let source = FieldValue::Word("from a manual ".repeat(120));
    let long = Fact::FieldTyped { field: Field::Source(Check::Depth), value: source };
    let sheet = sheet.clone().with(sheet.next(vec![long], &stamp()).unwrap());
    let refused = Card::of(&sheet).code("").unwrap_err().to_string();
    assert!(
        refused.ends_with("a code that a phone can read holds 1273. Send it as a file instead.")
    );
}

#[test]
fn what_a_person_typed_goes_through_whatever_it_is() {
    let name = "1&b=c%41 ä \u{202e} <b>";
    let opened = Fact::SheetOpened { name: name.into(), layout: "b".into() };
    let word = FieldValue::Word("a=b&c#d".into());
    let typed = Fact::FieldTyped { field: Field::Source(Check::Depth), value: word };
    let book = Book::new(BookId::Sheet("s".into()));
    let book = book.clone().with(book.next(vec![opened.clone(), typed.clone()], &stamp()).unwrap());
    let card = Card::of(&book);
    assert!(card.text().bytes().all(|byte| byte.is_ascii_graphic()), "{}", card.text());
    assert_eq!(card.facts().unwrap(), [opened, typed]);
}

#[test]
fn what_is_no_card_is_refused_with_its_part() {
    for text in [
        "",
        "2&b&x",
        "1&b",
        "1",
        "%",
        "1&b&x&forward-low=0.20",
        "1&b&x&@B9=",
        "1&b&x&shape=round",
        "1&b&x&pinion-teeth=many",
        "1&b&%FF",
    ] {
        let refused = fact(text).unwrap_err();
        assert!(refused.ends_with("or have the sheet sent as a file."), "{text}: {refused}");
    }
    // Read, but not admitted.
    let book = |text| Card::from_text(text).book(BookId::Sheet("n".into()), &stamp());
    for text in
        ["1&z&x", "1&b&", "1&b&x&forward-low=-0.20mm", "1&b&x&forward-low=0.5mm&forward-high=0.2mm"]
    {
        assert!(matches!(book(text), Err(CardRefused::NotAdmitted(_))), "{text}");
    }
}
