//! A guided fact as a mechanic would write it.

use words::say;

use super::{Agreement, Guided, Readied};

/// The sentence of a fact. Steps stand by their ids: a book can be read without its procedure.
pub(crate) fn sentence(fact: &Guided) -> String {
    match fact {
        Guided::ProcedurePinned { layout, revision } => {
            say!("Follows the procedure of layout {layout}, revision {revision}.")
        }
        Guided::ScopeChosen { scope, reason } => {
            say!("Scope: {}{}.", scope.words().to_lowercase(), because(reason))
        }
        Guided::StepDone { step } => say!("Step {step} done."),
        Guided::StepSkipped { step, reason } => say!("Step {step} left out: {reason}."),
        Guided::StepReopened { step, reason } => say!("Step {step} opened again: {reason}."),
        Guided::GateJudged { step, passed: true, by, reason } => {
            say!("Gate of {step} passed by {by}{}.", because(reason))
        }
        Guided::GateJudged { step, by, reason, .. } => {
            say!("Gate of {step} failed by {by}{}.", because(reason))
        }
        Guided::Captured { label, value, .. } => {
            format!("{}: {}.", capitalised(label), value.words().trim_end_matches('.'))
        }
        Guided::ClockStarted { label, marks, .. } => {
            let end = marks.last().copied().unwrap_or_default();
            say!("Clock started: {label}, {end} min.")
        }
        Guided::ClockStopped { reason, .. } => say!("Clock stopped{}.", because(reason)),
        Guided::PartBagged { number, part, place, facing, .. } => {
            let facing =
                if facing.trim().is_empty() { String::new() } else { format!(", {facing}") };
            say!("{number}: {} off, in {place}{facing}.", spaced(part))
        }
        Guided::PartFitted { number } => say!("{number} fitted."),
        Guided::PartJudged { part, verdict, reason, .. } => {
            format!("{}: {}{}.", capitalised(&spaced(part)), verdict.word(), because(reason))
        }
        Guided::ConsentGiven { by, what, limit } if limit.trim().is_empty() => {
            say!("{by} agreed: {what}.")
        }
        Guided::ConsentGiven { by, what, limit } => {
            say!("{by} agreed: {what}, up to {limit}.")
        }
        Guided::ConsentSigned(agreement) => {
            let Agreement { by, how, work, limit, .. } = agreement.as_ref();
            say!("{by} agreed {}: {}, up to {limit}.", how.words(), work.join(", "))
        }
        Guided::ConsentRefused { by, how, work, reason, .. } => {
            let (how, work) = (how.words(), work.join(", "));
            match without_stop(reason) {
                "" => say!("{by} said no {how}: {work}."),
                reason => say!("{by} said no {how}: {work}. Why: {reason}."),
            }
        }
        Guided::ToolReadied { tool, how, from } => {
            let from = match how {
                _ if from.trim().is_empty() => String::new(),
                Readied::Packed | Readied::Unpacked => format!(", {from}"),
                Readied::Borrowed | Readied::Ordered => say!(" from {from}"),
            };
            format!("{} {}{from}.", capitalised(tool), how.word())
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
        Guided::ToolGone { why, .. } => say!("Tool gone{}.", because(why)),
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
    part.replace('-', " ")
}

/// The first letter large.
pub(crate) fn capitalised(text: &str) -> String {
    let mut letters = text.chars();
    let first = letters.next().map(|first| first.to_uppercase().collect::<String>());
    first.unwrap_or_default() + letters.as_str()
}
