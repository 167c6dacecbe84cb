//! The owner's words and the invoice lines: from what was found and done, and nothing more.

use job::procedure::Scope;
use job::*;
use measure::{Mark, Unit};

use crate::guided::*;
use crate::record::done;

fn told(hand: &Hand) -> (Record, Owner, Vec<InvoiceLine>) {
    let (job, sheet, _) = hand.bench.state();
    let (plan, shown) = (hand.plan(), Shown::default());
    let record = record(&job, &sheet, Some(&plan), shown);
    let owner = owner(&job, &record, Some(&plan), shown);
    let invoice = invoice(&job, &record, Some(&plan), Shown::default());
    (record, owner, invoice)
}

fn chose(hand: &mut Hand, step: &str, label: &str, word: &str) {
    hand.capture(step, label, Capture::Chosen(vec![word.into()]));
}

#[test]
fn what_was_found_is_said_without_a_trade_word() {
    let mut hand = done();
    chose(&mut hand, "b04", "first liquid", "emulsion");
    chose(&mut hand, "b04", "metal on magnet", "slivers");
    chose(&mut hand, "b04a", "line or wire found", "no");
    chose(&mut hand, "b04a", "hub slipped", "no");
    hand.capture("b09", "anode left", readings(&["80", "60"], Unit::Percent));
    hand.capture("b08", "not covered", Capture::Text("Cracks inside the case.".into()));
    let owner = told(&hand).1;
    assert_eq!(
        owner.wrong,
        [
            "You told us: Whines ahead.",
            "The oil was milky: water had got in.",
            "There was metal in the oil.",
            "Worn out or damaged: the gears.",
        ]
    );
    assert!(owner.done.contains(&"We fitted new seals.".to_owned()), "{:?}", owner.done);
    assert!(owner.done.contains(&"We put air into it and turned the shafts: it holds.".to_owned()));
    assert!(owner.done.contains(&"We filled it with fresh oil.".to_owned()));
    assert!(owner.watch.contains(&"The anodes are at 60 %. Replace them at half.".to_owned()));
    let worn = "Still in use though worn: the main bearings. Have them looked at next time.";
    assert!(owner.watch.contains(&worn.to_owned()), "{:?}", owner.watch);
    assert_eq!(owner.next_check, "Have the oil looked at by 12 May 2026.");
    assert_eq!(owner.not_covered[0], "Cracks inside the case.");

    let text = owner.text().to_lowercase();
    for trade in [
        "lash",
        "shim",
        "pinion",
        "preload",
        "runout",
        "race",
        "carrier",
        "pack",
        "dog",
        "torque",
        "depth",
        "end play",
        "band",
        "propshaft",
        "driveshaft",
        "gauge",
        "rung",
        "lube",
        "b1",
    ] {
        let words = text.split(|letter: char| !letter.is_alphanumeric());
        assert!(!words.collect::<Vec<_>>().contains(&trade), "{trade} in: {text}");
    }
}

#[test]
fn nothing_is_said_to_be_done_that_was_not() {
    let mut hand = Hand::new(Scope::GearSet);
    hand.work_to("b05");
    let (_, owner, invoice) = told(&hand);
    assert_eq!(owner.done, [] as [String; 0]);
    assert_eq!(owner.cautions[0], "This job is not finished: do not run it.");
    let stages: Vec<&str> = invoice
        .iter()
        .filter(|line| line.kind == InvoiceKind::Time)
        .map(|line| line.what.as_str())
        .collect();
    assert_eq!(stages, ["Look"]);

    // What was left out is not on the invoice either, and the owner is told.
    hand.write(Guided::StepSkipped { step: "b05".into(), reason: "case holed".into() });
    let (_, owner, again) = told(&hand);
    assert_eq!(again, invoice);
    assert_eq!(
        owner.not_covered.last().unwrap(),
        "1 step was left out. The record says which, and why."
    );
}

#[test]
fn answers_that_are_put_in_plain_words_are_answers_of_the_procedures() {
    let mut hand = Hand::new(Scope::GearSet);
    for (label, word) in [
        ("first liquid", "water"),
        ("first liquid", "emulsion"),
        ("first liquid", "nothing"),
        ("metal on magnet", "hairs"),
        ("metal on magnet", "slivers"),
        ("metal on magnet", "chunks"),
        ("line or wire found", "yes"),
        ("hub slipped", "yes"),
        ("shift fault", "jumps out"),
        ("shift fault", "grinds"),
        ("shift fault", "no reverse"),
        ("shift fault", "no forward"),
    ] {
        let plan = hand.plan();
        let asked = plan.steps.iter().find_map(|step| Some((step, step.record(label)?))).unwrap();
        assert!(asked.1.choices.iter().any(|choice| choice.word == word), "{label}: {word}");
        let before = told(&hand).1.wrong;
        chose(&mut hand, &asked.0.id, label, word);
        assert_ne!(told(&hand).1.wrong, before, "{label}: {word}");
        let fine = asked.1.choices.iter().map(|choice| choice.word.as_str());
        let fine = fine.into_iter().find(|word| ["none", "no", "oil"].contains(word)).unwrap();
        chose(&mut hand, &asked.0.id, label, fine);
    }
}

#[test]
fn the_invoice_has_the_minutes_of_the_steps_done() {
    let hand = done();
    let (_, _, lines) = told(&hand);
    let plan = hand.plan();
    let minutes: measure::Decimal = lines
        .iter()
        .filter(|line| line.kind == InvoiceKind::Time)
        .filter_map(|line| line.quantity)
        .sum();
    assert_eq!(minutes, plan.minutes().into(), "every step was done");
    let says: Vec<String> = lines.iter().map(|line| line.says(Mark::Point)).collect();
    assert!(says.contains(&"Gears: rejected: two teeth".to_owned()), "{says:?}");
    assert!(says.contains(&"New seals".to_owned()));
    assert!(says.contains(&"Gear lube: 18 ml".to_owned()));
    // 18 ml are 0.609 US fluid ounces, which are 29.5735295625 ml each (NIST SP 811, appendix B.8,
    // from memory).
    let (job, sheet, _) = hand.bench.state();
    let units = Units::default().with(Unit::UsFluidOunce).with(Unit::Inch);
    let shown = Shown { units, mark: Mark::Comma, utc_offset: 0 };
    let ounces = invoice(&job, &record(&job, &sheet, Some(&plan), shown), Some(&plan), shown);
    let lube = ounces.iter().find(|line| line.what == "Gear lube").unwrap();
    assert_eq!(lube.says(shown.mark), "Gear lube: 0,6 US fl oz");
    let every = says.iter().collect::<std::collections::BTreeSet<_>>();
    assert_eq!(every.len(), says.len(), "each once");
}

#[test]
fn the_table_is_rfc_4180_and_no_cell_starts_a_formula() {
    let mut hand = done();
    hand.write(Guided::PartJudged {
        part: "=1+1".into(),
        verdict: PartVerdict::Reject,
        signs: Vec::new(),
        reason: "\"=cmd|' /C calc'!A0\", and more".into(),
        photo: None,
    });
    let (record, _, lines) = told(&hand);
    let table = invoice_csv(&record, &lines);
    assert!(table.starts_with("job,kind,what,quantity,unit,note\r\n1,time,Look,"));
    assert!(
        table.contains("1,part,'=1+1,,,\"rejected: \"\"=cmd|' /C calc'!A0\"\", and more\"\r\n"),
        "{table}"
    );
    assert_eq!(table.matches("\r\n").count(), lines.len() + 1);
    let text = invoice_text(&record, &lines, Mark::Point);
    assert!(text.starts_with("Job 1: Invented."), "{text}");
    assert!(text.trim_end().ends_with("No prices are in here."));
}
