//! The leak stages of a unit sheet: what the manual asks of each, or why the unit has none. All of
//! it may stay empty: the set-up needs none of it, and the bench check takes what is there.

use std::fmt;

use measure::{Decimal, Quantity, Sign, Typed, Unit};
use words::{say, t};

use crate::field_rows::row;
use crate::{Field, FieldFacts, FieldRefusal, FieldValue, Group, Kind, Sheet};

/// A stage of the leak test.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum LeakStage {
    /// A little pressure: small leaks show before the lips are forced shut.
    Low,
    /// The working pressure.
    Working,
    /// Vacuum: the lips load the other way.
    Vacuum,
}

/// What the sheet says of a stage.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum LeakPart {
    /// Never beyond this.
    Limit,
    /// The pressure, or vacuum, to hold.
    Pressure,
    /// How long.
    Time,
    /// What may be lost in that time.
    MostLost,
    /// Why the unit has no such stage.
    Because,
}

/// Why what was typed of a stage does not fit together; `Display` is the sentence at the field.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum LeakRefusal {
    /// A pressure over a thousand kilopascals.
    TooHigh {
        /// As typed.
        found: String,
    },
    /// A time over a day.
    TooLong {
        /// As typed.
        found: String,
    },
    /// The test would go beyond its own limit.
    AboveLimit {
        /// The test pressure.
        found: String,
        /// Never beyond this.
        limit: String,
    },
    /// As much may be lost as is put on.
    LosesAll {
        /// What may be lost.
        found: String,
        /// The test pressure.
        pressure: String,
    },
    /// Numbers and a reason for having none.
    Both,
}

impl LeakStage {
    /// In the order they are done.
    pub const ALL: [LeakStage; 3] = [LeakStage::Low, LeakStage::Working, LeakStage::Vacuum];

    /// The heading.
    pub fn name(self) -> &'static str {
        match self {
            LeakStage::Low => t("Low pressure"),
            LeakStage::Working => t("Working pressure"),
            LeakStage::Vacuum => t("Vacuum"),
        }
    }

    /// A field of it.
    pub fn field(self, part: LeakPart) -> Field {
        Field::Leak(self, part)
    }

    /// Its fields, in the order of the sheet.
    pub fn fields(self) -> [Field; 5] {
        let [limit, pressure, time, most_lost] = NUMBERS;
        [limit, pressure, time, most_lost, LeakPart::Because].map(|part| self.field(part))
    }
}

/// What a stage needs to be done.
const NUMBERS: [LeakPart; 4] =
    [LeakPart::Limit, LeakPart::Pressure, LeakPart::Time, LeakPart::MostLost];

impl Sheet {
    /// Why the unit has no such leak stage; `None` where nobody said so.
    pub fn no_leak_stage(&self, stage: LeakStage) -> Option<&str> {
        self.word(stage.field(LeakPart::Because))
    }

    /// Whether a stage is begun and lacks one of its numbers.
    pub(crate) fn lacks_of_leak(&self, stage: LeakStage) -> bool {
        let typed = NUMBERS.iter().filter(|part| self.value(stage.field(**part)).is_some()).count();
        typed > 0 && typed < NUMBERS.len()
    }
}

/// A pressure or vacuum above zero.
pub(crate) fn pressure(text: &str, unit: Unit) -> Result<Typed, FieldRefusal> {
    let unit = if unit.quantity() == Quantity::Pressure { unit } else { Unit::Kilopascal };
    let typed = Typed::parse(text, unit, Sign::Positive).map_err(FieldRefusal::Entry)?;
    if typed.in_unit(Unit::Kilopascal) > Decimal::ONE_THOUSAND {
        let found = typed.to_string();
        return Err(FieldRefusal::Leak(LeakRefusal::TooHigh { found }));
    }
    Ok(typed)
}

/// A time above zero; digits alone are minutes.
pub(crate) fn time(text: &str) -> Result<Typed, FieldRefusal> {
    let typed = Typed::parse(text, Unit::Minute, Sign::Positive).map_err(FieldRefusal::Entry)?;
    if typed.in_unit(Unit::Day) > Decimal::ONE {
        let found = typed.to_string();
        return Err(FieldRefusal::Leak(LeakRefusal::TooLong { found }));
    }
    Ok(typed)
}

/// The stages whose fields do not fit together, each refused at the last of them that was typed.
pub(crate) fn refused(
    sheet: &Sheet,
    values: &[(Field, FieldValue)],
) -> impl Iterator<Item = (Field, FieldRefusal)> {
    LeakStage::ALL.into_iter().filter_map(|stage| {
        let own = |(field, _): &&(Field, FieldValue)| stage.fields().contains(field);
        let (at, _) = values.iter().rfind(own)?;
        let why = together(sheet, stage, values)?;
        Some((*at, FieldRefusal::Leak(why)))
    })
}

fn together(
    sheet: &Sheet,
    stage: LeakStage,
    values: &[(Field, FieldValue)],
) -> Option<LeakRefusal> {
    let value = |part| {
        let field = stage.field(part);
        let new = values.iter().find(|(other, _)| *other == field).map(|(_, value)| value);
        new.or_else(|| sheet.value(field))
    };
    if value(LeakPart::Because).is_some() && NUMBERS.iter().any(|part| value(*part).is_some()) {
        return Some(LeakRefusal::Both);
    }
    let number = |part| match value(part)? {
        FieldValue::Number(typed) => Some(typed),
        FieldValue::Count(_) | FieldValue::Word(_) => None,
    };
    let kilopascal = |typed: &Typed| typed.in_unit(Unit::Kilopascal);
    let found = number(LeakPart::Pressure)?;
    let limit = number(LeakPart::Limit).filter(|limit| kilopascal(found) > kilopascal(limit));
    if let Some(limit) = limit {
        let (found, limit) = (found.to_string(), limit.to_string());
        return Some(LeakRefusal::AboveLimit { found, limit });
    }
    let lost = number(LeakPart::MostLost).filter(|lost| kilopascal(lost) >= kilopascal(found))?;
    Some(LeakRefusal::LosesAll { found: lost.to_string(), pressure: found.to_string() })
}

impl fmt::Display for LeakRefusal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&match self {
            LeakRefusal::TooHigh { found } => {
                say!("{found} is over 1000 kPa. Read the page again, like 80 kPa.")
            }
            LeakRefusal::TooLong { found } => {
                say!("{found} is longer than a day. Read the page again, like 10 min.")
            }
            LeakRefusal::AboveLimit { found, limit } => say!(
                "Test pressure {found}, never beyond {limit}: the test goes beyond its own limit. \
                 Read the page again."
            ),
            LeakRefusal::LosesAll { found, pressure } => say!(
                "{found} may be lost of {pressure}: expected less than the test pressure. \
                 Read the page again."
            ),
            LeakRefusal::Both => t("This stage has numbers and a reason for having none. \
                 Clear the numbers, or the reason.")
            .to_owned(),
        })
    }
}

/// Limit, pressure, time, loss and reason of one stage. The names are whole texts, since other
/// languages put the words in another order.
macro_rules! stage {
    ($stage:ident, $id:literal, $pressure:literal,
        [$limit:literal, $test:literal, $time:literal, $lost:literal, $because:literal]) => {
        &[
            optional(
                Field::Leak(LeakStage::$stage, LeakPart::Limit),
                concat!("leak-", $id, "-limit"),
                "Never beyond",
                $limit,
                Kind::Pressure,
            ),
            optional(
                Field::Leak(LeakStage::$stage, LeakPart::Pressure),
                concat!("leak-", $id, "-pressure"),
                $pressure,
                $test,
                Kind::Pressure,
            ),
            optional(
                Field::Leak(LeakStage::$stage, LeakPart::Time),
                concat!("leak-", $id, "-time"),
                "Hold for",
                $time,
                Kind::Time,
            ),
            optional(
                Field::Leak(LeakStage::$stage, LeakPart::MostLost),
                concat!("leak-", $id, "-most-lost"),
                "May lose at most",
                $lost,
                Kind::Pressure,
            ),
            optional(
                Field::Leak(LeakStage::$stage, LeakPart::Because),
                concat!("leak-", $id, "-because"),
                "Not applicable, because",
                $because,
                Kind::Text,
            ),
        ]
    };
}

/// The rows of the unit sheet.
pub(crate) static LEAK: [&[FieldFacts]; 4] = [
    stage!(
        Low,
        "low",
        "Test pressure",
        [
            "low stage limit",
            "low stage test pressure",
            "low stage time",
            "low stage loss",
            "reason for no low stage"
        ]
    ),
    stage!(
        Working,
        "working",
        "Test pressure",
        [
            "working stage limit",
            "working stage test pressure",
            "working stage time",
            "working stage loss",
            "reason for no working stage"
        ]
    ),
    stage!(
        Vacuum,
        "vacuum",
        "Test vacuum",
        [
            "vacuum stage limit",
            "test vacuum",
            "vacuum stage time",
            "vacuum stage loss",
            "reason for no vacuum stage"
        ]
    ),
    &[optional(Field::LeakSource, "leak-source", "Source", "leak test source", Kind::Text)],
];

const fn optional(
    field: Field,
    id: &'static str,
    label: &'static str,
    name: &'static str,
    kind: Kind,
) -> FieldFacts {
    row(field, id, label, name, kind, Group::Leak, &[])
}
