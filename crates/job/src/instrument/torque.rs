//! Torque: what to set on the wrench, stage by stage, the turn after it, and what it broke out at.

use measure::{Amount, Decimal, Sign, Typed, Unit, real, show};
use pictures::{offset_tool, turn};
use words::{key, say, t};
use workshop::torque::{
    OffsetTool, Threads, Turn, at_fastener, break_out, examine, torque_and_angle,
};
use workshop::{Caution, Figure, Reading, Refusal};

use super::shown::Writing;
use super::torque_stages::{Setting, headline, of_torque};
use super::{
    Answer, Asked, Given, Headline, Instrument, Takes, Values, answered, asked, fold, optional,
};
use crate::Shown;

const LENGTH: Takes = Takes::Number(Unit::Millimetre, Sign::Positive);
const EFFORT: Takes = Takes::Number(Unit::NewtonMetre, Sign::Positive);
const STATES: Takes = Takes::One(&[key!("dry"), key!("oil"), key!("locker")]);
const STAGES: &[&str] = &["Stage 1", "Stage 2", "Stage 3", "Stage 4"];

/// The wrench, its offset head and the turn after it.
pub(super) const TORQUE: Instrument = Instrument {
    kind: "torque",
    title: "Torque",
    purpose: "What to set on the wrench, with an offset head or without, stage by stage.",
    cautions: &[],
    fields: &[
        optional(
            "unit",
            "The wrench reads",
            Takes::Unit(&[Unit::NewtonMetre, Unit::PoundForceFoot, Unit::PoundForceInch]),
        ),
        asked(
            "wanted",
            "Torque at the fastener; one stage or more",
            Takes::Numbers(Unit::NewtonMetre, Sign::Positive, STAGES),
        ),
        optional("wrench", "L, middle of the grip to the drive", LENGTH),
        optional("head", "E, drive to the fastener; empty without a head", LENGTH),
        optional(
            "angle",
            "Head angle: 0 straight ahead, 180 back over the handle",
            Takes::Usual(Unit::Degree, Sign::NotNegative, &["0", "45", "90", "180"]),
        ),
        optional("line", "One line of the wrench's scale", EFFORT),
        asked("manual", "The manual's value is for", STATES),
        asked("threads", "Yours are", STATES),
        fold("more", "Degrees after it, and what it broke out at"),
        optional(
            "turn",
            "Then turn, past snug",
            Takes::Numbers(Unit::Degree, Sign::Positive, &["1", "2", "3"]),
        ),
        optional(
            "broke-out",
            "It broke out at, on the wrench",
            Takes::Number(Unit::NewtonMetre, Sign::NotNegative),
        ),
        optional("done", "Ticked as done, at", Takes::Ticks),
    ],
    answer,
};

fn answer(given: &mut Given) -> Option<Answer> {
    let writing = given.writing("wanted");
    let wanted: Vec<Typed> = given.numbers("wanted").into_iter().flatten().collect();
    let (manual, here) = (threads(given, "manual"), threads(given, "threads"));
    let tool = tool(given)?;
    let (manual, here) = (manual?, here?);
    let last = wanted.last()?.amount();
    // The manual's value has no doubt; what is set has that of the lever.
    let stages: Vec<Reading> = wanted.iter().map(|it| sure(it.amount())).collect();
    let found = examine(&stages, tool.as_ref(), manual, here);
    let field = found.as_ref().err().map_or("wanted", at);
    let found = given.at(field, found)?;
    let mut says = vec![t("Pull square to the wrench, at the middle of the grip.").to_owned()];
    if tool.is_some() {
        says.push(
            t("Head forward: set less. At 90° it changes nothing. Head back over the handle: set more.")
                .to_owned(),
        );
    }
    let plan = plan(given, last)?;
    let line = given.amount("line");
    let setting = |(asked, set): (&Typed, &Figure)| {
        setting(set, asked.amount(), line, tool.as_ref(), &writing)
    };
    let settings: Vec<Setting> = wanted.iter().zip(&found.set).map(setting).collect();
    let marks = plan.as_ref().map(|plan| plan.marks.as_slice()).unwrap_or_default();
    let stages = of_torque(&settings, marks, given.ticks("done"));
    let mut answer = Answer {
        headline: headline(&stages, &settings),
        stages,
        blind: Some(
            t("A wrench reads friction too: how hard the part is clamped, it does not see.")
                .to_owned(),
        ),
        picture: tool.as_ref().map(|tool| picture(tool, &writing)),
        ..answered(&found.cautions, &found.explanation, &writing)
    };
    if let Some(plan) = &plan {
        turned(plan, &mut answer, &mut says);
    }
    broke_out(given, last, tool.as_ref(), &writing, &mut answer, &mut says)?;
    Some(Answer { says, ..answer })
}

/// The field a refusal belongs to.
fn at(why: &Refusal) -> &'static str {
    match why {
        Refusal::NoLever { .. } | Refusal::Range { .. } => "angle",
        _ => "wanted",
    }
}

fn sure(amount: Amount) -> Reading {
    Reading::exact(amount.value, amount.unit)
}

fn threads(given: &mut Given, id: &str) -> Option<Threads> {
    given.word(id).map(|word| match word {
        "dry" => Threads::Dry,
        "oil" => Threads::Oil,
        _ => Threads::Locker,
    })
}

/// The offset tool, or that there is none; `None` while it is not whole.
fn tool(given: &mut Given) -> Option<Option<OffsetTool>> {
    let (wrench, angle) = (given.reading("wrench"), given.reading("angle"));
    match (wrench, given.reading("head"), angle) {
        (Some(wrench), Some(head), Some(angle)) => Some(Some(OffsetTool { wrench, head, angle })),
        (_, None, _) => Some(None),
        _ => {
            given.wanted.push(t("L, E and the angle of the head"));
            None
        }
    }
}

/// The setting for a torque asked, and where the wrench has lines, the line next to it with what that
/// makes of it.
fn setting(
    set: &Figure,
    asked: Amount,
    line: Option<Amount>,
    tool: Option<&OffsetTool>,
    writing: &Writing,
) -> Setting {
    let title = t("Set the wrench to");
    let asked = writing.typed(asked);
    let on_a_line = line.and_then(|line| {
        let set = set.amount()?.to(line.unit)?;
        let lines = measure::round(set.value / line.value, 0).max(Decimal::ONE);
        let line = Amount { value: lines * line.value, unit: line.unit };
        let reaches = writing.figure(&at_fastener(&sure(line), tool).ok()?);
        let note = say!("on a line, makes {reaches} of {asked}");
        let number = show(line.value, line.value.normalize().scale(), writing.mark);
        Some(Headline { title, number, unit: line.unit.symbol().to_owned(), note })
    });
    let exact = writing.headline(title, set, say!("for {asked} at the fastener"));
    Setting { asked, exact, on_a_line }
}

/// What to set at each of these angles with the tool that is typed, numbers alone; none while it is not
/// whole.
pub(super) fn at_angles(
    fields: &'static [Asked],
    values: &Values,
    shown: Shown,
    angles: &[&str],
) -> Vec<String> {
    let mut given = Given::of(fields, values, shown);
    let writing = given.writing("wanted");
    let last = given.numbers("wanted").into_iter().flatten().next_back();
    let (wrench, head) = (given.reading("wrench"), given.reading("head"));
    let (Some(last), Some(wrench), Some(head)) = (last, wrench, head) else { return Vec::new() };
    let at = |angle: &&str| {
        let angle = Reading::exact(Decimal::from_str_exact(angle).ok()?, Unit::Degree);
        let tool = OffsetTool { wrench, head, angle };
        let set = examine(&[sure(last.amount())], Some(&tool), Threads::Dry, Threads::Dry).ok()?;
        writing.plain(set.set.first()?).split(' ').next().map(str::to_owned)
    };
    angles.iter().map(|angle| at(angle).unwrap_or_default()).collect()
}

/// The turn after the snug torque, where one is asked; `None` while it is not whole.
fn plan(given: &mut Given, snug: Amount) -> Option<Option<Turn>> {
    let turns: Vec<Reading> = given.numbers("turn").iter().flatten().map(Reading::typed).collect();
    if turns.is_empty() {
        return Some(None);
    }
    given.at("turn", torque_and_angle(&sure(snug), &turns)).map(Some)
}

/// What to say and show with that turn.
fn turned(plan: &Turn, answer: &mut Answer, says: &mut Vec<String>) {
    let marks: Vec<String> =
        plan.marks.iter().map(|mark| format!("{}°", mark.normalize())).collect();
    says.push(
        t("Snug first. Paint one line across socket and part. Then turn to the mark. Write down both, \
         and dry or wet.")
            .to_owned(),
    );
    answer.figures.push((t("Marks past snug"), marks.join(", ")));
    for caution in [plan.caution, Caution::CrushPart] {
        answer.cautions.insert(0, caution.to_string());
    }
    let marks = plan.marks.iter().map(|mark| real::from_decimal(*mark)).collect();
    answer.below = Some(turn::Turn { marks }.draw());
}

/// What it broke out at, as a share of what is asked.
fn broke_out(
    given: &mut Given,
    asked: Amount,
    tool: Option<&OffsetTool>,
    writing: &Writing,
    answer: &mut Answer,
    says: &mut Vec<String>,
) -> Option<()> {
    let Some(read) = given.reading("broke-out") else { return Some(()) };
    let there = given.at("broke-out", at_fastener(&read, tool))?;
    answer.figures.push((t("Broke out at"), writing.figure(&there)));
    let standard = there.standard();
    let there = there.amount().map(|amount| Reading { amount, standard })?;
    let share = given.at("broke-out", break_out(&there, &sure(asked)))?;
    answer.figures.push((t("Of what is asked"), writing.figure(&share)));
    says.push(
        t("What it broke out at is kept, never judged: corrosion raises it and a lost clamp lowers it. \
         Common practice, no source.")
            .to_owned(),
    );
    Some(())
}

fn picture(tool: &OffsetTool, writing: &Writing) -> pictures::drawing::Drawing {
    let millimetres = |reading: &Reading| {
        let amount = reading.amount.to(Unit::Millimetre);
        real::from_decimal(amount.map_or(reading.amount.value, |it| it.value))
    };
    offset_tool::OffsetTool {
        wrench: millimetres(&tool.wrench),
        head: millimetres(&tool.head),
        angle: real::from_decimal(tool.angle.amount.value),
        words: [tool.wrench, tool.head, tool.angle].map(|it| writing.typed(it.amount)),
    }
    .draw()
}
