//! Leak test: one stage held, with its log of pressure and temperature.

use measure::{Amount, Decimal, Sign, Unit, real};
use pictures::leak::Curve;
use words::{key, say, t};
use workshop::leak::{
    Answer as Held, Blank, Entry, Hold, Hose, Stage, Test, blank as into_a_blank, examine, within,
};
use workshop::{Caution, Limits, Reading, Refusal};

use super::given::whole;
use super::leak_acts::{ACTS, Acts, NONE, acts};
use super::leak_words::{blind, verdict, waits};
use super::limit_band::limit_band;
use super::shown::{Writing, tenths};
use super::{Answer, Given, Instrument, Takes, answered, asked, fold, leak_sheet, optional};

const LINES: &[&str] = &["1", "2", "3", "4", "5", "6", "7", "8"];
const PRESSURE: Takes = Takes::Number(Unit::Kilopascal, Sign::Positive);
/// The word of a stage that this unit has not.
pub(super) const NOT_APPLICABLE: &str = "not applicable";

/// The gauge on the closed case.
pub(super) const LEAK: Instrument = Instrument {
    kind: "leak",
    title: "Leak test",
    purpose: "Whether the closed case holds pressure and vacuum while its shafts turn.",
    cautions: &[Caution::StoredPressure, Caution::VacuumOneWaySeal],
    fields: &[
        asked(
            "stage",
            "Stage",
            Takes::One(&[key!("low"), key!("working"), key!("vacuum"), NOT_APPLICABLE]),
        ),
        optional("because", "Not applicable, because", Takes::Words),
        optional(leak_sheet::SOURCE, "Where these numbers are from", Takes::Words),
        optional(
            "unit",
            "The gauge reads",
            Takes::Unit(&[
                Unit::Kilopascal,
                Unit::PoundPerSquareInch,
                Unit::Bar,
                Unit::InchOfMercury,
            ]),
        ),
        optional(
            "degrees",
            "The thermometer reads",
            Takes::Unit(&[Unit::Celsius, Unit::Fahrenheit]),
        ),
        asked("limit", "Never beyond, manual", PRESSURE),
        asked("pressure", "Test pressure or vacuum", PRESSURE),
        asked("time", "Hold for", Takes::Number(Unit::Minute, Sign::Positive)),
        asked("most-lost", "May lose at most", PRESSURE),
        asked("at", "Time of each line", Takes::Times(LINES)),
        asked(
            "gauge",
            "Gauge at each line",
            Takes::Numbers(Unit::Kilopascal, Sign::NotNegative, LINES),
        ),
        asked(
            "case",
            "Case temperature at each line",
            Takes::Numbers(Unit::Celsius, Sign::Any, LINES),
        ),
        asked(
            "barometer",
            "Barometer at each line; the first alone will do",
            Takes::Numbers(Unit::Kilopascal, Sign::Positive, LINES),
        ),
        optional("acts", "Turned and moved under pressure", Takes::Acts(ACTS)),
        optional("soap", "Soap on every joint", Takes::One(&[key!("none"), key!("bubbles")])),
        optional("hose", "Hose into a blank", Takes::One(&[key!("tight"), key!("leaks")])),
        fold("by-word", "Turned and moved without the clock, or none here"),
        optional("turned", "Shafts turned", Takes::One(&[key!("yes"), key!("no"), NONE])),
        optional("moved", "Shift rod moved", Takes::One(&[key!("yes"), key!("no"), NONE])),
        fold("more", "Hose into a blank, volume of air"),
        optional(
            "blank-gauge",
            "Hose into a blank: the gauge",
            Takes::Numbers(Unit::Kilopascal, Sign::NotNegative, &["Start", "End"]),
        ),
        optional("blank-time", "Blank held for", Takes::Number(Unit::Minute, Sign::Positive)),
        optional(
            "volume",
            "Volume of air in the case",
            Takes::Number(Unit::Millilitre, Sign::Positive),
        ),
    ],
    answer,
};

fn answer(given: &mut Given) -> Option<Answer> {
    let stage = given.word("stage");
    if stage == Some(NOT_APPLICABLE) {
        return not_applicable(given);
    }
    warned(given)?;
    let stage = match stage? {
        "low" => Stage::Low,
        "working" => Stage::Working,
        _ => Stage::Vacuum,
    };
    let writing = given.writing("gauge");
    let hold = hold(given, stage)?;
    given.at("pressure", hold.checked())?;
    let log = log(given)?;
    let blank = blank(given, &hold, &log)?;
    let acts = acts(given, log.first()?)?;
    let test = Test {
        volume: given.reading("volume"),
        turned: acts.turned,
        moved: acts.moved,
        bubbles: given.word("soap").map(|word| word == "bubbles"),
        hose: match (&blank, given.word("hose")) {
            (Some(blank), _) => blank.hose,
            (None, Some("tight")) => Hose::Tight,
            (None, Some(_)) => Hose::Leaks,
            (None, None) => Hose::NotTested,
        },
        hold,
        log,
    };
    let found = examine(&test);
    let field = found.as_ref().err().map_or("gauge", at_field);
    let found = given.at(field, found)?;
    let mut figures = now(&found, &writing);
    figures.extend(blank.map(|blank| (t("Hose and blank lost"), of_hose(&blank, &writing))));
    figures.extend(found.rate.as_ref().map(|rate| (t("Leak rate"), writing.figure(rate))));
    figures.extend(found.flow.as_ref().map(|flow| (t("The same"), writing.figure(flow))));
    let (verdict, says) = verdict(&found.outcome);
    Some(Answer {
        verdict,
        waits: waits(&found.outcome, &acts),
        headline: Some(writing.headline(
            t("Lost, corrected"),
            &found.lost,
            say!("of {} allowed", writing.typed(test.hold.most_lost)),
        )),
        band: limit_band(t("Lost"), &found.lost, &Limits::at_most(test.hold.most_lost), &writing),
        says,
        figures,
        blind: Some(blind(&test, &found, &writing)),
        picture: Some(picture(&test, &found, &acts, &writing)),
        ..answered(found.cautions, &found.explanation, &writing)
    })
}

/// The column of the log that a refusal belongs to.
fn at_field(why: &Refusal) -> &'static str {
    match why {
        Refusal::BelowAbsoluteZero { .. } => "case",
        Refusal::NotMore { what: "time", .. } => "at",
        Refusal::NotMore { .. } => "barometer",
        _ => "gauge",
    }
}

/// Where to stop, as soon as the limit is typed; `None` where what stands beside it is beyond already,
/// which is refused whatever else is still wanted.
fn warned(given: &mut Given) -> Option<()> {
    let Some(limit) = given.there("limit").into_iter().flatten().next() else { return Some(()) };
    for field in ["pressure", "gauge", "blank-gauge"] {
        for found in given.there(field).into_iter().flatten() {
            let within = within(limit.amount(), found.amount());
            if let Err(why @ Refusal::OverPressure { .. }) = &within {
                given.alarm = Some((t("Too much pressure."), why.to_string()));
            }
            given.at(field, within)?;
        }
    }
    let says = say!("Hand pump only. Stop at {}.", given.writing("gauge").typed(limit.amount()));
    given.alarm = Some((t("Stay out of line with plugs."), says));
    Some(())
}

/// What the gauge shows at the last line, and what it would without temperature and weather.
fn now(found: &Held, writing: &Writing) -> Vec<(&'static str, String)> {
    let Some(last) = found.curve.last() else { return Vec::new() };
    let raw = Amount { value: last.raw, unit: Unit::Kilopascal };
    vec![
        (t("Raw now"), writing.converted(raw)),
        (t("Corrected now"), writing.figure(&last.corrected)),
    ]
}

/// What hose and blank lost, where that was read; `None` while it is not whole.
fn blank(given: &mut Given, hold: &Hold, log: &[Entry]) -> Option<Option<Blank>> {
    let gauge: Vec<Reading> =
        given.numbers("blank-gauge").iter().flatten().map(Reading::typed).collect();
    let (Some(first), [from, to]) = (log.first(), gauge.as_slice()) else {
        return Some(None);
    };
    let Some(time) = given.amount("blank-time") else {
        given.want_field("blank-time");
        return None;
    };
    let start = Amount { value: Decimal::ZERO, unit: Unit::Minute };
    let line = |at, gauge: &Reading| Entry { at, gauge: *gauge, ..*first };
    let lines = [line(start, from), line(time, to)];
    let found = into_a_blank(hold, &lines);
    given.at("blank-gauge", found).map(Some)
}

/// What the hose lost, of its share of the loss allowed: it was held for a time of its own.
fn of_hose(blank: &Blank, writing: &Writing) -> String {
    let places = blank.allowed.value.scale().min(2);
    let allowed = Amount { value: measure::round(blank.allowed.value, places), ..blank.allowed };
    say!("{} of {} allowed in that time", writing.figure(&blank.lost), writing.typed(allowed))
}

fn not_applicable(given: &mut Given) -> Option<Answer> {
    match given.word("because") {
        Some(because) => Some(Answer {
            says: vec![say!("Not done: {}.", because.trim_end_matches('.'))],
            cautions: vec![Caution::VacuumOneWaySeal.to_string()],
            ..Answer::default()
        }),
        None => {
            given.want_field("because");
            None
        }
    }
}

/// The plan of the stage; `None` while it is not whole.
fn hold(given: &mut Given, stage: Stage) -> Option<Hold> {
    let limit = given.amount("limit");
    let pressure = given.amount("pressure");
    let time = given.amount("time");
    let most_lost = given.amount("most-lost");
    Some(Hold { stage, pressure: pressure?, time: time?, most_lost: most_lost?, limit: limit? })
}

/// The lines that have a pressure; `None` while none is whole.
fn log(given: &mut Given) -> Option<Vec<Entry>> {
    let at = given.numbers("at");
    let gauge = given.numbers("gauge");
    let case = given.numbers("case");
    let barometer = given.numbers("barometer");
    let first = barometer.iter().flatten().next().map(Reading::typed);
    let mut log = Vec::new();
    for (line, read) in gauge.iter().enumerate().filter_map(|(line, it)| Some((line, it.as_ref()?)))
    {
        let of = |column: &[Option<measure::Typed>]| column.get(line).cloned().flatten();
        let (Some(time), Some(temperature), Some(first)) = (of(&at), of(&case), first) else {
            let number = whole(line + 1);
            let says = say!("Line {number} lacks its time or case temperature. Type them too.");
            if first.is_some() {
                given.refuse("gauge", says);
            }
            return None;
        };
        // Not read again, the weather may have moved it by 0.1 kPa.
        let again = of(&barometer).map(|typed| Reading::typed(&typed));
        let kept = || if log.is_empty() { first } else { weathered(first) };
        log.push(Entry {
            at: time.amount(),
            gauge: Reading::typed(read),
            case: Reading::typed(&temperature),
            barometer: again.unwrap_or_else(kept),
        });
    }
    (!log.is_empty()).then_some(log)
}

fn weathered(barometer: Reading) -> Reading {
    let tenth = Amount { value: Decimal::new(1, 1), unit: Unit::Kilopascal };
    let own = tenth.to(barometer.amount.unit).map_or(0.1, |it| real::from_decimal(it.value));
    barometer.within(barometer.standard.hypot(own))
}

fn picture(
    test: &Test,
    found: &Held,
    acts: &Acts,
    writing: &Writing,
) -> pictures::drawing::Drawing {
    let unit = writing.into(Unit::Kilopascal).unwrap_or(Unit::Kilopascal);
    let own = |kilopascal: Decimal| {
        let amount = Amount { value: kilopascal, unit: Unit::Kilopascal };
        real::from_decimal(amount.to(unit).map_or(kilopascal, |it| it.value))
    };
    let minutes = |seconds: Decimal| real::from_decimal(seconds) / 60.0;
    let line = |value: fn(&workshop::leak::Point) -> Decimal| {
        found.curve.iter().map(|it| (minutes(it.seconds), own(value(it)))).collect::<Vec<_>>()
    };
    let first = found.curve.first().map(|point| point.raw).unwrap_or_default();
    let lost = test.hold.most_lost.to(Unit::Kilopascal).map(|it| it.value).unwrap_or_default();
    Curve {
        raw: line(|point| point.raw),
        corrected: line(|point| point.corrected.value),
        limit: own(first - lost),
        minutes: test.hold.time.to(Unit::Minute).map_or(1.0, |it| real::from_decimal(it.value)),
        unit: unit.symbol(),
        flags: acts.flags(),
    }
    .draw(|value| {
        let places = tenths(unit);
        let value = real::to_decimal(value, places);
        value.map(|it| measure::show(it, places, writing.mark)).unwrap_or_default()
    })
}
