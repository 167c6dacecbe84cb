//! A JSON value that knows where it stands, so that what is wrong can be said with its path.

use std::fmt;

use measure::Decimal;
use serde_json::{Map, Value};

/// A value and its path from the top of the line.
#[derive(Clone, Debug)]
pub struct Field<'a> {
    path: String,
    value: &'a Value,
}

/// A field that is not as it should be: where, what was found, what was expected.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct FieldError {
    /// `positions[2].moves`; empty for the line itself.
    pub path: String,
    /// What was found and what was expected.
    pub message: String,
}

impl fmt::Display for FieldError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.path.as_str() {
            "" => write!(f, "{}", self.message),
            path => write!(f, "{path}: {}", self.message),
        }
    }
}

impl std::error::Error for FieldError {}

impl<'a> Field<'a> {
    /// The line itself.
    pub fn top(value: &'a Value) -> Field<'a> {
        Field { path: String::new(), value }
    }

    /// Refuses this field.
    ///
    /// # Errors
    /// Always.
    pub fn refuse<T>(&self, expected: &str) -> Result<T, FieldError> {
        let message = format!("found {}, expected {expected}", self.found());
        Err(FieldError { path: self.path.clone(), message })
    }

    /// The value that stands here.
    pub fn value(&self) -> &'a Value {
        self.value
    }

    /// A fault of this field, in words of one's own.
    pub fn says(&self, message: String) -> FieldError {
        FieldError { path: self.path.clone(), message }
    }

    /// What stands here, in few words.
    fn found(&self) -> String {
        match self.value {
            Value::Null => "null".to_owned(),
            Value::Bool(_) | Value::Number(_) | Value::String(_) => {
                let text = self.value.to_string();
                let start: String = text.chars().take(60).collect();
                if start.len() < text.len() { format!("{start}…") } else { text }
            }
            Value::Array(items) if items.is_empty() => "an empty list".to_owned(),
            Value::Array(_) => "a list".to_owned(),
            Value::Object(_) => "an object".to_owned(),
        }
    }

    fn fields(&self) -> Result<&'a Map<String, Value>, FieldError> {
        match self.value {
            Value::Object(fields) => Ok(fields),
            _ => self.refuse("an object in braces"),
        }
    }

    fn inner_path(&self, name: &str) -> String {
        if self.path.is_empty() { name.to_owned() } else { format!("{}.{name}", self.path) }
    }

    /// A field of this object that may be left out or null.
    ///
    /// # Errors
    /// If this is no object.
    pub fn get(&self, name: &str) -> Result<Option<Field<'a>>, FieldError> {
        let value = self.fields()?.get(name).filter(|value| !value.is_null());
        Ok(value.map(|value| Field { path: self.inner_path(name), value }))
    }

    /// A field of this object that must be there.
    ///
    /// # Errors
    /// If this is no object, or the field is missing.
    pub fn need(&self, name: &str, expected: &str) -> Result<Field<'a>, FieldError> {
        let missing = || FieldError {
            path: self.inner_path(name),
            message: format!("found nothing, expected {expected}"),
        };
        self.get(name)?.ok_or_else(missing)
    }

    /// Refuses a field that has no meaning here, so that a slip of spelling is not passed over.
    ///
    /// # Errors
    /// If this is no object, or has a field of another name.
    pub fn only(&self, names: &[&str]) -> Result<(), FieldError> {
        for (name, field) in self.named()? {
            if !names.contains(&name) {
                return Err(FieldError {
                    path: field.path,
                    message: format!(
                        "found a field that is not known here, expected {}; correct its name or \
                         leave it out",
                        names.join(", ")
                    ),
                });
            }
        }
        Ok(())
    }

    /// The names and fields of this object.
    ///
    /// # Errors
    /// If this is no object.
    pub fn named(&self) -> Result<Vec<(&'a str, Field<'a>)>, FieldError> {
        let field = |(name, value): (&'a String, &'a Value)| {
            (name.as_str(), Field { path: self.inner_path(name), value })
        };
        Ok(self.fields()?.iter().map(field).collect())
    }

    /// The items of this list.
    ///
    /// # Errors
    /// If this is no list.
    pub fn list(&self) -> Result<Vec<Field<'a>>, FieldError> {
        let Value::Array(items) = self.value else {
            return self.refuse("a list in brackets");
        };
        let item = |(index, value)| Field { path: format!("{}[{index}]", self.path), value };
        Ok(items.iter().enumerate().map(item).collect())
    }

    /// Text.
    ///
    /// # Errors
    /// If this is no text, or empty.
    pub fn text(&self) -> Result<&'a str, FieldError> {
        match self.value {
            Value::String(text) if !text.trim().is_empty() => Ok(text),
            _ => self.refuse("a text in quotes"),
        }
    }

    /// A decimal number, written in quotes so that no digit is lost.
    ///
    /// # Errors
    /// If this is no text of digits with at most one point and a minus.
    pub fn decimal(&self) -> Result<Decimal, FieldError> {
        const EXPECTED: &str = "a decimal number in quotes, such as \"0.15\"";
        let Value::String(text) = self.value else {
            return self.refuse(EXPECTED);
        };
        let digits = text.strip_prefix('-').unwrap_or(text);
        let (whole, fraction) = digits.split_once('.').unwrap_or((digits, "0"));
        let plain = |part: &str| !part.is_empty() && part.bytes().all(|b| b.is_ascii_digit());
        if !plain(whole) || !plain(fraction) {
            return self.refuse(EXPECTED);
        }
        match Decimal::from_str_exact(text) {
            Ok(decimal) => Ok(decimal),
            Err(_) => self.refuse("a decimal number of at most 28 digits"),
        }
    }

    /// A whole number from 0 up.
    ///
    /// # Errors
    /// If this is none, or too large.
    pub fn whole(&self) -> Result<u32, FieldError> {
        match self.value.as_u64().and_then(|number| u32::try_from(number).ok()) {
            Some(number) => Ok(number),
            None => self.refuse("a whole number without quotes, 0 or more, such as 3"),
        }
    }

    /// A sign.
    ///
    /// # Errors
    /// If this is none of −1, 0 and 1.
    pub fn sign(&self) -> Result<i8, FieldError> {
        match self.value.as_i64() {
            Some(-1) => Ok(-1),
            Some(0) => Ok(0),
            Some(1) => Ok(1),
            _ => self.refuse("-1, 0 or 1, without quotes"),
        }
    }
}
