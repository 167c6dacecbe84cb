//! The entry grammar: what a person typed, kept, and what it means.
use crate::{Amount, Decimal, Unit};

/// Which signs a field accepts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sign { /// Above zero only.
    Positive, /// Zero or above.
    NotNegative, /// Any.
    Any }

/// A number as it was typed. Serialised as `{"typed":"0,019","unit":"in"}`.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Typed { text: String, value: Decimal, unit: Unit }

/// Why an entry was refused; `Display` is the sentence shown at the field.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum EntryError { /// Nothing was typed.
    Empty }

impl Typed {
    /// Reads `text` by the grammar; digits without a unit take `unit`.
    pub fn parse(_text: &str, _unit: Unit, _sign: Sign) -> Result<Typed, EntryError> { todo!() }
    /// The text as typed.
    pub fn text(&self) -> &str { &self.text }
    /// Value in the unit it was typed in.
    pub fn amount(&self) -> Amount { Amount { value: self.value, unit: self.unit } }
    /// Value in another unit of the same quantity; the unit typed was checked at entry.
    pub fn in_unit(&self, _unit: Unit) -> Decimal { todo!() }
    /// One step of the last digit typed, in the unit typed: the resolution of a reading.
    pub fn step(&self) -> Amount { todo!() }
}
