//! Whether a book admits a guided fact: its form; whether it makes sense now, the guide says before.

use words::t;

use super::{Agreement, Capture, Guided};
use crate::{BookId, Refusal};

/// Whether a fact of this form may stand in the book.
pub(crate) fn admit(id: &BookId, fact: &Guided) -> Result<(), Refusal> {
    let place = match fact {
        Guided::StepAdded { .. } | Guided::StepDropped { .. } | Guided::StepMoved { .. } => {
            matches!(id, BookId::Sheet(_))
        }
        Guided::ToolKept { .. }
        | Guided::ToolNamed { .. }
        | Guided::ToolCorrected { .. }
        | Guided::ToolGone { .. } => *id == BookId::Drawer,
        _ => matches!(id, BookId::Job(_)),
    };
    if !place {
        return Err(Refusal::WrongBook { book: id.clone() });
    }
    for (what, text) in must_be_written(fact) {
        if text.trim().is_empty() {
            return Err(Refusal::Nothing { what });
        }
    }
    match fact {
        Guided::Captured { value, .. } if is_empty(value) => {
            Err(Refusal::Nothing { what: t("the capture") })
        }
        Guided::ConsentSigned(agreement) => signed(agreement),
        Guided::ConsentRefused { work, .. } if work.is_empty() => {
            Err(Refusal::Nothing { what: t("the work") })
        }
        Guided::BenchChecked { values, .. } if values.is_empty() => {
            Err(Refusal::Nothing { what: t("the check") })
        }
        Guided::StepAdded { step, .. } if !step.starts_with("own-") => {
            Err(Refusal::WrongValue { field: t("name of an own step") })
        }
        Guided::ClockStarted { marks, .. } => {
            let rises = marks.is_sorted_by(|one, next| one < next);
            let ends = marks.last().is_some_and(|end| *end > 0);
            if rises && ends { Ok(()) } else { Err(Refusal::WrongValue { field: t("clock") }) }
        }
        _ => Ok(()),
    }
}

/// Work was agreed, and it is signed: by a drawing that fits, or by initials.
fn signed(agreement: &Agreement) -> Result<(), Refusal> {
    if agreement.work.is_empty() {
        return Err(Refusal::Nothing { what: t("the work") });
    }
    if agreement.drawn.is_empty() && agreement.initials.trim().is_empty() {
        return Err(Refusal::Nothing { what: t("the signature") });
    }
    match agreement.drawn.fits() {
        true => Ok(()),
        false => Err(Refusal::WrongValue { field: t("signature") }),
    }
}

fn must_be_written(fact: &Guided) -> Vec<(&'static str, &str)> {
    match fact {
        Guided::StepDone { step } => vec![(t("the step"), step)],
        Guided::StepSkipped { step, reason }
        | Guided::StepReopened { step, reason }
        | Guided::StepDropped { step, reason } => {
            vec![(t("the step"), step), (t("the reason"), reason)]
        }
        Guided::GateJudged { step, passed, by, reason } => {
            let mut texts = vec![(t("the step"), step.as_str()), (t("who judged"), by)];
            if !passed {
                texts.push((t("the reason"), reason));
            }
            texts
        }
        Guided::Captured { step, label, .. } => {
            vec![(t("the step"), step), (t("the capture"), label)]
        }
        Guided::ClockStarted { clock, .. } | Guided::ClockStopped { clock, .. } => {
            vec![(t("the clock"), clock)]
        }
        Guided::PartBagged { part, place, .. } => {
            vec![(t("the part"), part), (t("its place"), place)]
        }
        Guided::PartJudged { part, verdict, reason, .. } => {
            let mut texts = vec![(t("the part"), part.as_str())];
            if *verdict == super::PartVerdict::Reject {
                texts.push((t("the reason"), reason));
            }
            texts
        }
        Guided::ConsentGiven { by, what, .. } => {
            vec![(t("who agreed"), by), (t("what was agreed"), what)]
        }
        Guided::ConsentSigned(agreement) => {
            vec![(t("who agreed"), &agreement.by), (t("the limit"), &agreement.limit)]
        }
        Guided::ConsentRefused { by, .. } => vec![(t("who said no"), by)],
        Guided::ToolReadied { tool, .. } => vec![(t("the tool"), tool)],
        Guided::BenchChecked { kind, .. } => vec![(t("the instrument"), kind)],
        Guided::StepAdded { step, after, title, .. } => {
            vec![(t("the step"), step), (t("the step before it"), after), (t("the act"), title)]
        }
        Guided::StepMoved { step, after } => {
            vec![(t("the step"), step), (t("the step before it"), after)]
        }
        Guided::ToolKept { tool, name, .. } => {
            vec![(t("the tool"), tool), (t("the tool's name"), name)]
        }
        Guided::ToolNamed { tool, other } => {
            vec![(t("the tool"), tool), (t("its other name"), other)]
        }
        Guided::ToolCorrected { tool, wrong, note } => {
            vec![(t("the tool"), tool), (t("the wrong number"), wrong), (t("the note"), note)]
        }
        Guided::ToolGone { tool, .. } => vec![(t("the tool"), tool)],
        Guided::ProcedurePinned { layout, .. } => vec![(t("the layout"), layout)],
        Guided::ScopeChosen { .. } | Guided::PartFitted { .. } => Vec::new(),
    }
}

fn is_empty(value: &Capture) -> bool {
    match value {
        Capture::Readings(values) | Capture::Pack(values) | Capture::Torque { values, .. } => {
            values.is_empty()
        }
        Capture::Photo(text) | Capture::Text(text) | Capture::None(text) => text.trim().is_empty(),
        Capture::Facing { words, photo } => words.trim().is_empty() && photo.is_none(),
        Capture::Chosen(words) => words.is_empty(),
        Capture::Time(_) | Capture::SignSeen => false,
    }
}
