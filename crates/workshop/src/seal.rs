//! Lip seals: how deep and how square they sit, and which way the lip looks.

use measure::{Judgement, Unit};
use words::key;

use crate::formula::evaluate;
use crate::{Basis, Explanation, Figure, Limits, Reading, Refusal};

/// Which side the lip and its spring look to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Toward {
    /// Keeps the oil in.
    Oil,
    /// Keeps the water out.
    Water,
}

/// What decides which way a lip looks. There is no rule of thumb: public advice conflicts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Direction {
    /// As the photo at teardown shows it.
    pub as_found: Option<Toward>,
    /// As the manual says.
    pub manual: Option<Toward>,
}

/// What the record says about a lip that is to be fitted, or is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum LipCheck {
    /// As the manual says, or as found where the manual says nothing.
    AsRecorded,
    /// The other way round: look again before it is pressed home.
    Reversed,
    /// Manual and photo differ: the manual goes first, and the one who closed it last may have erred.
    RecordsDiffer,
    /// Neither is known: look it up before fitting.
    Unknown,
}

impl Direction {
    /// Compares a lip with the record.
    pub fn check(self, fitted: Toward) -> LipCheck {
        match (self.manual, self.as_found) {
            (None, None) => LipCheck::Unknown,
            (Some(manual), _) if manual != fitted => LipCheck::Reversed,
            (Some(manual), Some(found)) if manual != found => LipCheck::RecordsDiffer,
            (None, Some(found)) if found != fitted => LipCheck::Reversed,
            _ => LipCheck::AsRecorded,
        }
    }
}

/// How much larger a seal is outside than its bore, mm on the diameter: what holds it.
///
/// # Errors
/// [`Refusal::NotMore`] for a seal no larger than its bore: nothing holds it there.
///
/// ```
/// use measure::{Decimal, Unit};
/// use workshop::{Reading, seal::hold};
/// // 42.15 in 42.00: 0.15 mm (by hand).
/// let mm = |hundredths| Reading::exact(Decimal::new(hundredths, 2), Unit::Millimetre);
/// assert_eq!(hold(&mm(4215), &mm(4200)).unwrap().value, Decimal::new(15, 2));
/// assert!(hold(&mm(4200), &mm(4200)).is_err());
/// ```
pub fn hold(outside: &Reading, bore: &Reading) -> Result<Figure, Refusal> {
    let outside = outside.above_zero("seal outside diameter", Unit::Millimetre)?;
    let bore = bore.above_zero("seal bore", Unit::Millimetre)?;
    if outside.value <= bore.value {
        return Err(Refusal::NotMore {
            what: "seal outside diameter",
            found: outside.value,
            than: key!("bore"),
            least: bore.value,
            unit: "mm",
            act: "measure both again, or take the seal for this bore",
        });
    }
    evaluate(key!("hold"), "mm", &[outside, bore], &|[outside, bore]| outside - bore)
}

/// How much larger the shaft is at the lip than the size marked on the seal, mm; below zero is thinner.
///
/// # Errors
/// [`Refusal`] for a size of zero or less, or another quantity.
pub fn shaft(shaft: &Reading, marked: &Reading) -> Result<Figure, Refusal> {
    let given = [
        shaft.above_zero("shaft at the lip", Unit::Millimetre)?,
        marked.above_zero("size on the seal", Unit::Millimetre)?,
    ];
    evaluate("shaft off", "mm", &given, &|[shaft, marked]| shaft - marked)
}

/// A seal in its bore, read at four points.
#[derive(Clone, Debug, PartialEq)]
pub struct Depth {
    /// At 12, 3, 6 and 9 o'clock, below the same face.
    pub at: [Reading; 4],
    /// Deepest less least allowed; 0.25 mm is common practice, the manual goes first.
    pub square: Limits,
    /// Depth asked by the manual.
    pub depth: Limits,
    /// Depth at which the old lip ran, where a groove is to be cleared.
    pub as_found: Option<Reading>,
}

/// How it sits.
#[derive(Clone, Debug, PartialEq)]
pub struct Answer {
    /// Mean depth, mm.
    pub mean: Figure,
    /// Deepest less least, mm.
    pub uneven: Figure,
    /// Lean along the deepest line, mm over the circle of the four points: half the difference of
    /// opposite points, both ways, put together and doubled.
    pub lean: Figure,
    /// Deeper than the old one by this, mm; below zero is shallower. `None` without the old depth.
    pub moved: Option<Figure>,
    /// Verdict on squareness.
    pub square: Option<Judgement>,
    /// Verdict on depth.
    pub depth: Option<Judgement>,
    /// How it was reckoned.
    pub explanation: Explanation,
}

/// Examines a seal's depth at four points.
///
/// # Errors
/// [`Refusal`] for a depth below zero or another quantity.
///
/// ```
/// use measure::{Amount, Decimal, Unit, Verdict};
/// use workshop::{Limits, Reading, seal::{Depth, examine}};
/// // 3.1, 3.2, 3.3, 3.2 mm: 0.2 between deepest and least (by hand).
/// let mm = |tenths| Reading::exact(Decimal::new(tenths, 1), Unit::Millimetre);
/// let quarter = Amount { value: Decimal::new(25, 2), unit: Unit::Millimetre };
/// let seat = examine(&Depth {
///     at: [31, 32, 33, 32].map(mm),
///     square: Limits::at_most(quarter),
///     depth: Limits::default(),
///     as_found: Some(mm(21)),
/// }).unwrap();
/// assert_eq!(seat.uneven.value, Decimal::new(2, 1));
/// assert_eq!(seat.square.unwrap().verdict, Verdict::InBand);
/// assert_eq!(seat.moved.unwrap().value, Decimal::new(11, 1));
/// ```
pub fn examine(seal: &Depth) -> Result<Answer, Refusal> {
    let [top, right, bottom, left] = &seal.at;
    let given = [
        top.not_negative("depth at 12", Unit::Millimetre)?,
        right.not_negative("depth at 3", Unit::Millimetre)?,
        bottom.not_negative("depth at 6", Unit::Millimetre)?,
        left.not_negative("depth at 9", Unit::Millimetre)?,
    ];
    let mean = evaluate("mean depth", "mm", &given, &|at| at.iter().sum::<f64>() / 4.0)?;
    let uneven = evaluate(key!("unevenness"), "mm", &given, &|at| {
        at.into_iter().fold(f64::MIN, f64::max) - at.into_iter().fold(f64::MAX, f64::min)
    })?;
    let lean = evaluate(key!("lean"), "mm", &given, &|[top, right, bottom, left]| {
        (top - bottom).hypot(right - left)
    })?;
    let moved = match &seal.as_found {
        None => None,
        Some(old) => {
            let given =
                [mean.given(key!("depth")), old.not_negative("old depth", Unit::Millimetre)?];
            Some(evaluate(key!("moved"), "mm", &given, &|[now, old]| now - old)?)
        }
    };
    Ok(Answer {
        square: seal.square.judge("squareness limit", &uneven, Unit::Millimetre)?,
        depth: seal.depth.judge("depth limit", &mean, Unit::Millimetre)?,
        explanation: Explanation {
            formula: "uneven = deepest − least of four points",
            given: given.to_vec(),
            basis: Basis::Derived("four depths below one face"),
        },
        mean,
        uneven,
        lean,
        moved,
    })
}
