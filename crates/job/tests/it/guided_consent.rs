//! Consent: asked before the strip-down and again after inspection, signed or not, kept or refused.

use job::guide::*;
use job::procedure::Scope;
use job::*;

use crate::guided::*;

fn given() -> Agreement {
    let mut drawn = Signature::default();
    drawn.down(10, 80, 300);
    for at in 1..40 {
        drawn.to(10 + at * 6, 80 - (at * 13) % 50, 300);
    }
    Agreement {
        by: " M. Lind, owner ".into(),
        work: vec!["Seals only".into()],
        limit: "1 300 invented".into(),
        stops: STOPS.map(str::to_owned).to_vec(),
        excluded: EXCLUDED.into(),
        drawn,
        ..Agreement::default()
    }
}

fn ask(hand: &Hand, effect: &Effect) -> Asked {
    asked(&hand.plan(), &hand.log(), effect)
}

#[test]
fn a_consent_before_the_strip_down_captures_what_its_step_asks_for() {
    let mut hand = Hand::new(Scope::Reseal);
    hand.work_to("b08");
    let asked = ask(&hand, &Effect::default());
    assert_eq!((asked.step.as_str(), asked.revised, asked.settled), ("b08", false, false));
    assert_eq!(asked.work, [("Seals only".to_owned(), false)]);
    hand.write_all(asked.agree(given(), 77).unwrap());
    let view = hand.course().step("b08").unwrap().clone();
    assert_eq!(view.to_capture, ["scope"]);
    let log = hand.log();
    assert_eq!(log.capture("b08", "consent").unwrap().value, Capture::Time(77));
    assert_eq!(log.capture("b08", "authorised limit").unwrap().value.words(), "1 300 invented");
    let consent = log.consents.last().unwrap();
    assert_eq!((consent.by.as_str(), consent.what.as_str()), ("M. Lind, owner", "Seals only"));
    assert_eq!(
        consent.heading(consent.mark.at, 0),
        format!("M. Lind, owner, {}", hour_minute(consent.mark.at, 0))
    );
    assert_eq!(consent.signature().unwrap().label, "Signature of M. Lind, owner.");
    assert_eq!(consent.initials(), None);
    assert!(ask(&hand, &Effect::default()).settled);
    // It stands or falls as one act.
    let facts = undo(&hand.bench.job, []).len();
    assert_eq!(facts, 4);
}

#[test]
fn what_the_inspection_changes_asks_for_a_new_price() {
    let mut hand = Hand::new(Scope::Reseal);
    hand.write_all(ask(&hand, &Effect::default()).agree(given(), 1).unwrap());
    let reject = Guided::PartJudged {
        part: "taper-bearings".into(),
        verdict: PartVerdict::Reject,
        signs: Vec::new(),
        reason: "etched lines".into(),
        photo: Some("p".into()),
    };
    hand.write(reject);
    let effect = Effect {
        widens_to: Some(Scope::Bearings),
        orders: vec!["bearing with its own race".into()],
        says: vec!["Tapered bearings rejected.".into()],
        open: 0,
    };
    let asked = ask(&hand, &effect);
    assert_eq!((asked.step.as_str(), asked.revised, asked.settled), ("b26", true, false));
    assert_eq!(asked.says, effect.says);
    let work =
        [("Seals only", true), ("Seals and bearings", false), ("Bearing with its own race", false)];
    assert_eq!(asked.work, work.map(|(line, before)| (line.to_owned(), before)));

    let no = asked.refuse(&given(), " ").unwrap();
    hand.write(no);
    let refused = ask(&hand, &effect).refused.unwrap();
    assert_eq!((refused.by.as_str(), refused.work[0].as_str()), ("M. Lind, owner", "Seals only"));
    assert_eq!((refused.reason.as_str(), refused.terms()), ("", Vec::new()));
    let at = refused.mark.at;
    let time = hour_minute(at, 0);
    assert_eq!(refused.says(at, 0), format!("M. Lind, owner said no here, {time}: Seals only."));

    hand.write(asked.refuse(&given(), " Sells it in spring. ").unwrap());
    let refused = ask(&hand, &effect).refused.unwrap();
    assert_eq!(refused.terms(), [("Why", "Sells it in spring.".to_owned())]);
    let says = refused.says(refused.mark.at, 0);
    assert!(says.ends_with(": Seals only. Why: Sells it in spring."), "{says}");

    assert_eq!(asked.lacks(&given()), [ConsentRefusal::NoPrice]);
    let phoned = Agreement {
        price: "1 420 invented".into(),
        how: Answered::Phone,
        initials: "jk".into(),
        drawn: Signature::default(),
        ..given()
    };
    hand.write_all(asked.agree(phoned, 99).unwrap());
    let log = hand.log();
    assert_eq!(log.capture("b26", "revised price").unwrap().value.words(), "1 420 invented");
    assert_eq!(log.capture("b26", "consent to revised price").unwrap().value, Capture::Time(99));
    let consent = log.consents.last().unwrap();
    assert!(consent.heading(consent.mark.at, 0).starts_with("M. Lind, owner, by phone, "));
    assert_eq!(consent.initials(), Some(("Answer taken by", "JK".to_owned())));
    assert_eq!(consent.signature(), None);
    let settled = ask(&hand, &effect);
    assert_eq!((settled.settled, settled.refused), (true, None));
}

#[test]
fn what_is_missing_is_said_in_one_sentence_each() {
    let hand = Hand::new(Scope::Reseal);
    let asked = ask(&hand, &Effect::default());
    let says = |given: &Agreement| -> Vec<String> {
        asked.lacks(given).iter().map(ToString::to_string).collect()
    };
    assert_eq!(says(&given()), Vec::<String>::new());
    assert_eq!(
        says(&Agreement::default()),
        [
            "No work is ticked. Tick what is agreed.",
            "Nothing stands under what is not covered. Type it, or none.",
            "No limit. Type the sum at which you stop and call.",
            "No stop rule is ticked. Tick what else makes you call.",
            "No name. Type who may decide.",
            "Not signed. Sign in the field, or type initials.",
        ]
    );
    let mut dot = Agreement { drawn: Signature::default(), ..given() };
    dot.drawn.down(5, 5, 100);
    assert_eq!(says(&dot), ["Hardly anything is drawn. Sign again, or type initials."]);
    let typed = Agreement { initials: "M. L.".into(), ..given() };
    assert_eq!(says(&typed), ["Initials are one to three letters, such as ML. Type them again."]);
    let phoned = Agreement { how: Answered::Phone, ..given() };
    assert_eq!(says(&phoned), ["Nobody took the answer. Type your initials."]);
    assert!(asked.agree(phoned, 0).is_err());
    let nobody = asked.refuse(&Agreement::default(), "too dear").unwrap_err();
    assert_eq!(nobody, ConsentRefusal::NoName);
}

#[test]
fn a_signature_that_is_too_large_is_not_admitted() {
    let mut hand = Hand::new(Scope::Reseal);
    let huge = format!("{}1,1", "1,1 ".repeat(Signature::MOST));
    for drawn in [Signature::of(&huge), Signature::of("1001,5"), Signature::default()] {
        let agreement = Agreement { drawn, ..given() };
        let job = hand.bench.job.id().clone();
        let fact = Guided::ConsentSigned(Box::new(agreement)).into();
        assert!(hand.bench.record(vec![(job, fact)]).is_err());
    }
}
