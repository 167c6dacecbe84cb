//! From what was typed at a field to facts, refusals and doubts.

use std::fmt;
use words::{say, t};

use measure::{Band, BandError, Decimal, EntryError, Quantity, Sign, Typed, Unit};

use crate::{
    Check, Fact, Field, FieldValue, Kind, LeakRefusal, Sheet, field, leak_field, typing::LONGEST,
};

/// Why a field does not take what was typed; `Display` is the sentence at the field.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum FieldRefusal {
    /// It is no number of that kind.
    Entry(EntryError),
    /// The limits do not make a band.
    Band(BandError),
    /// A band from a preload to an end play.
    PlayAndPreload,
    /// A torque over a thousand newton metres.
    TooMuch {
        /// As typed.
        found: String,
    },
    /// A radius of zero.
    NoRadius {
        /// The field in words.
        name: &'static str,
    },
    /// A number of teeth that is not a whole number from 3 to 500.
    Teeth {
        /// As typed.
        found: String,
    },
    /// An angle that no such gear has.
    Angle {
        /// Degrees as typed.
        found: String,
        /// Least degrees.
        least: u32,
        /// Most degrees.
        most: u32,
    },
    /// A length over a metre.
    TooLong {
        /// As typed.
        found: String,
    },
    /// What a leak stage asks does not fit together.
    Leak(LeakRefusal),
    /// Not one of the choices.
    Choice,
    /// No text.
    NoText {
        /// The field in words.
        name: &'static str,
    },
}

/// Why a value that was taken should be looked at again; `Display` is the sentence.
///
/// What is usual is common practice, no source; a doubt never turns into a verdict.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Doubt {
    /// Typed in mm, usual only as inches.
    Inches {
        /// As typed, with its unit.
        found: String,
    },
    /// Typed in inches, usual only as mm.
    Millimetres {
        /// As typed, with its unit.
        found: String,
    },
    /// Far from what is usual in either.
    Unusual {
        /// As typed, with its unit.
        found: String,
        /// Least usual, mm.
        least: Decimal,
        /// Most usual, mm.
        most: Decimal,
    },
}

/// Usual thickness of a shim or washer, mm.
const SHIMS: (Decimal, Decimal) =
    (Decimal::from_parts(2, 0, 0, false, 2), Decimal::from_parts(3, 0, 0, false, 0));

/// Reads fields that are typed together, such as low and high: the facts to record.
///
/// Digits without a unit take the field's `unit`. A value that the sheet has already makes no fact.
///
/// # Errors
/// Each field that does not take its text, with the sentence. Nothing is stored then.
pub fn read_fields(
    sheet: &Sheet,
    typed: &[(Field, &str, Unit)],
) -> Result<Vec<Fact>, Vec<(Field, FieldRefusal)>> {
    let (mut values, mut refusals) = (Vec::new(), Vec::new());
    for (field, text, unit) in typed {
        match read(*field, text, *unit) {
            Ok(value) => values.push((*field, value)),
            Err(refusal) => refusals.push((*field, refusal)),
        }
    }
    if refusals.is_empty() {
        refusals.extend(sheet.limits().into_iter().filter_map(|check| band(sheet, check, &values)));
        refusals.extend(leak_field::refused(sheet, &values));
    }
    if !refusals.is_empty() {
        return Err(refusals);
    }
    let is_new = |(field, value): &(Field, FieldValue)| sheet.value(*field) != Some(value);
    let fact = |(field, value)| Fact::FieldTyped { field, value };
    Ok(values.into_iter().filter(is_new).map(fact).collect())
}

/// Reads one field: the facts to record, none where the sheet has the value already.
///
/// # Errors
/// [`FieldRefusal`], the sentence for the field.
pub fn type_in(
    sheet: &Sheet,
    field: Field,
    text: &str,
    unit: Unit,
) -> Result<Vec<Fact>, FieldRefusal> {
    read_fields(sheet, &[(field, text, unit)]).map_err(|refusals| {
        let first = refusals.into_iter().next();
        first.map_or(FieldRefusal::Entry(EntryError::Empty), |(_, refusal)| refusal)
    })
}

/// What is doubtful about a reading.
pub fn doubt(check: Check, typed: &Typed) -> Option<Doubt> {
    Field::Low(check).doubt(typed)
}

/// What is doubtful about a shim's thickness.
pub fn shim_doubt(typed: &Typed) -> Option<Doubt> {
    Doubt::of(typed, SHIMS)
}

impl Field {
    /// What is doubtful about a value of the field.
    pub fn doubt(self, typed: &Typed) -> Option<Doubt> {
        Doubt::of(typed, self.facts().kind.usual()?)
    }
}

impl Sheet {
    /// What is doubtful about a field as it stands; nothing once a person has looked again.
    pub fn doubt(&self, field: Field) -> Option<Doubt> {
        field.doubt(self.number(field)?).filter(|_| !self.is_looked_at(field))
    }

    /// The fact that a value in doubt was looked at again and stands.
    pub fn stands(&self, field: Field) -> Option<Fact> {
        self.doubt(field).map(|_| Fact::ValueStands { field })
    }
}

impl Doubt {
    fn of(typed: &Typed, (least, most): (Decimal, Decimal)) -> Option<Doubt> {
        let is_usual = |unit| {
            let other = Typed::parse(typed.text(), unit, Sign::Any).ok()?;
            let length = other.in_unit(Unit::Millimetre).abs();
            (least <= length && length <= most).then_some(())
        };
        if is_usual(typed.unit()).is_some() {
            return None;
        }
        let found = typed.to_string();
        Some(match typed.unit() {
            Unit::Millimetre if is_usual(Unit::Inch).is_some() => Doubt::Inches { found },
            Unit::Inch if is_usual(Unit::Millimetre).is_some() => Doubt::Millimetres { found },
            _ => Doubt::Unusual { found, least, most },
        })
    }
}

fn read(field: Field, text: &str, unit: Unit) -> Result<FieldValue, FieldRefusal> {
    let facts = field.facts();
    match facts.kind {
        Kind::Length { .. } => length(facts.name, text, unit).map(FieldValue::Number),
        Kind::Play => play(text, unit).map(FieldValue::Number),
        Kind::Torque => torque(text, unit).map(FieldValue::Number),
        Kind::Pressure => leak_field::pressure(text, unit).map(FieldValue::Number),
        Kind::Time => leak_field::time(text).map(FieldValue::Number),
        Kind::Angle => angle(field, text).map(FieldValue::Number),
        Kind::Teeth => teeth(text).map(FieldValue::Count),
        Kind::Choice(choices) if choices.iter().any(|(id, _)| *id == text) => {
            Ok(FieldValue::Word(text.to_owned()))
        }
        Kind::Choice(_) => Err(FieldRefusal::Choice),
        Kind::Text => match text.trim() {
            "" => Err(FieldRefusal::NoText { name: facts.name }),
            text => Ok(FieldValue::Word(text.to_owned())),
        },
    }
}

pub(crate) fn length(name: &'static str, text: &str, unit: Unit) -> Result<Typed, FieldRefusal> {
    let unit = if unit.quantity() == Quantity::Length { unit } else { Unit::Millimetre };
    let typed = Typed::parse(text, unit, Sign::NotNegative).map_err(FieldRefusal::Entry)?;
    if name.ends_with("radius") && typed.in_unit(Unit::Millimetre) < Decimal::new(1, 1) {
        return Err(FieldRefusal::NoRadius { name });
    }
    let typed = Typed::parse(text, unit, Sign::Positive).map_err(FieldRefusal::Entry)?;
    if typed.in_unit(Unit::Millimetre) > LONGEST {
        return Err(FieldRefusal::TooLong { found: typed.to_string() });
    }
    Ok(typed)
}

/// An end play, or below zero a preload.
fn play(text: &str, unit: Unit) -> Result<Typed, FieldRefusal> {
    let unit = if unit.quantity() == Quantity::Length { unit } else { Unit::Millimetre };
    let typed = Typed::parse(text, unit, Sign::Any).map_err(FieldRefusal::Entry)?;
    if typed.in_unit(Unit::Millimetre).abs() > LONGEST {
        return Err(FieldRefusal::TooLong { found: typed.to_string() });
    }
    Ok(typed)
}

fn torque(text: &str, unit: Unit) -> Result<Typed, FieldRefusal> {
    let unit = if unit.quantity() == Quantity::Torque { unit } else { Unit::NewtonMetre };
    let typed = Typed::parse(text, unit, Sign::Positive).map_err(FieldRefusal::Entry)?;
    if typed.in_unit(Unit::NewtonMetre) > LONGEST {
        return Err(FieldRefusal::TooMuch { found: typed.to_string() });
    }
    Ok(typed)
}

/// Whether a band goes from a preload to an end play: a gauge reads one, not the other.
pub(crate) fn spans_zero(check: Check, band: &Band) -> bool {
    matches!(check, Check::Setting(_)) && band.low() < Decimal::ZERO && Decimal::ZERO < band.high()
}

fn angle(field: Field, text: &str) -> Result<Typed, FieldRefusal> {
    let typed = Typed::parse(text, Unit::Degree, Sign::NotNegative).map_err(FieldRefusal::Entry)?;
    let (least, most) = if field == Field::PressureAngle { (5, 45) } else { (0, 60) };
    let degrees = typed.in_unit(Unit::Degree);
    if Decimal::from(least) <= degrees && degrees <= Decimal::from(most) {
        Ok(typed)
    } else {
        Err(FieldRefusal::Angle { found: typed.text().to_owned(), least, most })
    }
}

fn teeth(text: &str) -> Result<u32, FieldRefusal> {
    let text = text.trim();
    if text.is_empty() {
        return Err(FieldRefusal::Entry(EntryError::Empty));
    }
    let teeth = text.parse().ok().filter(|teeth| (3..=500).contains(teeth));
    teeth.ok_or_else(|| FieldRefusal::Teeth { found: text.chars().take(24).collect() })
}

/// The refusal of the limits of a check, at the last of its fields that was typed.
fn band(
    sheet: &Sheet,
    check: Check,
    values: &[(Field, FieldValue)],
) -> Option<(Field, FieldRefusal)> {
    let (low, high, aim) = field::limits(check);
    let is_limit = |field: Field| field == low || field == high || Some(field) == aim;
    let (at, FieldValue::Number(last)) = values.iter().rfind(|(field, _)| is_limit(*field))? else {
        return None;
    };
    // Compared, and told, in the unit just typed.
    let value = |wanted: Field| {
        let new = values.iter().find(|(field, _)| *field == wanted).map(|(_, value)| value);
        match new.or_else(|| sheet.value(wanted))? {
            FieldValue::Number(typed) => Some(typed.in_unit(last.unit())),
            FieldValue::Count(_) | FieldValue::Word(_) => None,
        }
    };
    let band = Band::new(value(low)?, value(high)?);
    let refused = match (band, aim.and_then(value)) {
        (Ok(band), _) if spans_zero(check, &band) => {
            return Some((*at, FieldRefusal::PlayAndPreload));
        }
        (Ok(band), Some(aim)) => band.with_aim(aim).err()?,
        (Ok(_), None) => return None,
        (Err(refused), _) => refused,
    };
    Some((*at, FieldRefusal::Band(refused)))
}

impl fmt::Display for FieldRefusal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            FieldRefusal::Entry(entry) => entry.fmt(f),
            FieldRefusal::Band(band) => band.fmt(f),
            FieldRefusal::PlayAndPreload => f.write_str(t(
                "Low is a preload, high an end play. A gauge reads only one of them: type both \
                 limits on the same side of 0, a preload as -0.05.",
            )),
            FieldRefusal::TooMuch { found } => {
                f.write_str(&say!("{found} is over 1000 N·m. Read the page again, like 1.2 N·m."))
            }
            FieldRefusal::NoRadius { name } => f.write_str(&say!(
                "The {name} is 0. Measure it from the middle of the shaft, like 30.0.",
                name = t(name)
            )),
            FieldRefusal::Teeth { found } => f.write_str(&say!(
                "{found} is not a number of teeth from 3 to 500. Count them, like 14."
            )),
            FieldRefusal::Angle { found, least, most } => {
                f.write_str(&say!("{found}° is outside {least}° to {most}°. Read the page again."))
            }
            FieldRefusal::TooLong { found } => {
                f.write_str(&say!("{found} is longer than a metre. Read the page again."))
            }
            FieldRefusal::Leak(leak) => leak.fmt(f),
            FieldRefusal::Choice => f.write_str(t("Nothing chosen. Choose one.")),
            FieldRefusal::NoText { name } => f.write_str(&say!(
                "Nothing typed for the {name}. Type it, like: own manual, p. 118.",
                name = t(name)
            )),
        }
    }
}

impl std::error::Error for FieldRefusal {}

impl fmt::Display for Doubt {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Doubt::Inches { found } => f.write_str(&say!(
                "{found} looks like inches. Switch the unit to in, or read the page again."
            )),
            Doubt::Millimetres { found } => f.write_str(&say!(
                "{found} looks like millimetres. Switch the unit to mm, or read the page again."
            )),
            Doubt::Unusual { found, least, most } => f.write_str(&say!(
                "{found} is far from the usual {least} to {most} mm. Read the page again.",
                least = least.normalize(),
                most = most.normalize()
            )),
        }
    }
}
