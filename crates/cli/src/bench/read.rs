//! Fields of a bench check.

use std::fmt;

use measure::{Sign, Typed, Unit, real};
use serde_json::Value;
use workshop::{Limits, Reading, Refusal};

use crate::field::{Field, FieldError};

/// Why a line has no answer.
#[derive(Debug)]
pub enum Fault {
    /// The line is not as it should be.
    Field(FieldError),
    /// The numbers are not.
    Numbers(Refusal),
}

impl From<FieldError> for Fault {
    fn from(fault: FieldError) -> Fault {
        Fault::Field(fault)
    }
}

impl From<Refusal> for Fault {
    fn from(refusal: Refusal) -> Fault {
        Fault::Numbers(refusal)
    }
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Fault::Field(fault) => fault.fmt(f),
            Fault::Numbers(refusal) => refusal.fmt(f),
        }
    }
}

/// A quantity as typed, with its uncertainty where the line gives one.
pub fn quantity(line: &Field, name: &str, unit: Unit) -> Result<Reading, Fault> {
    let expected = format!("{} as it is typed, such as \"0.38 {unit}\"", unit.quantity());
    let field = line.need(name, &expected)?;
    let (text, standard) = match field.value() {
        Value::Object(_) => {
            field.only(&["read", "u"])?;
            let read = field.need("read", &expected)?;
            let standard =
                field.need("u", "a standard uncertainty in quotes, such as \"0.005\"")?;
            (read, Some(real::from_decimal(standard.decimal()?)))
        }
        _ => (field, None),
    };
    let typed =
        Typed::parse(text.text()?, unit, Sign::Any).map_err(|why| text.says(format!("{why}")))?;
    let reading = Reading::typed(&typed);
    Ok(standard.map_or(reading, |standard| reading.within(standard)))
}

/// Limits by the names of their fields; either may be left out.
pub fn limits(line: &Field, low: &str, high: &str, unit: Unit) -> Result<Limits, Fault> {
    let limit = |name: &str| -> Result<_, Fault> {
        Ok(match line.get(name)? {
            Some(_) => Some(quantity(line, name, unit)?.amount),
            None => None,
        })
    };
    Ok(Limits { low: limit(low)?, high: limit(high)? })
}

/// One of some words, with what it stands for.
pub fn one_of<T: Copy>(field: &Field, words: &[(&str, T)]) -> Result<T, Fault> {
    let text = field.text()?;
    match words.iter().find(|(word, _)| *word == text) {
        Some((_, meaning)) => Ok(*meaning),
        None => {
            let known: Vec<&str> = words.iter().map(|(word, _)| *word).collect();
            Ok(field.refuse(&known.join(", "))?)
        }
    }
}
