//! Invented units of any layout, for the tests.

use job::*;
use measure::Unit;

use crate::bench::{Bench, mm};

/// What was found in a case, and read on it.
pub struct Found<'a> {
    pub packs: &'a [(Slot, &'a [&'a str])],
    pub read: &'a [(Check, &'a [&'a str])],
}

/// A bench with a sheet, a filled tin and an opened job; each field typed in its own unit or mm.
pub fn bench(layout: &str, fields: &[(Field, &str)], tin: &[(&str, &str)]) -> Bench {
    let mut bench = Bench::new();
    let (sheet, job) = (bench.sheet.id().clone(), bench.job.id().clone());
    let opened = Fact::SheetOpened { name: "Invented unit".into(), layout: layout.into() };
    bench.record(vec![(sheet, opened)]).unwrap();
    bench.type_fields(fields);
    let shims = tin.iter().enumerate().map(|(number, (family, text))| {
        let fact = Fact::ShimsAdded {
            shim: format!("tin-{number}"),
            family: (*family).to_owned(),
            places: [mm(text), mm(text)],
            zero: mm("0"),
            marked: None,
            count: 1,
        };
        (BookId::Tin, fact)
    });
    bench.record(shims.collect()).unwrap();
    let (boat, complaint) = ("Invented".to_owned(), String::new());
    let opened = Fact::JobOpened { boat, complaint, sheet: "s".into(), number: 1 };
    bench.record(vec![(job, opened)]).unwrap();
    bench
}

pub fn choose(bench: &mut Bench, slot: Slot, position: Option<&str>) {
    let position = position.map(str::to_owned);
    let fact = Fact::VariantChosen { slot, position };
    bench.record(vec![(bench.sheet.id().clone(), fact)]).unwrap();
}

pub fn found(bench: &mut Bench, found: &Found) {
    let (job, ..) = bench.state();
    let packs = found.packs.iter().map(|(slot, texts)| record_found(&job, *slot, pack(texts)));
    bench.record(packs.collect()).unwrap();
    read(bench, found.read);
}

pub fn read(bench: &mut Bench, series: &[(Check, &[&str])]) {
    for (check, texts) in series {
        bench.read(*check, texts);
    }
}

pub fn pack(texts: &[&str]) -> Vec<FittedShim> {
    texts.iter().map(|text| FittedShim::Measured(mm(text))).collect()
}

/// "B2 lash-forward -0.919": every slope by the formula, to three places.
pub fn slopes(bench: &Bench) -> Vec<String> {
    let (_, sheet, _) = bench.state();
    let line = |(slot, check, slope): (Slot, Check, f64)| {
        format!("{} {} {slope:.3}", slot.tag(), check.id())
    };
    let mut slopes: Vec<String> = expected_slopes(&sheet).into_iter().map(line).collect();
    slopes.sort_unstable();
    slopes
}

/// Tags of the packs that the advice changes.
pub fn changed(bench: &Bench) -> Vec<&'static str> {
    let packs = bench.setup().advice.packs;
    let changed = packs.iter().filter(|pack| pack.act == PackAct::Fit);
    changed.map(|pack| pack.slot.tag()).collect()
}

/// Checks that are stale now.
pub fn stale(bench: &Bench) -> Vec<&'static str> {
    let is_stale = |view: &&CheckView| matches!(view.state, CheckState::Stale { .. });
    bench.setup().checks.iter().filter(is_stale).map(|view| view.check.id()).collect()
}

pub fn refused(bench: &Bench, field: Field, text: &str) -> String {
    let (_, sheet, _) = bench.state();
    type_in(&sheet, field, text, Unit::Millimetre).unwrap_err().to_string()
}
