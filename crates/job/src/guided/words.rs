//! A guided fact as a mechanic would write it.

use words::{say, t};

use super::{Agreement, Guided, Readied};
use crate::Slot;
use crate::guide::{faced, placed};

/// The sentence of a fact. Steps stand by their ids: a book can be read without its procedure.
pub(crate) fn sentence(fact: &Guided) -> String {
    match fact {
        Guided::ProcedurePinned { layout, revision } => {
            say!("Follows the procedure of layout {layout}, revision {revision}.")
        }
        Guided::ScopeChosen { scope, reason } => {
            let scope = scope.words().to_lowercase();
            say!("Scope: {scope}{because}.", because = because(&rejected(reason)))
        }
        Guided::StepDone { step } => say!("Step {step} done."),
        Guided::StepSkipped { step, reason } => say!("Step {step} left out: {reason}."),
        Guided::StepReopened { step, reason } => say!("Step {step} opened again: {reason}."),
        Guided::GateJudged { step, passed: true, by, reason } => {
            say!("Gate of {step} passed by {by}{because}.", because = because(reason))
        }
        Guided::GateJudged { step, by, reason, .. } => {
            say!("Gate of {step} failed by {by}{because}.", because = because(reason))
        }
        Guided::Captured { label, value, .. } => {
            format!("{}: {}.", labelled(label), value.words().trim_end_matches('.'))
        }
        Guided::ClockStarted { label, marks, .. } => {
            let end = marks.last().copied().unwrap_or_default();
            say!("Clock started: {label}, {end} min.", label = t(label))
        }
        Guided::ClockStopped { reason, .. } => {
            say!("Clock stopped{because}.", because = because(reason))
        }
        Guided::PartBagged { number, part, place, facing, .. } => {
            let (part, place) = (spaced(part), placed(place));
            match faced(facing).as_str() {
                "" => say!("{number}: {part} off, in {place}."),
                facing => say!("{number}: {part} off, in {place}, {facing}."),
            }
        }
        Guided::PartFitted { number } => say!("{number} fitted."),
        Guided::PartJudged { part, verdict, reason, .. } => {
            format!("{}: {}{}.", capitalised(&spaced(part)), verdict.words(), because(reason))
        }
        Guided::ConsentGiven { by, what, limit } if limit.trim().is_empty() => {
            say!("{by} agreed: {what}.", what = agreed(what))
        }
        Guided::ConsentGiven { by, what, limit } => {
            say!("{by} agreed: {what}, up to {limit}.", what = agreed(what))
        }
        Guided::ConsentSigned(agreement) => {
            let Agreement { by, how, work, limit, .. } = agreement.as_ref();
            let (how, work) = (how.words(), all_agreed(work, ", "));
            say!("{by} agreed {how}: {work}, up to {limit}.")
        }
        Guided::ConsentRefused { by, how, work, reason, .. } => {
            let (how, work) = (how.words(), all_agreed(work, ", "));
            match without_stop(reason) {
                "" => say!("{by} said no {how}: {work}."),
                reason => say!("{by} said no {how}: {work}. Why: {reason}."),
            }
        }
        Guided::ToolReadied { tool, how, from } => {
            let (tool, done) = (capitalised(&item_words(tool)), how.words());
            match how {
                _ if from.trim().is_empty() => format!("{tool} {done}."),
                Readied::Packed | Readied::Unpacked => format!("{tool} {done}, {from}."),
                Readied::Borrowed | Readied::Ordered => say!("{tool} {done} from {from}."),
            }
        }
        Guided::BenchChecked { place, kind, .. } => {
            let name = crate::instrument::titled(kind);
            let place = place.trim();
            if place.is_empty() { say!("{name} kept.") } else { say!("{name}, {place}: kept.") }
        }
        Guided::StepAdded { title, after, .. } => say!("Own step after {after}: {title}."),
        Guided::StepDropped { step, reason } => say!("Step {step} dropped: {reason}."),
        Guided::StepMoved { step, after } => say!("Step {step} moved after {after}."),
        Guided::ToolKept { name, number, .. } if number.trim().is_empty() => {
            say!("In the drawer: {name}.")
        }
        Guided::ToolKept { name, number, .. } => say!("In the drawer: {name}, no. {number}."),
        Guided::ToolNamed { other, .. } => say!("Also called {other}."),
        Guided::ToolCorrected { wrong, note, .. } => say!("{wrong} is wrong: {note}."),
        Guided::ToolGone { why, .. } => say!("Tool gone{because}.", because = because(why)),
    }
}

/// What a person typed as a sentence, ready for a full stop of ours.
pub(crate) fn without_stop(typed: &str) -> &str {
    typed.trim().trim_end_matches('.')
}

fn because(reason: &str) -> String {
    let reason = without_stop(reason);
    if reason.is_empty() { String::new() } else { format!(": {reason}") }
}

/// A part's id as words: `pinion-nut` → "pinion nut".
pub(crate) fn spaced(part: &str) -> String {
    match part.strip_suffix("-pack").and_then(Slot::named) {
        Some(slot) => say!("{position} pack", position = slot.tag()),
        None => t(&part.replace('-', " ")).to_owned(),
    }
}

/// The name of a capture, as it is shown.
pub(crate) fn labelled(label: &str) -> String {
    let turned = match label.strip_suffix(FITTED) {
        Some(part) => say!("{part} as fitted", part = t(part)),
        None => t(label).to_owned(),
    };
    capitalised(&turned)
}

/// What follows the name of a part under which a photo of it, back in, is written down.
pub(crate) const FITTED: &str = " as fitted";

/// What is taken along, as it is shown: "shims for B1" with the words of the language.
pub fn item_words(name: &str) -> String {
    match name.strip_prefix(SHIMS_FOR) {
        Some(packs) => say!("shims for {packs}"),
        None => t(name).to_owned(),
    }
}

/// How the shims of some packs are called on a pack list, before their tags.
pub(crate) const SHIMS_FOR: &str = "shims for ";

/// A line of what was agreed, as it is shown. The orders of verdicts were written with a capital.
pub fn agreed(line: &str) -> String {
    let whole = t(line);
    if whole != line {
        return whole.to_owned();
    }
    let mut letters = line.chars();
    let first = letters.next().map(|first| first.to_lowercase().collect::<String>());
    let small = first.unwrap_or_default() + letters.as_str();
    let turned = t(&small);
    if turned == small { line.to_owned() } else { capitalised(turned) }
}

/// The same of several lines.
pub(crate) fn all_agreed(lines: &[String], between: &str) -> String {
    lines.iter().map(|line| agreed(line)).collect::<Vec<_>>().join(between)
}

/// Why a scope was widened, as it is shown: the parts that were rejected, or what a person typed.
fn rejected(reason: &str) -> String {
    let Some(parts) = reason.strip_suffix(REJECTED) else { return reason.to_owned() };
    let between = format!("{REJECTED}, ");
    let told = parts.split(between.as_str()).map(|part| say!("{part} rejected", part = t(part)));
    told.collect::<Vec<_>>().join(", ")
}

/// What follows the name of a rejected part where it is the reason of a wider scope.
pub(crate) const REJECTED: &str = " rejected";

/// The first letter large.
pub(crate) fn capitalised(text: &str) -> String {
    let mut letters = text.chars();
    let first = letters.next().map(|first| first.to_uppercase().collect::<String>());
    first.unwrap_or_default() + letters.as_str()
}
