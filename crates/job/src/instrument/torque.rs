//! Torque: what to set on the wrench, stage by stage, the turn after it, and what it broke out at.

use measure::{Amount, Decimal, Sign, Typed, Unit, real, show};
use pictures::{offset_tool, turn};
use words::{say, t};
use workshop::torque::{
    Answer as Found, OffsetTool, Threads, at_fastener, break_out, examine, torque_and_angle,
};
use workshop::{Caution, Figure, Reading, Refusal};

use super::shown::Writing;
use super::{
    Answer, Asked, Given, Headline, Instrument, Takes, Values, answered, asked, fold, optional,
};
use crate::Shown;

const LENGTH: Takes = Takes::Number(Unit::Millimetre, Sign::Positive);
const EFFORT: Takes = Takes::Number(Unit::NewtonMetre, Sign::Positive);
const STATES: Takes = Takes::One(&["dry", "oil", "locker"]);
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
    let mut answer = Answer {
        headline: found.set.last().map(|set| headline(given, set, last, tool.as_ref(), &writing)),
        figures: if wanted.len() > 1 {
            stage_by_stage(&wanted, &found, &writing)
        } else {
            Vec::new()
        },
        blind: Some(
            t("A wrench reads friction too: how hard the part is clamped, it does not see.")
                .to_owned(),
        ),
        picture: tool.as_ref().map(|tool| picture(tool, &writing)),
        ..answered(&found.cautions, &found.explanation, &writing)
    };
    turned(given, last, &mut answer, &mut says)?;
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

/// The setting; where the wrench has lines, the line next to it and what that makes of it.
fn headline(
    given: &mut Given,
    set: &Figure,
    last: Amount,
    tool: Option<&OffsetTool>,
    writing: &Writing,
) -> Headline {
    const TITLE: &str = "Set the wrench to";
    let plain = |amount: Amount| writing.typed(amount);
    let worked_out = writing.headline(TITLE, set, say!("for {} at the fastener", plain(last)));
    let on_a_line = given.amount("line").and_then(|line| {
        let set = set.amount()?.to(line.unit)?;
        let lines = measure::round(set.value / line.value, 0).max(Decimal::ONE);
        let line = Amount { value: lines * line.value, unit: line.unit };
        let reaches = writing.figure(&at_fastener(&sure(line), tool).ok()?);
        let note = say!("on a line, makes {reaches} of {}", plain(last));
        let number = show(line.value, line.value.normalize().scale(), writing.mark);
        Some(Headline { title: TITLE, number, unit: line.unit.symbol().to_owned(), note })
    });
    on_a_line.unwrap_or(worked_out)
}

fn stage_by_stage(
    wanted: &[Typed],
    found: &Found,
    writing: &Writing,
) -> Vec<(&'static str, String)> {
    let rows = STAGES.iter().zip(wanted.iter().zip(&found.set));
    let row = |(stage, (wanted, set)): (&&'static str, (&Typed, &Figure))| {
        (*stage, format!("{} for {wanted}", writing.figure(set)))
    };
    rows.map(row).collect()
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

/// The turn after the snug torque, where one is asked.
fn turned(
    given: &mut Given,
    snug: Amount,
    answer: &mut Answer,
    says: &mut Vec<String>,
) -> Option<()> {
    let turns: Vec<Reading> = given.numbers("turn").iter().flatten().map(Reading::typed).collect();
    if turns.is_empty() {
        return Some(());
    }
    let plan = given.at("turn", torque_and_angle(&sure(snug), &turns))?;
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
    Some(())
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
