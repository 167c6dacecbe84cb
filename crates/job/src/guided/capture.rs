//! What was captured on a step.

use measure::{Decimal, Typed};
use words::{key, t};

use crate::guide::{faced, signed_words};
use crate::json::Json;

/// What was captured for one record.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Capture {
    /// Numbers as typed, with unit; the digits are the resolution. Counts too.
    Readings(Vec<Typed>),
    /// The shims of a pack, as measured.
    Pack(Vec<Typed>),
    /// Where a photo is kept.
    Photo(String),
    /// Which way it faces, in words, and where its photo is kept; one may be missing.
    Facing {
        /// In words; may be empty.
        words: String,
        /// The photo.
        photo: Option<String>,
    },
    /// The options chosen, one for each place.
    Chosen(Vec<String>),
    /// A torque applied, or what fasteners broke out at.
    Torque {
        /// One for each fastener.
        values: Vec<Typed>,
        /// What the manual asks.
        asked: Option<Typed>,
        /// Length of an offset tool, centre to centre.
        offset: Option<Typed>,
        /// What the wrench was set to.
        set: Option<Typed>,
        /// What was on the threads.
        on: Option<TorqueOn>,
    },
    /// A point in time, milliseconds since 1970.
    Time(i64),
    /// Words; a second person's initials too.
    Text(String),
    /// The person saw which way a thicker pack pushes.
    SignSeen,
    /// Nothing to capture, and why: "none here", "not disturbed".
    None(String),
}

/// What is on the threads when a torque is applied.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TorqueOn {
    /// Dry.
    Dry,
    /// Oiled.
    Oil,
    /// Thread-locking compound.
    Compound,
}

const ON: [(TorqueOn, &str); 3] = [
    (TorqueOn::Dry, key!("dry")),
    (TorqueOn::Oil, key!("oil")),
    (TorqueOn::Compound, key!("compound")),
];

impl TorqueOn {
    /// The word of the step data: `dry`.
    pub fn word(self) -> &'static str {
        ON.iter().find(|row| row.0 == self).map_or("", |row| row.1)
    }

    fn named(word: &str) -> Option<TorqueOn> {
        ON.iter().find(|row| row.1 == word).map(|row| row.0)
    }
}

impl Capture {
    /// What packs say instead of shims, as the step data has it.
    pub const NO_PACK: [&'static str; 3] = ["none here", "not disturbed", "still behind its race"];

    /// The sum of a pack's shims, mm.
    pub fn pack_total(&self) -> Option<Decimal> {
        let Capture::Pack(shims) = self else { return None };
        Some(shims.iter().map(|shim| shim.in_unit(measure::Unit::Millimetre)).sum())
    }

    /// Where its photo is kept.
    pub fn photo(&self) -> Option<&str> {
        match self {
            Capture::Photo(photo) => Some(photo),
            Capture::Facing { photo, .. } => photo.as_deref(),
            _ => None,
        }
    }

    /// The value as a mechanic would write it.
    pub fn words(&self) -> String {
        match self {
            Capture::Readings(values) => join(values, " "),
            Capture::Torque { values, on, .. } => {
                let on = on.map(|on| format!(", {}", t(on.word()))).unwrap_or_default();
                join(values, " ") + &on
            }
            Capture::Pack(shims) => join(shims, " + "),
            Capture::Photo(_) => t("photo").to_owned(),
            Capture::Facing { words, .. } if words.trim().is_empty() => t("photo").to_owned(),
            Capture::Facing { words, .. } => faced(words),
            Capture::Chosen(words) => {
                words.iter().map(|word| t(word)).collect::<Vec<_>>().join(", ")
            }
            Capture::Time(_) => t("noted").to_owned(),
            Capture::Text(text) => signed_words(text).unwrap_or_else(|| text.clone()),
            Capture::SignSeen => t("Seen").to_lowercase(),
            Capture::None(why) => t(why).to_owned(),
        }
    }

    /// The same beside its photo, which needs no word for itself.
    pub(crate) fn beside_photo(&self) -> String {
        match self {
            Capture::Photo(_) => String::new(),
            Capture::Facing { words, .. } if words.trim().is_empty() => String::new(),
            _ => self.words(),
        }
    }

    pub(super) fn to_json(&self) -> Json {
        let typed = |typed: &Option<Typed>| Json::or_null(typed.as_ref().map(Json::typed));
        let list = |values: &[Typed]| Json::List(values.iter().map(Json::typed).collect());
        let photo = |photo: &Option<String>| Json::or_null(photo.as_deref().map(Json::text));
        let (kind, value) = match self {
            Capture::Readings(values) => ("readings", list(values)),
            Capture::Pack(shims) => ("pack", list(shims)),
            Capture::Photo(photo) => ("photo", Json::text(photo)),
            Capture::Facing { words, photo: shown } => {
                ("facing", Json::map(&[("words", Json::text(words)), ("photo", photo(shown))]))
            }
            Capture::Chosen(words) => ("chosen", Json::texts(words)),
            Capture::Torque { values, asked, offset, set, on } => (
                "torque",
                Json::map(&[
                    ("values", list(values)),
                    ("asked", typed(asked)),
                    ("offset", typed(offset)),
                    ("set", typed(set)),
                    ("on", Json::or_null(on.map(|on| Json::text(on.word())))),
                ]),
            ),
            Capture::Time(at) => ("time", Json::Number(*at)),
            Capture::Text(text) => ("text", Json::text(text)),
            Capture::SignSeen => ("sign-seen", Json::map(&[])),
            Capture::None(why) => ("none", Json::text(why)),
        };
        Json::map(&[(kind, value)])
    }

    pub(super) fn from_json(json: Json) -> Option<Capture> {
        let Json::Map(keys) = json else { return None };
        let (kind, value) = keys.only()?;
        Some(match (kind.as_str(), value) {
            ("readings", list) => Capture::Readings(list.into_list(Json::into_typed)?),
            ("pack", list) => Capture::Pack(list.into_list(Json::into_typed)?),
            ("photo", photo) => Capture::Photo(photo.into_text()?),
            ("facing", Json::Map(mut keys)) => {
                let words = keys.text("words")?;
                let photo = keys.maybe("photo", Json::into_text)?;
                keys.is_empty().then_some(Capture::Facing { words, photo })?
            }
            ("chosen", words) => Capture::Chosen(words.into_list(Json::into_text)?),
            ("torque", Json::Map(mut keys)) => {
                let torque = Capture::Torque {
                    values: keys.take("values")?.into_list(Json::into_typed)?,
                    asked: keys.maybe("asked", Json::into_typed)?,
                    offset: keys.maybe("offset", Json::into_typed)?,
                    set: keys.maybe("set", Json::into_typed)?,
                    on: keys.maybe("on", |on| TorqueOn::named(&on.into_text()?))?,
                };
                keys.is_empty().then_some(torque)?
            }
            ("time", Json::Number(at)) => Capture::Time(at),
            ("text", text) => Capture::Text(text.into_text()?),
            ("sign-seen", Json::Map(keys)) => keys.is_empty().then_some(Capture::SignSeen)?,
            ("none", why) => Capture::None(why.into_text()?),
            _ => return None,
        })
    }
}

/// "0.45 0.46 mm": the unit once where all have the same.
fn join(values: &[Typed], between: &str) -> String {
    let unit = values.first().map(Typed::unit);
    match unit {
        Some(unit) if values.iter().all(|value| value.unit() == unit) => {
            let texts: Vec<&str> = values.iter().map(Typed::text).collect();
            format!("{} {unit}", texts.join(between))
        }
        _ => values.iter().map(Typed::to_string).collect::<Vec<_>>().join(between),
    }
}
