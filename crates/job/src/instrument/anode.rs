//! Anodes, how far corrosion has gone, and a reference cell.

use measure::{Amount, Decimal, Sign, Typed, Unit, Verdict, real};
use words::{key, say, t};
use workshop::corrosion::{Anode, AnodeAdvice, Cell, anode, cell};
use workshop::{Basis, Caution, Explanation};

use super::{Answer, Given, Instrument, Takes, answered, optional};

const NUMBERED: &[&str] = &["1", "2", "3", "4", "5", "6"];
const GRADES: &[&str] = &["0", "1", "2", "3"];

/// Anodes and corrosion.
pub(super) const ANODE: Instrument = Instrument {
    kind: "anode",
    title: "Anodes and corrosion",
    purpose: "What is left of each anode, how far corrosion has gone, and whether the boat is protected.",
    cautions: &[Caution::ShorePower],
    fields: &[
        optional(
            "left",
            "Left of each anode",
            Takes::Numbers(Unit::Percent, Sign::NotNegative, NUMBERED),
        ),
        optional("painted", "Painted over", Takes::One(&[key!("none"), key!("some")])),
        optional(
            "loose",
            "Loose, or no bright metal under it",
            Takes::One(&[key!("none"), key!("some")]),
        ),
        optional(
            "grade",
            "Corrosion: 0 clean, 1 bloom that wipes off, 2 pits, 3 through a land, seat or thread",
            Takes::One(GRADES),
        ),
        optional("pit", "Deepest pit", Takes::Number(Unit::Millimetre, Sign::NotNegative)),
        optional(
            "cell",
            "Silver chloride cell, drive to water",
            Takes::Number(Unit::Millivolt, Sign::Any),
        ),
        optional("least", "Least negative, manual", Takes::Number(Unit::Millivolt, Sign::Any)),
        optional("most", "Most negative, manual", Takes::Number(Unit::Millivolt, Sign::Any)),
    ],
    answer,
};

fn answer(given: &mut Given) -> Option<Answer> {
    let writing = given.writing("cell");
    let mut says = anodes(given)?;
    let grade = given.word("grade");
    says.extend(grade.map(|grade| corroded(grade).to_owned()));
    let mut figures = Vec::new();
    if let Some(pit) = given.reading("pit") {
        let pit = pit.amount;
        figures.push((t("Deepest pit"), format!("{} {}", pit.value.normalize(), pit.unit)));
    }
    let mut verdict = None;
    if let Some(typed) = given.number("cell") {
        let (judged, shown) = protected(given, &typed)?;
        verdict = judged;
        figures.push((t("Cell"), shown));
        says.push(protection(judged).to_owned());
    }
    if says.is_empty() && figures.is_empty() {
        given.wanted.push(t("What is left of an anode, the corrosion grade, or the cell"));
        return None;
    }
    let why = Explanation {
        formula: "half gone, or painted: replace; between the two limits: protected",
        given: Vec::new(),
        basis: Basis::CommonPractice,
    };
    Some(Answer {
        verdict,
        says,
        figures,
        blind: Some(
            t("An anode that looks whole does nothing without bright metal under it.").into(),
        ),
        ..answered(&[Caution::ShorePower], &why, &writing)
    })
}

/// What to do with each anode; empty where none was looked at.
fn anodes(given: &mut Given) -> Option<Vec<String>> {
    let mut says = Vec::new();
    for (at, typed) in given.numbers("left").into_iter().enumerate() {
        let Some(typed) = typed else { continue };
        let number = super::given::whole(at + 1);
        let found = Anode { left: typed.in_unit(Unit::Percent), painted: false, loose: false };
        says.push(match given.at("left", anode(&found))? {
            AnodeAdvice::Replace => say!("No. {number}: replace, half of it or more is gone."),
            _ => say!("No. {number}: keep."),
        });
    }
    // One sentence: what is said in short is said of all of them.
    let mut says: Vec<String> = if says.is_empty() { says } else { vec![says.join(" ")] };
    if given.word("painted") == Some("some") {
        says.push(t("Painted: replace, paint stops an anode.").to_owned());
    }
    if given.word("loose") == Some("some") {
        says.push(t("Loose: clean the seat to bright metal and tighten it.").to_owned());
    }
    Some(says)
}

/// The verdict, where the manual's limits are typed, and the reading as shown.
fn protected(given: &mut Given, typed: &Typed) -> Option<(Option<Verdict>, String)> {
    let volts = |amount: Amount| amount.to(Unit::Volt).map_or(amount.value, |it| it.value);
    let limits = (given.amount("least"), given.amount("most"));
    let (least, most) = match limits {
        (Some(least), Some(most)) => (volts(least), volts(most)),
        _ => (Decimal::new(-90, 2), Decimal::new(-105, 2)),
    };
    let step = typed.step();
    let read = Cell {
        volts: volts(typed.amount()),
        standard: real::from_decimal(volts(step)) / 12f64.sqrt(),
        limits: [least, most],
    };
    let found = given.at("cell", cell(&read))?;
    let own = limits.0.is_some() && limits.1.is_some();
    let shown = typed.to_string();
    Some((own.then_some(found.judgement.verdict), shown))
}

fn protection(judged: Option<Verdict>) -> &'static str {
    match judged {
        None => t(
            "Common practice, no source: −0.90 to −1.05 V for boats with aluminium drives. Less negative, the drive is not protected; more, the protection itself eats aluminium.",
        ),
        Some(Verdict::InBand) => t("Protected, by the limits of the manual."),
        Some(Verdict::Out) => t(
            "Outside the limits of the manual: too little and too much protection both eat aluminium.",
        ),
        Some(_) => t("Too near a limit to say: read again."),
    }
}

fn corroded(grade: &str) -> &'static str {
    match grade {
        "0" => t("Clean."),
        "1" => t("White bloom: wipe it off, and look at the anodes."),
        "2" => t("Pits away from lands and seats: clean, coat, and measure the deepest."),
        _ => t(
            "Pits through a land, seat or thread: judge the part before anything is fitted to it.",
        ),
    }
}
