//! Undo takes back an act in every book it touched, and leaves no trace in the state.

use job::*;

use crate::bench::Bench;

fn undone(bench: &mut Bench) -> usize {
    let facts = undo(&bench.job, [&bench.tin, &bench.sheet]);
    let count = facts.len();
    bench.record(facts).unwrap();
    count
}

#[test]
fn a_fit_is_undone_in_job_and_tin_together() {
    let mut bench = Bench::demo();
    let before = bench.state();
    bench.fit_advice();
    assert_ne!(bench.state().2, before.2);
    let count = undone(&mut bench);
    // Two packs, each with a shim out and a shim in.
    assert_eq!(count, 6);
    let after = bench.state();
    assert_eq!(after.0.fits, before.0.fits);
    assert_eq!(after.0.readings, before.0.readings);
    assert_eq!(after.2, before.2);
}

#[test]
fn undo_goes_further_back_each_time_and_ends_at_the_opening() {
    let mut bench = Bench::demo();
    // Three series, then the three packs as one act; the opening of the job stays.
    assert_eq!([0; 5].map(|_| undone(&mut bench)), [1, 1, 1, 3, 0]);
    let (job, ..) = bench.state();
    assert!(job.is_open() && job.readings.is_empty() && job.found.is_empty());
    assert_eq!(bench.job.live().len(), 1);
    assert_eq!(bench.job.entries().count(), 13, "both stay in the history");
}

#[test]
fn what_is_taken_back_cannot_be_taken_back_again() {
    let mut bench = Bench::demo();
    let last = bench.job.live().last().unwrap().id.clone();
    let gone = |entry: &str| Fact::EntryRetracted { entry: entry.into(), why: "slip".into() };
    let id = bench.job.id().clone();
    bench.record(vec![(id.clone(), gone(&last))]).unwrap();
    for entry in [last.as_str(), "demo2.0", "nothing"] {
        let refused = bench.record(vec![(id.clone(), gone(entry))]).unwrap_err();
        assert_eq!(refused.to_string(), "That entry cannot be taken back. Write a new one.");
    }
}
