//! What a step captures: one line of the grammar, read.

use measure::{Sign, Typed, Unit};
use words::key;

/// One thing to capture.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Record {
    /// Which kind.
    pub kind: RecordKind,
    /// Its name, used once in a step; a sign's label is a position.
    pub label: String,
    /// The unit and the resolution asked for; measures, torques and packs have it.
    pub step: Option<Typed>,
    /// The options of a choice; else empty.
    pub choices: Vec<Choice>,
    /// How many values.
    pub repeats: Repeats,
}

/// The kinds of things a step captures.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum RecordKind {
    /// Numbers with a unit; counts too.
    Measure,
    /// A torque applied, or what a fastener broke out at.
    Torque,
    /// The shims of a pack.
    Pack,
    /// One of some options.
    Choice,
    /// The person confirms which way a thicker pack pushes.
    Sign,
    /// A picture.
    Photo,
    /// Which way something faces, in a picture or words.
    Orientation,
    /// Words.
    Text,
    /// A point in time.
    Time,
}

/// An option of a choice.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Choice {
    /// Its word.
    pub word: String,
    /// It keeps the gate shut.
    pub shuts: bool,
}

/// How many values a record holds.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Repeats {
    /// One.
    Once,
    /// That many, at: "positions", "turns"; empty where the data names no places.
    Times(u32, String),
    /// One for every item.
    Each,
    /// For every item that many, at: "places".
    EachAt(u32, String),
    /// One at each of those minutes after time zero.
    Minutes(Vec<u32>),
}

const KINDS: [(RecordKind, &str); 9] = [
    (RecordKind::Measure, "meas"),
    (RecordKind::Torque, "torque"),
    (RecordKind::Pack, "pack"),
    (RecordKind::Choice, "choice"),
    (RecordKind::Sign, "sign"),
    (RecordKind::Photo, "photo"),
    (RecordKind::Orientation, "orient"),
    (RecordKind::Text, "text"),
    (RecordKind::Time, "time"),
];

impl Record {
    /// Reads `kind:label|unit|resolution|repeats`; `None` where it does not follow the grammar.
    ///
    /// ```
    /// use job::procedure::{Record, RecordKind, Repeats};
    /// let record = Record::parse("meas:forward backlash|mm|0.01|4 positions").unwrap();
    /// assert_eq!(record.kind, RecordKind::Measure);
    /// assert_eq!(record.repeats, Repeats::Times(4, "positions".into()));
    /// assert_eq!(Record::parse("meas:forward backlash|furlong|0.01"), None);
    /// ```
    pub fn parse(text: &str) -> Option<Record> {
        let (kind, rest) = text.split_once(':')?;
        let kind = KINDS.iter().find(|row| row.1 == kind)?.0;
        let mut fields = rest.split('|');
        let label = fields.next().filter(|label| !label.trim().is_empty())?.to_owned();
        if label.contains(':') {
            return None;
        }
        let (unit, step, repeats) = (fields.next(), fields.next(), fields.next());
        if fields.next().is_some() {
            return None;
        }
        let mut record =
            Record { kind, label, step: None, choices: Vec::new(), repeats: Repeats::Once };
        if let Some(repeats) = repeats {
            record.repeats = Repeats::parse(repeats)?;
        }
        match kind {
            RecordKind::Measure | RecordKind::Torque | RecordKind::Pack => {
                let unit = Unit::parse(unit?)?;
                record.step = Some(Typed::parse(step?, unit, Sign::Positive).ok()?);
            }
            RecordKind::Choice => {
                record.choices = unit?.split('/').map(choice).collect::<Option<_>>()?;
                let opens = record.choices.iter().any(|choice| !choice.shuts);
                let is_plain = step.is_none_or(str::is_empty);
                if record.choices.len() < 2 || !opens || !is_plain {
                    return None;
                }
            }
            _ if unit.is_some() => return None,
            _ => {}
        }
        Some(record)
    }

    /// Its label as a title: "Jar at once".
    pub fn title(&self) -> String {
        crate::guided::labelled(&self.label)
    }

    /// What each value is taken at: "90°", "5 min", "3".
    pub fn places(&self, values: usize) -> Vec<String> {
        let of_turn = |count: usize| match &self.repeats {
            Repeats::Times(_, at) if at == "positions" || at == "angles" => {
                Some(360 / count.max(1))
            }
            _ => None,
        };
        let place = |at: usize| match (&self.repeats, of_turn(values)) {
            (Repeats::Minutes(minutes), _) => {
                minutes.get(at).map_or_else(String::new, |minute| format!("{minute} min"))
            }
            (_, Some(angle)) => format!("{}°", at * angle),
            _ => (at + 1).to_string(),
        };
        (0..values).map(place).collect()
    }

    /// The unit it is asked for in.
    pub fn unit(&self) -> Option<Unit> {
        self.step.as_ref().map(Typed::unit)
    }

    /// Whether its values may lie below zero: temperatures, and what is read against a zero.
    pub fn may_be_below_zero(&self) -> bool {
        let below = [Unit::Celsius, Unit::Degree].map(Some).contains(&self.unit());
        let from_zero = self.label.contains("zero") || self.label.contains("fit");
        self.kind == RecordKind::Measure && (below || from_zero)
    }

    /// Whether it counts things: rollers, screws.
    pub fn is_count(&self) -> bool {
        self.unit() == Some(Unit::Piece)
    }

    /// How many values it takes, where that is fixed; for each item, the multiple.
    pub fn wanted(&self) -> Option<usize> {
        match &self.repeats {
            Repeats::Once => Some(1),
            Repeats::Times(count, _) => usize::try_from(*count).ok(),
            Repeats::Minutes(minutes) => Some(minutes.len()),
            Repeats::Each | Repeats::EachAt(..) => None,
        }
    }

    /// A pack's position and state: ("B1", "as found"); a note after a comma is left out.
    pub fn pack(&self) -> Option<(&str, &str)> {
        let (position, rest) = self.label.split_once(' ')?;
        let state = rest.split_once(',').map_or(rest, |(state, _)| state);
        (self.kind == RecordKind::Pack).then_some((position, state))
    }
}

/// What a record can be repeated at.
const AT: [&str; 4] = [key!("positions"), key!("angles"), key!("places"), key!("turns")];

impl Repeats {
    fn parse(text: &str) -> Option<Repeats> {
        if let Some(minutes) = text.strip_suffix(" min") {
            let minutes: Option<Vec<u32>> =
                minutes.split(',').map(|minute| minute.parse().ok()).collect();
            let minutes = minutes?;
            let rises = minutes.is_sorted_by(|one, next| one < next);
            return (minutes.len() > 1 && rises).then_some(Repeats::Minutes(minutes));
        }
        if text == "each" {
            return Some(Repeats::Each);
        }
        let (each, rest) = match text.strip_prefix("each ") {
            Some(rest) => (true, rest),
            None => (false, text),
        };
        let (count, places) = rest.split_once(' ').unwrap_or((rest, ""));
        let count = count.parse().ok().filter(|count| *count > 0)?;
        let known = AT.contains(&places);
        match each {
            true if places == "places" => Some(Repeats::EachAt(count, places.to_owned())),
            false if known || places.is_empty() => Some(Repeats::Times(count, places.to_owned())),
            _ => None,
        }
    }
}

fn choice(text: &str) -> Option<Choice> {
    let (word, shuts) = text.strip_prefix('!').map_or((text, false), |word| (word, true));
    let word = word.trim();
    (!word.is_empty()).then(|| Choice { word: word.to_owned(), shuts })
}
