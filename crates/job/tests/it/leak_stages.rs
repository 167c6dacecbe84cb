//! The leak stages of a unit sheet, typed as a manual gives them, and a leak test opened in a job of
//! that sheet. The numbers are invented; 1 psi = 6.894757 kPa (scipy.constants 1.17.1).

use job::files::Card;
use job::instrument::{At, Instrument, Values, instrument};
use job::*;
use measure::Unit;

use crate::bench::{Bench, TEN};
use crate::instruments::values;
use crate::unit;

fn leak(stage: LeakStage, part: LeakPart) -> Field {
    stage.field(part)
}

/// What a sheet says: low and working in kPa, no vacuum.
fn stages() -> Vec<(Field, &'static str)> {
    use LeakPart::*;
    use LeakStage::*;
    vec![
        (leak(Low, Limit), "90"),
        (leak(Low, Pressure), "25"),
        (leak(Low, Time), "5"),
        (leak(Low, MostLost), "3"),
        (leak(Working, Limit), "90"),
        (leak(Working, Pressure), "12,0 psi"),
        (leak(Working, Time), "600 s"),
        (leak(Working, MostLost), "7"),
        (leak(Vacuum, Because), "one-way input seal."),
        (Field::LeakSource, "own manual, p. 40"),
    ]
}

fn sheet() -> Sheet {
    unit::bench("b", &stages(), &[]).state().1
}

fn refused(sheet: &Sheet, field: Field, text: &str) -> String {
    type_in(sheet, field, text, Unit::Kilopascal).unwrap_err().to_string()
}

#[test]
fn a_sheet_is_as_complete_with_them_as_without() {
    let (with, without) = (sheet(), unit::bench("b", &[], &[]).state().1);
    assert_eq!(with.to_do(), without.to_do());
    assert_eq!(with.typed(), without.typed());
    assert_eq!(with.checks(), without.checks());
    assert_eq!(without.part(Group::Leak), PartState::Empty);
    assert_eq!(with.part(Group::Leak), PartState::Typed);
    // A stage that is begun lacks the rest.
    let begun = [(leak(LeakStage::Low, LeakPart::Limit), "90")];
    assert_eq!(unit::bench("b", &begun, &[]).state().1.part(Group::Leak), PartState::Partly);
    for layout in ["a", "b", "c", "d", "e"] {
        let sheet = unit::bench(layout, &stages(), &[]).state().1;
        assert_eq!(sheet.no_leak_stage(LeakStage::Vacuum), Some("one-way input seal."), "{layout}");
    }
}

#[test]
fn what_cannot_be_is_refused_with_what_to_do() {
    use LeakPart::*;
    use LeakStage::*;
    let sheet = sheet();
    assert_eq!(
        refused(&sheet, leak(Low, Pressure), "95"),
        "Test pressure 95 kPa, never beyond 90 kPa: the test goes beyond its own limit. Read the page \
         again."
    );
    // The limit typed later is as wrong. 12 psi are 82.7 kPa, 13.1 psi are 90.3 kPa.
    assert!(
        refused(&sheet, leak(Working, Limit), "82").contains("pressure 12,0 psi, never beyond")
    );
    assert!(
        refused(&sheet, leak(Working, Pressure), "13.1 psi").starts_with("Test pressure 13.1 psi")
    );
    assert!(type_in(&sheet, leak(Working, Pressure), "13.0 psi", Unit::Kilopascal).is_ok());
    assert_eq!(
        refused(&sheet, leak(Low, MostLost), "25"),
        "25 kPa may be lost of 25 kPa: expected less than the test pressure. Read the page again."
    );
    assert_eq!(
        refused(&sheet, leak(Low, Time), "0"),
        "0 is not above zero. This field takes more than zero."
    );
    assert!(refused(&sheet, leak(Low, Time), "10 kPa").starts_with("kPa is a pressure."));
    assert!(refused(&sheet, leak(Low, Limit), "5 min").starts_with("min is a time."));
    assert!(refused(&sheet, leak(Low, Limit), "-5").starts_with("-5 is not above zero."));
    assert_eq!(
        refused(&sheet, leak(Low, Limit), "80000"),
        "80000 kPa is over 1000 kPa. Read the page again, like 80 kPa."
    );
    assert_eq!(
        refused(&sheet, leak(Low, Time), "25 h"),
        "25 h is longer than a day. Read the page again, like 10 min."
    );
    let both =
        "This stage has numbers and a reason for having none. Clear the numbers, or the reason.";
    assert_eq!(refused(&sheet, leak(Low, Because), "no fitting"), both);
    assert_eq!(refused(&sheet, leak(Vacuum, Limit), "60"), both);
    // Typed together, both are judged at once, and nothing is stored.
    let typed = [
        (leak(Vacuum, Limit), "60", Unit::Kilopascal),
        (leak(Vacuum, Pressure), "20 inHg", Unit::Kilopascal),
    ];
    let refusals = read_fields(&Sheet::default(), &typed).unwrap_err();
    assert_eq!(refusals.len(), 1);
    assert_eq!(refusals[0].0, leak(Vacuum, Pressure));
}

#[test]
fn the_book_admits_what_the_field_takes_and_nothing_else() {
    let mut bench = unit::bench("b", &[], &[]);
    let mut write = |field, value| {
        let id = bench.sheet.id().clone();
        bench.record(vec![(id, Fact::FieldTyped { field, value })])
    };
    let limit = leak(LeakStage::Low, LeakPart::Limit);
    let number = |text: &str, unit| {
        FieldValue::Number(measure::Typed::parse(text, unit, measure::Sign::Any).unwrap())
    };
    assert!(write(limit, number("25", Unit::Millimetre)).is_err());
    assert!(write(limit, number("-25", Unit::Kilopascal)).is_err());
    assert!(write(leak(LeakStage::Low, LeakPart::Time), number("5", Unit::Kilopascal)).is_err());
    assert!(write(limit, FieldValue::Word("much".into())).is_err());
    assert!(write(limit, number("0.9", Unit::Bar)).is_ok());
}

#[test]
fn they_go_with_the_code_of_the_sheet() {
    let bench = unit::bench("b", &stages(), &[]);
    let card = Card::of(&bench.sheet);
    let stamp = Stamp { device: "tablet".into(), at: TEN, act: "card".into() };
    let id = BookId::Sheet("new".into());
    let came = Sheet::fold(&Card::from_text(card.text()).book(id, &stamp).unwrap());
    for (field, _) in stages() {
        assert_eq!(came.value(field), bench.state().1.value(field), "{}", field.id());
    }
    // A whole sheet with every stage of it still fits a code that a phone reads.
    let mut full = Bench::demo();
    full.type_fields(&stages());
    assert!(Card::of(&full.sheet).code("https://shimwright.example/bring-in#sheet=").is_ok());
}

/// The form of a leak test, as the screen keeps it.
struct Form {
    leak: &'static Instrument,
    sheet: Sheet,
    values: Values,
}

impl Form {
    fn new(sheet: Sheet) -> Form {
        Form { leak: instrument("leak").unwrap(), sheet, values: Values::new() }
    }

    /// Types into a field; what follows from it stands in the form too.
    fn types(&mut self, field: &str, text: &str) {
        let before = self.values.clone();
        self.values.extend(values(&[(field, &[text])]));
        let shown = Shown::default();
        for (id, text) in self.leak.follows(field, &before, &self.values, &self.sheet, shown) {
            self.values.insert(id.to_owned(), vec![text]);
        }
    }

    fn reads<const N: usize>(&self, fields: [&str; N]) -> [String; N] {
        fields.map(|field| self.values.get(field).map(|it| it[0].clone()).unwrap_or_default())
    }

    fn otherwise(&self, field: &str) -> Option<String> {
        let asked = self.leak.fields.iter().find(|asked| asked.id == field).unwrap();
        self.leak.otherwise(asked, &self.values, &self.sheet, Shown::default())
    }

    fn asks(&self, field: &str) -> bool {
        let asked = self.leak.fields.iter().find(|asked| asked.id == field).unwrap();
        self.leak.asks(asked, &self.values)
    }
}

const PLAN: [&str; 5] = ["limit", "pressure", "time", "most-lost", "source"];

#[test]
fn a_stage_that_is_chosen_brings_what_the_sheet_asks_and_says_where_it_is_from() {
    let mut form = Form::new(sheet());
    form.types("stage", "low");
    assert_eq!(
        form.reads(PLAN),
        ["90 kPa", "25 kPa", "5 min", "3 kPa", "unit sheet, own manual, p. 40"]
    );
    assert!(form.asks("source"));
    // Another stage takes the place of the one before; what was typed stays.
    form.types("time", "7");
    assert_eq!(form.reads(["source"]), [""]);
    form.types("stage", "working");
    assert_eq!(form.reads(PLAN), ["90 kPa", "12,0 psi", "7", "7 kPa", ""]);
    assert_eq!(form.otherwise("time").as_deref(), Some("The unit sheet says 600 s."));
    assert_eq!(form.otherwise("pressure"), None);
    // 10 min are 600 s: it is the sheet's again.
    form.types("time", "10");
    assert_eq!(form.reads(["source"]), ["unit sheet, own manual, p. 40"]);
    assert_eq!(form.otherwise("time"), None);
    // Where a person said where the numbers are from, that stands.
    form.types("source", "service letter");
    form.types("pressure", "80");
    assert_eq!(form.reads(["source", "pressure"]), ["service letter", "80"]);
    assert_eq!(form.otherwise("pressure").as_deref(), Some("The unit sheet says 12,0 psi."));
}

#[test]
fn what_stands_in_the_form_is_kept_as_typed_whatever_the_sheet_says_later() {
    let mut form = Form::new(sheet());
    form.types("stage", "working");
    let source = "unit sheet, own manual, p. 40";
    assert_eq!(form.leak.kept(&form.values, Shown::default()).unwrap()["source"], [source]);
    for (field, text) in [("most-lost", "5"), ("gauge", "82"), ("at", "0"), ("case", "20")] {
        form.types(field, text);
    }
    let kept = form.leak.kept(&form.values, Shown::default()).unwrap();
    let texts = |field: &str| kept.get(field).map(|texts| texts[0].as_str());
    assert_eq!(texts("pressure"), Some("12,0 psi"));
    assert_eq!((texts("most-lost"), texts("source")), (Some("5 kPa"), None));
}

#[test]
fn a_stage_the_unit_has_not_says_so_and_gives_its_reason() {
    let mut form = Form::new(sheet());
    form.types("stage", "vacuum");
    assert_eq!(form.reads(PLAN), [""; 5].map(str::to_owned));
    let says = "The unit sheet says that this unit has no such stage: one-way input seal.";
    assert_eq!(form.otherwise("stage").as_deref(), Some(says));
    form.types("stage", "not applicable");
    assert_eq!(form.reads(["because"]), ["vacuum: one-way input seal."]);
    let answer = form.leak.answer(&form.values, Shown::default()).unwrap();
    assert_eq!(answer.says, ["Not done: vacuum: one-way input seal."]);
    form.types("stage", "low");
    assert_eq!(form.reads(["because", "limit"]), ["", "90 kPa"]);
}

#[test]
fn under_the_words_of_the_stages_stands_what_the_sheet_asks() {
    let leak = instrument("leak").unwrap();
    let stage = leak.fields.iter().find(|asked| asked.id == "stage").unwrap();
    let (sheet, log) = (sheet(), Job::default().guide);
    let at = At { sheet: &sheet, log: &log, step: "" };
    let notes = leak.notes(stage, &Values::new(), Shown::default(), Some(at));
    assert_eq!(notes, ["25 kPa", "12,0 psi", "not on this unit", ""]);
}

#[test]
fn a_sheet_without_stages_and_a_check_alone_change_nothing() {
    let mut form = Form::new(unit::bench("b", &[], &[]).state().1);
    form.types("limit", "90");
    for stage in ["low", "vacuum", "not applicable"] {
        form.types("stage", stage);
        assert_eq!(form.reads(PLAN), ["90", "", "", "", ""]);
        assert_eq!(form.otherwise("stage"), None);
        assert!(!form.asks("source"));
    }
    let runout = instrument("runout").unwrap();
    let typed = values(&[("limit", &["0.1"])]);
    assert_eq!(runout.follows("limit", &Values::new(), &typed, &sheet(), Shown::default()), []);
}
