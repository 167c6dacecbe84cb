//! Rolling torque: cord and scale, or a wrench; seals in or out.

use measure::{Sign, Unit};
use workshop::Limits;
use workshop::drag::{Drag, Effort, Seals, When, examine};

use super::{Answer, Asked, Given, Instrument, Takes, answered};

const TORQUE: Takes = Takes::Number(Unit::NewtonMetre, Sign::NotNegative);

/// Cord, drum and scale.
pub(super) const DRAG: Instrument = Instrument {
    kind: "drag",
    title: "Rolling torque",
    purpose: "What the bearings take while they turn slowly and evenly.",
    cautions: &[workshop::Caution::BreakAway],
    fields: &[
        Asked {
            id: "when",
            label: "Read",
            takes: Takes::One(&["running", "break-away"]),
            optional: false,
        },
        Asked {
            id: "pull",
            label: "Pull on the scale",
            takes: Takes::Number(Unit::Newton, Sign::NotNegative),
            optional: true,
        },
        Asked {
            id: "drum",
            label: "Drum diameter",
            takes: Takes::Number(Unit::Millimetre, Sign::Positive),
            optional: true,
        },
        Asked {
            id: "cord",
            label: "Cord thickness",
            takes: Takes::Number(Unit::Millimetre, Sign::NotNegative),
            optional: true,
        },
        Asked { id: "torque", label: "Or torque on the wrench", takes: TORQUE, optional: true },
        Asked { id: "seals", label: "Seals", takes: Takes::One(&["out", "in"]), optional: false },
        Asked {
            id: "seal-drag",
            label: "What the seals take alone",
            takes: TORQUE,
            optional: true,
        },
        Asked { id: "low", label: "Low limit, no seals", takes: TORQUE, optional: true },
        Asked { id: "high", label: "High limit, no seals", takes: TORQUE, optional: true },
    ],
    answer,
};

fn answer(given: &mut Given) -> Option<Answer> {
    let mut writing = given.writing("torque");
    writing.unit = writing.unit.or(given.writing("high").unit);
    let seals = match given.word("seals")? {
        "out" => Seals::Out,
        _ => Seals::In { take: given.reading("seal-drag") },
    };
    let when = if given.word("when")? == "break-away" { When::BreakAway } else { When::Running };
    let limits = Limits { low: given.amount("low"), high: given.amount("high") };
    let drag = Drag { effort: effort(given)?, when, seals, limits };
    let field = if matches!(drag.effort, Effort::Wrench(_)) { "torque" } else { "pull" };
    let found = given.at(field, examine(&drag))?;
    let mut figures = vec![("As read", writing.figure(&found.read))];
    figures.extend(found.bearings.as_ref().map(|it| ("Bearings alone", writing.figure(it))));
    let says = match (found.judgement, when, &found.bearings) {
        (Some(_), ..) => "The bearings alone are held to the limits; seals are taken off.",
        (_, When::BreakAway, _) => {
            "A peak that starts it is no rolling torque: turn it evenly and read again."
        }
        (.., None) => "Seals are in and what they take is not known: no verdict on the bearings.",
        _ => "No limit typed: no verdict.",
    };
    Some(Answer {
        verdict: found.judgement.map(|judged| judged.verdict),
        says: vec![says.to_owned()],
        figures,
        blind: Some("One reading cannot tell preload from a dry or dirty bearing.".to_owned()),
        ..answered(&found.cautions, &found.explanation, &writing)
    })
}

/// The wrench where one was read, else cord and scale; `None` while either is not whole.
fn effort(given: &mut Given) -> Option<Effort> {
    if let Some(torque) = given.reading("torque") {
        return Some(Effort::Wrench(torque));
    }
    let parts = (given.reading("pull"), given.reading("drum"), given.reading("cord"));
    let (Some(pull), Some(drum), Some(cord)) = parts else {
        given.wanted.push("Pull, drum and cord, or the torque on a wrench");
        return None;
    };
    Some(Effort::Cord { pull, drum, cord })
}
