//! Rolling torque: cord and scale, or a wrench; seals in or out; on one shaft, through the gears, and
//! from trial to trial.

use measure::{Sign, Unit};
use words::{key, say, t};
use workshop::drag::{
    Answer as Turned, Drag, Effort, Seals, Trend, When, at_pinion, examine, part_of_shaft, trend,
};
use workshop::{Figure, Limits, Reading};

use super::limit_band::limit_band;
use super::shown::Writing;
use super::{Answer, Given, Instrument, Takes, answered, asked, fold, optional};

const TORQUE: Takes = Takes::Number(Unit::NewtonMetre, Sign::NotNegative);
const TEETH: Takes = Takes::Number(Unit::Piece, Sign::Positive);
const TURNS: &[&str] = &["Turn 1", "Turn 2", "Turn 3"];

/// Cord, drum and scale.
pub(super) const DRAG: Instrument = Instrument {
    kind: "drag",
    title: "Rolling torque",
    purpose: "What the bearings take while they turn slowly and evenly.",
    cautions: &[workshop::Caution::BreakAway],
    fields: &[
        optional(
            "unit",
            "The wrench reads, the limits are in",
            Takes::Unit(&[Unit::NewtonMetre, Unit::PoundForceInch, Unit::PoundForceFoot]),
        ),
        optional(
            "scale",
            "The scale reads",
            Takes::Unit(&[Unit::Newton, Unit::PoundForce, Unit::KilogramForce]),
        ),
        asked("when", "Read", Takes::One(&[key!("running"), key!("break-away")])),
        optional(
            "pull",
            "Pull on the scale",
            Takes::Numbers(Unit::Newton, Sign::NotNegative, TURNS),
        ),
        optional("drum", "Drum diameter", Takes::Number(Unit::Millimetre, Sign::Positive)),
        optional("cord", "Cord thickness", Takes::Number(Unit::Millimetre, Sign::NotNegative)),
        optional(
            "torque",
            "Or torque on a beam or dial wrench",
            Takes::Numbers(Unit::NewtonMetre, Sign::NotNegative, TURNS),
        ),
        asked("seals", "Seals", Takes::One(&[key!("out"), key!("in")])),
        optional("seal-drag", "What the seals take alone", TORQUE),
        optional("low", "Low limit, no seals", TORQUE),
        optional("high", "High limit, no seals", TORQUE),
        fold("more", "On one shaft, through the gears, from trial to trial"),
        optional("before", "The same shaft before the last part went in", TORQUE),
        optional("gear-shaft", "The gear's shaft alone, if this is the pinion's", TORQUE),
        optional("pinion-teeth", "Teeth on the pinion", TEETH),
        optional("gear-teeth", "Teeth on the gear", TEETH),
        optional(
            "earlier",
            "Earlier trials on this shaft, oldest first",
            Takes::Numbers(Unit::NewtonMetre, Sign::NotNegative, &["1", "2", "3", "4"]),
        ),
    ],
    answer,
};

fn answer(given: &mut Given) -> Option<Answer> {
    let writing = shown_in(given);
    let seals = match given.word("seals")? {
        "out" => Seals::Out,
        _ => Seals::In { take: given.reading("seal-drag") },
    };
    let when = if given.word("when")? == "break-away" { When::BreakAway } else { When::Running };
    let limits = Limits { low: given.amount("low"), high: given.amount("high") };
    let drag = Drag { effort: effort(given)?, when, seals, limits };
    let field = if matches!(drag.effort, Effort::Wrench(_)) { "torque" } else { "pull" };
    let found = given.at(field, examine(&drag))?;
    let mut figures = vec![(t("As read"), writing.figure(&found.read))];
    figures.extend(found.bearings.as_ref().map(|it| (t("Bearings alone"), writing.figure(it))));
    let mut more = one_shaft(given, &found.read, &writing)?;
    figures.append(&mut more);
    let trials = trials(given, &found.read, &writing)?;
    let says = match (found.judgement, when, &found.bearings) {
        (Some(_), ..) => t("The bearings alone are held to the limits; seals are taken off."),
        (_, When::BreakAway, _) => {
            t("A peak that starts it is no rolling torque: turn it evenly and read again.")
        }
        (.., None) => {
            t("Seals are in and what they take is not known: no verdict on the bearings.")
        }
        _ => t("No limit typed: no verdict."),
    };
    Some(Answer {
        verdict: found.judgement.map(|judged| judged.verdict),
        headline: Some(headline(&found, &writing)),
        band: found
            .bearings
            .as_ref()
            .filter(|_| found.judgement.is_some())
            .and_then(|it| limit_band(t("Bearings alone"), it, &drag.limits, &writing)),
        says: std::iter::once(says.to_owned()).chain(trials).collect(),
        figures,
        blind: Some(t("One reading cannot tell preload from a dry or dirty bearing.").to_owned()),
        ..answered(&found.cautions, &found.explanation, &writing)
    })
}

/// The unit of the answer: that of the wrench, of the limits, or the one chosen.
fn shown_in(given: &mut Given) -> Writing {
    let writing = given.writing("torque");
    let unit = writing.unit.or(given.writing("high").unit).or(given.writing("low").unit);
    Writing { unit: unit.or_else(|| given.word("unit").and_then(Unit::parse)), ..writing }
}

fn headline(found: &Turned, writing: &Writing) -> super::Headline {
    match &found.bearings {
        Some(bearings) => writing.headline(t("Bearings alone"), bearings, String::new()),
        None => writing.headline(t("As read, seals in"), &found.read, String::new()),
    }
}

/// What the last part takes, and both shafts at the pinion.
fn one_shaft(
    given: &mut Given,
    read: &Figure,
    writing: &Writing,
) -> Option<Vec<(&'static str, String)>> {
    let now = read.amount().map(|it| Reading::exact(it.value, it.unit).within(read.standard()))?;
    let mut figures = Vec::new();
    if let Some(before) = given.reading("before") {
        let part = given.at("before", part_of_shaft(&now, &before))?;
        figures.push((t("The last part takes"), writing.figure(&part)));
    }
    let gear = given.reading("gear-shaft");
    let (few, many) = (given.count("pinion-teeth"), given.count("gear-teeth"));
    match (gear, few, many) {
        (Some(gear), Some(few), Some(many)) => {
            let both = given.at("gear-shaft", at_pinion(&now, &gear, few, many))?;
            figures.push((t("Both shafts at the pinion, without the mesh"), writing.figure(&both)));
        }
        (Some(_), ..) => {
            given.wanted.push(t("Teeth on both gears"));
            return None;
        }
        _ => {}
    }
    Some(figures)
}

/// Which way the trials run; `None` where an earlier one cannot be read.
fn trials(given: &mut Given, read: &Figure, writing: &Writing) -> Option<Option<String>> {
    let mut all = Vec::new();
    for typed in given.numbers("earlier").into_iter().flatten() {
        let drag = Drag {
            effort: Effort::Wrench(Reading::typed(&typed)),
            when: When::Running,
            seals: Seals::Out,
            limits: Limits::default(),
        };
        all.push(given.at("earlier", examine(&drag))?.read);
    }
    if all.is_empty() {
        return Some(None);
    }
    all.push(read.clone());
    let (change, way) = given.at("earlier", trend(&all))?;
    let by = writing.figure(&change);
    Some(Some(match way {
        Trend::Rising => say!("From trial to trial it rises: {by} since the first."),
        Trend::Falling => say!("From trial to trial it falls: {by} since the first."),
        Trend::Level => say!("No trend that this gauge could prove: {by} since the first."),
    }))
}

/// The wrench where one was read, else cord and scale; `None` while either is not whole.
fn effort(given: &mut Given) -> Option<Effort> {
    if let Some(torque) = given.mean("torque") {
        return Some(Effort::Wrench(torque));
    }
    let parts = (given.mean("pull"), given.reading("drum"), given.reading("cord"));
    let (Some(pull), Some(drum), Some(cord)) = parts else {
        given.wanted.push(t("Pull, drum and cord, or the torque on a wrench"));
        return None;
    };
    Some(Effort::Cord { pull, drum, cord })
}
