//! Which records of a step an instrument reads, and what a kept check gives them: what it read need
//! not be typed again.

use measure::Typed;

use super::{ALL, Given, Instrument, Values, instrument, pattern};
use crate::Shown;
use crate::guide::{BenchCheck, GuideLog, Kept};
use crate::guided::Capture;
use crate::procedure::{Record, RecordKind, Step};

/// What a kept check gives a record.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Gives {
    /// The numbers of a field as typed, or its answer where that field was left out.
    Numbers(&'static str),
    /// The last number of a field, where the others lead up to it.
    Last(&'static str),
    /// The same as torques: what fasteners broke out at.
    Torques(&'static str),
    /// The word of a field, where the record has that choice.
    Word(&'static str),
    /// The word that a tooth print comes to.
    Print,
    /// Its answer.
    Answer,
    /// Nothing: it only helps.
    Nothing,
}

/// An instrument for a kind of record.
struct Reads {
    kind: &'static str,
    record: RecordKind,
    /// Words that its label has.
    words: &'static [&'static str],
    gives: Gives,
    /// What the check must say: field and word.
    when: &'static [(&'static str, &'static str)],
    /// Whether the record leads to the instrument.
    leads: bool,
}

const fn measured(kind: &'static str, words: &'static [&'static str], gives: Gives) -> Reads {
    Reads { kind, record: RecordKind::Measure, words, gives, when: &[], leads: true }
}

const fn of_kind(record: RecordKind, reads: Reads) -> Reads {
    Reads { record, ..reads }
}

const fn when(conditions: &'static [(&'static str, &'static str)], reads: Reads) -> Reads {
    Reads { when: conditions, ..reads }
}

/// The first row whose words a label has counts.
const READS: &[Reads] = {
    use Gives::{Answer, Last, Nothing, Numbers, Print, Torques, Word};
    use RecordKind::{Choice, Time, Torque};
    const TURNING: (&str, &str) = ("when", "running");
    &[
        when(&[("stage", "low")], measured("leak", &["pressure, low"], Numbers("gauge"))),
        when(&[("stage", "working")], measured("leak", &["pressure, working"], Numbers("gauge"))),
        when(&[("stage", "vacuum")], measured("leak", &["vacuum"], Numbers("gauge"))),
        measured("runout", &["runout"], Numbers("readings")),
        when(
            &[TURNING, ("seals", "in")],
            measured("drag", &["rolling torque", "seals in"], Numbers("torque")),
        ),
        when(
            &[TURNING, ("seals", "in")],
            measured("drag", &["rolling torque", "seal in"], Numbers("torque")),
        ),
        when(
            &[TURNING, ("seals", "out")],
            measured("drag", &["rolling torque", "no seal"], Numbers("torque")),
        ),
        when(&[TURNING], measured("drag", &["rolling torque"], Numbers("torque"))),
        measured("play", &["end play"], Answer),
        measured("play", &["lift play"], Answer),
        measured("fit", &["temperature before driving"], Last("thermometer")),
        measured("press", &["race bore fit"], Answer),
        measured("oring", &["O-ring section"], Numbers("section")),
        measured("oring", &["O-ring groove depth"], Numbers("depth")),
        measured("seal", &["depth of", "seal"], Numbers("depth")),
        measured("land", &["groove depth"], Answer),
        measured("land", &["land diameter"], Numbers("sound")),
        measured("anode", &["anode left"], Numbers("left")),
        measured("lube", &["volume in"], Numbers("volume")),
        of_kind(Choice, measured("anode", &["corrosion grade"], Word("grade"))),
        of_kind(Choice, measured("pattern", &["pattern asked"], Nothing)),
        of_kind(Choice, measured("pattern", &["pattern"], Print)),
        of_kind(Choice, measured("locker", &["cure over"], Nothing)),
        of_kind(Time, measured("locker", &["cure from"], Nothing)),
        of_kind(Torque, measured("torque", &["break-out"], Torques("broke-out"))),
        of_kind(Torque, measured("torque", &[], Nothing)),
        Reads { leads: false, ..measured("leak", &["case temperature"], Numbers("case")) },
    ]
};

fn reads(record: &Record) -> Option<&'static Reads> {
    READS.iter().find(|row| {
        row.record == record.kind && row.words.iter().all(|word| record.label.contains(word))
    })
}

/// The instrument a record is read with.
pub fn of_record(record: &Record) -> Option<&'static Instrument> {
    reads(record).filter(|row| row.leads).and_then(|row| instrument(row.kind))
}

/// The instruments that records of a step are read with.
pub fn of_step(step: &Step) -> Vec<&'static Instrument> {
    let wanted = |it: &&Instrument| {
        let mut led = step.records.iter().filter_map(of_record);
        led.any(|other| other.kind == it.kind)
    };
    ALL.iter().filter(wanted).collect()
}

/// The place to keep a check under so that it counts for this record: its label, where another record
/// of the step is read in the same way. Else any place will do.
pub fn place_for<'a>(step: &Step, record: &'a Record) -> Option<&'a str> {
    let row = reads(record).filter(|row| row.leads)?;
    let twin =
        step.records.iter().filter(|other| other.label != record.label).any(|other| {
            reads(other).is_some_and(|it| it.kind == row.kind && it.gives == row.gives)
        });
    twin.then_some(record.label.as_str())
}

/// What the checks kept on a step give one of its records.
pub(crate) fn given(log: &GuideLog, step: &Step, record: &Record) -> Option<Kept> {
    let (row, checks) = checks_for(log, step, record)?;
    let last = checks.iter().max_by_key(|check| check.mark)?;
    let value = match row.gives {
        Gives::Numbers(field) => match numbers(row, &checks, field)? {
            none if none.is_empty() => answer(row.kind, &last.values)?,
            numbers => Capture::Readings(numbers),
        },
        Gives::Last(field) => {
            let newest = numbers(row, &[last], field)?.pop()?;
            Capture::Readings(vec![newest])
        }
        Gives::Torques(field) => match numbers(row, &checks, field)? {
            none if none.is_empty() => return None,
            // With an offset head, what the wrench showed is not what the part felt.
            _ if last.values.contains_key("head") => return None,
            values => Capture::Torque { values, asked: None, offset: None, set: None, on: None },
        },
        Gives::Word(field) => chosen(record, last.values.get(field)?.first()?)?,
        Gives::Print => chosen(record, pattern::came_to(&last.values)?)?,
        Gives::Answer => answer(row.kind, &last.values)?,
        Gives::Nothing => return None,
    };
    let check = Some(row.kind.to_owned());
    Some(Kept { entry: last.entry.clone(), value, mark: last.mark, check })
}

/// What those checks said, in short; one after the other where there is one for each item.
pub fn said(log: &GuideLog, step: &Step, record: &Record, shown: Shown) -> Option<String> {
    let (row, checks) = checks_for(log, step, record)?;
    let instrument = instrument(row.kind)?;
    let short = |check: &&BenchCheck| Some(instrument.answer(&check.values, shown).ok()?.short());
    let said: Vec<String> = checks.iter().filter_map(short).filter(|it| !it.is_empty()).collect();
    (!said.is_empty()).then(|| said.join("; "))
}

/// The row of a record with the checks of its step that count for it, in the order of their places.
fn checks_for<'a>(
    log: &'a GuideLog,
    step: &Step,
    record: &Record,
) -> Option<(&'static Reads, Vec<&'a BenchCheck>)> {
    let row = reads(record)?;
    let place = place_for(step, record);
    let holds = |values: &Values| {
        row.when.iter().all(|(field, word)| {
            values.get(*field).and_then(|texts| texts.first()).is_some_and(|text| text == word)
        })
    };
    let checks = log.checks.iter().filter(|(key, check)| {
        key.step == step.id
            && key.kind == row.kind
            && place.is_none_or(|place| place == key.place)
            && holds(&check.values)
    });
    let checks: Vec<&BenchCheck> = checks.map(|(_, check)| check).collect();
    (!checks.is_empty()).then_some((row, checks))
}

/// The numbers of a field in each of the checks, one after the other.
fn numbers(row: &Reads, checks: &[&BenchCheck], field: &str) -> Option<Vec<Typed>> {
    let fields = instrument(row.kind)?.fields;
    let of_check =
        |check: &&BenchCheck| Given::of(fields, &check.values, Shown::default()).numbers(field);
    Some(checks.iter().flat_map(of_check).flatten().collect())
}

fn chosen(record: &Record, word: &str) -> Option<Capture> {
    let is_one = record.choices.iter().any(|choice| choice.word == word);
    is_one.then(|| Capture::Chosen(vec![word.to_owned()]))
}

fn answer(kind: &str, values: &Values) -> Option<Capture> {
    let answer = instrument(kind)?.answer(values, Shown::default()).ok()?;
    Some(Capture::Text(answer.short())).filter(|text| !text.words().is_empty())
}
