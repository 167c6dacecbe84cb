//! What a file would change, shown before it is kept.

use job::files::*;
use job::*;

use super::*;
use crate::bench::mm;

fn fitted(slot: Slot, net: &str) -> Fact {
    Fact::PackFitted { slot, shims: vec![FittedShim::Measured(mm(net))], as_found: false }
}

/// The demo's job with a further act of a device.
fn with(book: &Book, device: &str, facts: &[Fact]) -> Book {
    let stamp =
        Stamp { device: device.into(), at: TEN, act: format!("{device}{}", book.lines().count()) };
    let entries = book.next(facts.to_vec(), &stamp).unwrap();
    book.clone().with(entries)
}

fn changes<'a>(from: &Book, ours: impl IntoIterator<Item = &'a Book>) -> Changes {
    let (parcel, _) = taken(backup([from], &[]).as_bytes()).unwrap();
    Changes::of(&parcel.coming, &here(ours))
}

#[test]
fn the_same_file_twice_changes_nothing() {
    let books = demo();
    let (parcel, _) = taken(backup(&books, &[]).as_bytes()).unwrap();
    let first = Changes::of(&parcel.coming, &here([]));
    assert_eq!(first.fresh.len(), books.iter().map(|book| book.lines().count()).sum::<usize>());
    let kinds: Vec<&str> = first.books.iter().map(|change| change.title.as_str()).collect();
    assert_eq!(kinds, ["Demo boat, invented", demo::UNIT, "Shim tin"]);
    let again = Changes::of(&parcel.coming, &here(&books));
    assert!(again.fresh.is_empty());
    assert!(again.books.iter().all(|change| change.adds == 0 && change.beside.is_empty()));
    let doubled = [&parcel.coming[..], &parcel.coming[..]].concat();
    assert_eq!(Changes::of(&doubled, &here([])).fresh.len(), first.fresh.len());
}

#[test]
fn lines_of_no_book_that_are_here_are_not_brought_in_again() {
    let strange = r#"{"v":9,"book":"shelf:x","n":1,"device":"z"}"#;
    let coming = vec![Coming::from_line(strange), Coming::from_line("not JSON")];
    let first = Changes::of(&coming, &here([]));
    assert_eq!((first.fresh.len(), first.unread, first.books.len()), (2, 2, 0));
    let kept = [
        ("shelf:x".to_owned(), vec![strange.to_owned()]),
        (String::new(), vec!["not JSON".to_owned()]),
    ];
    let again = Changes::of(&coming, &kept.into());
    assert_eq!((again.fresh.len(), again.unread), (0, 0));
}

/// What was written about the same thing of the guided job, one fact on each side.
#[test]
fn a_step_a_gate_a_bag_and_a_consent_are_judged_too() {
    let [_, _, start] = demo();
    let (step, reason) = (|| "b10a".to_owned(), || "no time".to_owned());
    let bagged = |part: &str| Guided::PartBagged {
        number: 7,
        part: part.to_owned(),
        step: step(),
        place: "tray".to_owned(),
        facing: String::new(),
        photo: None,
    };
    let judged = |passed| Guided::GateJudged {
        step: step(),
        passed,
        by: "A. N.".to_owned(),
        reason: reason(),
    };
    let checked = |typed: &str| Guided::BenchChecked {
        step: step(),
        place: "nose".to_owned(),
        kind: "leak".to_owned(),
        values: [("start".to_owned(), vec![typed.to_owned()])].into(),
    };
    for (ours, theirs, about) in [
        (
            Guided::StepDone { step: step() },
            Guided::StepSkipped { step: step(), reason: reason() },
            "how step b10a stands",
        ),
        (judged(true), judged(false), "the gate of step b10a"),
        (bagged("washer"), bagged("spring"), "what hangs at number 7"),
        (checked("50 kPa"), checked("60 kPa"), "Leak test, nose, step b10a"),
    ] {
        let ours = with(&start, "phone", &[ours.into()]);
        let theirs = with(&start, "tablet", &[theirs.into()]);
        let changes = changes(&theirs, [&ours]);
        let [pair] = &changes.books[0].beside[..] else { panic!("{about}") };
        assert_eq!((pair.about.as_str(), pair.agree()), (about, false));
        // What was judged holds whichever way round the copies are joined.
        let both = ours.clone().merge(&theirs);
        let judgement: Vec<Fact> =
            pair.judged(Stands::Ours).into_iter().map(|(_, fact)| fact).collect();
        let joined = with(&both, "phone", &judgement);
        assert_eq!(Job::fold(&joined), Job::fold(&theirs.clone().merge(&joined)));
    }
}

#[test]
fn what_was_written_on_both_sides_is_shown_to_be_judged() {
    let [_, _, start] = demo();
    let ours = with(&start, "phone", &[fitted(Slot::B2, "0.697")]);
    let theirs = with(&start, "tablet", &[fitted(Slot::B2, "0.648"), fitted(Slot::B3, "0.50")]);
    let changes = changes(&theirs, [&ours]);
    assert_eq!((changes.fresh.len(), changes.to_judge()), (2, 1));
    let [pair] = &changes.books[0].beside[..] else { panic!() };
    assert_eq!(pair.about, "B2 fitted");
    assert_eq!(pair.ours[0].device, "phone");
    assert_eq!(pair.theirs[0].device, "tablet");
    // The same counter: the later device's name stands, on either device.
    assert_eq!(pair.unjudged(), Stands::Theirs);
}

#[test]
fn the_side_that_was_chosen_stands_on_both_devices() {
    let [_, _, start] = demo();
    let ours = with(&start, "phone", &[fitted(Slot::B2, "0.697")]);
    let theirs = with(&start, "tablet", &[fitted(Slot::B2, "0.648")]);
    for (stands, net) in [(Stands::Ours, "0.697"), (Stands::Theirs, "0.648")] {
        let pair = changes(&theirs, [&ours]).books[0].beside[0].clone();
        let facts: Vec<Fact> = pair.judged(stands).into_iter().map(|(_, fact)| fact).collect();
        let both = with(&ours.clone().merge(&theirs), "phone", &facts);
        assert_eq!(Job::fold(&both).pack(Slot::B2).unwrap().total().to_string(), net);
        // Merged back, the other device says the same, and has nothing to judge.
        let back = changes_to(&both, &theirs);
        assert_eq!(back.to_judge(), 0);
        let there = theirs.clone().merge(&both);
        assert_eq!(there, both);
    }
}

fn changes_to(from: &Book, ours: &Book) -> Changes {
    changes(from, [ours])
}

#[test]
fn readings_that_say_the_same_need_no_judge() {
    let [_, _, start] = demo();
    let reading = |value| Fact::ReadingTaken {
        check: Check::Depth,
        values: vec![mm(value); Check::Depth.stops().len()],
        arm: None,
        on: None,
    };
    let ours = with(&start, "phone", &[reading("0.63")]);
    let same = changes(&with(&start, "tablet", &[reading("0.63")]), [&ours]);
    assert_eq!((same.books[0].beside.len(), same.to_judge()), (1, 0));
    let other = changes(&with(&start, "tablet", &[reading("0.66")]), [&ours]);
    assert_eq!(other.to_judge(), 1);
}

#[test]
fn what_one_side_took_back_is_not_to_be_judged() {
    let [_, _, start] = demo();
    let ours = with(&start, "phone", &[fitted(Slot::B2, "0.697")]);
    let wrong = with(&start, "tablet", &[fitted(Slot::B2, "0.648")]);
    let entry = wrong.entries().last().unwrap().id.clone();
    let theirs = with(&wrong, "tablet", &[Fact::EntryRetracted { entry, why: "slip".into() }]);
    assert_eq!(changes(&theirs, [&ours]).books[0].beside, []);
}

#[test]
fn an_older_self_brings_nothing_to_judge() {
    let [_, _, start] = demo();
    let now = with(&start, "phone", &[fitted(Slot::B2, "0.697")]);
    let old = changes(&start, [&now]);
    assert_eq!((old.fresh.len(), old.to_judge()), (0, 0));
}
