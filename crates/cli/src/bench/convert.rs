//! An amount in another unit, as the checks convert what is typed.

use measure::Unit;
use serde_json::{Value, json};
use workshop::Reading;

use super::answer::answered;
use super::read::{Fault, quantity};
use crate::field::Field;

/// Answers a line of `convert`.
pub fn convert_line(line: &Field) -> Result<Value, Fault> {
    line.only(&["bench", "amount", "into"])?;
    let expected = "the symbol of a unit, such as kPa";
    let into = line.need("into", expected)?;
    let Some(unit) = Unit::parse(into.text()?) else { return Ok(into.refuse(expected)?) };
    let Reading { amount, .. } = quantity(line, "amount", unit)?;
    let Some(converted) = amount.to(unit) else {
        return Ok(line.need("amount", expected)?.refuse("a number small enough to convert")?);
    };
    let figures =
        json!({ "amount": { "value": converted.value.normalize(), "unit": unit.symbol() } });
    Ok(answered("convert", figures, None, &[], None))
}
