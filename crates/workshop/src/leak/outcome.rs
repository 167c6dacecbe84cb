//! From the log of one stage to an answer.

use measure::{Amount, Decimal, Unit, Verdict};
use words::key;

use super::{Entry, Hold, Reference, Stage, gas, rate, standard_flow, within};
use crate::{Basis, Caution, Explanation, Figure, Limits, Reading, Refusal};

/// Most lines of one log: one every few seconds for an hour.
const MOST_LINES: usize = 1000;

/// One stage as it was done.
#[derive(Clone, Debug, PartialEq)]
pub struct Test {
    /// What the sheet asks.
    pub hold: Hold,
    /// The log, in order.
    pub log: Vec<Entry>,
    /// Volume of air in the case, where known: the oil it takes, emptied.
    pub volume: Option<Reading>,
    /// The shafts were turned while it was held; `None` where this unit has none to turn.
    pub turned: Option<bool>,
    /// The shift rod was moved; `None` where this unit has none.
    pub moved: Option<bool>,
    /// Bubbles seen with soap or in a tank; `None` before anybody looked.
    pub bubbles: Option<bool>,
    /// What the test into a blank said about hose and adaptor.
    pub hose: Hose,
}

/// Hose, adaptor and pump, tested into a blank.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Hose {
    /// Not yet.
    NotTested,
    /// Tight.
    Tight,
    /// Leaks, or too near the limit to call tight.
    Leaks,
}

/// What stands between this log and a verdict.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Missing {
    /// Less than the whole time.
    Time,
    /// Shafts not turned.
    Turned,
    /// Rod not moved.
    Moved,
    /// Nobody looked for bubbles.
    Soap,
}

/// What the stage says.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Outcome {
    /// No verdict before this is done.
    NotYet(Vec<Missing>),
    /// Held for the whole time while turning, without a bubble.
    Pass,
    /// Bubbles: a leak, whatever the gauge says.
    Bubbles,
    /// Lost more than allowed, and the hose is tight.
    Leaks,
    /// Lost more than allowed, but the hose may be to blame: test it into a blank.
    TestTheHose,
    /// Lost more than allowed, and the hose leaks: mend it and start over.
    MendTheHose,
    /// Too near the limit: hold again, or longer.
    ReadAgain,
    /// The gauges are too coarse to prove anything.
    CannotProve,
}

/// One point of the curve.
#[derive(Clone, Debug, PartialEq)]
pub struct Point {
    /// Seconds since the first line.
    pub seconds: Decimal,
    /// The gauge, kPa.
    pub raw: Decimal,
    /// As it would stand at the first temperature and barometer, kPa.
    pub corrected: Figure,
}

/// The answer of one stage.
#[derive(Clone, Debug, PartialEq)]
pub struct Answer {
    /// The curve, a point a line.
    pub curve: Vec<Point>,
    /// The worst corrected loss so far, kPa; above zero is a leak.
    pub lost: Figure,
    /// Leak rate to the last line, Pa·m³/s; `None` without a volume or a second line.
    pub rate: Option<Figure>,
    /// The same in standard cm³/min at 0 °C.
    pub flow: Option<Figure>,
    /// The smallest leak this log could have shown: twice the loss's uncertainty, Pa·m³/s.
    pub least_seen: Option<Figure>,
    /// What it says.
    pub outcome: Outcome,
    /// What to say with it.
    pub cautions: &'static [Caution],
    /// How the loss was reckoned.
    pub explanation: Explanation,
}

/// Examines one stage.
///
/// # Errors
/// [`Refusal`]: no line, a line out of order, a pressure above the limit field, a temperature below
/// absolute zero.
pub fn examine(test: &Test) -> Result<Answer, Refusal> {
    let hold = test.hold.checked()?;
    test.log.iter().try_for_each(|line| within(hold.limit, line.gauge.amount))?;
    let Worst { first, last, at, lost } = worst(hold.stage, &test.log)?;
    let curve =
        test.log.iter().map(|line| point(hold.stage, &first, line)).collect::<Result<_, _>>()?;
    let mut answer = Answer {
        curve,
        outcome: outcome(test, &hold, &first, &last, &lost)?,
        explanation: Explanation {
            formula: "P1 − P2·T1/T2, absolute, P = barometer ± gauge",
            given: gas::inputs(hold.stage, &first, &at)?.to_vec(),
            basis: Basis::Published("40 CFR 1065.644, vacuum-decay leak rate; ideal gas"),
        },
        cautions: hold.cautions(),
        rate: None,
        flow: None,
        least_seen: None,
        lost,
    };
    if let (Some(volume), true) = (&test.volume, test.log.len() > 1) {
        let leak = rate(hold.stage, volume, &first, &last)?;
        answer.flow = Some(standard_flow(&leak, &first.case, Reference::ZeroCelsius)?);
        let seen = 2.0 * answer.lost.standard();
        let litres = volume.above_zero("volume of air", Unit::Litre)?.real();
        let seconds = super::rate::lasted(&first, &last)?.real();
        let least = seen * litres / seconds;
        answer.least_seen =
            Some(Figure::new("least leak seen", least, leak.unit, Default::default())?);
        answer.rate = Some(leak);
    }
    Ok(answer)
}

/// Hose, adaptor and pump as they held into a blank.
#[derive(Clone, Debug, PartialEq)]
pub struct Blank {
    /// What they lost, kPa.
    pub lost: Figure,
    /// What they may lose in the time they were held: the stage's own share of it.
    pub allowed: Amount,
    /// What that makes of them.
    pub hose: Hose,
}

/// Judges hose, adaptor and pump, closed by a blank: they may lose no more in their time than the stage
/// allows the case in as much of its own.
///
/// # Errors
/// As [`examine`].
pub fn blank(hold: &Hold, log: &[Entry]) -> Result<Blank, Refusal> {
    let Worst { first, last, lost, .. } = worst(hold.stage, log)?;
    let held =
        if log.len() > 1 { super::rate::lasted(&first, &last)?.value } else { Decimal::ZERO };
    let whole = Reading { amount: hold.time, standard: 0.0 };
    let whole = whole.above_zero("time to hold", Unit::Second)?.value;
    let share = hold.most_lost.value.checked_mul(held).and_then(|all| all.checked_div(whole));
    let value = share.ok_or(Refusal::TooLarge { what: "loss allowed" })?;
    let allowed = Amount { value, ..hold.most_lost };
    let judged = Limits::at_most(allowed).judge("loss allowed", &lost, Unit::Kilopascal)?;
    let tight = log.len() > 1 && judged.is_some_and(|judged| judged.verdict == Verdict::InBand);
    Ok(Blank { lost, allowed, hose: if tight { Hose::Tight } else { Hose::Leaks } })
}

/// First and last line, and the line that has lost most against the first.
struct Worst {
    first: Entry,
    last: Entry,
    at: Entry,
    lost: Figure,
}

fn worst(stage: Stage, log: &[Entry]) -> Result<Worst, Refusal> {
    let (Some(first), Some(last), true) = (log.first(), log.last(), log.len() <= MOST_LINES) else {
        let (what, found) = ("lines of the log", log.len());
        return Err(Refusal::Count { what, found, least: 1, most: MOST_LINES });
    };
    let lost = gas::drop(stage, first, first)?;
    let mut worst = Worst { first: *first, last: *last, at: *first, lost };
    for (index, (before, line)) in log.iter().zip(log.iter().skip(1)).enumerate() {
        super::rate::lasted(before, line)?;
        let lost = gas::drop(stage, first, line)?;
        if index == 0 || lost.value > worst.lost.value {
            worst = Worst { at: *line, lost, ..worst };
        }
    }
    Ok(worst)
}

fn point(stage: Stage, first: &Entry, line: &Entry) -> Result<Point, Refusal> {
    let exact = |amount| Reading { amount, standard: 0.0 };
    let seconds = |line: &Entry| exact(line.at).given(key!("time"), Unit::Second);
    Ok(Point {
        seconds: seconds(line)?.value - seconds(first)?.value,
        raw: line.gauge.given(key!("pressure"), Unit::Kilopascal)?.value,
        corrected: gas::corrected(stage, first, line)?,
    })
}

fn outcome(
    test: &Test,
    hold: &Hold,
    first: &Entry,
    last: &Entry,
    lost: &Figure,
) -> Result<Outcome, Refusal> {
    if test.bubbles == Some(true) {
        return Ok(Outcome::Bubbles);
    }
    let exact = |amount| Reading { amount, standard: 0.0 };
    let seconds = |amount| exact(amount).given(key!("time"), Unit::Second).map(|given| given.value);
    let short = seconds(last.at)? - seconds(first.at)? < seconds(hold.time)?;
    let missing: Vec<Missing> = [
        (short, Missing::Time),
        (test.turned == Some(false), Missing::Turned),
        (test.moved == Some(false), Missing::Moved),
        (test.bubbles.is_none(), Missing::Soap),
    ]
    .into_iter()
    .filter_map(|(is_missing, what)| is_missing.then_some(what))
    .collect();
    if !missing.is_empty() {
        return Ok(Outcome::NotYet(missing));
    }
    let judged = Limits::at_most(hold.most_lost).judge("loss allowed", lost, Unit::Kilopascal)?;
    Ok(match (judged.map(|judged| judged.verdict), test.hose) {
        (Some(Verdict::InBand), _) => Outcome::Pass,
        (Some(Verdict::Out), Hose::NotTested) => Outcome::TestTheHose,
        (Some(Verdict::Out), Hose::Leaks) => Outcome::MendTheHose,
        (Some(Verdict::Out), Hose::Tight) => Outcome::Leaks,
        (Some(Verdict::NearLimit), _) => Outcome::ReadAgain,
        (Some(Verdict::CannotProve) | None, _) => Outcome::CannotProve,
    })
}
