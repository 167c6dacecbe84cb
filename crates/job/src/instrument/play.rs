//! End play: pushed and pulled, the pack that makes the setting wanted, and what heat does to it.

use measure::{Sign, Typed, Unit};
use pictures::gauge::Gauge;
use words::{say, t};
use workshop::fit::{BEARING_STEEL, CAST_ALUMINIUM, rise};
use workshop::setting::{Answer as Set, Mounting, PushPull, Row, change, end_play, pack, warmed};
use workshop::{Limits, Reading};

use super::limit_band::limit_band;
use super::shown::Writing;
use super::{Answer, Given, Instrument, Takes, answered, asked, fold, optional};

const LENGTH: Takes = Takes::Number(Unit::Millimetre, Sign::NotNegative);
const INDICATOR: Takes = Takes::Numbers(Unit::Millimetre, Sign::Any, &["1", "2", "3"]);
const TEMPERATURE: Takes = Takes::Number(Unit::Celsius, Sign::Any);
const ROWS: &[&str] = &["Row 1", "Row 2"];
const CLOSES: &str = "closes play";
const LOOSENS: &str = "loosens them";

/// The indicator on the end of a shaft.
pub(super) const PLAY: Instrument = Instrument {
    kind: "play",
    title: "End play",
    purpose: "How far a shaft moves along itself, the pack that makes the setting wanted, and what a warm case does to it.",
    cautions: &[],
    fields: &[
        asked("pulled", "Indicator, pulled", INDICATOR),
        optional("pushed", "Indicator, pushed; empty if it was set to zero there", INDICATOR),
        optional("low", "Low limit of the manual", LENGTH),
        optional("high", "High limit of the manual", LENGTH),
        fold("for-setting", "The pack for a setting"),
        optional(
            "wanted",
            "Setting wanted: end play, or preload with a minus",
            Takes::Number(Unit::Millimetre, Sign::Any),
        ),
        optional("pack", "Pack that is in", LENGTH),
        optional("thicker", "A thicker pack", Takes::One(&[CLOSES, "opens play"])),
        fold("for-heat", "What a warm case does to it"),
        optional("unit", "The thermometer reads", Takes::Unit(&[Unit::Celsius, Unit::Fahrenheit])),
        optional("cold", "Temperature now, all parts", TEMPERATURE),
        optional("warm", "Temperature it runs at", TEMPERATURE),
        optional(
            "cup",
            "Outside diameter of each cup",
            Takes::Numbers(Unit::Millimetre, Sign::Positive, ROWS),
        ),
        optional(
            "half-angle",
            "Half the angle of each cup's cone",
            Takes::Numbers(Unit::Degree, Sign::Positive, ROWS),
        ),
        optional("spread", "Distance between the rows", LENGTH),
        optional(
            "longer",
            "An aluminium case that grows longer than the steel shaft",
            Takes::One(&[LOOSENS, "tightens them"]),
        ),
    ],
    answer,
};

fn answer(given: &mut Given) -> Option<Answer> {
    let writing = given.writing("pulled");
    let readings = readings(given)?;
    let limits = Limits { low: given.amount("low"), high: given.amount("high") };
    let found = given.at("high", end_play(&readings, &limits))?;
    let play = found.figure.amount().map(|it| Reading::exact(it.value, it.unit))?;
    let play = play.within(found.figure.standard());
    let mut figures = setting(given, &play, &writing)?;
    let heat = heated(given)?;
    let mut says = vec![
        if found.judgement.is_some() {
            t("Held to the limits.")
        } else {
            t("No limit typed: no verdict.")
        }
        .to_owned(),
    ];
    if let Some(heat) = heat {
        figures.push((t("Warm, it changes by"), writing.figure(&heat.figure)));
        says.push(
            t("Above zero is looser. Which mounting loosens is a trap: look at the section before you \
             choose.")
                .to_owned(),
        );
    }
    Some(Answer {
        verdict: found.judgement.map(|judged| judged.verdict),
        headline: Some(writing.headline(t("End play"), &found.figure, spread(&readings))),
        band: limit_band(t("End play"), &found.figure, &limits, &writing),
        says,
        figures,
        blind: Some(
            t("A base that bends and an indicator beside the axis read as play. Turn the shaft first, so \
             that the rollers seat; push and pull alike while it swings, stop, read. Common practice, \
             no source.")
                .to_owned(),
        ),
        picture: Some(Gauge::EndPlay.draw()),
        ..answered(found.cautions, &found.explanation, &writing)
    })
}

fn spread(readings: &[PushPull]) -> String {
    match readings.len() {
        1 => t("one push and pull").to_owned(),
        count => say!("mean of {count} pushes and pulls"),
    }
}

/// Each pull with its push; a push that is missing is zero where none was read.
fn readings(given: &mut Given) -> Option<Vec<PushPull>> {
    let (pulled, pushed) = (given.numbers("pulled"), given.numbers("pushed"));
    let none = pushed.iter().all(Option::is_none);
    let mut readings = Vec::new();
    for (at, pulled) in pulled.iter().enumerate() {
        let pushed = pushed.get(at).and_then(Option::as_ref);
        let zero = |typed: &Typed| {
            let exact = Reading::exact(measure::Decimal::ZERO, typed.unit());
            exact.within(Reading::typed(typed).standard)
        };
        match (pulled, pushed) {
            (Some(pulled), Some(pushed)) => readings
                .push(PushPull { pushed: Reading::typed(pushed), pulled: Reading::typed(pulled) }),
            (Some(pulled), None) if none => {
                readings.push(PushPull { pushed: zero(pulled), pulled: Reading::typed(pulled) });
            }
            (None, None) => {}
            _ => {
                let says =
                    t("Found a push without its pull, or a pull without its push. Type both, or \
                            leave all pushes empty if the indicator was set to zero there.");
                given.refuse("pushed", says.to_owned());
                return None;
            }
        }
    }
    (!readings.is_empty()).then_some(readings)
}

/// How much the pack must change for the setting wanted, and the pack itself.
fn setting(
    given: &mut Given,
    play: &Reading,
    writing: &Writing,
) -> Option<Vec<(&'static str, String)>> {
    let Some(wanted) = given.reading("wanted") else { return Some(Vec::new()) };
    let by = given.at("wanted", change(play, &wanted))?;
    let mut figures = vec![(t("To close"), writing.figure(&by.figure))];
    if let (Some(test), Some(thicker)) = (given.reading("pack"), given.word("thicker")) {
        let sign = if thicker == CLOSES { 1 } else { -1 };
        let next = given.at("pack", pack(&test, play, &wanted, sign))?;
        figures.push((t("Pack for it"), writing.figure(&next.figure)));
    }
    Some(figures)
}

/// What warming does, where it is asked; `None` while that is not whole.
fn heated(given: &mut Given) -> Option<Option<Set>> {
    let (Some(cold), Some(warm)) = (given.reading("cold"), given.reading("warm")) else {
        return Some(None);
    };
    let (cups, angles) = (given.numbers("cup"), given.numbers("half-angle"));
    let rows = cups.into_iter().zip(angles).filter_map(|(cup, angle)| {
        Some(Row { cup: Reading::typed(&cup?), half_angle: Reading::typed(&angle?) })
    });
    let rows: Vec<Row> = rows.collect();
    let (Some(spread), Some(longer)) = (given.reading("spread"), given.word("longer")) else {
        given.wanted.push(t("Distance between the rows, and what a longer case does"));
        return None;
    };
    let mounting = match longer {
        LOOSENS => Mounting::LongerLoosens,
        _ => Mounting::LongerTightens,
    };
    let materials = [&CAST_ALUMINIUM, &BEARING_STEEL];
    let rise = given.at("warm", rise(&cold, &warm))?;
    Some(Some(given.at("half-angle", warmed(&rows, &spread, mounting, materials, rise))?))
}
