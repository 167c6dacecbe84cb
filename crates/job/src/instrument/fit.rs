//! A race that drops in: how hot or how cold, whether the part stands it, and what holds when it runs.

use measure::{Amount, Decimal, Sign, Typed, Unit, real};
use pictures::fit::{State, draw};
use words::{key, say, t};
use workshop::fit::{
    COLDEST, Drop, Expansion, HOTTEST, Part, Warm, cool, gap, heat, rise, when_warm,
};
use workshop::{Figure, Limits, Reading, Refusal};

use super::fit_words;
use super::given::whole;
use super::metal::{GROWING, expansion};
use super::shown::Writing;
use super::{Answer, Given, Instrument, Takes, answered, asked, fold, optional};

const LENGTH: Takes = Takes::Number(Unit::Millimetre, Sign::NotNegative);
const TEMPERATURE: Takes = Takes::Number(Unit::Celsius, Sign::Any);
const GROWTH: Takes = Takes::Number(Unit::PerMillionKelvin, Sign::Positive);
const READ: &[&str] = &["1", "2", "3", "4", "5", "6", "7", "8"];
const HEAT: &str = "outer part heated";

/// Heat or cold for a fit.
pub(super) const FIT: Instrument = Instrument {
    kind: "fit",
    title: "Heat or cold",
    purpose: "How hot or how cold a part must be to drop in, whether it stands that, and what holds when the unit runs.",
    cautions: &[],
    fields: &[
        optional("unit", "The thermometer reads", Takes::Unit(&[Unit::Celsius, Unit::Fahrenheit])),
        asked("way", "Which part", Takes::One(&[HEAT, "inner part cooled"])),
        asked("diameter", "Diameter of the fit", Takes::Number(Unit::Millimetre, Sign::Positive)),
        asked("interference", "Interference on the diameter", LENGTH),
        asked("clearance", "Room it needs to drop", LENGTH),
        asked("outer", "Outer part is of", GROWING),
        optional("outer-own", "Outer part: its own expansion", GROWTH),
        asked("inner", "Inner part is of", GROWING),
        optional("inner-own", "Inner part: its own expansion", GROWTH),
        asked(
            "part",
            "What is heated or cooled",
            Takes::One(&[key!("case"), "bare ring", "cage or seal in it"]),
        ),
        asked("room", "Room, both parts", TEMPERATURE),
        optional("coldest", "Coldest it stands, its maker", TEMPERATURE),
        optional("hottest", "Hottest it stands, its maker", TEMPERATURE),
        optional("read-at", "Time of each reading", Takes::Times(READ)),
        optional(
            "thermometer",
            "Thermometer on the part, read and not guessed",
            Takes::Numbers(Unit::Celsius, Sign::Any, READ),
        ),
        fold("more", "What holds when it runs, and the unit of an own expansion"),
        optional(
            "growth",
            "Expansion is typed in",
            Takes::Unit(&[Unit::PerMillionKelvin, Unit::PerMillionFahrenheit]),
        ),
        optional("running", "Temperature the case runs at", TEMPERATURE),
    ],
    answer,
};

fn answer(given: &mut Given) -> Option<Answer> {
    let (lengths, degrees) = (given.writing("diameter"), given.writing("room"));
    let way = given.word("way");
    let outer = expansion(given, "outer", "outer-own");
    let inner = expansion(given, "inner", "inner-own");
    let heated = way == Some(HEAT);
    let newest = newest(given)?;
    let read = newest.as_ref().map(|(read, _)| Reading::typed(read));
    let drop = drop(given, if heated { outer } else { inner }, read)?;
    let (_, outer, inner) = (way?, outer?, inner?);
    let found = if heated { heat(&drop) } else { cool(&drop) };
    let field = found.as_ref().err().map_or("room", at_field);
    let found = given.at(field, found)?;
    let warm = running(given, &drop, &outer, &inner)?;
    let at = read.or(found.reach.amount().map(|it| Reading::exact(it.value, it.unit)));
    let room = given.at("thermometer", gap(&drop, heated, &at?))?;
    let mut figures = vec![(t("Change needed"), degrees.difference(&found.change))];
    figures.extend(stands(&drop.limits, &degrees).map(|limits| (t("The part stands"), limits)));
    figures.extend(newest.as_ref().map(|newest| (t("Thermometer"), logged(newest, &degrees))));
    figures.push((t("Gap on the diameter then"), lengths.figure(&room)));
    figures.extend(
        warm.as_ref().map(|(_, it)| (t("Interference left, running"), lengths.figure(&it.left))),
    );
    let mut cautions = found.cautions.clone();
    cautions.extend(warm.as_ref().and_then(|(_, it)| it.caution));
    let title = if heated { t("Heat the outer part to") } else { t("Cool the inner part to") };
    let note = say!("from {temperature}", temperature = degrees.typed(drop.room.amount));
    let mut answer = Answer {
        verdict: found.ready.as_ref().map(|ready| ready.verdict),
        headline: Some(degrees.headline(title, &found.reach, note)),
        says: vec![fit_words::ready(&found, read, heated).to_owned(), t(BY_THE_TRADE).to_owned()],
        figures,
        blind: Some(t("A thermometer reads one spot. Heat evenly and read three.").to_owned()),
        picture: Some(picture(&drop, at?, &room, warm.as_ref(), [&lengths, &degrees])),
        ..answered(&cautions, &found.explanation, &lengths)
    };
    if let Some(limit) = found.common_limit {
        let before_last = answer.cautions.len().saturating_sub(1);
        answer.cautions.insert(before_last, fit_words::commonly(limit, heated, &degrees));
    }
    Some(answer)
}

/// The field a refusal belongs to.
fn at_field(why: &Refusal) -> &'static str {
    match why {
        Refusal::BelowAbsoluteZero { what: "thermometer", .. } => "thermometer",
        Refusal::BelowAbsoluteZero { what: COLDEST, .. } => "coldest",
        Refusal::BelowAbsoluteZero { what: HOTTEST, .. } | Refusal::Limits { .. } => "hottest",
        _ => "room",
    }
}

const BY_THE_TRADE: &str = "Seals and O-rings out first. Oven or hot air, never a flame on one spot. Wipe frost off a cooled part. \
     Drop it square, hold it home until it grips. Common practice, no source.";

/// The newest reading of the thermometer and its time, or that there is none; `None` where one of
/// several has no time, or their times do not follow each other.
fn newest(given: &mut Given) -> Option<Option<(Typed, Option<Typed>)>> {
    let (times, readings) = (given.numbers("read-at"), given.numbers("thermometer"));
    let several = readings.iter().flatten().count() > 1;
    let mut newest: Option<(Typed, Option<Typed>)> = None;
    for (line, read) in readings.into_iter().enumerate() {
        let Some(read) = read else { continue };
        let time = times.get(line).cloned().flatten();
        let before = newest.as_ref().and_then(|(_, time)| time.as_ref());
        let says = match (&time, before) {
            (None, _) if several => {
                say!("Reading {} lacks its time. Tap the clock, or type it.", whole(line + 1))
            }
            (Some(time), Some(before)) if !later(time, before) => say!(
                "Reading {}: found {time}, expected more than {before}, the one before. Log each \
                 reading after the one before.",
                whole(line + 1)
            ),
            _ => {
                newest = Some((read, time));
                continue;
            }
        };
        given.refuse("read-at", says);
        return None;
    }
    Some(newest)
}

fn later(time: &Typed, before: &Typed) -> bool {
    let seconds = |typed: &Typed| typed.amount().to(Unit::Second).map(|it| it.value);
    seconds(time) > seconds(before)
}

/// "90 °C at 3.50 min".
fn logged((read, time): &(Typed, Option<Typed>), degrees: &Writing) -> String {
    let read = degrees.converted(read.amount());
    match time {
        Some(time) => say!("{read} at {time}"),
        None => read,
    }
}

/// The fit; `None` while it is not whole.
fn drop(
    given: &mut Given,
    material: Option<Expansion>,
    thermometer: Option<Reading>,
) -> Option<Drop> {
    let part = given.word("part").map(|word| match word {
        "case" => Part::Case,
        "bare ring" => Part::Ring,
        _ => Part::WithPolymer,
    });
    let sizes = (
        given.reading("diameter"),
        given.reading("interference"),
        given.reading("clearance"),
        given.reading("room"),
    );
    let limits = Limits { low: given.amount("coldest"), high: given.amount("hottest") };
    Some(Drop {
        diameter: sizes.0?,
        interference: sizes.1?,
        clearance: sizes.2?,
        room: sizes.3?,
        material: material?,
        part: part?,
        limits,
        thermometer,
    })
}

/// What is left where it runs, and how warm that is; `None` where it cannot be worked out.
fn running(
    given: &mut Given,
    drop: &Drop,
    outer: &Expansion,
    inner: &Expansion,
) -> Option<Option<(Amount, Warm)>> {
    let Some(running) = given.reading("running") else { return Some(None) };
    let rise = given.at("running", rise(&drop.room, &running))?;
    let left = when_warm(&drop.interference, &drop.diameter, outer, inner, rise);
    Some(Some((running.amount, given.at("running", left)?)))
}

/// What its maker says that the part stands.
fn stands(limits: &Limits, degrees: &Writing) -> Option<String> {
    let written = |limit: Option<Amount>| limit.map(|it| degrees.converted(it));
    match (written(limits.low), written(limits.high)) {
        (Some(low), Some(high)) => Some(say!("{low} to {high}, its maker")),
        (None, Some(high)) => Some(say!("up to {high}, its maker")),
        (Some(low), None) => Some(say!("down to {low}, its maker")),
        (None, None) => None,
    }
}

fn picture(
    drop: &Drop,
    at: Reading,
    room: &Figure,
    warm: Option<&(Amount, Warm)>,
    [lengths, degrees]: [&Writing; 2],
) -> pictures::drawing::Drawing {
    let state = |when: Amount, gap: Decimal| State {
        when: degrees.converted(when),
        gap: real::from_decimal(gap),
        size: lengths.small(gap),
    };
    let cold = drop.interference.amount.to(Unit::Millimetre).map_or(Decimal::ZERO, |it| -it.value);
    let mut states = vec![state(drop.room.amount, cold), state(at.amount, room.value)];
    states.extend(warm.map(|(running, it)| state(*running, -it.left.value)));
    draw(&states)
}
