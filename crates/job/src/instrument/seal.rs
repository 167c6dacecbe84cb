//! Lip seals: which way the lip looks, how deep and square it sits, and whether its sizes fit.

use measure::{Sign, Typed, Unit, Verdict};
use pictures::seals::Seat;
use words::{key, say, t};
use workshop::seal::{Answer as Sits, Depth, Direction, LipCheck, Toward, examine, hold, shaft};
use workshop::{Basis, Explanation, Limits, Reading};

use super::shown::{Writing, worst};
use super::{Answer, Given, Instrument, Takes, answered, fold, optional};

const SIDES: Takes = Takes::One(&[OIL, WATER]);
const SEEN: Takes = Takes::One(&[key!("seen"), NOT_SEEN]);
const DONE: Takes = Takes::One(&[key!("done"), "none here"]);
const NOT_SEEN: &str = "not seen";
const OIL: &str = "to the oil";
const WATER: &str = "to the water";
const CLOCK: &[&str] = &["12 h", "3 h", "6 h", "9 h"];
const LENGTH: Takes = Takes::Number(Unit::Millimetre, Sign::Positive);
const DEPTH: Takes = Takes::Number(Unit::Millimetre, Sign::NotNegative);

/// A lip seal in its bore.
pub(super) const SEAL: Instrument = Instrument {
    kind: "seal",
    title: "Lip seal",
    purpose: "Which way the lip and its spring look, and how deep and square the seal sits.",
    cautions: &[workshop::Caution::LipAsRecorded],
    fields: &[
        optional("found", "Lip as found, with its spring", SIDES),
        optional("manual", "Lip by the manual", SIDES),
        optional("fitted", "Lip as it is fitted now", SIDES),
        optional("spring", "Spring in its groove", SEEN),
        optional("coated", "Outside coated, slot clear", DONE),
        optional("grease", "Grease between the lips", DONE),
        optional("sleeve", "Splines covered with a sleeve", DONE),
        optional(
            "depth",
            "Depth below one face",
            Takes::Numbers(Unit::Millimetre, Sign::NotNegative, CLOCK),
        ),
        fold("limits", "Limits of the manual, and the old seal"),
        optional("square", "May be uneven by, manual", LENGTH),
        optional("low", "Least depth, manual", DEPTH),
        optional("high", "Most depth, manual", DEPTH),
        optional("old", "Depth the old seal had", DEPTH),
        fold("sizes", "Against its bore and its shaft"),
        optional("outside", "Seal outside diameter", LENGTH),
        optional("bore", "Bore", LENGTH),
        optional("marked", "Shaft size on the seal", LENGTH),
        optional("shaft", "Shaft at the lip", LENGTH),
    ],
    answer,
};

fn answer(given: &mut Given) -> Option<Answer> {
    let mut writing = given.writing("depth");
    writing.unit = writing.unit.or(given.writing("outside").unit);
    let lip = lip(given);
    let fitted = given.word("fitted").is_some();
    let depth = depth(given)?;
    let mut figures = Vec::new();
    let mut says: Vec<String> = lip.says.into_iter().map(str::to_owned).collect();
    if given.word("spring") == Some(NOT_SEEN) {
        says.push(t("Look at the spring before the seal is hidden.").to_owned());
    }
    let open = ["coated", "grease", "sleeve"].into_iter().filter(|id| given.word(id).is_none());
    if fitted && open.count() > 0 {
        says.push(t("Coat, grease and sleeve: see to each before it is hidden.").to_owned());
    }
    let mut verdicts = Vec::from_iter(lip.verdict);
    if let Some(found) = &depth {
        if lip.verdict.is_some() {
            figures.push((t("Deepest less least"), writing.figure(&found.uneven)));
        }
        figures.push((t("Mean depth"), writing.figure(&found.mean)));
        figures
            .extend(found.moved.as_ref().map(|it| (t("Deeper than the old"), writing.figure(it))));
        let judged = [&found.square, &found.depth];
        verdicts.extend(judged.into_iter().flatten().map(|judged| judged.verdict));
        if found.square.is_none() {
            says.push(t("Square within 0.25 mm: common practice, no source.").to_owned());
        }
    }
    let sizes = sizes(given, &writing)?;
    let nothing = lip.toward.is_none() && depth.is_none() && sizes.is_empty();
    if nothing {
        given.wanted.push(t("Which way the lip looks, its depth at four points, or its sizes"));
        return None;
    }
    figures.extend(sizes);
    let why = Explanation {
        formula: "uneven = deepest − least of four points; held by = outside − bore",
        given: depth.as_ref().map(|found| found.explanation.given.clone()).unwrap_or_default(),
        basis: Basis::Derived("depths below one face, and two diameters"),
    };
    Some(Answer {
        verdict: worst(verdicts),
        // A lip the wrong way round comes before any figure.
        headline: depth
            .as_ref()
            .filter(|_| lip.verdict.is_none())
            .map(|found| writing.headline(t("Deepest less least"), &found.uneven, String::new())),
        says,
        figures,
        blind: Some(
            t("Depth does not show a lip that was turned over, or a spring that jumped out: look.")
                .to_owned(),
        ),
        picture: Some(picture(given, lip.toward)),
        ..answered(&[], &why, &writing)
    })
}

/// What is known of the lip.
#[derive(Default)]
struct Lip {
    /// As fitted, else by the manual, else as found.
    toward: Option<Toward>,
    says: Option<&'static str>,
    verdict: Option<Verdict>,
}

fn lip(given: &mut Given) -> Lip {
    let mut side = |id| given.word(id).map(toward);
    let (as_found, manual, fitted) = (side("found"), side("manual"), side("fitted"));
    let direction = Direction { as_found, manual };
    let known = manual.or(as_found);
    let check = fitted.or(known).map(|lip| direction.check(lip));
    let says = check.map(|check| match (check, fitted.is_some()) {
        (LipCheck::AsRecorded, true) => t("The lip looks the way the record says."),
        (LipCheck::AsRecorded, false) => match known {
            Some(Toward::Oil) => t("To be fitted with its lip to the oil."),
            _ => t("To be fitted with its lip to the water."),
        },
        (LipCheck::Reversed, _) => {
            t("The lip looks the other way round than the record says. Look again before it is pressed home.")
        }
        (LipCheck::RecordsDiffer, _) => {
            t("Manual and as found differ. The manual goes first: whoever closed it last may have erred.")
        }
        (LipCheck::Unknown, _) => {
            t("Neither manual nor as-found is known. Look it up before the seal is pressed home.")
        }
    });
    let verdict = (check == Some(LipCheck::Reversed)).then_some(Verdict::Out);
    Lip { toward: fitted.or(known), says, verdict }
}

fn toward(word: &str) -> Toward {
    if word == OIL { Toward::Oil } else { Toward::Water }
}

/// Which way the lip of a kept check looks: as fitted, else by the manual, else as found.
pub(super) fn looks(values: &super::Values) -> Option<Toward> {
    let word = |id: &&str| values.get(*id).and_then(|texts| texts.first());
    ["fitted", "manual", "found"].iter().find_map(word).map(|word| toward(word))
}

/// How it sits; `Some(None)` where no depth is typed.
fn depth(given: &mut Given) -> Option<Option<Sits>> {
    let typed: Vec<Typed> = given.numbers("depth").into_iter().flatten().collect();
    if typed.is_empty() {
        return Some(None);
    }
    let readings: Vec<Reading> = typed.iter().map(Reading::typed).collect();
    let Ok(at) = <[Reading; 4]>::try_from(readings) else {
        let found = typed.len();
        given.refuse(
            "depth",
            say!(
                "Found {found} of 4 depths. Read the others too: a seal leans where nobody looks."
            ),
        );
        return None;
    };
    let square = Limits { low: None, high: given.amount("square") };
    let depth = Limits { low: given.amount("low"), high: given.amount("high") };
    let seal = Depth { at, square, depth, as_found: given.reading("old") };
    given.at("depth", examine(&seal)).map(Some)
}

/// What holds it in its bore, and how its shaft differs from the size marked.
fn sizes(given: &mut Given, writing: &Writing) -> Option<Vec<(&'static str, String)>> {
    let mut figures = Vec::new();
    if let (Some(outside), Some(bore)) = (given.reading("outside"), given.reading("bore")) {
        let held = given.at("outside", hold(&outside, &bore))?;
        figures.push((t("Larger than its bore"), writing.figure(&held)));
    }
    if let (Some(on), Some(marked)) = (given.reading("shaft"), given.reading("marked")) {
        let off = given.at("shaft", shaft(&on, &marked))?;
        figures.push((t("Shaft against the size marked"), writing.figure(&off)));
    }
    Some(figures)
}

fn picture(given: &mut Given, toward: Option<Toward>) -> pictures::drawing::Drawing {
    let depths = given.numbers("depth").into_iter();
    let depths = depths.map(|typed| typed.map(|typed| typed.text().to_owned()).unwrap_or_default());
    Seat { to_oil: toward.map(|toward| toward == Toward::Oil), depths: depths.collect() }.draw()
}
