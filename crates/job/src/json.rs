//! A small JSON value: what procedures and guided facts are read from and written to.
//!
//! One value type for many small records keeps the module small: a derived decoder for each would
//! cost more than the table that reads them.

use std::collections::BTreeMap;
use std::fmt;
use words::t;

use measure::{Sign, Typed, Unit};
use serde::de::{self, Deserialize, Deserializer, MapAccess, SeqAccess, Visitor};
use serde::ser::{Serialize, SerializeMap, Serializer};

/// A value without fractions: numbers that people type are text with a unit.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum Json {
    Null,
    Flag(bool),
    Number(i64),
    Text(String),
    List(Vec<Json>),
    Map(Keys),
}

/// The keys of an object in the order they stood.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(crate) struct Keys(Vec<(String, Json)>);

impl Json {
    pub fn text(text: &str) -> Json {
        Json::Text(text.to_owned())
    }

    pub fn number(number: u32) -> Json {
        Json::Number(i64::from(number))
    }

    pub fn texts(texts: &[String]) -> Json {
        Json::List(texts.iter().map(|text| Json::text(text)).collect())
    }

    pub fn typed(typed: &Typed) -> Json {
        Json::map(&[
            ("typed", Json::text(typed.text())),
            ("unit", Json::text(typed.unit().symbol())),
        ])
    }

    pub fn map(keys: &[(&str, Json)]) -> Json {
        Json::Map(Keys(
            keys.iter().map(|(key, value)| ((*key).to_owned(), value.clone())).collect(),
        ))
    }

    /// The value, or `null`.
    pub fn or_null(value: Option<Json>) -> Json {
        value.unwrap_or(Json::Null)
    }

    pub fn into_text(self) -> Option<String> {
        if let Json::Text(text) = self { Some(text) } else { None }
    }

    pub fn into_count(self) -> Option<u32> {
        if let Json::Number(number) = self { u32::try_from(number).ok() } else { None }
    }

    /// A number with its unit, held to the grammar.
    pub fn into_typed(self) -> Option<Typed> {
        let Json::Map(mut keys) = self else { return None };
        let (text, symbol) = (keys.text("typed")?, keys.text("unit")?);
        let unit = Unit::parse(&symbol)?;
        let typed = Typed::parse(&text, unit, Sign::Any).ok()?;
        (keys.is_empty() && typed.unit() == unit && typed.text() == text).then_some(typed)
    }

    /// Every key's value read the same way; `None` where one cannot be.
    pub fn into_map<T>(self, read: impl Fn(Json) -> Option<T>) -> Option<BTreeMap<String, T>> {
        let Json::Map(Keys(keys)) = self else { return None };
        keys.into_iter().map(|(key, value)| Some((key, read(value)?))).collect()
    }

    /// Every item read the same way; `None` where one cannot be.
    pub fn into_list<T>(self, read: impl Fn(Json) -> Option<T>) -> Option<Vec<T>> {
        if let Json::List(items) = self { items.into_iter().map(read).collect() } else { None }
    }
}

impl Keys {
    /// Takes a key out.
    pub fn take(&mut self, key: &str) -> Option<Json> {
        let at = self.0.iter().position(|(name, _)| name == key)?;
        Some(self.0.remove(at).1)
    }

    pub fn text(&mut self, key: &str) -> Option<String> {
        self.take(key)?.into_text()
    }

    pub fn count(&mut self, key: &str) -> Option<u32> {
        self.take(key)?.into_count()
    }

    pub fn texts(&mut self, key: &str) -> Option<Vec<String>> {
        self.take(key)?.into_list(Json::into_text)
    }

    /// A key that must be there but may be `null`.
    pub fn maybe<T>(&mut self, key: &str, read: impl Fn(Json) -> Option<T>) -> Option<Option<T>> {
        match self.take(key)? {
            Json::Null => Some(None),
            value => read(value).map(Some),
        }
    }

    /// The one key and its value.
    pub fn only(mut self) -> Option<(String, Json)> {
        let only = self.0.pop()?;
        self.0.is_empty().then_some(only)
    }

    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// The names of the keys in the order they stand.
    pub fn names(&self) -> impl Iterator<Item = &str> {
        self.0.iter().map(|(name, _)| name.as_str())
    }
}

struct AnyValue;

impl<'de> Visitor<'de> for AnyValue {
    type Value = Json;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(t("text, a whole number, a list or an object"))
    }

    fn visit_unit<E: de::Error>(self) -> Result<Json, E> {
        Ok(Json::Null)
    }

    fn visit_bool<E: de::Error>(self, flag: bool) -> Result<Json, E> {
        Ok(Json::Flag(flag))
    }

    fn visit_i64<E: de::Error>(self, number: i64) -> Result<Json, E> {
        Ok(Json::Number(number))
    }

    fn visit_u64<E: de::Error>(self, number: u64) -> Result<Json, E> {
        i64::try_from(number).map(Json::Number).map_err(|_| E::custom(t("too large")))
    }

    fn visit_str<E: de::Error>(self, text: &str) -> Result<Json, E> {
        Ok(Json::Text(text.to_owned()))
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut items: A) -> Result<Json, A::Error> {
        let mut list = Vec::new();
        while let Some(item) = items.next_element()? {
            list.push(item);
        }
        Ok(Json::List(list))
    }

    fn visit_map<A: MapAccess<'de>>(self, mut entries: A) -> Result<Json, A::Error> {
        let mut keys = Vec::new();
        while let Some(key) = entries.next_key::<String>()? {
            keys.push((key, entries.next_value()?));
        }
        Ok(Json::Map(Keys(keys)))
    }
}

impl<'de> Deserialize<'de> for Json {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Json, D::Error> {
        deserializer.deserialize_any(AnyValue)
    }
}

impl Serialize for Json {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self {
            Json::Null => serializer.serialize_unit(),
            Json::Flag(flag) => serializer.serialize_bool(*flag),
            Json::Number(number) => serializer.serialize_i64(*number),
            Json::Text(text) => serializer.serialize_str(text),
            Json::List(items) => serializer.collect_seq(items),
            Json::Map(Keys(keys)) => {
                let mut map = serializer.serialize_map(Some(keys.len()))?;
                for (key, value) in keys {
                    map.serialize_entry(key, value)?;
                }
                map.end()
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_read_is_written_the_same() {
        let text = r#"{"b":[1,-2,null,true],"a":{"typed":"0,5","unit":"in"}}"#;
        let json: Json = serde_json::from_str(text).unwrap();
        assert_eq!(serde_json::to_string(&json).unwrap(), text);
    }

    #[test]
    fn fractions_and_huge_numbers_are_not_read() {
        for text in ["0.5", "1e3", "18446744073709551615", "{\"a\":}"] {
            assert!(serde_json::from_str::<Json>(text).is_err(), "{text}");
        }
    }

    #[test]
    fn a_number_is_held_to_the_grammar() {
        let read = |text: &str| serde_json::from_str::<Json>(text).unwrap().into_typed();
        assert!(read(r#"{"typed":"0,019","unit":"in"}"#).is_some());
        for text in [
            r#"{"typed":"0.3.8","unit":"mm"}"#,
            r#"{"typed":"0.3 mm","unit":"in"}"#,
            r#"{"typed":"0.3","unit":"furlong"}"#,
            r#"{"typed":"0.3","unit":"mm","more":1}"#,
        ] {
            assert_eq!(read(text), None, "{text}");
        }
    }
}
