//! Runout round one turn of a shaft, a second place along it, and a face.

use measure::{Amount, Decimal, Sign, Typed, Unit, real};
use pictures::left_over::LeftOver;
use pictures::runout::Polar;
use words::{say, t};
use workshop::runout::{Along, Answer as Turned, Cause, Face, Finding, Turn, examine, tell_apart};
use workshop::{Limits, Reading, Refusal};

use super::given::whole;
use super::limit_band::limit_band;
use super::shown::Writing;
use super::{Answer, Given, Instrument, Takes, answered, fold, optional};

const CLOCK: &[&str] = &["12 h", "1:30", "3 h", "4:30", "6 h", "7:30", "9 h", "10:30"];
const OWN: &[&str] = &["1", "2", "3", "4", "5", "6", "7", "8", "9", "10", "11", "12"];
const AT_OWN: Takes = Takes::Numbers(Unit::Millimetre, Sign::Any, OWN);
const DIAL: Takes = Takes::Numbers(Unit::Millimetre, Sign::Any, CLOCK);
const LENGTH: Takes = Takes::Number(Unit::Millimetre, Sign::Positive);

/// The indicator on a turning shaft.
pub(super) const RUNOUT: Instrument = Instrument {
    kind: "runout",
    title: "Runout",
    purpose: "How far off centre a shaft turns, where it is highest, and whether it is bent, cocked or out of round.",
    cautions: &[],
    fields: &[
        optional("readings", "Readings round one turn", DIAL),
        optional("closing", "Back at 12 h", Takes::Number(Unit::Millimetre, Sign::Any)),
        optional("limit", "Limit of the manual, total", LENGTH),
        fold("second", "A second place, and a face"),
        optional("along", "Readings at a second place", DIAL),
        optional("distance", "How far along it is", LENGTH),
        optional("face", "Readings on a face", DIAL),
        optional("radius", "Radius of the face reading", LENGTH),
        fold("own", "Other places than these hours"),
        optional(
            "angle",
            "Other places: angle from the mark",
            Takes::Numbers(Unit::Degree, Sign::Any, OWN),
        ),
        optional("at-angle", "Reading at each of those", AT_OWN),
        optional("along-angle", "The same at the second place", AT_OWN),
        optional("face-angle", "The same on the face", AT_OWN),
    ],
    answer,
};

fn answer(given: &mut Given) -> Option<Answer> {
    let writing = given.writing("readings");
    let writing = if writing.unit.is_some() { writing } else { given.writing("at-angle") };
    let limits = Limits { low: None, high: given.amount("limit") };
    let closing = given.reading("closing");
    let readings = every(given, ["readings", "at-angle"])?;
    let Some(readings) = readings else {
        given.want_field("readings");
        return None;
    };
    let turn = Turn { readings, closing, limits };
    let found = examine(&turn);
    let found = given.at(at_field(&found, "readings"), found)?;
    let along = second(given, ["along", "along-angle"], "distance")?;
    let face = second(given, ["face", "face-angle"], "radius")?;
    let causes = tell_apart(
        &found,
        along.as_ref().map(|(turn, distance)| Along { turn, distance: *distance }),
        face.as_ref().map(|(turn, radius)| Face { turn, radius: *radius }),
    );
    let causes = given.at("distance", causes)?;
    let high = found.high_spot.as_ref().map(|spot| hour(spot.value));
    let mut figures = vec![(t("Off centre"), writing.figure(&found.off_centre))];
    figures.extend(high.clone().map(|hour| (t("High spot"), hour)));
    figures.extend(found.two_lobes.as_ref().map(|lobes| (t("Two humps"), writing.figure(lobes))));
    figures.extend(found.drift.as_ref().map(|drift| (t("Back at 12 h"), writing.figure(drift))));
    let mut says: Vec<String> =
        causes.iter().map(|it| format!("{}: {}.", cause(it), writing.figure(&it.size))).collect();
    if says.is_empty() {
        says.push(t("Nothing stands out of the scatter of these readings.").to_owned());
    }
    if causes.iter().all(|it| it.cause != Cause::OutOfRound) && found.two_lobes.is_some() {
        says.push(t("Not oval: what is left when the circle is taken out is scatter.").to_owned());
    }
    if let Some(hour) = &high {
        says.push(say!(
            "Paint the high spot at {hour}, and turn it to one place for every lash reading."
        ));
    }
    Some(Answer {
        verdict: found.judgement.map(|judged| judged.verdict),
        says,
        headline: Some(writing.headline(t("Total"), &found.total, against(given, &writing))),
        figures,
        band: limit_band(t("Total runout"), &found.total, &turn.limits, &writing),
        below: Some(left(&turn, &found, &writing)),
        blind: Some(blind(&turn, along.is_some())),
        picture: Some(picture(&turn, &found, high)),
        ..answered(&found.cautions, &found.explanation, &writing)
    })
}

/// The field a refusal belongs to.
fn at_field(found: &Result<Turned, Refusal>, hours: &'static str) -> &'static str {
    if matches!(found, Err(Refusal::SameAngle { .. })) { "angle" } else { hours }
}

/// What the total stands against.
fn against(given: &mut Given, writing: &Writing) -> String {
    match given.amount("limit") {
        Some(limit) => say!("limit {}", writing.typed(limit)),
        None => t("no limit typed").to_owned(),
    }
}

/// The readings at the hours and at the other angles, by their two fields, or that there is none; `None`
/// where a reading and its angle do not go together.
fn every(
    given: &mut Given,
    [hours, own]: [&'static str; 2],
) -> Option<Option<Vec<(Amount, Reading)>>> {
    let step = Decimal::from(360) / whole(CLOCK.len());
    let at_hours = given.numbers(hours).into_iter().enumerate().filter_map(|(at, typed)| {
        let angle = Amount { value: whole(at) * step, unit: Unit::Degree };
        Some((angle, Reading::typed(&typed?)))
    });
    let mut all: Vec<_> = at_hours.collect();
    let (angles, readings) = (given.numbers("angle"), given.numbers(own));
    let any = |column: &[Option<Typed>]| column.iter().any(Option::is_some);
    // The angles alone belong to the first place, unless they are read at another.
    let is_first = own == "at-angle";
    let elsewhere =
        is_first && ["along-angle", "face-angle"].iter().any(|other| any(&given.numbers(other)));
    let is_used = any(&readings) || (is_first && !elsewhere);
    for at in (0..angles.len().max(readings.len())).filter(|_| is_used) {
        let of = |column: &[Option<Typed>]| column.get(at).cloned().flatten();
        match (of(&angles), of(&readings)) {
            (Some(angle), Some(reading)) => all.push((angle.amount(), Reading::typed(&reading))),
            (None, None) => {}
            _ => {
                let says =
                    say!("Place {} lacks its angle or its reading. Type both.", whole(at + 1));
                given.refuse(own, says);
                return None;
            }
        }
    }
    Some((!all.is_empty()).then_some(all))
}

/// Another turn with the length that belongs to it, or that there is none; `None` where it is not whole.
fn second(
    given: &mut Given,
    fields: [&'static str; 2],
    length: &'static str,
) -> Option<Option<(Turned, Reading)>> {
    let Some(readings) = every(given, fields)? else { return Some(None) };
    let turn = Turn { readings, closing: None, limits: Limits::default() };
    let [hours, _] = fields;
    let found = examine(&turn);
    let found = given.at(at_field(&found, hours), found)?;
    match given.reading(length) {
        Some(length) => Some(Some((found, length))),
        None => {
            given.refuse(
                length,
                t("Nothing typed here. The second set of readings needs it.").to_owned(),
            );
            None
        }
    }
}

fn cause(finding: &Finding) -> &'static str {
    match finding.cause {
        Cause::OffCentre => t("Off centre, not bent"),
        Cause::Bent => t("Bent, or its bearings out of line"),
        Cause::BentOrOffCentre => t("Bent or off centre; a second place tells them apart"),
        Cause::Cocked => {
            t("A face leans: a race not seated, dirt below it, or a collar out of square")
        }
        Cause::OutOfRound => t("Out of round, two humps in a turn"),
    }
}

fn blind(turn: &Turn, along: bool) -> String {
    let mut says = Vec::new();
    if turn.readings.len() < 6 {
        says.push(t("Fewer than six angles: an oval cannot be told from scatter."));
    }
    if !along {
        says.push(t("One place alone cannot tell a bend from a parallel offset."));
    }
    says.push(t("Play in the bearings stands in every reading."));
    says.join(" ")
}

/// The hour of an angle counted from 12 o'clock the way a clock goes, to the half hour: "2 h".
fn hour(degrees: Decimal) -> String {
    let halves = measure::round(degrees / Decimal::from(15), 0) % Decimal::from(24);
    let halves = if halves.is_sign_negative() { halves + Decimal::from(24) } else { halves };
    let (hour, half) = ((halves / Decimal::TWO).trunc(), !(halves % Decimal::TWO).is_zero());
    let hour = if hour.is_zero() { Decimal::from(12) } else { hour };
    if half { format!("{hour}:30") } else { format!("{hour} h") }
}

/// What is left at each place when the circle is taken out, in the order round the turn.
fn left(turn: &Turn, found: &Turned, writing: &Writing) -> pictures::drawing::Drawing {
    let bars = turn.readings.iter().zip(&found.left).map(|((angle, _), left)| {
        let angle = angle.to(Unit::Degree).map_or(angle.value, |it| it.value);
        (real::from_decimal(angle).rem_euclid(360.0), real::from_decimal(*left), hour(angle))
    });
    let largest = found.left.iter().map(Decimal::abs).max().unwrap_or_default();
    LeftOver { bars: bars.collect(), most: writing.small(largest) }.draw()
}

fn picture(turn: &Turn, found: &Turned, high: Option<String>) -> pictures::drawing::Drawing {
    let millimetres = |amount: Amount| {
        real::from_decimal(amount.to(Unit::Millimetre).map_or(amount.value, |it| it.value))
    };
    let degrees = |angle: &Amount| {
        real::from_decimal(angle.to(Unit::Degree).map_or(angle.value, |it| it.value))
    };
    let dots = turn.readings.iter();
    let dots = dots.map(|(angle, it)| (degrees(angle), millimetres(it.amount)));
    Polar {
        dots: dots.collect(),
        mean: real::from_decimal(found.mean.value),
        off_centre: real::from_decimal(found.off_centre.value),
        high: found.high_spot.as_ref().map(|spot| real::from_decimal(spot.value)),
        hour: high,
    }
    .draw()
}
