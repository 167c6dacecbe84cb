//! Leak test: one stage held, with its log of pressure and temperature.

use measure::{Amount, Decimal, Sign, Unit, Verdict, real};
use pictures::leak::Curve;
use workshop::leak::{
    Answer as Held, Entry, Hold, Hose, Missing, Outcome, Stage, Test, examine,
    one_bubble_in_ten_seconds,
};
use workshop::{Caution, Reading};

use super::given::whole;
use super::shown::Writing;
use super::{Answer, Asked, Given, Instrument, Takes, answered};

const LINES: &[&str] = &["1", "2", "3", "4", "5", "6", "7", "8"];
const PRESSURE: Takes = Takes::Number(Unit::Kilopascal, Sign::Positive);
const NO_ROD: &str = "none here";

/// The gauge on the closed case.
pub(super) const LEAK: Instrument = Instrument {
    kind: "leak",
    title: "Leak test",
    purpose: "Whether the closed case holds pressure and vacuum while its shafts turn.",
    cautions: &[Caution::StoredPressure, Caution::VacuumOneWaySeal],
    fields: &[
        Asked {
            id: "stage",
            label: "Stage",
            takes: Takes::One(&["low", "working", "vacuum", "not applicable"]),
            optional: false,
        },
        Asked {
            id: "because",
            label: "Not applicable, because",
            takes: Takes::Words,
            optional: true,
        },
        Asked { id: "limit", label: "Never beyond, manual", takes: PRESSURE, optional: false },
        Asked {
            id: "pressure",
            label: "Test pressure or vacuum",
            takes: PRESSURE,
            optional: false,
        },
        Asked {
            id: "time",
            label: "Hold for",
            takes: Takes::Number(Unit::Minute, Sign::Positive),
            optional: false,
        },
        Asked { id: "most-lost", label: "May lose at most", takes: PRESSURE, optional: false },
        Asked {
            id: "at",
            label: "Time of each line",
            takes: Takes::Numbers(Unit::Minute, Sign::NotNegative, LINES),
            optional: false,
        },
        Asked {
            id: "gauge",
            label: "Gauge at each line",
            takes: Takes::Numbers(Unit::Kilopascal, Sign::NotNegative, LINES),
            optional: false,
        },
        Asked {
            id: "case",
            label: "Case temperature at each line",
            takes: Takes::Numbers(Unit::Celsius, Sign::Any, LINES),
            optional: false,
        },
        Asked {
            id: "barometer",
            label: "Barometer at each line; the first alone will do",
            takes: Takes::Numbers(Unit::Kilopascal, Sign::Positive, LINES),
            optional: false,
        },
        Asked {
            id: "turned",
            label: "Shafts turned",
            takes: Takes::One(&["yes", "no", NO_ROD]),
            optional: true,
        },
        Asked {
            id: "moved",
            label: "Shift rod moved",
            takes: Takes::One(&["yes", "no", NO_ROD]),
            optional: true,
        },
        Asked {
            id: "soap",
            label: "Soap on every joint",
            takes: Takes::One(&["none", "bubbles"]),
            optional: true,
        },
        Asked {
            id: "hose",
            label: "Hose into a blank",
            takes: Takes::One(&["tight", "leaks"]),
            optional: true,
        },
        Asked {
            id: "volume",
            label: "Volume of air in the case",
            takes: Takes::Number(Unit::Millilitre, Sign::Positive),
            optional: true,
        },
    ],
    answer,
};

fn answer(given: &mut Given) -> Option<Answer> {
    let stage = match given.word("stage")? {
        "low" => Stage::Low,
        "working" => Stage::Working,
        "vacuum" => Stage::Vacuum,
        _ => return not_applicable(given),
    };
    let writing = given.writing("gauge");
    let hold = hold(given, stage)?;
    given.at("pressure", hold.checked())?;
    let log = log(given)?;
    let done = |word: Option<&str>| match word {
        Some(NO_ROD) => None,
        word => Some(word == Some("yes")),
    };
    let test = Test {
        volume: given.reading("volume"),
        turned: done(given.word("turned")),
        moved: done(given.word("moved")),
        bubbles: given.word("soap").map(|word| word == "bubbles"),
        hose: match given.word("hose") {
            Some("tight") => Hose::Tight,
            Some(_) => Hose::Leaks,
            None => Hose::NotTested,
        },
        hold,
        log,
    };
    let found = given.at("gauge", examine(&test))?;
    let mut figures = vec![("Lost, corrected", writing.figure(&found.lost))];
    figures.extend(found.rate.as_ref().map(|rate| ("Leak rate", writing.figure(rate))));
    figures.extend(found.flow.as_ref().map(|flow| ("The same", writing.figure(flow))));
    let (verdict, says) = verdict(&found.outcome);
    Some(Answer {
        verdict,
        says,
        figures,
        blind: Some(blind(&test, &found, &writing)),
        picture: Some(picture(&test, &found, &writing)),
        ..answered(found.cautions, &found.explanation, &writing)
    })
}

fn not_applicable(given: &mut Given) -> Option<Answer> {
    match given.word("because") {
        Some(because) => Some(Answer {
            says: vec![format!("Not done: {}.", because.trim_end_matches('.'))],
            cautions: vec![Caution::VacuumOneWaySeal.to_string()],
            ..Answer::default()
        }),
        None => {
            given.wanted.push("Not applicable, because");
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
            let says = format!("Line {number} lacks its time or case temperature. Type them too.");
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

fn verdict(outcome: &Outcome) -> (Option<Verdict>, Vec<String>) {
    let (verdict, says) = match outcome {
        Outcome::NotYet(missing) => {
            let wanted: Vec<&str> = missing.iter().map(|it| undone(*it)).collect();
            let says =
                format!("No verdict yet. {} A still test can hide a bad lip.", wanted.join(" "));
            return (None, vec![says]);
        }
        Outcome::Pass => {
            (Verdict::InBand, "Held for the whole time while turning, without a bubble.")
        }
        Outcome::Bubbles => (Verdict::Out, "Bubbles: a leak, whatever the gauge says."),
        Outcome::Leaks => {
            (Verdict::Out, "It leaks: more was lost than allowed, and the hose is tight.")
        }
        Outcome::TestTheHose => (
            Verdict::Out,
            "More was lost than allowed. Test the hose into a blank before the case is blamed.",
        ),
        Outcome::MendTheHose => (Verdict::Out, "The hose leaks: mend it and start over."),
        Outcome::ReadAgain => (Verdict::NearLimit, "Too near the limit: hold again, or longer."),
        Outcome::CannotProve => {
            (Verdict::CannotProve, "These gauges are too coarse to prove this limit.")
        }
    };
    (Some(verdict), vec![says.to_owned()])
}

fn undone(missing: Missing) -> &'static str {
    match missing {
        Missing::Time => "Hold for the whole time.",
        Missing::Turned => "Turn the shafts.",
        Missing::Moved => "Move the shift rod.",
        Missing::Soap => "Soap every joint and look.",
    }
}

fn blind(test: &Test, found: &Held, writing: &Writing) -> String {
    let exact = |amount: Amount| Reading::exact(amount.value, amount.unit);
    let bubble = match (&test.volume, test.log.first()) {
        (Some(volume), Some(first)) => {
            one_bubble_in_ten_seconds(volume, &exact(test.hold.time), &first.barometer).ok()
        }
        _ => None,
    };
    let mut says = vec!["A gauge sees far less than soap does.".to_owned()];
    if let Some(least) = &found.least_seen {
        says.push(format!("This log cannot show a leak below {}.", writing.plain(least)));
    }
    if let Some(bubble) = bubble {
        let taken = writing.plain(&bubble);
        says.push(format!("One bubble in ten seconds takes {taken} off it in that time."));
    }
    says.join(" ")
}

fn picture(test: &Test, found: &Held, writing: &Writing) -> pictures::drawing::Drawing {
    let unit = writing.unit.unwrap_or(Unit::Kilopascal);
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
    }
    .draw(|value| {
        real::to_decimal(value, 1).map(|it| measure::show(it, 1, writing.mark)).unwrap_or_default()
    })
}
