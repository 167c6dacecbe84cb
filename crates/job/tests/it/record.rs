//! The record of a guided job: every part of it comes from the book, and says when it is a draft.

use std::collections::BTreeMap;

use job::guide::STOPS;
use job::procedure::Scope;
use job::*;
use measure::Unit;

use crate::guided::*;

fn of(hand: &Hand) -> Record {
    let (job, sheet, _) = hand.bench.state();
    record(&job, &sheet, Some(&hand.plan()), Shown::default())
}

fn judged(part: &str, verdict: PartVerdict, signs: &[&str], reason: &str) -> Guided {
    Guided::PartJudged {
        part: part.into(),
        verdict,
        signs: signs.iter().map(|sign| (*sign).to_owned()).collect(),
        reason: reason.into(),
        photo: Some(format!("photo-{part}")),
    }
}

/// A layout (b) job done to its end.
pub fn done() -> Hand {
    let mut hand = Hand::new(Scope::GearSet);
    hand.work_to("b22");
    hand.write(judged("gears", PartVerdict::Reject, &["chips, cracks or spalls"], "two teeth"));
    hand.write(judged(
        "taper-bearings",
        PartVerdict::Watch,
        &["grey, even dulling"],
        "owner asked",
    ));
    hand.write(Guided::ConsentGiven {
        by: "Kim Invented".into(),
        what: "new gear set".into(),
        limit: "900".into(),
    });
    hand.work_to("b28");
    hand.write(Guided::ClockStarted {
        clock: "c".into(),
        step: "b28".into(),
        label: "cooling from".into(),
        marks: vec![30, 60],
    });
    hand.write(Guided::ClockStopped { clock: "c".into(), reason: "cold to the hand".into() });
    hand.work_to("");
    hand
}

#[test]
fn every_part_of_the_guided_job_is_on_the_record() {
    let told = of(&done());
    assert_eq!(told.scope, "Gear set");
    assert_eq!(told.not_recorded, "");

    let nut = told.torques.iter().find(|torque| torque.label == "Pinion nut").unwrap();
    assert_eq!(nut.step, "Final pinion nut, forward gear in first");
    assert_eq!((nut.asked.as_str(), nut.values.as_str()), ("100 N·m", "95 N·m"));
    assert_eq!(nut.how, "Wrench set to 95 N·m, offset 40 mm, dry");

    let freeze = told.captured.iter().find(|step| step.step == "Freeze the packs").unwrap();
    let value = |label: &str| freeze.values.iter().find(|(own, _)| own == label).unwrap().1.clone();
    assert_eq!(value("Forward backlash"), "18 18 18 18 mm");
    assert_eq!(value("B1 frozen"), "0.40 + 0.05 mm = 0.450 mm");
    assert!(value("Frozen").starts_with("12 May 2026 "), "{}", value("Frozen"));

    assert!(
        told.counts.contains(&"Pinion rollers: 18 out, 18 in.".to_owned()),
        "{:?}",
        told.counts
    );
    assert_eq!(told.waits.len(), 1);
    assert!(told.waits[0].starts_with("Cooling: from 12 May 2026 "), "{}", told.waits[0]);
    assert!(told.waits[0].ends_with(", 60 min. Ended by hand."), "{}", told.waits[0]);

    assert_eq!(
        told.photos[0].caption,
        "Identify the unit, the complaint and who may authorise. Plate and four sides"
    );
    assert!(
        told.photos
            .iter()
            .any(|photo| photo.id == "photo-gears" && photo.caption == "Gears: reject")
    );

    let part = |at: usize| {
        (told.parts[at].name.as_str(), told.parts[at].words, told.parts[at].reason.as_str())
    };
    assert_eq!(part(0), ("Gears", "Rejected", "two teeth"));
    assert_eq!(part(1), ("Taper bearings", "Used again, to watch", "owner asked"));
    assert_eq!(told.parts[1].signs, "grey, even dulling");

    assert!(told.cautions.iter().any(|caution| caution.starts_with("Key and lanyard out")));
    let signed: Vec<(&str, &str)> =
        told.signed.iter().map(|it| (it.who.as_str(), it.what.as_str())).collect();
    assert!(signed.contains(&("Kim Invented", "Agreed: new gear set")), "{signed:?}");
    assert!(signed.contains(&("MR", "Initials: “Freeze the packs”")), "{signed:?}");
    assert!(signed.iter().any(|it| it.0 == "JK" && it.1.starts_with("Said yes to the gate of “")));
    assert!(told.history.iter().any(|(_, said)| said == "“Freeze the packs” done."));
}

#[test]
fn a_bench_check_shows_what_was_typed_and_a_seal_stands_on_the_map_of_seals() {
    let mut hand = Hand::new(Scope::Reseal);
    let texts = |texts: &[&str]| texts.iter().map(|text| (*text).to_owned()).collect::<Vec<_>>();
    let check = |place: &str, kind: &str, values: &[(&str, Vec<String>)]| Guided::BenchChecked {
        step: String::new(),
        place: place.into(),
        kind: kind.into(),
        values: values.iter().map(|(id, texts)| ((*id).to_owned(), texts.clone())).collect(),
    };
    let turn = texts(&["0.01 mm", "0,02 mm", "0.03 mm", "0.02 mm"]);
    let limit = texts(&["0.005 in"]);
    hand.write(check("prop shaft", "runout", &[("readings", turn), ("limit", limit)]));
    let told = of(&hand);
    assert_eq!(
        told.bench[0].given,
        [
            ("Readings round one turn".to_owned(), "0.01 · 0,02 · 0.03 · 0.02 mm".to_owned()),
            ("Limit of the manual, total".to_owned(), "0.005 in".to_owned()),
        ]
    );
    assert_eq!(told.seal_map, None);
    let depth = texts(&["3.0 mm", "0.12 in", "3.1 mm", "3.0 mm"]);
    hand.write(check("S1", "seal", &[("fitted", texts(&["to the oil"])), ("depth", depth)]));
    let told = of(&hand);
    assert_eq!(told.bench[1].given[1].1, "3.0 mm · 0.12 in · 3.1 mm · 3.0 mm");
    assert!(told.seal_map.is_some_and(|map| map.label.contains("S1")));
}

#[test]
fn who_agreed_to_what_and_who_said_no_stands_with_the_terms_and_the_signature() {
    let mut hand = Hand::new(Scope::Reseal);
    let mut drawn = Signature::default();
    drawn.down(10, 80, 300);
    (1..20).for_each(|at| drawn.to(10 + at * 10, 80 - at, 300));
    let signed = Agreement {
        by: "M. Lind, owner".into(),
        work: vec!["Seals only".into(), "New anode".into()],
        declined: vec!["New impeller".into()],
        limit: "1 300 invented".into(),
        stops: STOPS.map(str::to_owned).to_vec(),
        drawn,
        ..Agreement::default()
    };
    hand.write(Guided::ConsentSigned(Box::new(signed)));
    hand.write(Guided::ConsentRefused {
        step: String::new(),
        by: "M. Lind, owner".into(),
        how: Answered::Message,
        work: vec!["Gear set".into()],
        reason: "Sells the boat in spring.".into(),
        initials: "JK".into(),
    });
    let told = of(&hand).signed;
    assert_eq!(told.len(), 2);
    assert_eq!(
        (told[0].who.as_str(), told[0].what.as_str()),
        ("M. Lind, owner", "Agreed: Seals only, New anode")
    );
    let terms: Vec<(&str, &str)> = told[0].terms.iter().map(|it| (it.0, it.1.as_str())).collect();
    assert_eq!(
        terms,
        [
            ("Price", "not said"),
            ("Limit", "1 300 invented"),
            (
                "Stop and call",
                "Metal chunks or a broken tooth; A crack in the case; A part comes later than agreed"
            ),
            ("Not covered", "not said"),
            ("Not wanted", "New impeller"),
        ]
    );
    assert_eq!(told[0].drawn.as_ref().unwrap().label, "Signature of M. Lind, owner.");
    assert_eq!(
        (told[1].who.as_str(), told[1].what.as_str()),
        ("M. Lind, owner, by message", "Said no to: Gear set")
    );
    let why = ("Why", "Sells the boat in spring.".to_owned());
    assert_eq!(told[1].terms, [why, ("Answer taken by", "JK".to_owned())]);
    assert_eq!(told[1].drawn, None);
    assert!(told.iter().all(|it| it.when.starts_with("12 May 2026 ")), "{told:?}");
}

#[test]
fn a_finished_guided_job_is_no_draft_for_its_steps() {
    let told = of(&done());
    let of_steps: Vec<&String> = told.draft.iter().filter(|why| why.contains('“')).collect();
    assert_eq!(of_steps, [] as [&String; 0]);
    assert_eq!(told.stale, [] as [String; 0]);
}

#[test]
fn an_open_step_a_stale_step_and_a_shut_gate_make_it_a_draft() {
    let mut hand = Hand::new(Scope::GearSet);
    hand.work_to("b02");
    let open = of(&hand).draft;
    assert!(
        open.iter()
            .any(|why| why
                .ends_with("steps are not done, the first is “Make safe and contain spills”.")),
        "{open:?}"
    );

    let mut hand = done();
    hand.write(Guided::StepReopened { step: "b36".into(), reason: "lip cut".into() });
    let told = of(&hand);
    let seals = "“Fit the seals: propshaft, driveshaft, shift rod”";
    assert!(
        told.draft.iter().any(|why| why.starts_with(&format!("{seals} is stale. Opened again ")))
    );
    assert!(told.stale.len() > 1, "what needs it is stale too: {:?}", told.stale);
    let left = told.left_out.iter().find(|left| left.what == "Opened again").unwrap();
    assert_eq!(left.reason, "lip cut");

    let mut hand = done();
    hand.capture("b29", "pinion rollers in", readings(&["17"], Unit::Piece));
    let told = of(&hand);
    assert!(
        told.draft.iter().any(|why| why.contains("is shut. 17 pinion rollers in, 18 out.")),
        "{:?}",
        told.draft
    );
}

#[test]
fn a_step_left_out_stands_there_with_its_reason_until_it_is_done() {
    let mut hand = Hand::new(Scope::GearSet);
    hand.work_to("b03");
    hand.write(Guided::StepSkipped { step: "b03".into(), reason: "engine not on site".into() });
    let left = of(&hand).left_out;
    assert_eq!((left[0].what, left[0].reason.as_str()), ("Left out", "engine not on site"));
    assert!(left[0].when.starts_with("12 May 2026 "));
    hand.finish("b03").unwrap();
    assert_eq!(of(&hand).left_out, []);
}

#[test]
fn a_bench_check_is_answered_anew_from_what_was_typed() {
    let mut hand = Hand::new(Scope::GearSet);
    let typed = [
        ("when", "running"),
        ("torque", "0.60 N·m"),
        ("seals", "out"),
        ("low", "0.30 N·m"),
        ("high", "0.80 N·m"),
    ];
    let values: BTreeMap<String, Vec<String>> =
        typed.iter().map(|(id, text)| ((*id).to_owned(), vec![(*text).to_owned()])).collect();
    let check = |kind: &str| Guided::BenchChecked {
        step: "b11b".into(),
        place: "pinion pair".into(),
        kind: kind.into(),
        values: values.clone(),
    };
    hand.write(check("drag"));
    hand.write(check("of-tomorrow"));
    let told = of(&hand);
    let drag = &told.bench[0];
    assert_eq!(drag.title, "Rolling torque, pinion pair");
    assert_eq!(drag.step, "As-found rolling torque in neutral, seals in");
    assert_eq!(drag.state, Some(CheckState::InBand));
    let asked = instrument::instrument("drag").unwrap().fields;
    let label = asked.iter().find(|field| field.id == "torque").unwrap().label();
    assert!(drag.given.contains(&(label.to_owned(), "0.60 N·m".to_owned())));
    assert!(!drag.figures.is_empty() && !drag.says.is_empty());
    assert!(told.cautions.iter().any(|caution| drag.cautions.contains(caution)));
    let later = &told.bench[1];
    assert_eq!(later.says, ["A later version of the app answers this. Update it."]);
    assert!(
        later.given.contains(&("torque".to_owned(), "0.60 N·m".to_owned())),
        "what was typed stays"
    );
}

#[test]
fn the_stages_of_a_torque_stand_with_what_was_ticked() {
    let mut hand = Hand::new(Scope::GearSet);
    let typed: [(&str, &[&str]); 4] = [
        ("wanted", &["60 N·m", "120 N·m"]),
        ("manual", &["dry"]),
        ("threads", &["dry"]),
        ("done", &["60 N·m"]),
    ];
    let texts = |texts: &[&str]| texts.iter().map(|text| (*text).to_owned()).collect();
    hand.write(Guided::BenchChecked {
        step: String::new(),
        place: String::new(),
        kind: "torque".into(),
        values: typed.iter().map(|(id, it)| ((*id).to_owned(), texts(it))).collect(),
    });
    let torque = &of(&hand).bench[0];
    let says = |title: &str| {
        let found = torque.figures.iter().find(|figure| figure.0 == title);
        found.map(|figure| figure.1.as_str()).unwrap_or_default()
    };
    assert_eq!(says("Stage 1"), "60 N·m at the fastener, wrench 60.00 N·m: done");
    assert!(says("Stage 2").ends_with(": not ticked"), "{:?}", torque.figures);
    assert!(torque.given.contains(&("Ticked as done, at".to_owned(), "60 N·m".to_owned())));
}

#[test]
fn without_its_steps_a_guided_job_is_a_draft_that_keeps_everything() {
    let hand = done();
    let (job, sheet, _) = hand.bench.state();
    let told = record(&job, &sheet, None, Shown::default());
    assert!(
        told.draft
            .iter()
            .any(|why| why.starts_with("The steps of this job’s procedure are not at hand."))
    );
    assert_eq!(told.torques.len(), of(&hand).torques.len());
    assert_eq!(told.photos.len(), of(&hand).photos.len());
}
