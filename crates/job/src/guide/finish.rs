//! Closing a step, leaving it out, opening it again: what the guide admits.

use std::fmt;
use words::{say, t};

use super::counts;
use super::course::{Course, StepState};
use super::log::GuideLog;
use crate::Guided;
use crate::procedure::Plan;

/// Why the guide does not go on; `Display` is the sentence to show.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum GuideRefusal {
    /// No such step in this plan.
    NoStep,
    /// Something must be done first.
    Locked {
        /// What, in words.
        opens: String,
    },
    /// The gate is shut.
    Shut {
        /// The first thing missing.
        missing: String,
        /// How many more are missing.
        more: usize,
    },
    /// A person must judge the gate.
    Asks {
        /// The condition in words.
        words: String,
    },
    /// Counts differ: the step cannot be left out either.
    Counts {
        /// What differs and what to do.
        says: String,
    },
    /// Left out or opened again without a reason.
    NoReason,
    /// The part is on the ladder already.
    Bagged {
        /// The part.
        part: String,
        /// Its number.
        number: u32,
    },
}

impl fmt::Display for GuideRefusal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            GuideRefusal::NoStep => {
                f.write_str(t("That step is not in this job's plan. Choose one that is."))
            }
            GuideRefusal::Locked { opens } => f.write_str(&say!("Not yet. {opens}")),
            GuideRefusal::Shut { missing, more: 0 } => f.write_str(&say!("Gate shut. {missing}")),
            GuideRefusal::Shut { missing, more } => {
                f.write_str(&say!("Gate shut. {missing} And {more} more."))
            }
            GuideRefusal::Asks { words } => {
                f.write_str(&say!("The gate asks: {words}. Say yes or no, with your name."))
            }
            GuideRefusal::Counts { says } => {
                f.write_str(&say!("{says} A count cannot be left out."))
            }
            GuideRefusal::NoReason => f.write_str(t("No reason given. Say why in a few words.")),
            GuideRefusal::Bagged { part, number } => {
                f.write_str(&say!("{part} is number {number} already. Change its place there."))
            }
        }
    }
}

impl std::error::Error for GuideRefusal {}

impl Course {
    /// The fact that a step was done.
    ///
    /// # Errors
    /// [`GuideRefusal`] where it is locked or its gate is shut; nothing is lost.
    pub fn finish(&self, step: &str) -> Result<Guided, GuideRefusal> {
        let view = self.step(step).ok_or(GuideRefusal::NoStep)?;
        if !view.ready {
            return Err(GuideRefusal::Locked { opens: self.opens(&view.state) });
        }
        if let Some(gate) = view.gate.as_ref().filter(|gate| !gate.passed) {
            return Err(match gate.missing.split_first() {
                Some((first, others)) => {
                    GuideRefusal::Shut { missing: first.clone(), more: others.len() }
                }
                None => GuideRefusal::Asks { words: gate.words.clone() },
            });
        }
        Ok(Guided::StepDone { step: step.to_owned() })
    }

    /// The fact that a step was left out.
    ///
    /// # Errors
    /// [`GuideRefusal`] without a reason, or where its counts differ.
    pub fn skip(
        &self,
        plan: &Plan,
        log: &GuideLog,
        step: &str,
        reason: &str,
    ) -> Result<Guided, GuideRefusal> {
        let planned = plan.step(step).ok_or(GuideRefusal::NoStep)?;
        let reason = reason.trim().trim_end_matches('.');
        if reason.is_empty() {
            return Err(GuideRefusal::NoReason);
        }
        let names: Vec<&str> = planned.records.iter().filter_map(counts::name_in).collect();
        let differ = counts::counts(plan, log).into_iter().find(|count| {
            count.state == counts::CountState::Differ && names.contains(&count.name.as_str())
        });
        match differ {
            Some(count) => Err(GuideRefusal::Counts { says: count.says }),
            None => Ok(Guided::StepSkipped { step: step.to_owned(), reason: reason.to_owned() }),
        }
    }

    /// What must be done first: its own lock, or that of a stale step's first need.
    fn opens(&self, state: &StepState) -> String {
        match state {
            StepState::Locked { opens } => opens.clone(),
            StepState::Stale { why } => why.clone(),
            _ => {
                let next = self.next.and_then(|next| self.steps.get(next));
                next.map_or_else(String::new, |next| say!("First “{}”.", next.title))
            }
        }
    }
}
