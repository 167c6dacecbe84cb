//! Why a record is a draft.

use words::{say, t};

use crate::guide::{Course, StepState};
use crate::sheet::listed;
use crate::{CheckState, Job, RecordCheck, Sheet};

/// Why the set-up makes it a draft, a sentence each.
pub(super) fn of_set_up(job: &Job, sheet: &Sheet, checks: &[RecordCheck]) -> Vec<String> {
    let mut reasons: Vec<String> = checks.iter().filter_map(reason).collect();
    if checks.is_empty() {
        reasons.push(t("No check has limits. Type the unit sheet.").to_owned());
    }
    let unknown: Vec<&str> = sheet
        .positions()
        .iter()
        .filter(|position| job.pack(position.slot).is_none())
        .map(|position| position.slot.tag())
        .collect();
    if !unknown.is_empty() {
        reasons.push(say!("Packs not written down: {packs}.", packs = listed(&unknown)));
    }
    if job.unread > 0 {
        reasons.push(say!(
            "{count} entries of a newer version are not shown. Update the app.",
            count = job.unread
        ));
    }
    reasons
}

/// Why the guided job does: what is stale, what a gate keeps shut, what is still to do.
pub(super) fn of_course(course: &Course) -> Vec<String> {
    let mut reasons: Vec<String> = course.steps.iter().filter_map(stale).collect();
    for view in &course.steps {
        let shut = view.keeps_shut().filter(|_| view.is_done());
        reasons.extend(shut.map(|gate| {
            let asks = say!("Nobody said yes to: {gate}.", gate = gate.words);
            let missing = gate.missing.first().unwrap_or(&asks);
            say!("The gate of “{step}” is shut. {missing}", step = view.title)
        }));
    }
    let to_do = |state: &StepState| matches!(state, StepState::Open | StepState::Locked { .. });
    let mut open = course.steps.iter().filter(|view| to_do(&view.state));
    if let Some(first) = open.next() {
        let title = &first.title;
        reasons.push(match open.count() {
            0 => say!("“{title}” is not done."),
            more => say!("{count} steps are not done, the first is “{title}”.", count = more + 1),
        });
    }
    reasons
}

/// What of the steps lost its ground: cause and cure.
pub(super) fn stale(view: &crate::guide::StepView) -> Option<String> {
    match &view.state {
        StepState::Stale { why } => Some(say!("“{step}” is stale. {why}", step = view.title)),
        _ => None,
    }
}

fn reason(check: &RecordCheck) -> Option<String> {
    let name = check.check.name();
    match &check.state {
        CheckState::InBand => None,
        CheckState::Stale { why } => Some(say!("{name} is stale. {why}")),
        CheckState::Locked { .. } | CheckState::Open => Some(say!("{name} is not read.")),
        CheckState::NoBand => Some(say!("{name} has no limits.")),
        CheckState::NearLimit => Some(say!("{name} is near a limit.")),
        CheckState::Out => Some(say!("{name} is out.")),
        CheckState::CannotProve => Some(say!("{name} cannot be proved with this gauge.")),
        CheckState::TightSpot => Some(say!("{name} has a tight spot.")),
    }
}
