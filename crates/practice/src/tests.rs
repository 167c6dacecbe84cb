use super::*;

fn show(mm: measure::Decimal) -> String {
    measure::show(mm, 2, measure::Mark::Point)
}

/// Every seed has its rounds, of every kind, and only the right decision is right; the engine's own
/// first cause is the hidden fault.
#[test]
fn every_round_can_be_decided() {
    for seed in 0..20 {
        for (kind, _) in FAULTS {
            let round = round(seed, 1, Some(kind)).expect("a round");
            assert_eq!(round.kind, kind);
            assert_eq!(round.decisions.len(), 4, "{:?}", round.decisions);
            let titles: Vec<&str> = round.decisions.iter().map(|it| it.title.as_str()).collect();
            assert!((1..4).all(|at| !titles[..at].contains(&titles[at])), "{titles:?}");
            assert!(round.checks.iter().any(|seen| seen.is_off));
            let right: Vec<usize> = (0..4).filter(|at| round.told(*at, &show).is_right).collect();
            assert_eq!(right, [round.right]);
            let shares: Vec<u32> = round.decisions.iter().filter_map(|it| it.share).collect();
            let best = round.decisions[round.right].share.unwrap();
            assert!(shares.iter().all(|share| *share <= best), "{shares:?}");
        }
    }
}

#[test]
fn the_same_seed_is_the_same_lesson_and_has_every_fault_once() {
    for seed in 0..6 {
        let kinds: Vec<FaultKind> =
            (0..ROUNDS).map(|at| round(seed, at, None).unwrap().kind).collect();
        for (kind, _) in FAULTS {
            assert_eq!(kinds.iter().filter(|it| **it == kind).count(), 1, "{kinds:?}");
        }
        let again = |at| round(seed, at, None).unwrap();
        assert_eq!(again(0).checks, again(0).checks);
        assert!(round(seed, ROUNDS, None).is_none());
    }
}

/// The reason is in the numbers that were on the gauges.
#[test]
fn why_names_the_readings_and_the_cost() {
    for seed in 0..10 {
        for at in 0..ROUNDS {
            let round = round(seed, at, None).unwrap();
            let refit = round.decisions.iter().position(|it| it.share.is_none()).unwrap();
            let told = round.told(refit, &show);
            assert!(!told.is_right);
            let text: String =
                told.says.iter().map(|(bold, rest)| format!("{bold}{rest}\n")).collect();
            for seen in round.checks.iter().filter(|seen| seen.is_off) {
                assert!(
                    text.contains(&show(seen.mean)) && text.contains(&show(seen.predicted.0)),
                    "{text}"
                );
            }
            assert!(text.contains(&round.minutes.to_string()), "{text}");
            assert!(text.contains("the mistake stays in"), "{text}");
            assert_eq!(told.reasons[0].mark, Mark::Missed);
        }
    }
}
