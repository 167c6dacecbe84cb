//! Finding a job among many, and putting one away.

use job::*;

use crate::bench::Bench;

/// 12 May 2026, 10:05 UTC, and two days later.
const DAYS: [i64; 2] = [1_778_580_300_000, 1_778_753_100_000];

fn heron() -> JobSummary {
    JobSummary {
        boat: "Grey Heron".to_owned(),
        number: 27,
        tags: vec!["Winter lay-up".to_owned(), "whine".to_owned()],
        opened_at: DAYS[0],
        last_at: DAYS[1],
        ..JobSummary::default()
    }
}

fn finds(typed: &str) -> bool {
    heron().has_words(typed, "Twin prop, invented", 0)
}

#[test]
fn a_job_is_found_by_boat_unit_number_tag_and_day() {
    for typed in [
        "",
        "  ",
        "heron",
        "GREY her",
        "twin",
        "27",
        "job 27",
        "lay-up",
        "whine heron",
        "12 May",
        "may 2026",
        "2026-05-12",
        "14 may",
        "2026-05-14",
    ] {
        assert!(finds(typed), "{typed}");
    }
}

#[test]
fn every_word_must_stand_somewhere_and_a_number_is_whole() {
    for typed in ["puffin", "heron puffin", "7", "job 2", "13 may", "2025", "2026-06"] {
        assert!(!finds(typed), "{typed}");
    }
}

#[test]
fn the_day_is_that_of_the_place() {
    let at_sea = |offset| heron().has_words("13 may", "", offset);
    assert!(!at_sea(0) && at_sea(14 * 60));
}

#[test]
fn tags_and_archive_are_on_the_back_of_the_job_and_are_undone() {
    let mut bench = Bench::demo();
    let book = bench.job.id().clone();
    let tag = |tagged| Fact::JobTagged { tag: "whine".to_owned(), tagged };
    let back = |bench: &Bench| {
        let job = Summary::of(&bench.job, &Folded::of(&bench.job)).job.unwrap();
        (job.tags.clone(), job.archived)
    };
    bench.record(vec![(book.clone(), tag(true))]).unwrap();
    bench.record(vec![(book.clone(), Fact::JobArchived { archived: true })]).unwrap();
    assert_eq!(back(&bench), (vec!["whine".to_owned()], true));
    bench.record(undo(&bench.job, [])).unwrap();
    assert_eq!(back(&bench), (vec!["whine".to_owned()], false));
    bench.record(vec![(book, tag(false))]).unwrap();
    assert_eq!(back(&bench), (vec![], false));
}

#[test]
fn a_tag_without_a_letter_and_no_photos_are_refused() {
    let mut bench = Bench::demo();
    let book = bench.job.id().clone();
    for fact in [
        Fact::JobTagged { tag: " ".to_owned(), tagged: true },
        Fact::PhotosFreed { photos: vec![], backup: 1 },
    ] {
        assert!(bench.record(vec![(book.clone(), fact)]).is_err());
    }
}

#[test]
fn photos_that_left_cannot_be_brought_back_by_undo() {
    let mut bench = Bench::demo();
    let book = bench.job.id().clone();
    let freed = Fact::PhotosFreed { photos: vec!["p1".to_owned()], backup: DAYS[0] };
    bench.record(vec![(book.clone(), freed)]).unwrap();
    let entry = bench.job.entries().last().unwrap().id.clone();
    assert!(undo(&bench.job, []).iter().all(|(_, fact)| !matches!(
        fact, Fact::EntryRetracted { entry: taken, .. } if *taken == entry)));
    let retracted = Fact::EntryRetracted { entry, why: "undo".to_owned() };
    assert_eq!(bench.record(vec![(book, retracted)]), Err(Refusal::NotRetractable));
}

#[test]
fn photos_leave_only_from_the_archive_and_after_a_backup_that_has_them() {
    let mut bench = Bench::demo();
    let book = bench.job.id().clone();
    let value = Capture::Photo("p1".to_owned());
    let photo = Guided::Captured { step: "b01".to_owned(), label: "it".to_owned(), value };
    bench.record(vec![(book.clone(), photo.into())]).unwrap();
    let taken = bench.job.entries().last().unwrap().at;
    let may = |bench: &Bench, backup| may_free_photos(&Job::fold(&bench.job), &bench.job, backup);
    assert_eq!(may(&bench, Some(taken + 1)), Err(PhotosStay::OnTheBench));
    bench.record(vec![(book.clone(), Fact::JobArchived { archived: true })]).unwrap();
    assert_eq!(may(&bench, None), Err(PhotosStay::NoBackup));
    assert_eq!(may(&bench, Some(taken)), Err(PhotosStay::OlderBackup));
    assert_eq!(may(&bench, Some(taken + 1)), Ok(taken + 1));
    // A photo of an entry that was taken back is in the store all the same.
    bench.record(undo(&bench.job, [])).unwrap();
    bench.record(undo(&bench.job, [])).unwrap();
    assert_eq!(photos_of(&bench.job).into_iter().collect::<Vec<_>>(), ["p1"]);
}

#[test]
fn the_record_says_which_backup_has_a_photo_that_left() {
    let mut bench = Bench::demo();
    let book = bench.job.id().clone();
    let photo = Guided::PartJudged {
        part: "gears".to_owned(),
        verdict: PartVerdict::Reject,
        signs: vec![],
        reason: "two teeth".to_owned(),
        photo: Some("p1".to_owned()),
    };
    let scope = Guided::ScopeChosen { scope: procedure::Scope::Reseal, reason: String::new() };
    let facts = [scope, photo].map(|fact| (book.clone(), fact.into()));
    bench.record(facts.to_vec()).unwrap();
    let told = |bench: &Bench| {
        let (job, sheet, shown) =
            (Job::fold(&bench.job), Sheet::fold(&bench.sheet), Shown::default());
        let record = record(&job, &sheet, None, shown);
        let (owner, invoice) =
            (owner(&job, &record, None, shown), invoice(&job, &record, None, shown));
        let paper =
            report::Paper { record: &record, owner: &owner, invoice: &invoice, shown, at: DAYS[1] };
        report::body(&paper, &|_| None)
    };
    assert!(told(&bench).contains("This photo is not at hand.<"));
    let freed = Fact::PhotosFreed { photos: vec!["p1".to_owned()], backup: DAYS[0] };
    bench.record(vec![(book, freed)]).unwrap();
    assert!(told(&bench).contains("This photo is not at hand. The backup of 12 May 2026 has it.<"));
}
