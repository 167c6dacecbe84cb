//! A number as a person typed it: the entry grammar.
//!
//! ```text
//! entry  = blanks? sign? blanks? number blanks? unit? blanks?
//! sign   = "-" | "−" | "+"
//! number = digits with at most one mark, before, between or after them; 12 digits at most
//! mark   = "." | ","
//! unit   = any spelling that Unit::parse knows, of the field's quantity
//! ```
//!
//! - `.5` and `5.` are read: people type them, and they mean one thing.
//! - `1,234` is 1.234: one mark is always the decimal mark. A comma that groups thousands cannot be
//!   told from one that is a keyboard's decimal key, and a rule that guesses by the number of digits
//!   would be wrong on shims. Whether 1.234 is plausible is for the field to ask.
//! - There is no exponent, no separator and no rounding. A fraction is answered with its decimal.
//! - Blanks and line ends round the entry do not matter: a gauge that types ends with Enter.

use std::fmt;

use serde::{Deserialize, Deserializer, Serialize, Serializer};

use crate::entry_error::{EntryError, shorten};
use crate::unit::fold;
use crate::{Amount, Decimal, Quantity, Unit};

/// Which signs a field accepts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sign {
    /// Above zero only.
    Positive,
    /// Zero or above.
    NotNegative,
    /// Any.
    Any,
}

/// A number as it was typed. Serialised as `{"typed":"0,019","unit":"in"}`.
///
/// ```
/// use measure::{Decimal, Sign, Typed, Unit};
/// let lash = Typed::parse("0,019 in\n", Unit::Millimetre, Sign::Positive).unwrap();
/// assert_eq!(lash.text(), "0,019");
/// assert_eq!(lash.to_string(), "0,019 in");
/// assert_eq!(lash.in_unit(Unit::Millimetre), Decimal::new(4826, 4));
///
/// let refused = Typed::parse("0.3.8", Unit::Millimetre, Sign::Positive).unwrap_err();
/// assert_eq!(refused.to_string(), "Two decimal marks in 0.3.8. Type one.");
/// ```
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Typed {
    text: String,
    value: Decimal,
    unit: Unit,
}

/// The most digits an entry may have. Conversion of so many is exact, and no gauge shows more.
pub(crate) const MOST_DIGITS: usize = 12;

const SIGNS: [char; 3] = ['-', '−', '+'];

impl Typed {
    /// Reads `text` by the grammar; digits without a unit take `unit`.
    ///
    /// # Errors
    /// [`EntryError`], whose `Display` is the sentence to show at the field.
    pub fn parse(text: &str, unit: Unit, sign: Sign) -> Result<Typed, EntryError> {
        let entry = text.trim();
        if entry.is_empty() {
            return Err(EntryError::Empty);
        }
        let (signed, unsigned) = match entry.strip_prefix(SIGNS) {
            Some(rest) => (entry.strip_suffix(rest).unwrap_or_default(), rest.trim_start()),
            None => ("", entry),
        };
        let end = unsigned.find(|c: char| !is_number(c)).unwrap_or(unsigned.len());
        let (number, rest) = unsigned.split_at_checked(end).unwrap_or((unsigned, ""));
        refuse_more_than_one_number(entry, unsigned, number, rest)?;
        let negative = matches!(signed, "-" | "−");
        let value = decimal(entry, number, negative)?;
        let allowed = match sign {
            Sign::Positive => value > Decimal::ZERO,
            Sign::NotNegative => value >= Decimal::ZERO,
            Sign::Any => true,
        };
        if !allowed {
            return Err(EntryError::Sign { found: shorten(entry), wanted: sign });
        }
        let unit = read_unit(rest.trim(), unit)?;
        Ok(Typed { text: format!("{signed}{number}"), value, unit })
    }

    /// The digits as typed, with their sign and mark; blanks and unit left out.
    pub fn text(&self) -> &str {
        &self.text
    }

    /// The unit it was typed in, or the field's where none was typed.
    pub fn unit(&self) -> Unit {
        self.unit
    }

    /// Value in the unit it was typed in.
    pub fn amount(&self) -> Amount {
        Amount { value: self.value, unit: self.unit }
    }

    /// Value in another unit of the same quantity.
    ///
    /// The quantity is checked at entry by [`Typed::parse`]; whoever reads a `Typed` from a file
    /// checks its [`Unit::quantity`] there. Asked for a unit of another quantity, this returns the
    /// number unconverted; [`Amount::to`] tells.
    pub fn in_unit(&self, unit: Unit) -> Decimal {
        self.amount().to(unit).map_or(self.value, |amount| amount.value)
    }

    /// One step of the last digit typed, in the unit typed: the resolution of a reading.
    pub fn step(&self) -> Amount {
        Amount { value: Decimal::new(1, self.value.scale()), unit: self.unit }
    }
}

fn is_mark(c: char) -> bool {
    matches!(c, '.' | ',')
}

fn is_digit(c: char) -> bool {
    c.is_ascii_digit()
}

fn is_number(c: char) -> bool {
    is_digit(c) || is_mark(c)
}

/// What follows the first run of digits and marks may be a unit and nothing else.
fn refuse_more_than_one_number(
    entry: &str,
    unsigned: &str,
    number: &str,
    rest: &str,
) -> Result<(), EntryError> {
    let found = shorten(entry);
    if unsigned.starts_with(SIGNS) {
        return Err(EntryError::TwoSigns { found });
    }
    if number.is_empty() {
        return Err(match rest.is_empty() {
            true => EntryError::NoDigits { found },
            false => EntryError::NotANumber { found },
        });
    }
    if !rest.contains(is_digit) || Unit::parse(rest).is_some() {
        return Ok(());
    }
    if let Some(fraction) = Fraction::read(unsigned) {
        return Err(EntryError::Fraction { found, instead: fraction.instead() });
    }
    let exponent = rest.strip_prefix(['e', 'E']).map(|next| next.trim_start_matches(SIGNS));
    if exponent.is_some_and(|next| next.starts_with(is_digit)) {
        return Err(EntryError::Exponent { found });
    }
    if is_separated(number, rest) {
        return Err(EntryError::Separator { found });
    }
    Err(EntryError::TwoNumbers { found })
}

/// Whether the digits go on after a character that groups thousands: `1_000`, `1'000`, `1 000`.
fn is_separated(number: &str, rest: &str) -> bool {
    let mut next = rest.chars();
    let grouping = next.next();
    let digits = next.take_while(|c| is_digit(*c)).count();
    match grouping {
        Some('_' | '\'' | '’') => digits > 0,
        Some(blank) => blank.is_whitespace() && digits == 3 && !number.contains(is_mark),
        None => false,
    }
}

/// The number's value, with as many decimals as were typed.
fn decimal(entry: &str, number: &str, negative: bool) -> Result<Decimal, EntryError> {
    let found = shorten(entry);
    let digits: String = number.chars().filter(|c| is_digit(*c)).collect();
    let marks = number.chars().filter(|c| is_mark(*c)).count();
    if marks > 1 {
        return Err(EntryError::Marks { found, marks });
    }
    if digits.len() > MOST_DIGITS {
        return Err(EntryError::TooManyDigits { found, digits: digits.len() });
    }
    // Digits of this length always parse; an empty run is a mark that stands alone.
    let Ok(magnitude) = digits.parse::<i64>() else {
        return Err(EntryError::NoDigits { found });
    };
    let decimals = number.split_once(is_mark).map_or(0, |(_, decimals)| decimals.len());
    Ok(Decimal::new(if negative { -magnitude } else { magnitude }, decimals as u32))
}

/// The unit written after the number, or the field's.
fn read_unit(written: &str, field: Unit) -> Result<Unit, EntryError> {
    let takes = field.quantity();
    if written.is_empty() {
        return Ok(field);
    }
    let measures = |quantity: Quantity| match quantity == takes {
        true => None,
        false => {
            Some(EntryError::OtherQuantity { found: shorten(written), measures: quantity, takes })
        }
    };
    if matches!(fold(written).as_str(), "fl·oz" | "floz" | "oz") {
        return Err(measures(Quantity::Volume)
            .unwrap_or(EntryError::WhichOunce { found: shorten(written) }));
    }
    let Some(unit) = Unit::parse(written) else {
        return Err(EntryError::UnknownUnit { found: shorten(written), takes });
    };
    measures(unit.quantity()).map_or(Ok(unit), Err)
}

/// A fraction as marked on a rule: `1/32`, `1 1/2`, with whatever follows it.
struct Fraction<'a> {
    whole: u32,
    above: u32,
    below: u32,
    rest: &'a str,
}

impl Fraction<'_> {
    fn read(text: &str) -> Option<Fraction<'_>> {
        let (before, after) = text.split_once('/')?;
        let after = after.trim_start();
        let (below, rest) = after.split_at(after.find(|c| !is_digit(c)).unwrap_or(after.len()));
        let mut parts = before.split_whitespace().rev();
        let above = parts.next()?.parse().ok()?;
        let whole = parts.next().map_or(Ok(0), str::parse).ok()?;
        let alone = parts.next().is_none();
        alone.then_some(Fraction { whole, above, below: below.parse().ok()?, rest })
    }

    /// What to type in its place, unit included; `None` where the decimal has no end or is long.
    fn instead(&self) -> Option<String> {
        let part = Decimal::from(self.above).checked_div(Decimal::from(self.below))?;
        let decimal = (part + Decimal::from(self.whole)).normalize();
        (decimal.scale() <= 8).then(|| format!("{decimal}{}", self.rest))
    }
}

impl fmt::Display for Typed {
    /// The digits as typed and the unit: `0,019 in`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} {}", self.text, self.unit)
    }
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Written<Text> {
    typed: Text,
    unit: Unit,
}

impl Serialize for Typed {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        Written { typed: self.text(), unit: self.unit }.serialize(serializer)
    }
}

impl<'de> Deserialize<'de> for Typed {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Typed, D::Error> {
        let Written { typed, unit } = Written::<String>::deserialize(deserializer)?;
        let read = Typed::parse(&typed, unit, Sign::Any).map_err(serde::de::Error::custom)?;
        if read.unit != unit {
            let (typed, unit) = (shorten(&typed), unit.symbol());
            return Err(serde::de::Error::custom(format!(
                "{typed} is written down as {unit}. Keep one unit."
            )));
        }
        Ok(read)
    }
}
