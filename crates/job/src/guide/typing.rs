//! From typed text to a capture, held to the record that asks for it.

use std::fmt;
use words::{key, say, t};

use measure::{Decimal, EntryError, Sign, Typed, Unit};

use crate::guided::Capture;
use crate::procedure::{Record, RecordKind, Repeats};

/// Why a capture is not taken; `Display` is the sentence shown at the field.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum CaptureRefusal {
    /// Nothing typed or chosen.
    Nothing {
        /// The label.
        label: String,
    },
    /// A number that cannot be read.
    Entry(EntryError),
    /// Too few or too many values.
    Count {
        /// How many there are.
        found: usize,
        /// How many are wanted, or the number they come in.
        wanted: usize,
        /// At what: "positions".
        at: String,
    },
    /// A count that is no whole number.
    NotWhole {
        /// As typed.
        found: String,
    },
    /// None of the options.
    NoOption {
        /// As found.
        found: String,
        /// The options.
        options: String,
    },
    /// A record that is not typed: a photo, a time, a sign.
    NotTyped {
        /// The label.
        label: String,
    },
}

impl fmt::Display for CaptureRefusal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            CaptureRefusal::Nothing { label } => {
                let label = t(label);
                f.write_str(&say!("Nothing typed for {label}. Type it, or say why there is none."))
            }
            CaptureRefusal::Entry(entry) => entry.fmt(f),
            CaptureRefusal::Count { found, wanted, at } if found < wanted => {
                let (at, more) = (t(at), wanted - found);
                f.write_str(&match at {
                    "" => say!("{found} of {wanted} typed. Type the other {more} too."),
                    at => say!("{found} of {wanted} {at} typed. Type the other {more} too."),
                })
            }
            CaptureRefusal::Count { found, wanted, at } => {
                let at = t(if at.is_empty() { "places" } else { at });
                f.write_str(&say!("{found} values for {wanted} {at}. Keep {wanted} for each."))
            }
            CaptureRefusal::NotWhole { found } => {
                f.write_str(&say!("{found} is not a count. Type a whole number."))
            }
            CaptureRefusal::NoOption { found, options } => {
                f.write_str(&say!("{found} is not one of {options}. Choose one."))
            }
            CaptureRefusal::NotTyped { label } => {
                let label = t(label);
                f.write_str(&say!("{label} is not typed. Take it on its own button."))
            }
        }
    }
}

impl std::error::Error for CaptureRefusal {}

/// Something to look at again; `Display`-ready.
pub type Doubtful = Option<String>;

/// Reads what was typed for a record. Digits without a unit take `unit`, where it measures the same.
///
/// The doubt says where the digits are coarser than the step asks; it refuses nothing.
///
/// # Errors
/// [`CaptureRefusal`], whose `Display` is the sentence to show at the field.
pub fn capture(
    record: &Record,
    texts: &[&str],
    unit: Option<Unit>,
) -> Result<(Capture, Doubtful), CaptureRefusal> {
    let texts: Vec<&str> =
        texts.iter().map(|text| text.trim()).filter(|text| !text.is_empty()).collect();
    if texts.is_empty() {
        return Err(CaptureRefusal::Nothing { label: record.label.clone() });
    }
    match record.kind {
        RecordKind::Measure => {
            let sign = if record.may_be_below_zero() { Sign::Any } else { Sign::NotNegative };
            let values = numbers(record, &texts, unit, sign)?;
            let doubt = coarse(record, &values);
            Ok((Capture::Readings(values), doubt))
        }
        RecordKind::Torque => {
            let values = numbers(record, &texts, unit, Sign::Positive)?;
            let doubt = coarse(record, &values);
            let (asked, offset, set, on) = (None, None, None, None);
            Ok((Capture::Torque { values, asked, offset, set, on }, doubt))
        }
        RecordKind::Pack => pack_shims(&texts, unit).map(|pack| (pack, None)),
        RecordKind::Choice => choice(record, &texts).map(|chosen| (chosen, None)),
        RecordKind::Text => Ok((Capture::Text(texts.join("\n")), None)),
        RecordKind::Orientation => {
            Ok((Capture::Facing { words: texts.join(" "), photo: None }, None))
        }
        RecordKind::Sign | RecordKind::Photo | RecordKind::Time => {
            Err(CaptureRefusal::NotTyped { label: record.label.clone() })
        }
    }
}

/// The shims of a pack as typed, or one of the three words a pack may have instead.
///
/// # Errors
/// [`CaptureRefusal`], whose `Display` is the sentence to show at the field.
pub fn pack_shims(texts: &[&str], unit: Option<Unit>) -> Result<Capture, CaptureRefusal> {
    if let [word] = texts
        && Capture::NO_PACK.contains(word)
    {
        return Ok(Capture::None((*word).to_owned()));
    }
    let unit = unit.unwrap_or(Unit::Millimetre);
    let read = |text: &&str| Typed::parse(text, unit, Sign::Positive);
    let shims: Result<Vec<_>, _> = texts.iter().map(read).collect();
    shims.map(Capture::Pack).map_err(CaptureRefusal::Entry)
}

fn numbers(
    record: &Record,
    texts: &[&str],
    unit: Option<Unit>,
    sign: Sign,
) -> Result<Vec<Typed>, CaptureRefusal> {
    let own = record.unit().unwrap_or(Unit::Millimetre);
    let unit = unit.filter(|unit| unit.quantity() == own.quantity()).unwrap_or(own);
    let read = |text: &&str| Typed::parse(text, unit, sign);
    let values: Vec<Typed> =
        texts.iter().map(read).collect::<Result<_, _>>().map_err(CaptureRefusal::Entry)?;
    if record.is_count()
        && let Some(part) = values.iter().find(|value| !value.amount().value.fract().is_zero())
    {
        return Err(CaptureRefusal::NotWhole { found: part.text().to_owned() });
    }
    counted(record, values.len())?;
    Ok(values)
}

/// Whether there are as many values as the record takes.
fn counted(record: &Record, found: usize) -> Result<(), CaptureRefusal> {
    let refused =
        |wanted: usize, at: &str| Err(CaptureRefusal::Count { found, wanted, at: at.to_owned() });
    match (&record.repeats, record.wanted()) {
        (Repeats::Times(_, at), Some(wanted)) if found != wanted => refused(wanted, at),
        (Repeats::Minutes(_), Some(wanted)) if found != wanted => refused(wanted, key!("times")),
        (Repeats::Once, Some(wanted)) if found != wanted => refused(wanted, key!("place")),
        (Repeats::EachAt(each, at), _) => {
            let each = usize::try_from(*each).unwrap_or(1).max(1);
            if found.is_multiple_of(each) {
                Ok(())
            } else {
                refused(found.div_ceil(each) * each, at)
            }
        }
        _ => Ok(()),
    }
}

fn choice(record: &Record, texts: &[&str]) -> Result<Capture, CaptureRefusal> {
    let is_option = |text: &&&str| record.choices.iter().any(|choice| choice.word == **text);
    if let Some(found) = texts.iter().find(|text| !is_option(text)) {
        let options: Vec<&str> = record.choices.iter().map(|choice| t(&choice.word)).collect();
        return Err(CaptureRefusal::NoOption {
            found: (*found).to_owned(),
            options: options.join(", "),
        });
    }
    counted(record, texts.len())?;
    Ok(Capture::Chosen(texts.iter().map(|text| (*text).to_owned()).collect()))
}

/// Digits more than five times coarser than the step asks: a rule read as a gauge.
fn coarse(record: &Record, values: &[Typed]) -> Option<String> {
    let asked = record.step.as_ref()?;
    let most = asked.amount().value * Decimal::from(5);
    let coarse = values.iter().find(|value| {
        let step = value.step().to(asked.unit());
        step.is_some_and(|step| step.value > most)
    })?;
    Some(say!("{coarse} is coarser than the {asked} asked for. Read it again if you can."))
}
