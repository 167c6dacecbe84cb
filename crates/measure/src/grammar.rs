//! The entry grammar: what a person may type for a number.
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

use crate::entry_error::{EntryError, shorten};
use crate::unit::fold;
use crate::{Decimal, Quantity, Sign, Unit};

/// The most digits an entry may have. Conversion of so many is exact, and no gauge shows more.
pub(crate) const MOST_DIGITS: usize = 12;

const SIGNS: [char; 3] = ['-', '−', '+'];

/// What an entry says: its sign and digits as typed, their value, and the unit.
pub(crate) struct Entry {
    pub(crate) text: String,
    pub(crate) value: Decimal,
    pub(crate) unit: Unit,
}

/// Reads an entry for a field in `unit` that accepts `sign`.
pub(crate) fn read(text: &str, unit: Unit, sign: Sign) -> Result<Entry, EntryError> {
    let parts = Parts::split(text.trim());
    if parts.entry.is_empty() {
        return Err(EntryError::Empty);
    }
    parts.must_be_one_number()?;
    let value = parts.value()?;
    let allowed = match sign {
        Sign::Positive => value > Decimal::ZERO,
        Sign::NotNegative => value >= Decimal::ZERO,
        Sign::Any => true,
    };
    if !allowed {
        return Err(EntryError::Sign { found: shorten(parts.entry), wanted: sign });
    }
    let unit = read_unit(parts.rest.trim(), unit)?;
    Ok(Entry { text: format!("{}{}", parts.sign, parts.number), value, unit })
}

/// An entry cut where its number ends, before anything is judged.
pub(crate) struct Parts<'a> {
    /// All of it, without the blanks round it.
    entry: &'a str,
    /// The sign, or nothing.
    pub(crate) sign: &'a str,
    /// What follows the sign: the number and the rest.
    unsigned: &'a str,
    /// The first run of digits and marks.
    pub(crate) number: &'a str,
    /// What follows the number: a unit, if all is well.
    pub(crate) rest: &'a str,
}

impl Parts<'_> {
    pub(crate) fn split(entry: &str) -> Parts<'_> {
        let (sign, unsigned) = match entry.chars().next().filter(|c| SIGNS.contains(c)) {
            Some(first) => entry.split_at(first.len_utf8()),
            None => ("", entry),
        };
        let unsigned = unsigned.trim_start();
        let (number, rest) =
            unsigned.split_at(unsigned.find(|c| !is_number(c)).unwrap_or(unsigned.len()));
        Parts { entry, sign, unsigned, number, rest }
    }

    /// What follows the number may be a unit and nothing else.
    fn must_be_one_number(&self) -> Result<(), EntryError> {
        let found = shorten(self.entry);
        if self.unsigned.starts_with(SIGNS) {
            return Err(EntryError::TwoSigns { found });
        }
        if self.number.is_empty() {
            return Err(if self.rest.is_empty() {
                EntryError::NoDigits { found }
            } else {
                EntryError::NotANumber { found }
            });
        }
        if !self.rest.contains(is_digit) || Unit::parse(self.rest).is_some() {
            return Ok(());
        }
        if let Some(fraction) = Fraction::read(self.unsigned) {
            let instead = fraction.instead().map(|instead| format!("{}{instead}", self.sign));
            return Err(EntryError::Fraction { found, instead });
        }
        Err(if self.has_exponent() {
            EntryError::Exponent { found }
        } else if self.is_separated() {
            EntryError::Separator { found }
        } else {
            EntryError::TwoNumbers { found }
        })
    }

    /// Whether a power of ten follows: `1e-3`.
    fn has_exponent(&self) -> bool {
        let exponent =
            self.rest.strip_prefix(['e', 'E']).map(|rest| rest.trim_start_matches(SIGNS));
        exponent.is_some_and(|exponent| exponent.starts_with(is_digit))
    }

    /// Whether the digits go on after a character that groups thousands: `1_000`, `1'000`, `1 000`.
    fn is_separated(&self) -> bool {
        let mut rest = self.rest.chars();
        let grouping = rest.next();
        let digits = rest.take_while(|c| is_digit(*c)).count();
        match grouping {
            Some('_' | '\'' | '’') => digits > 0,
            Some(blank) => blank.is_whitespace() && digits == 3 && !self.number.contains(is_mark),
            None => false,
        }
    }

    /// The number's value, with as many decimals as were typed.
    fn value(&self) -> Result<Decimal, EntryError> {
        let found = shorten(self.entry);
        let digits: String = self.number.chars().filter(|c| is_digit(*c)).collect();
        let marks = self.number.chars().filter(|c| is_mark(*c)).count();
        if marks > 1 {
            return Err(EntryError::Marks { found, marks });
        }
        if digits.len() > MOST_DIGITS {
            return Err(EntryError::TooManyDigits { found, digits: digits.len() });
        }
        // So few digits always parse; only an empty run, a mark that stands alone, does not.
        let Ok(magnitude) = digits.parse::<i64>() else {
            return Err(EntryError::NoDigits { found });
        };
        let negative = matches!(self.sign, "-" | "−");
        let decimals = self.number.split_once(is_mark).map_or(0, |(_, decimals)| decimals.len());
        Ok(Decimal::new(if negative { -magnitude } else { magnitude }, decimals as u32))
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

/// The unit written after the number, or the field's.
fn read_unit(written: &str, field: Unit) -> Result<Unit, EntryError> {
    let takes = field.quantity();
    if written.is_empty() {
        return Ok(field);
    }
    let found = shorten(written);
    let either_ounce = matches!(fold(written).as_str(), "fl·oz" | "floz" | "oz");
    let read = Unit::parse(written);
    let measures = if either_ounce { Some(Quantity::Volume) } else { read.map(Unit::quantity) };
    match (measures, read) {
        (Some(measures), _) if measures != takes => {
            Err(EntryError::OtherQuantity { found, measures, takes })
        }
        (_, Some(unit)) => Ok(unit),
        (Some(_), None) => Err(EntryError::WhichOunce { found }),
        (None, None) => Err(EntryError::UnknownUnit { found, takes }),
    }
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

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn reads(text: &str, field: Unit, digits: &str, value: Decimal, unit: Unit) {
        let entry = read(text, field, Sign::Any).unwrap();
        assert_eq!((entry.text.as_str(), entry.value, entry.unit), (digits, value, unit), "{text}");
        assert_eq!(entry.value.scale(), value.scale(), "the digits typed are kept: {text}");
    }

    #[test]
    fn what_is_read() {
        let mm = Unit::Millimetre;
        reads("0.38", mm, "0.38", Decimal::new(38, 2), mm);
        reads("0,30 mm", mm, "0,30", Decimal::new(30, 2), mm);
        reads("0.012 in", mm, "0.012", Decimal::new(12, 3), Unit::Inch);
        reads("0.012\"", mm, "0.012", Decimal::new(12, 3), Unit::Inch);
        reads("3.2 lbf·in", Unit::NewtonMetre, "3.2", Decimal::new(32, 1), Unit::PoundForceInch);
        reads("3.2lbf.in", Unit::NewtonMetre, "3.2", Decimal::new(32, 1), Unit::PoundForceInch);
        reads("1,234", mm, "1,234", Decimal::new(1234, 3), mm);
        reads(".5", mm, ".5", Decimal::new(5, 1), mm);
        reads("5.", mm, "5.", Decimal::new(5, 0), mm);
        reads("5. in.", mm, "5.", Decimal::new(5, 0), Unit::Inch);
        reads("-0.05", mm, "-0.05", Decimal::new(-5, 2), mm);
        reads("− 0,05", mm, "−0,05", Decimal::new(-5, 2), mm);
        reads("+0.0120", mm, "+0.0120", Decimal::new(120, 4), mm);
        reads("-40 F", Unit::Celsius, "-40", Decimal::new(-40, 0), Unit::Fahrenheit);
        reads("999999999999", mm, "999999999999", Decimal::new(999_999_999_999, 0), mm);
        reads("14.7 lbf/in2", Unit::Bar, "14.7", Decimal::new(147, 1), Unit::PoundPerSquareInch);
        reads("12'", Unit::Degree, "12", Decimal::new(12, 0), Unit::ArcMinute);
    }

    #[test]
    fn what_a_gauge_types() {
        let mm = Unit::Millimetre;
        reads("  0.147\r\n", mm, "0.147", Decimal::new(147, 3), mm);
        reads("\u{a0}+0000.012\t", mm, "+0000.012", Decimal::new(12, 3), mm);
    }

    #[track_caller]
    fn refuses(text: &str, field: Unit, sign: Sign, sentence: &str) {
        let refusal = read(text, field, sign).err().map(|refusal| refusal.to_string());
        assert_eq!(refusal.as_deref(), Some(sentence), "{text}");
    }

    #[test]
    fn what_is_refused() {
        let refusals = [
            ("", "Nothing typed. Type a number."),
            (" \n", "Nothing typed. Type a number."),
            (".", "Only . typed. Type digits too, like 0.38."),
            ("-", "Only - typed. Type digits too, like 0.38."),
            ("abc", "abc does not start with a number. Type digits first, like 0.38."),
            ("mm 0.3", "mm 0.3 does not start with a number. Type digits first, like 0.38."),
            ("0.3.8", "Two decimal marks in 0.3.8. Type one."),
            ("1,250.0", "Two decimal marks in 1,250.0. Type one."),
            ("1.2.3.4", "3 decimal marks in 1.2.3.4. Type one."),
            ("..", "Two decimal marks in ... Type one."),
            ("--3", "Two signs in --3. Type one."),
            ("1e-3", "Power of ten in 1e-3. Type all the digits, like 0.001."),
            ("1_000", "Gap between the digits of 1_000. Type them without it."),
            ("1 000", "Gap between the digits of 1 000. Type them without it."),
            ("1'000", "Gap between the digits of 1'000. Type them without it."),
            ("0.38 0.39", "Two numbers in 0.38 0.39. Type one."),
            ("0.20-0.35", "Two numbers in 0.20-0.35. Type one."),
            ("1/32", "1/32 is a fraction. Type 0.03125 instead."),
            ("1/32 in", "1/32 in is a fraction. Type 0.03125 in instead."),
            ("-1 1/2\"", "-1 1/2\" is a fraction. Type -1.5\" instead."),
            ("1/3", "1/3 is a fraction. Type it as a decimal, like 0.38."),
            ("1/0", "1/0 is a fraction. Type it as a decimal, like 0.38."),
            ("0.1234567890123", "0.1234567890123 has 14 digits. Type 12 at most."),
            ("0.3 mn", "mn is not a unit of length. Type mm or in."),
            ("0.3O", "O is not a unit of length. Type mm or in."),
            ("0.3 psi", "psi is a pressure. This field takes a length: mm or in."),
            ("3 Nm", "Nm is a torque. This field takes a length: mm or in."),
            ("3 fl oz", "fl oz is a volume. This field takes a length: mm or in."),
        ];
        for (text, sentence) in refusals {
            refuses(text, Unit::Millimetre, Sign::Any, sentence);
        }
    }

    #[test]
    fn a_fluid_ounce_is_asked_for() {
        let sentence = "fl. oz. may be US or imperial. Type US fl oz or imp fl oz.";
        refuses("22.5 fl. oz.", Unit::Millilitre, Sign::Any, sentence);
    }

    #[test]
    fn signs_that_make_no_sense() {
        let (mm, zero_or_more) = (Unit::Millimetre, Sign::NotNegative);
        refuses("-0.3", mm, zero_or_more, "Minus in -0.3. This field takes zero or more.");
        let sentence = "-0.3 is not above zero. This field takes more than zero.";
        refuses("-0.3", mm, Sign::Positive, sentence);
        let sentence = "0.00 mm is not above zero. This field takes more than zero.";
        refuses("0.00 mm", mm, Sign::Positive, sentence);
        assert!(read("0.00", mm, zero_or_more).is_ok());
    }

    #[test]
    fn a_long_entry_is_shortened_in_the_sentence() {
        let sentence = "xxxxxxxxxxxxxxxxxxxxxxxx… does not start with a number. \
                        Type digits first, like 0.38.";
        refuses(&"x".repeat(5000), Unit::Millimetre, Sign::Any, sentence);
    }
}
