//! The bench checks on the record: what was typed, answered anew.

use pictures::drawing::Drawing;
use words::{say, t};

use super::Look;
use crate::guide::{BenchCheck, CheckKey};
use crate::instrument::{self, Answer, Headline, Instrument, Progress, Stage};
use crate::{CheckState, Sheet};

/// A bench check that was kept.
#[derive(Clone, Debug, PartialEq)]
pub struct RecordBench {
    /// "Leak test"; with its place where it has one: "Runout, at the seal".
    pub title: String,
    /// The step it was done for; may be empty.
    pub step: String,
    /// When it was kept.
    pub when: String,
    /// What was typed: label and texts.
    pub given: Vec<(String, String)>,
    /// The verdict; `None` where there is none.
    pub state: Option<CheckState>,
    /// What it says: sentences.
    pub says: Vec<String>,
    /// Figures: what, and how much with its ±.
    pub figures: Vec<(String, String)>,
    /// Cautions.
    pub cautions: Vec<String>,
    /// Its picture.
    pub picture: Option<Drawing>,
}

/// The seals of the unit with what was kept of each; `None` where none was checked.
pub(super) fn seal_map(look: &Look, sheet: &Sheet) -> Option<Drawing> {
    let kept =
        |instrument: &&Instrument| look.log.checks.keys().any(|key| key.kind == instrument.kind);
    instrument::ALL.iter().filter(kept).find_map(|instrument| instrument.map(sheet, look.log))
}

/// The bench checks kept last, in the order kept.
pub(super) fn of(look: &Look) -> Vec<RecordBench> {
    let mut kept: Vec<_> = look.log.checks.iter().collect();
    kept.sort_by_key(|(_, check)| check.mark);
    kept.into_iter().map(|(key, check)| one(look, key, check)).collect()
}

/// Its name, and its stage and place where it has any.
fn title(name: String, more: [&str; 2]) -> String {
    more.into_iter().fold(name, |title, word| {
        if word.trim().is_empty() { title } else { format!("{title}, {word}") }
    })
}

fn one(look: &Look, key: &CheckKey, check: &BenchCheck) -> RecordBench {
    let CheckKey { step, place, kind, stage } = key;
    let instrument = instrument::instrument(kind);
    let answer = match instrument.map(|it| it.told(&check.values, look.shown)) {
        Some(Ok(answer)) => answer,
        Some(Err(lacks)) => Answer {
            says: vec![say!("Not answered. Still wanted: {}.", lacks.wanted.join(", "))],
            ..Answer::default()
        },
        None => Answer {
            says: vec![t("A later version of the app answers this. Update it.").to_owned()],
            ..Answer::default()
        },
    };
    let name = instrument::titled(kind);
    let stages = answer.stages.iter().map(ticked);
    // Of a sequence it says what comes next, and the stages say the same as done or not.
    let headline = answer.headline.filter(|_| answer.stages.is_empty());
    let waits = answer.waits.map(|waits| say!("No verdict yet. {waits}"));
    RecordBench {
        title: title(name, [t(stage), place]),
        step: if step.is_empty() { String::new() } else { look.title(step) },
        when: look.when(check.mark.at),
        given: given(instrument, check),
        state: answer.verdict.map(CheckState::from),
        says: waits.into_iter().chain(answer.says).chain(answer.blind).collect(),
        figures: stages.chain(figures(headline, answer.figures)).collect(),
        cautions: answer.cautions,
        picture: answer.picture,
    }
}

/// A stage of its sequence: what it asked, how, and whether it was ticked.
fn ticked(stage: &Stage) -> (String, String) {
    let Stage { title, asked, how, .. } = stage;
    let says = match stage.progress {
        Progress::Done => say!("{asked}, {how}: done"),
        Progress::Now | Progress::Next => say!("{asked}, {how}: not ticked"),
    };
    (title.clone(), says)
}

/// The figure that answers first, with what it stands against, then the others.
fn figures(headline: Option<Headline>, others: Vec<(&str, String)>) -> Vec<(String, String)> {
    let mut figures: Vec<_> =
        others.into_iter().map(|(what, much)| (what.to_owned(), much)).collect();
    if let Some(Headline { title, number, unit, note }) = headline {
        let much = format!("{number} {unit}");
        let told = if note.is_empty() { much.clone() } else { format!("{much}, {note}") };
        figures.retain(|(_, other)| *other != much);
        figures.insert(0, (title.to_owned(), told));
    }
    figures
}

/// What was typed, in the order asked; fields that the instrument does not know come last.
fn given(instrument: Option<&Instrument>, check: &BenchCheck) -> Vec<(String, String)> {
    let asked = instrument.map(|it| it.fields).unwrap_or_default();
    let known = asked.iter().filter_map(|field| Some((field, check.values.get(field.id)?))).map(
        |(field, texts)| {
            let texts = texts.iter().map(|text| field.word(text).to_owned());
            (field.label().to_owned(), texts.collect())
        },
    );
    let others = check.values.iter().filter(|(id, _)| asked.iter().all(|field| field.id != *id));
    let others = others.map(|(id, texts)| (id.clone(), texts.clone()));
    known.chain(others).map(|(label, texts): (_, Vec<_>)| (label, together(&texts))).collect()
}

/// The texts of a field in one line, a unit that all of them have once: "0.021 · 0.045 mm".
fn together(texts: &[String]) -> String {
    let split: Option<Vec<(&str, &str)>> = texts.iter().map(|text| text.split_once(' ')).collect();
    match split.as_deref() {
        Some([(_, unit), rest @ ..]) if rest.iter().all(|(_, other)| other == unit) => {
            let numbers = split.iter().flatten().map(|(number, _)| *number);
            format!("{} {unit}", numbers.collect::<Vec<_>>().join(" · "))
        }
        _ => texts.join(" · "),
    }
}
