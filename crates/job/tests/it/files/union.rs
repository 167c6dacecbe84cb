//! Two devices end up the same whichever way round they bring each other's files in.

use job::files::*;
use job::*;
use proptest::prelude::*;

use super::*;

/// Cases of each law; the seed is fixed, so that every run tries the same.
const CASES: u32 = 10_000;

fn fixed() -> ProptestConfig {
    ProptestConfig {
        rng_seed: proptest::test_runner::RngSeed::Fixed(5),
        ..ProptestConfig::with_cases(CASES)
    }
}

/// A line of a few devices and counters, so that the same place is taken often.
fn line() -> impl Strategy<Value = String> {
    let fact = prop_oneof![
        "[a-c]".prop_map(|text| format!(r#"{{"note-written":{{"text":"{text}"}}}}"#)),
        (0u8..4, 0u64..6).prop_map(|(device, n)| format!(
            r#"{{"entry-retracted":{{"entry":"{device}.{n}","why":""}}}}"#
        )),
        Just(r#"{"thing-done":{}}"#.to_owned()),
    ];
    (0u64..6, 0u8..4, fact).prop_map(|(n, device, fact)| {
        format!(r#"{{"v":1,"book":"job:j","id":"{device}.{n}","n":{n},"device":"{device}","at":0,"fact":{fact}}}"#)
    })
}

fn copy() -> impl Strategy<Value = Book> {
    proptest::collection::vec(line(), 0..8).prop_map(|lines| {
        Book::from_lines(BookId::Job("j".into()), lines.iter().map(String::as_str))
    })
}

/// A copy after a file of another was brought in.
fn brought(ours: &Book, theirs: &Book) -> Book {
    if theirs.is_empty() {
        return ours.clone();
    }
    let (parcel, _) = taken(backup([theirs], &[]).as_bytes()).unwrap();
    let changes = Changes::of(&parcel.coming, &here([ours]));
    let lines = changes.fresh.iter().map(|coming| coming.line.as_str());
    Book::from_lines(ours.id().clone(), ours.lines().chain(lines))
}

proptest! {
    #![proptest_config(fixed())]

    #[test]
    fn bringing_in_is_a_union(a in copy(), b in copy(), c in copy()) {
        let ab = brought(&a, &b);
        prop_assert_eq!(&ab, &a.clone().merge(&b));
        prop_assert_eq!(&ab, &brought(&b, &a));
        prop_assert_eq!(brought(&ab, &c), brought(&a, &brought(&b, &c)));
        prop_assert_eq!(&brought(&ab, &b), &ab);
        prop_assert_eq!(Job::fold(&ab), Job::fold(&brought(&b, &a)));
        prop_assert!(a.lines().chain(b.lines()).all(|line| ab.lines().any(|kept| kept == line)));
    }
}
