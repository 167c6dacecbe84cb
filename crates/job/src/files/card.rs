//! A unit sheet small enough to be shown as a code and read by another phone's camera.
//!
//! The text is made for an address: `1&b&Unit%2014/21&forward-low=0.20mm&@B1=B1c&@B4=&!B2=`. First
//! the format, the layout, the name; then what was typed, with `@` where a pack lies (nothing: there is
//! none), `!` a sign that was seen (with a reason: it goes the other way), `#` another build. What
//! the shop changed in the procedure is not in it.

use std::fmt;
use words::say;

use measure::{Sign, Typed, Unit};
use qrcodegen::{QrCode, QrCodeEcc, QrSegment, Version};
use sha2::{Digest, Sha256};

use super::picture::hex;
use crate::{Book, BookId, Fact, Field, FieldValue, Kind, Refusal, Slot, Stamp};

const FORMAT: &str = "1";
/// A code of 25 holds 1273 bytes; finer ones are read badly off a phone's screen.
const FINEST: u8 = 25;
/// What a code of that fineness holds, with the least correction (ISO/IEC 18004, table 7).
const MOST_BYTES: usize = 1273;

/// A unit sheet as a short text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Card {
    text: String,
}

/// Why a card was not made or read, in a sentence.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum CardRefused {
    /// It does not fit a code.
    TooLong {
        /// Its bytes.
        bytes: usize,
    },
    /// It is no card.
    NotOurs {
        /// What could not be read.
        found: String,
    },
    /// The sheet's own book does not admit it.
    NotAdmitted(Refusal),
}

impl fmt::Display for CardRefused {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            CardRefused::TooLong { bytes } => f.write_str(&say!(
                "This sheet is {bytes} bytes and a code that a phone can read holds {MOST_BYTES}. \
                 Send it as a file instead."
            )),
            CardRefused::NotOurs { found } => f.write_str(&say!(
                "“{found}” on the code could not be read. \
                 Read it again, or have the sheet sent as a file."
            )),
            CardRefused::NotAdmitted(refusal) => refusal.fmt(f),
        }
    }
}

impl std::error::Error for CardRefused {}

impl Card {
    /// The card of a sheet, as the sheet stands.
    pub fn of(book: &Book) -> Card {
        let mut parts = vec![FORMAT.to_owned(), String::new(), String::new()];
        let mut keyed: Vec<(String, String)> = Vec::new();
        for entry in book.live() {
            match &entry.fact {
                Fact::SheetOpened { name, layout } => {
                    parts = vec![FORMAT.to_owned(), escaped(layout), escaped(name)];
                }
                Fact::FieldCleared { field } => keyed.retain(|(key, _)| key != field.id()),
                fact => {
                    if let Some((key, value)) = key_and_value(fact) {
                        keyed.retain(|(other, _)| *other != key);
                        keyed.push((key, value));
                    }
                }
            }
        }
        parts.extend(keyed.into_iter().map(|(key, value)| format!("{key}={}", escaped(&value))));
        Card { text: parts.join("&") }
    }

    /// The card of a text as it stood behind the `#` of an address.
    pub fn from_text(text: &str) -> Card {
        Card { text: text.to_owned() }
    }

    /// The text, fit to stand behind the `#` of an address.
    pub fn text(&self) -> &str {
        &self.text
    }

    /// A name for the sheet's book that another card does not have.
    pub fn name(&self) -> String {
        let hash = hex(&Sha256::digest(self.text.as_bytes()));
        format!("code-{}", hash.get(..16).unwrap_or_default())
    }

    /// The code of an address that ends in this card: rows of dark squares, without the quiet edge
    /// of four that must stand around it.
    ///
    /// # Errors
    /// Where it does not fit.
    pub fn code(&self, address: &str) -> Result<Vec<Vec<bool>>, CardRefused> {
        let whole = format!("{address}{}", self.text);
        let bytes = whole.len();
        let code = QrCode::encode_segments_advanced(
            &[QrSegment::make_bytes(whole.as_bytes())],
            QrCodeEcc::Low,
            Version::MIN,
            Version::new(FINEST),
            None,
            true,
        )
        .map_err(|_| CardRefused::TooLong { bytes })?;
        let side = 0..code.size();
        Ok(side.clone().map(|y| side.clone().map(|x| code.get_module(x, y)).collect()).collect())
    }

    /// The sheet's book, typed anew from the card into a book of that id; every value is held to
    /// what a sheet admits.
    ///
    /// # Errors
    /// Where a part of it cannot be read, or is not admitted.
    pub fn book(&self, id: BookId, stamp: &Stamp) -> Result<Book, CardRefused> {
        let book = Book::new(id);
        let entries = book.next(self.facts()?, stamp).map_err(CardRefused::NotAdmitted)?;
        Ok(book.with(entries))
    }

    /// What the card says, in the order of a sheet.
    ///
    /// # Errors
    /// Where a part of it cannot be read.
    pub fn facts(&self) -> Result<Vec<Fact>, CardRefused> {
        let refused = |part: &str| {
            let found = part.chars().filter(|letter| !letter.is_control()).take(24).collect();
            CardRefused::NotOurs { found }
        };
        let mut parts = self.text.split('&');
        let mut next = || parts.next().and_then(unescaped);
        let (format, layout, name) = (next(), next(), next());
        let (Some(FORMAT), Some(layout), Some(name)) = (format.as_deref(), layout, name) else {
            return Err(refused(&self.text));
        };
        let mut facts = vec![Fact::SheetOpened { name, layout }];
        for part in parts {
            facts.push(fact(part).ok_or_else(|| refused(part))?);
        }
        Ok(facts)
    }
}

fn key_and_value(fact: &Fact) -> Option<(String, String)> {
    Some(match fact {
        Fact::FieldTyped { field, value } => {
            let value = match value {
                FieldValue::Number(typed) => format!("{}{}", typed.text(), typed.unit().symbol()),
                FieldValue::Count(count) => count.to_string(),
                FieldValue::Word(word) => word.clone(),
            };
            (field.id().to_owned(), value)
        }
        Fact::VariantChosen { slot, position } => {
            (format!("@{}", slot.tag()), position.clone().unwrap_or_default())
        }
        Fact::SignConfirmed { position } => (format!("!{position}"), String::new()),
        Fact::SignOverridden { position, reason } => (format!("!{position}"), reason.clone()),
        Fact::BuildChosen { position, build } => {
            (format!("#{position}"), build.map(|build| build.to_string()).unwrap_or_default())
        }
        _ => return None,
    })
}

fn fact(part: &str) -> Option<Fact> {
    let (key, value) = part.split_once('=')?;
    let value = unescaped(value)?;
    let or_none = |value: String| Some(value).filter(|value| !value.is_empty());
    if let Some(tag) = key.strip_prefix('@') {
        return Some(Fact::VariantChosen { slot: Slot::named(tag)?, position: or_none(value) });
    }
    if let Some(position) = key.strip_prefix('!') {
        let position = position.to_owned();
        return Some(match or_none(value) {
            None => Fact::SignConfirmed { position },
            Some(reason) => Fact::SignOverridden { position, reason },
        });
    }
    if let Some(position) = key.strip_prefix('#') {
        let build = or_none(value).map(|value| value.parse()).transpose().ok()?;
        return Some(Fact::BuildChosen { position: position.to_owned(), build });
    }
    let field = Field::named(key)?;
    let value = match field.facts().kind {
        Kind::Teeth => FieldValue::Count(value.parse().ok()?),
        Kind::Choice(_) | Kind::Text => FieldValue::Word(value),
        Kind::Length { .. }
        | Kind::Play
        | Kind::Torque
        | Kind::Pressure
        | Kind::Time
        | Kind::Angle => {
            let at = value
                .find(|letter: char| !matches!(letter, '0'..='9' | '.' | ',' | '-' | '+' | '−'))?;
            let unit = Unit::parse(value.get(at..)?)?;
            FieldValue::Number(Typed::parse(value.get(..at)?, unit, Sign::Any).ok()?)
        }
    };
    Some(Fact::FieldTyped { field, value })
}

/// Letters that stand for themselves in a fragment and part nothing here (RFC 3986, 3.5).
fn stands(byte: u8) -> bool {
    byte.is_ascii_alphanumeric() || b"-._~/:,;*()".contains(&byte)
}

fn escaped(text: &str) -> String {
    let mut escaped = String::new();
    for byte in text.bytes() {
        match stands(byte) {
            true => escaped.push(char::from(byte)),
            false => escaped.push_str(&format!("%{byte:02X}")),
        }
    }
    escaped
}

fn unescaped(text: &str) -> Option<String> {
    let mut bytes = text.bytes();
    let mut plain = Vec::new();
    while let Some(byte) = bytes.next() {
        let digit = |byte: Option<u8>| char::from(byte?).to_digit(16);
        plain.push(match byte {
            b'%' => u8::try_from(digit(bytes.next())? * 16 + digit(bytes.next())?).ok()?,
            byte => byte,
        });
    }
    String::from_utf8(plain).ok()
}
