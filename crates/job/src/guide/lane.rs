//! A guided job at a glance: for the bench and the shop's board.

use words::{say, t};

use super::clocks::ClockView;
use super::course::{Course, StepView};
use super::log::GuideLog;
use super::stages::{StageView, guide_stages};
use crate::guided::Readied;
use crate::procedure::Plan;

/// A guided job at a glance.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Lane {
    /// The stages, in the order of work.
    pub stages: Vec<StageView>,
    /// Where it stands: "Shim · 32 of 49"; "Done".
    pub line: String,
    /// The next step: "Read forward lash"; "Print and hand over" where all are done.
    pub next: String,
    /// The same as a button says it: "Carry on: identify the unit".
    pub act: String,
    /// Its id; `None` where all are done.
    pub step: Option<String>,
    /// What it waits for, or how it stands.
    pub stands: Stands,
    /// The next gate that is shut, and what is missing there first.
    pub gate: Option<(String, String)>,
    /// "2 on order"; "No parts due".
    pub parts: String,
}

/// How a job stands.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Stands {
    /// So many steps lost their ground.
    Stale(usize),
    /// Nothing can be done before this wait is over.
    Waits(String),
    /// Something can be done.
    Open,
    /// Every step is done or left out.
    Done,
}

impl Stands {
    /// In words.
    pub fn words(&self) -> String {
        match self {
            Stands::Stale(1) => t("1 step stale").to_owned(),
            Stands::Stale(stale) => say!("{stale} steps stale"),
            Stands::Waits(what) => say!("Waits: {}", what.to_lowercase()),
            Stands::Open => t("To do").to_owned(),
            Stands::Done => t("Every step done").to_owned(),
        }
    }
}

/// A job at a glance.
pub fn lane(plan: &Plan, log: &GuideLog, course: &Course, clocks: &[ClockView]) -> Lane {
    let stages = guide_stages(plan, course);
    // A gate can fall shut behind a step that is done, as where a count was changed since.
    let fallen = course.steps.iter().find(|view| view.is_done() && view.keeps_shut().is_some());
    let next = course.next.and_then(|next| course.steps.get(next)).or(fallen);
    let settled: usize = stages.iter().map(|stage| stage.settled).sum();
    let line = match next {
        Some(view) => say!(
            "{stage} · {settled} of {all}",
            stage = view.phase.stage(),
            all = course.steps.len()
        ),
        None => t("Done").to_owned(),
    };
    let stale: usize = stages.iter().map(|stage| stage.stale).sum();
    let can_go_on = |view: &&StepView| view.ready && !view.is_settled() && view.waits.is_empty();
    let running = clocks.iter().find(|clock| !clock.done);
    let stands = match (stale, running, next) {
        (1.., ..) => Stands::Stale(stale),
        (_, Some(clock), Some(_)) if !course.steps.iter().any(|view| can_go_on(&view)) => {
            Stands::Waits(clock.name.clone())
        }
        (.., Some(_)) => Stands::Open,
        (.., None) => Stands::Done,
    };
    let open = course.steps.iter().filter(|view| !view.is_settled());
    let shut = open.chain(fallen).find_map(|view| {
        let gate = view.keeps_shut()?;
        let missing = gate.missing.first().cloned().unwrap_or_else(|| gate.words.clone());
        Some((view.title.clone(), missing))
    });
    let ordered = log.tools.values().filter(|(how, _)| *how == Readied::Ordered).count();
    Lane {
        line,
        next: next.map_or_else(|| t("Print and hand over").to_owned(), |view| view.title.clone()),
        act: next.map_or_else(
            || t("Print the record").to_owned(),
            |view| say!("Carry on: {act}", act = view.act()),
        ),
        step: next.map(|view| view.id.clone()),
        stands,
        gate: shut,
        parts: if ordered == 0 { t("No parts due").to_owned() } else { say!("{ordered} on order") },
        stages,
    }
}
