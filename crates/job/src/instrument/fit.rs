//! A race that drops in: how hot or how cold, whether the part stands it, and what holds when it runs.

use measure::{Amount, Decimal, Sign, Unit, Verdict, real};
use pictures::fit::{State, draw};
use workshop::fit::{
    Answer as Needed, BEARING_STEEL, BRONZE, CAST_ALUMINIUM, Drop, Expansion, Part, Warm, cool,
    gap, heat, rise, when_warm,
};
use workshop::{Figure, Limits, Reading, Refusal};

use super::shown::Writing;
use super::{Answer, Given, Instrument, Takes, answered, asked, fold, optional};

const LENGTH: Takes = Takes::Number(Unit::Millimetre, Sign::NotNegative);
const TEMPERATURE: Takes = Takes::Number(Unit::Celsius, Sign::Any);
const METALS: Takes = Takes::One(&["aluminium", "steel", "bronze"]);
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
        asked("outer", "Outer part is of", METALS),
        asked("inner", "Inner part is of", METALS),
        asked(
            "part",
            "What is heated or cooled",
            Takes::One(&["case", "bare ring", "cage or seal in it"]),
        ),
        asked("room", "Room, both parts", TEMPERATURE),
        optional("thermometer", "Thermometer on the part, read and not guessed", TEMPERATURE),
        fold("more", "Its maker's limits, and what holds when it runs"),
        optional("coldest", "Coldest it stands, its maker", TEMPERATURE),
        optional("hottest", "Hottest it stands, its maker", TEMPERATURE),
        optional("running", "Temperature the case runs at", TEMPERATURE),
    ],
    answer,
};

fn answer(given: &mut Given) -> Option<Answer> {
    let (lengths, degrees) = (given.writing("diameter"), given.writing("room"));
    let way = given.word("way");
    let (outer, inner) = (metal(given, "outer"), metal(given, "inner"));
    let heated = way == Some(HEAT);
    let material = if heated { outer } else { inner };
    let drop = drop(given, material)?;
    let (_, outer, inner) = (way?, outer?, inner?);
    let found = if heated { heat(&drop) } else { cool(&drop) };
    let field = found.as_ref().err().map_or("room", at_field);
    let found = given.at(field, found)?;
    let warm = running(given, &drop, &outer, &inner)?;
    let at = drop.thermometer.or(found.reach.amount().map(|it| Reading::exact(it.value, it.unit)));
    let room = given.at("thermometer", gap(&drop, heated, &at?))?;
    let mut figures = vec![
        ("Change needed", lengths.figure(&found.change)),
        ("The part stands", stands(&found, &degrees)),
        ("Gap on the diameter then", lengths.figure(&room)),
    ];
    figures.extend(
        warm.as_ref().map(|(_, it)| ("Interference left, running", lengths.figure(&it.left))),
    );
    let mut cautions = found.cautions.clone();
    cautions.extend(warm.as_ref().and_then(|(_, it)| it.caution));
    let title = if heated { "Heat the outer part to" } else { "Cool the inner part to" };
    let note = format!("from {}", degrees.typed(drop.room.amount));
    Some(Answer {
        verdict: found.ready.as_ref().map(|ready| ready.verdict),
        headline: Some(degrees.headline(title, &found.reach, note)),
        says: vec![ready(&found, drop.thermometer, heated).to_owned(), BY_THE_TRADE.to_owned()],
        figures,
        blind: Some("A thermometer reads one spot. Heat evenly and read three.".to_owned()),
        picture: Some(picture(&drop, at?, &room, warm.as_ref(), [&lengths, &degrees])),
        ..answered(&cautions, &found.explanation, &lengths)
    })
}

/// The field a refusal belongs to.
fn at_field(why: &Refusal) -> &'static str {
    match why {
        Refusal::BelowAbsoluteZero { what: "thermometer", .. } => "thermometer",
        Refusal::BelowAbsoluteZero { what: "temperature limit", .. } => "coldest",
        Refusal::Limits { .. } => "hottest",
        _ => "room",
    }
}

const BY_THE_TRADE: &str = "Seals and O-rings out first. Oven or hot air, never a flame on one spot. Wipe frost off a cooled part. \
     Drop it square, hold it home until it grips. Common practice, no source.";

fn metal(given: &mut Given, id: &str) -> Option<Expansion> {
    given.word(id).map(|word| match word {
        "aluminium" => CAST_ALUMINIUM,
        "bronze" => BRONZE,
        _ => BEARING_STEEL,
    })
}

/// The fit; `None` while it is not whole.
fn drop(given: &mut Given, material: Option<Expansion>) -> Option<Drop> {
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
    let thermometer = given.reading("thermometer");
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

fn stands(found: &Needed, degrees: &Writing) -> String {
    let written = |limit: Option<Amount>| limit.map(|it| degrees.converted(it));
    let span = match (written(found.limits.low), written(found.limits.high)) {
        (Some(low), Some(high)) => format!("{low} to {high}"),
        (None, Some(high)) => format!("up to {high}"),
        (Some(low), None) => format!("down to {low}"),
        (None, None) => String::new(),
    };
    let source =
        if found.limits_are_common_practice { "common practice, no source" } else { "its maker" };
    format!("{span}, {source}")
}

fn ready(found: &Needed, thermometer: Option<Reading>, heated: bool) -> &'static str {
    let read = thermometer.and_then(|it| it.amount.to(Unit::Celsius)).map(|it| it.value);
    let (Some(judged), Some(read)) = (&found.ready, read) else {
        return if found.allowed {
            "Read a thermometer on the part itself: without one there is no verdict."
        } else {
            "No: the part does not stand it. Share it between heat and cold, or find another way."
        };
    };
    let short = if heated { read < found.reach.value } else { read > found.reach.value };
    match judged.verdict {
        Verdict::InBand => "The thermometer proves it: drop it in now.",
        Verdict::NearLimit if short => "Too near to say: a little further.",
        Verdict::NearLimit => "Too near to say: read again.",
        Verdict::Out if short => "Not there yet.",
        Verdict::Out => "Beyond what the part stands: let it come back.",
        Verdict::CannotProve => "This thermometer is too coarse to prove it.",
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
