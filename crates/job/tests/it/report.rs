//! The record as one file: everything of the book is in it, nothing else, and it runs nothing.

use std::collections::BTreeSet;

use job::report::{Paper, body, file, file_name};
use job::*;
use measure::Unit;
use sha2::Digest;

use crate::bench::Bench;
use crate::guided::{Hand, pack, readings};
use crate::html::{Piece, harmless, pieces, text};
use crate::main_job;
use crate::record::done;

const AT: i64 = 1_778_666_400_000;

fn photo(id: &str) -> Option<String> {
    (id != "lost").then(|| "data:image/png;base64,iVBORw0KGgo=".to_owned())
}

/// The style that a file holds.
fn styled(file: &str) -> &str {
    file.split("<style>").nth(1).unwrap().split("</style>").next().unwrap()
}

fn style() -> String {
    styled(&made(&full(), Shown::default()).file).to_owned()
}

struct Made {
    record: Record,
    file: String,
}

fn made(hand: &Hand, shown: Shown) -> Made {
    let plan = hand.plan();
    let (job, sheet, _) = hand.bench.state();
    of(&job, &sheet, Some(&plan), shown)
}

fn of(job: &Job, sheet: &Sheet, plan: Option<&job::procedure::Plan>, shown: Shown) -> Made {
    let record = record(job, sheet, plan, shown);
    let owner = owner(job, &record, plan, shown);
    let invoice = invoice(job, &record, plan, shown);
    let paper = Paper { record: &record, owner: &owner, invoice: &invoice, shown, at: AT };
    let file = file(&paper, &photo);
    assert!(file.contains(&body(&paper, &photo)), "the file holds what the screen shows");
    Made { record, file }
}

/// The set-up job of the tests, with a note, and a guided job behind it.
fn full() -> Hand {
    let mut hand = Hand::on(main_job::read(), job::procedure::Scope::GearSet);
    hand.write(Guided::ProcedurePinned { layout: "b".into(), revision: 1 });
    hand.write(Guided::ScopeChosen {
        scope: job::procedure::Scope::GearSet,
        reason: "chipped teeth".into(),
    });
    hand.capture("b37", "B1 fitted", pack(&["0.402", "0.053"]));
    hand.capture("b06", "runout beside the seal", readings(&["0.031", "0.027"], Unit::Millimetre));
    hand.capture("b35", "second initials", Capture::Text("JO set, SA saw".into()));
    hand.capture(
        "b37",
        "pinion nut",
        Capture::Torque {
            values: vec![crate::guided::typed("97.5", Unit::NewtonMetre)],
            asked: None,
            offset: None,
            set: None,
            on: None,
        },
    );
    let mut drawn = Signature::default();
    drawn.down(0, 40, 1000);
    (1..20).for_each(|at| drawn.to(at * 50, 80, 1000));
    hand.write(Guided::ConsentSigned(Box::new(Agreement {
        by: "M. Lind, owner".into(),
        work: vec!["Gear set".into(), "Seals".into()],
        declined: vec!["New housing".into()],
        limit: "1 300 invented".into(),
        stops: vec!["A crack in the case".into()],
        excluded: "Hidden corrosion.".into(),
        drawn,
        ..Agreement::default()
    })));
    hand.write(Guided::ConsentRefused {
        step: String::new(),
        by: "M. Lind, owner".into(),
        how: Answered::Phone,
        work: vec!["New carrier".into()],
        reason: "Sells the boat in spring.".into(),
        initials: "JK".into(),
    });
    let note = Fact::NoteWritten { text: "Owner rang <twice> & \"swore\".".into() };
    let job = hand.bench.job.id().clone();
    hand.bench.record(vec![(job, note)]).unwrap();
    hand
}

#[test]
fn every_entry_of_the_book_is_in_the_file() {
    let hand = full();
    let made = made(&hand, Shown::default());
    let text = text(&made.file);
    for entry in hand.bench.job.live() {
        match &entry.fact {
            Fact::ReadingTaken { values, .. } => {
                let typed: Vec<&str> = values.iter().map(|value| value.text()).collect();
                assert!(text.contains(&typed.join(" ")), "{typed:?}");
            }
            Fact::PackFitted { shims, .. } => {
                for shim in shims {
                    let FittedShim::Measured(typed) = shim else { continue };
                    assert!(text.contains(typed.text()), "{typed}");
                }
            }
            Fact::NoteWritten { text: note } => assert!(text.contains(note), "{note}"),
            Fact::Guided(Guided::Captured { value, .. }) => {
                assert!(text.contains(&value.words()), "{}", value.words());
            }
            Fact::Guided(Guided::ScopeChosen { reason, .. }) => assert!(text.contains(reason)),
            _ => {}
        }
    }
    let record = &made.record;
    let lists = [
        &record.counts,
        &record.waits,
        &record.cautions,
        &record.stale,
        &record.draft,
        &record.notes,
    ];
    for sentence in lists.into_iter().flatten().chain(record.history.iter().map(|it| &it.1)) {
        assert!(text.contains(sentence.as_str()), "{sentence}");
    }
    for it in &record.signed {
        assert!(text.contains(&it.who) && text.contains(&it.what) && text.contains(&it.when));
        for (label, words) in &it.terms {
            assert!(text.contains(label) && text.contains(words.as_str()), "{label}: {words}");
        }
    }
    // The signature as a finger drew it, with whose it is.
    assert!(made.file.contains(
        "aria-label=\"Signature of M. Lind, owner.\"><path class=\"s-pen\" d=\"M0 40L50 80"
    ));
    for check in &record.checks {
        for judged in check.found.iter().chain(&check.left) {
            assert!(text.contains(&figure(judged.mean, check.check.figure(), Shown::default())));
        }
    }
}

#[test]
fn a_whole_job_is_in_the_file_too() {
    let made = made(&done(), Shown::default());
    let text = text(&made.file);
    for torque in &made.record.torques {
        for words in [&torque.label, &torque.values, &torque.asked, &torque.how] {
            assert!(text.contains(words.as_str()), "{words}");
        }
    }
    for step in &made.record.captured {
        for (label, value) in &step.values {
            assert!(text.contains(label) && text.contains(value), "{label}: {value}");
        }
    }
    for part in &made.record.parts {
        assert!(
            text.contains(&part.name) && text.contains(&part.reason) && text.contains(&part.signs)
        );
    }
    for photo in &made.record.photos {
        assert!(text.contains(&photo.caption), "{}", photo.caption);
    }
}

#[test]
fn no_number_stands_in_the_file_that_is_not_in_the_book() {
    let hand = full();
    let shown = Shown::default();
    let made = made(&hand, shown);
    let numbers = |text: &str| -> BTreeSet<String> {
        let split =
            text.split(|letter: char| !letter.is_ascii_digit() && letter != '.' && letter != ',');
        split
            .map(|word| word.trim_matches(['.', ',']).to_owned())
            .filter(|word| word.contains(|letter: char| letter.is_ascii_digit()))
            .collect()
    };
    // What the record says in words and decimals, its figures as they are shown, and the day.
    let mut known = numbers(&format!("{:?}", made.record));
    known.extend(numbers(&date(AT, 0)));
    for check in &made.record.checks {
        let bands = [check.band, check.sheet_band].into_iter().flatten();
        let bands = bands.flat_map(|band| [band.low(), band.high()]);
        let judged = check.found.iter().chain(&check.left);
        let judged = judged.flat_map(|judged| [judged.mean, judged.expanded]);
        for value in bands.chain(judged) {
            known.extend(numbers(&figure(value, check.check.figure(), shown)));
        }
        known.extend(check.sheet_radius.map(|at| figure(at, Figure::Radius, shown)));
    }
    for pack in &made.record.packs {
        let each = pack.found.iter().chain(&pack.left).chain([&pack.found_total, &pack.total]);
        known.extend(each.map(|value| figure(*value, Figure::Shim, shown)));
    }
    // Minutes and counts of the invoice are checked in their own test; the owner's words name the
    // hours of common practice and the half of an anode.
    let said: BTreeSet<String> = ["5", "10"].map(str::to_owned).into();
    let body = made.file.split("<main").nth(1).unwrap();
    let strange: Vec<String> = numbers(&text(&format!("<main{body}")))
        .into_iter()
        .filter(|number| !known.contains(number) && !said.contains(number))
        .collect();
    assert_eq!(strange, [] as [String; 0]);
}

#[test]
fn it_says_what_it_is_and_runs_nothing() {
    let made = made(&full(), Shown::default());
    harmless(&made.file);
    assert!(made.file.starts_with("<!doctype html>\n<html lang=\"en\">"));
    assert!(made.file.contains("<title>Job 27 · Grey Heron · gearcase record</title>"));
    assert!(!made.file.to_lowercase().contains("<script"));
    for asks in ["http:", "https:", "//", "url(\"", "@import"] {
        assert!(!made.file.replace("http-equiv", "").contains(asks), "{asks}");
    }
    // The style is the one that the policy names (CSP Level 3, section 8.4, hash sources).
    let style = styled(&made.file);
    let hash = base64::Engine::encode(
        &base64::engine::general_purpose::STANDARD,
        sha2::Sha256::digest(style.as_bytes()),
    );
    assert!(made.file.contains(&format!("style-src 'sha256-{hash}'")));
    assert!(made.file.contains("default-src 'none'"));
    let first_level = pieces(&made.file)
        .iter()
        .filter(|piece| matches!(piece, Piece::Open { name, .. } if name == "h1"))
        .count();
    assert_eq!(first_level, 1);
}

#[test]
fn hostile_text_stays_text() {
    // The test strings of OWASP's "XSS Filter Evasion" page, in short, and letters that turn text.
    const HOSTILE: [&str; 7] = [
        "<script>alert(1)</script>",
        "\"><img src=x onerror=alert(1)>",
        "' onmouseover='alert(1)",
        "</style></title><svg onload=alert(1)>",
        "&lt;b&gt; &#60;script&#62; <!-- --> <![CDATA[",
        "javascript:alert(1)//\u{202e}\u{0}\u{7f}",
        "]]>{{7*7}}${7*7}",
    ];
    for text in HOSTILE {
        let mut bench = Bench::new();
        let (sheet, job) = (bench.sheet.id().clone(), bench.job.id().clone());
        let open = Fact::SheetOpened { name: text.into(), layout: "b".into() };
        bench.record(vec![(sheet, open)]).unwrap();
        let opened = Fact::JobOpened {
            boat: text.into(),
            complaint: text.into(),
            sheet: "s".into(),
            number: 1,
        };
        bench.record(vec![(job.clone(), opened)]).unwrap();
        bench.record(vec![(job, Fact::NoteWritten { text: text.into() })]).unwrap();
        let mut hand = Hand::on(bench, job::procedure::Scope::Reseal);
        for (step, label) in [("b01", "unit plate"), (text, text), ("b08", "not covered")] {
            hand.capture(step, label, Capture::Text(text.into()));
        }
        hand.capture("b01", "plate and four sides", Capture::Photo("p".into()));
        hand.capture(text, "x", Capture::Photo("lost".into()));
        hand.write(Guided::ConsentGiven { by: text.into(), what: text.into(), limit: text.into() });
        hand.write(Guided::StepSkipped { step: text.into(), reason: text.into() });
        hand.write(Guided::PartJudged {
            part: text.into(),
            verdict: PartVerdict::Watch,
            signs: vec![text.into()],
            reason: text.into(),
            photo: None,
        });
        hand.write(Guided::BenchChecked {
            step: text.into(),
            place: text.into(),
            kind: text.into(),
            values: [(text.to_owned(), vec![text.to_owned()])].into(),
        });
        let made = made(&hand, Shown::default());
        harmless(&made.file);
        let name = file_name(&made.record, Shown::default(), AT);
        assert!(name.starts_with("job-1-") && !name.contains(['/', '"', '<', '\0', ' ']), "{name}");
    }
}

#[test]
fn every_class_has_a_rule_that_the_app_has_too() {
    const NO_RULE: [&str; 6] = ["defs", "rec__told", "found", "left", "asked", "applied"];
    let style = style();
    let mut classes: BTreeSet<String> = BTreeSet::new();
    for made in [made(&full(), Shown::default()), made(&done(), Shown::default())] {
        for piece in pieces(&made.file) {
            let Piece::Open { attributes, .. } = piece else { continue };
            let class = attributes.into_iter().filter(|(name, _)| name == "class");
            classes.extend(
                class.flat_map(|it| it.1.split_whitespace().map(str::to_owned).collect::<Vec<_>>()),
            );
        }
    }
    for class in classes.iter().filter(|class| !NO_RULE.contains(&class.as_str())) {
        assert!(style.contains(&format!(".{class}")), "{class}");
    }
    // What joins the app's style sheet names every style but the file's own.
    let joined = include_str!("../../../xtask/src/styles.rs");
    let styles = format!("{}/src/report/styles", env!("CARGO_MANIFEST_DIR"));
    for entry in std::fs::read_dir(styles).unwrap() {
        let name = entry.unwrap().file_name().into_string().unwrap();
        let path = format!("\"crates/job/src/report/styles/{name}\"");
        assert_eq!(joined.contains(&path), name != "file.css", "{path}");
    }
}

#[test]
fn every_ink_of_the_pictures_has_a_rule_in_the_file() {
    let style = style();
    let mut folders = vec![format!("{}/../pictures/src", env!("CARGO_MANIFEST_DIR"))];
    let mut inks = BTreeSet::new();
    while let Some(folder) = folders.pop() {
        for entry in std::fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            if path.is_dir() {
                folders.push(path.to_string_lossy().into_owned());
                continue;
            }
            let source = std::fs::read_to_string(path).unwrap();
            let quoted = source.split('"').filter(|word| {
                let ink = ["k-", "c-", "d-", "p-", "o-", "s-", "t-"]
                    .iter()
                    .any(|start| word.starts_with(start));
                ink && word.chars().all(|letter| letter.is_ascii_lowercase() || letter == '-')
            });
            inks.extend(quoted.map(str::to_owned));
        }
    }
    assert!(inks.len() > 30, "{inks:?}");
    let bare: Vec<&String> =
        inks.iter().filter(|ink| !style.contains(&format!(".{ink} "))).collect();
    assert_eq!(bare, [] as [&String; 0]);
}

#[test]
fn unit_mark_and_distance_from_utc_are_the_readers() {
    let (job, sheet, _) = main_job::read().state();
    let shown = Shown {
        units: Units::default().with(Unit::Inch),
        mark: measure::Mark::Comma,
        utc_offset: -600,
    };
    let made = of(&job, &sheet, None, shown);
    let text = text(&made.file);
    assert!(text.contains("Check, in"), "{text}");
    assert!(text.contains("0,0221"), "forward backlash as found, in inches with a comma");
    assert!(text.contains("Made 13 May 2026"));
    assert_eq!(file_name(&made.record, shown, AT), "job-27-grey-heron-2026-05-13.html");
    // 10:15 UTC is a quarter past midnight ten hours west.
    assert!(text.contains("12 May 2026 00:15"), "{text}");
}
