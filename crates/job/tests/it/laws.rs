//! Laws of books and folds.

use job::*;
use proptest::prelude::*;

use crate::bench::{Bench, mm};

const CHECKS: [Check; 4] = [Check::Depth, Check::FORWARD, Check::REVERSE, Check::END_PLAY];
const SLOTS: [Slot; 4] = [Slot::B1, Slot::B2, Slot::B3, Slot::B4];

/// A short act in one of the books; many are refused, which is part of the test.
fn act() -> impl Strategy<Value = Vec<(BookId, Fact)>> {
    let job = || BookId::Job("demo-job".into());
    let sheet = || BookId::Sheet("invented-demo-sheet".into());
    let reading = (0usize..4, 10u32..90).prop_map(move |(check, hundredths)| {
        let check = CHECKS[check];
        let value = mm(&format!("0.{hundredths}"));
        let values = vec![value; check.stops().len()];
        let (arm, on) = (Some(mm("30.0")), Some(ArmShaft::Driveshaft));
        vec![(job(), Fact::ReadingTaken { check, values, arm, on })]
    });
    let pack = (0usize..4, 10u32..99, any::<bool>()).prop_map(move |(slot, net, as_found)| {
        let shims = vec![FittedShim::Measured(mm(&format!("0.{net}")))];
        vec![(job(), Fact::PackFitted { slot: SLOTS[slot], shims, as_found })]
    });
    let count = (1u32..13, -2i32..3).prop_map(|(shim, change)| {
        let why = if change < 0 { Counted::Lost } else { Counted::Found };
        vec![(
            BookId::Tin,
            Fact::ShimsCounted { shim: format!("invented-shim-{shim}"), change, why },
        )]
    });
    let field = (10u32..80).prop_map(move |low| {
        let value = FieldValue::Number(mm(&format!("0.{low}")));
        vec![(sheet(), Fact::FieldTyped { field: Field::Low(Check::FORWARD), value })]
    });
    let retract = (0usize..7).prop_map(move |act| {
        let entry = format!("demo{act}.0");
        vec![(job(), Fact::EntryRetracted { entry, why: "slip".into() })]
    });
    let guided = guided().prop_map(move |fact| {
        let book = match fact {
            Guided::ToolKept { .. } => BookId::Drawer,
            Guided::StepDropped { .. } => sheet(),
            _ => job(),
        };
        vec![(book, Fact::from(fact))]
    });
    prop_oneof![4 => reading, 3 => pack, 2 => count, 1 => field, 1 => retract, 4 => guided]
}

/// Something of the guided job.
fn guided() -> impl Strategy<Value = Guided> {
    let step = || (1u32..6).prop_map(|step| format!("b0{step}"));
    prop_oneof![
        step().prop_map(|step| Guided::StepDone { step }),
        step().prop_map(|step| Guided::StepSkipped { step, reason: "none".into() }),
        step().prop_map(|step| Guided::StepReopened { step, reason: "slip".into() }),
        (step(), 1u32..20).prop_map(|(step, count)| Guided::Captured {
            step,
            label: "pinion rollers out".into(),
            value: Capture::Readings(vec![mm(&count.to_string())]),
        }),
        (step(), 1u32..90).prop_map(|(step, end)| Guided::ClockStarted {
            clock: format!("c{end}"),
            step,
            label: "cooling from".into(),
            marks: vec![end],
        }),
        (1u32..9, step()).prop_map(|(number, step)| Guided::PartBagged {
            number,
            part: format!("part-{number}"),
            step,
            place: "bag 1".into(),
            facing: String::new(),
            photo: None,
        }),
        (1u32..9).prop_map(|number| Guided::PartFitted { number }),
        step().prop_map(|step| Guided::StepDropped { step, reason: "not here".into() }),
        (1u32..9).prop_map(|tool| Guided::ToolKept {
            tool: format!("t{tool}"),
            name: "rule".into(),
            number: String::new(),
        }),
    ]
}

fn played(acts: &[Vec<(BookId, Fact)>]) -> Bench {
    let mut bench = Bench::demo();
    for act in acts {
        // Refused acts leave the books as they were.
        drop(bench.record(act.clone()));
    }
    bench
}

/// The books of a device that wrote its own acts after the demo.
fn device(name: &str, acts: &[Vec<(BookId, Fact)>]) -> Book {
    let mut book = Bench::demo().job;
    for (number, act) in acts.iter().enumerate() {
        let facts = act.iter().filter(|(id, _)| id == book.id()).map(|(_, fact)| fact.clone());
        let stamp = Stamp { device: name.into(), at: 0, act: format!("{name}{number}") };
        if let Ok(entries) = book.next(facts.collect(), &stamp) {
            book = book.with(entries);
        }
    }
    book
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]

    #[test]
    fn folding_a_prefix_and_then_the_rest_is_folding_the_whole(
        acts in proptest::collection::vec(act(), 0..12),
        cut in 0usize..40,
    ) {
        let bench = played(&acts);
        for whole in [&bench.job, &bench.tin, &bench.sheet, &bench.drawer] {
            let lines: Vec<&str> = whole.lines().collect();
            let (prefix, rest) = lines.split_at(cut.min(lines.len()));
            let mut book = Book::from_lines(whole.id().clone(), prefix.iter().copied());
            // Folding in between changes nothing.
            let _between = (Job::fold(&book), Tin::fold(&book), Sheet::fold(&book));
            book = book.merge(&Book::from_lines(whole.id().clone(), rest.iter().copied()));
            prop_assert_eq!(&book, whole);
            prop_assert_eq!(Job::fold(&book), Job::fold(whole));
            prop_assert_eq!(Tin::fold(&book), Tin::fold(whole));
            prop_assert_eq!(Sheet::fold(&book), Sheet::fold(whole));
            prop_assert_eq!(Drawer::fold(&book), Drawer::fold(whole));
        }
    }

    #[test]
    fn union_is_associative_commutative_and_idempotent(
        a in proptest::collection::vec(act(), 0..6),
        b in proptest::collection::vec(act(), 0..6),
        c in proptest::collection::vec(act(), 0..6),
    ) {
        let (a, b, c) = (device("a", &a), device("b", &b), device("c", &c));
        let ab = a.clone().merge(&b);
        prop_assert_eq!(&ab.clone().merge(&c), &a.clone().merge(&b.clone().merge(&c)));
        prop_assert_eq!(&ab, &b.clone().merge(&a));
        prop_assert_eq!(&a.clone().merge(&a), &a);
        prop_assert_eq!(&ab.clone().merge(&b), &ab);
        prop_assert!(ab.entries().count() >= a.entries().count());
    }

    #[test]
    fn lines_in_any_order_make_the_same_book(
        acts in proptest::collection::vec(act(), 0..8),
        by in 0usize..20,
    ) {
        let book = device("a", &acts);
        let mut lines: Vec<String> = book.lines().map(str::to_owned).collect();
        let len = lines.len();
        lines.rotate_left(by % len);
        lines.reverse();
        let read = Book::from_lines(book.id().clone(), lines.iter().map(String::as_str));
        prop_assert_eq!(read, book);
    }

    #[test]
    fn a_retraction_leaves_no_trace_in_the_state(
        acts in proptest::collection::vec(act(), 0..8),
        last in act(),
    ) {
        let mut bench = played(&acts);
        let before = bench.state();
        if bench.record(last.clone()).is_err() {
            return Ok(());
        }
        if last.iter().any(|(_, fact)| matches!(fact, Fact::EntryRetracted { .. })) {
            return Ok(());
        }
        let facts = undo(
            match last[0].0 {
                BookId::Tin => &bench.tin,
                BookId::Drawer => &bench.drawer,
                BookId::Job(_) => &bench.job,
                BookId::Sheet(_) => &bench.sheet,
            },
            [&bench.job, &bench.tin, &bench.sheet, &bench.drawer],
        );
        bench.record(facts).unwrap();
        prop_assert_eq!(bench.state(), before);
    }

    #[test]
    fn what_every_screen_is_told_never_fails(acts in proptest::collection::vec(act(), 0..10)) {
        let bench = played(&acts);
        let (job, sheet, tin) = bench.state();
        let shown = Shown::default();
        let setup = setup(&job, &sheet, &tin, shown);
        prop_assert!(!setup.next.words().is_empty());
        prop_assert!(!record(&job, &sheet, None, shown).unit.is_empty());
        prop_assert!(setup.advice.status != AdviceStatus::CannotSay, "{}", setup.advice.says);
        for check in CHECKS {
            let preview = bench.preview(check, &["0.40"; 4]);
            prop_assert!(!preview.dock.words().is_empty());
        }
    }

    #[test]
    fn any_text_is_kept(line in "\\PC*") {
        prop_assert_eq!(Kept::from_line(&line).to_line(), line);
    }

    #[test]
    fn a_broken_line_is_kept_as_it_is(cut in 0usize..400, with in "\\PC{0,3}") {
        let line = Bench::demo().job.lines().next().unwrap().to_owned();
        let at = line.char_indices().map(|(at, _)| at).take_while(|at| *at <= cut).last().unwrap();
        let broken = format!("{}{with}{}", &line[..at], line.get(at + 1..).unwrap_or(""));
        let book = Book::from_lines(BookId::Job("demo-job".into()), [broken.as_str()]);
        prop_assert_eq!(book.lines().count(), 1);
        if book.unread() == 1 {
            prop_assert_eq!(book.lines().next(), Some(broken.as_str()));
        }
    }
}
