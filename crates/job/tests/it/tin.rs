//! The tin: counting, taking, putting back, refusing.

use job::*;
use measure::Unit;

use crate::bench::{Bench, dec, mm};

fn added(name: &str, places: [&str; 2], count: u32) -> Fact {
    Fact::ShimsAdded {
        shim: name.into(),
        family: "reverse".into(),
        places: places.map(mm),
        zero: mm("0.002"),
        marked: None,
        count,
    }
}

fn counted(name: &str, change: i32, why: Counted) -> Fact {
    Fact::ShimsCounted { shim: name.into(), change, why }
}

fn bench(facts: Vec<Fact>) -> Bench {
    let mut bench = Bench::new();
    bench.record(facts.into_iter().map(|fact| (BookId::Tin, fact)).collect()).unwrap();
    bench
}

#[test]
fn more_shims_than_are_in_the_tin() {
    let mut bench = bench(vec![added("a", ["0.500", "0.500"], 1)]);
    let refused = |bench: &mut Bench, change| {
        let fact = counted("a", change, Counted::Lost);
        bench.record(vec![(BookId::Tin, fact)]).unwrap_err().to_string()
    };
    assert_eq!(
        refused(&mut bench, -2),
        "2 of 0.498 asked for, 1 in the tin. Fit another, or count the tin."
    );
    bench.record(vec![(BookId::Tin, counted("a", -1, Counted::Lost))]).unwrap();
    assert_eq!(refused(&mut bench, -1), "No 0.498 left in the tin. Fit another, or count the tin.");
    let (.., tin) = bench.state();
    let out = counted("a", -1, Counted::Lost);
    assert_eq!(tin.says(&out, Shown::default()).as_deref(), Some("0.498: 1 out, 0 left"));
    assert_eq!((tin.count(), tin.rows("reverse").len()), (0, 1), "the empty line stays");
}

#[test]
fn a_pack_with_more_shims_than_the_tin_has_is_not_fitted_at_all() {
    let mut bench = Bench::demo();
    let (.., tin) = bench.state();
    let row = tin.rows("forward race").remove(0);
    let shim = tin.shim(&row.shim).unwrap().for_pack();
    let before = (bench.job.clone(), bench.tin.clone());
    let refused = bench.fit(&[(Slot::B2, vec![shim.clone(), shim])]).unwrap_err();
    assert_eq!(
        refused.to_string(),
        "2 of 0.300 asked for, 1 in the tin. Fit another, or count the tin."
    );
    assert_eq!((bench.job.clone(), bench.tin.clone()), before);
}

#[test]
fn an_uneven_shim_is_not_offered() {
    let texts = ShimTexts { places: ["0.203", "0.218"], zero: "0.003", marked: "" };
    let preview = shim_preview(texts, Unit::Millimetre, ("a", "reverse", 1), Shown::default());
    assert_eq!(
        preview.says,
        "Uneven: 0.203 mm and 0.218 mm differ by 0.015 mm. Measure again, or reject it."
    );
    assert_eq!((preview.words.as_str(), preview.fact), ("Measure it again", None));
    // 0.010 apart is still even; written down by another version, 0.011 is kept and not offered.
    let bench =
        bench(vec![added("even", ["0.200", "0.210"], 1), added("uneven", ["0.200", "0.211"], 1)]);
    let (.., tin) = bench.state();
    assert_eq!(tin.stock().len(), 1);
    assert_eq!(tin.stock()[0].thickness, dec("0.203"));
    let rows = tin.rows("reverse");
    assert!(rows.iter().any(|row| row.not_offered.is_some()));
}

#[test]
fn the_form_says_what_is_next() {
    let words = |one, other, zero, count| {
        let texts = ShimTexts { places: [one, other], zero, marked: "" };
        let to = ("a", "reverse", count);
        shim_preview(texts, Unit::Millimetre, to, Shown::default()).words
    };
    assert_eq!(words("", "", "0.002", 1), "Measure place 1");
    assert_eq!(words("0.152", "0,1,5", "0.002", 1), "Measure place 2 again");
    assert_eq!(words("0.152", "0.154", "", 1), "Type the zero");
    assert_eq!(words("0.152", "0.154", "0.002", 1), "Put 0.151 in the tin");
    assert_eq!(words("0.152", "0.154", "0.002", 3), "Put 3 of 0.151 in the tin");
    assert_eq!(words("0.152", "0.154", "-0.001", 1), "Put 0.154 in the tin");
    assert_eq!(words("0.001", "0.001", "0.002", 1), "Measure it again");
}

#[test]
fn a_rejected_shim_stays_out_of_the_packs() {
    let mut bench = bench(vec![added("a", ["0.500", "0.500"], 2)]);
    let why = "burr".to_owned();
    bench.record(vec![(BookId::Tin, Fact::ShimRejected { shim: "a".into(), why })]).unwrap();
    let (.., tin) = bench.state();
    assert!(tin.stock().is_empty());
    assert_eq!(tin.rows("reverse")[0].not_offered.as_deref(), Some("Rejected: burr."));
    assert_eq!(tin.count(), 2);
}

#[test]
fn a_shim_keeps_its_name_and_cannot_vanish_from_a_case() {
    let mut bench = Bench::demo();
    bench.fit_advice();
    let twice = bench.tin.entries().find_map(|entry| match &entry.fact {
        fact @ Fact::ShimsAdded { .. } => Some(fact.clone()),
        _ => None,
    });
    let refused = bench.record(vec![(BookId::Tin, twice.unwrap())]).unwrap_err();
    assert_eq!(refused.to_string(), "That shim is in the tin already. Count it up instead.");
    let taken = bench.tin.entries().find_map(|entry| match &entry.fact {
        Fact::ShimsCounted { shim, .. } => Some(shim.clone()),
        _ => None,
    });
    let added = bench.tin.entries().find(|entry| {
        matches!(&entry.fact, Fact::ShimsAdded { shim, .. } if Some(shim) == taken.as_ref())
    });
    let entry = added.unwrap().id.clone();
    let gone = Fact::EntryRetracted { entry, why: "slip".into() };
    let refused = bench.record(vec![(BookId::Tin, gone)]).unwrap_err();
    assert_eq!(
        refused.to_string(),
        "Some of these shims are in a case. Take them out of the case first."
    );
}

#[test]
fn two_devices_took_the_last_shim_and_nothing_breaks() {
    let bench = bench(vec![added("a", ["0.500", "0.500"], 1)]);
    let take = |device: &str| {
        let stamp = Stamp { device: device.into(), at: bench.at, act: format!("act-{device}") };
        let why = Counted::Taken { job: "j".into() };
        let entries = bench.tin.next(vec![counted("a", -1, why)], &stamp).unwrap();
        bench.tin.clone().with(entries)
    };
    let both = take("one").merge(&take("other"));
    let tin = Tin::fold(&both);
    assert_eq!(tin.count(), 0);
    assert_eq!(tin.shim("a").unwrap().count, -1);
    assert!(tin.stock().is_empty());
}

#[test]
fn invented_shims_and_measured_ones_stay_apart() {
    let mut bench = Bench::demo();
    let practice = bench.setup().advice;
    // A real shim that would be perfect for the practice unit's B1.
    let real = Fact::ShimsAdded {
        shim: "real".into(),
        family: "driveshaft".into(),
        places: ["0.167", "0.167"].map(mm),
        zero: mm("0.003"),
        marked: None,
        count: 1,
    };
    bench.record(vec![(BookId::Tin, real)]).unwrap();
    assert_eq!(bench.setup().advice, practice);
    // The same unit on a sheet of its own is offered the real shim and nothing invented.
    let opened = Fact::SheetOpened { name: "Own unit".into(), layout: "b".into() };
    let stamp = Stamp { device: "d".into(), at: 0, act: "own".into() };
    let mut own = Book::new(BookId::Sheet("own".into()));
    own = own.clone().with(own.next(vec![opened], &stamp).unwrap());
    let typed = bench.sheet.live().into_iter().skip(1).map(|entry| entry.fact.clone()).collect();
    let stamp = Stamp { act: "own2".into(), ..stamp };
    bench.sheet = own.clone().with(own.next(typed, &stamp).unwrap());
    let advice = bench.setup().advice;
    let put: Vec<String> =
        advice.packs.iter().flat_map(|pack| &pack.put_in).map(ToString::to_string).collect();
    assert_eq!(put, ["0.16400"]);
    assert_eq!(bench.state().2.last_zero().unwrap().text(), "0.003");
    assert_eq!(bench.state().2.invented(), 12);
}

#[test]
fn the_demo_is_admitted_whole() {
    let bench = Bench::demo();
    let (job, sheet, tin) = bench.state();
    assert_eq!(tin.count(), 12);
    assert_eq!((job.found.len(), job.readings.len()), (3, 3));
    assert!(sheet.name.ends_with("invented"));
    assert_eq!(sheet.to_do(), []);
    assert_eq!(bench.setup().cautions, [] as [String; 0]);
    assert_eq!(bench.setup().advice.status, AdviceStatus::Fit);
}

#[test]
fn invented_shims_are_told_from_measured_ones() {
    let demo = demo::books(0);
    assert_eq!(Tin::fold(&demo.tin).invented(), 12);
    let bench = bench(vec![added("a", ["0.500", "0.500"], 3)]);
    assert_eq!(bench.state().2.invented(), 0);
}
