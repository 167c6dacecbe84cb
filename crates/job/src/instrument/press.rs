//! Press fit: the force to push it home, from the two diameters as measured.

use measure::{Amount, Decimal, Sign, Unit, real};
use pictures::fit::{State, draw};
use words::{say, t};
use workshop::press::{Press, examine, interference};
use workshop::{Figure, Reading};

use super::metal::{STIFF, elastic};
use super::shown::Writing;
use super::{Answer, Given, Instrument, Takes, answered, asked, optional};

const DIAMETER: Takes = Takes::Number(Unit::Millimetre, Sign::Positive);

/// Two rings under a press.
pub(super) const PRESS: Instrument = Instrument {
    kind: "press",
    title: "Press fit",
    purpose: "What the press must push at the end of the stroke, and what the fit does to the metal round it.",
    cautions: &[workshop::Caution::Press],
    fields: &[
        optional(
            "unit",
            "The press reads",
            Takes::Unit(&[Unit::Newton, Unit::PoundForce, Unit::KilogramForce]),
        ),
        asked("outside", "Outside of the inner part, at 20 °C", DIAMETER),
        asked("hole", "Bore it goes into, at 20 °C", DIAMETER),
        asked(
            "inside",
            "Bore of the inner part; 0 for a solid shaft",
            Takes::Number(Unit::Millimetre, Sign::NotNegative),
        ),
        asked("around", "Outside of the metal round it, where it is thinnest", DIAMETER),
        asked("length", "Length of the contact", DIAMETER),
        asked("inner", "Inner part is of", STIFF),
        asked("outer", "Outer part is of", STIFF),
        asked(
            "friction",
            "Friction; 0.10 oiled to 0.20 dry, common practice, no source",
            Takes::One(&["0.10", "0.15", "0.20"]),
        ),
    ],
    answer,
};

fn answer(given: &mut Given) -> Option<Answer> {
    let writing = given.writing("outside");
    let (outside, hole) = (given.reading("outside"), given.reading("hole"));
    let sizes = (given.reading("inside"), given.reading("around"), given.reading("length"));
    let metals = (elastic(given, "inner"), elastic(given, "outer"));
    let friction = given.word("friction").and_then(|word| word.parse().ok());
    let (outside, hole) = (outside?, hole?);
    let over = given.at("hole", interference(&outside, &hole))?;
    let press = Press {
        interference: over
            .amount()
            .map(|it| Reading::exact(it.value, it.unit))?
            .within(over.standard()),
        bore: sizes.0?,
        meeting: hole,
        outside: sizes.1?,
        length: sizes.2?,
        friction: friction?,
        inner: metals.0?,
        outer: metals.1?,
    };
    let found = given.at("around", examine(&press))?;
    let said = writing.small(over.value);
    let picture = picture(&over, &said, &writing);
    let newtons = Writing { unit: given.word("unit").and_then(Unit::parse), ..writing };
    Some(Answer {
        headline: Some(newtons.headline(
            t("Push at the end of the stroke"),
            &found.force,
            say!("for {said} on the diameter"),
        )),
        says: vec![
            t("Push on the fitted ring only, square. It is home when feel and ring change; stop if the \
             force jumps before.")
                .to_owned(),
        ],
        figures: vec![
            (t("Pressure between them"), writing.figure(&found.pressure)),
            (t("Pull in the metal round it"), writing.figure(&found.hub_stress)),
            (t("Slips at"), writing.figure(&found.slip_torque)),
        ],
        blind: Some(
            t("A thick-walled ring is reckoned: ribs and a case that is not round change it. Taper, \
             scratches and dirt show only in the force.")
                .to_owned(),
        ),
        picture: Some(picture),
        ..answered(found.cautions, &found.explanation, &writing)
    })
}

fn picture(over: &Figure, said: &str, writing: &Writing) -> pictures::drawing::Drawing {
    let celsius = Amount { value: Decimal::from(20), unit: Unit::Celsius };
    let gap = -real::from_decimal(over.value);
    draw(&[State { when: writing.typed(celsius), gap, size: said.to_owned() }])
}
