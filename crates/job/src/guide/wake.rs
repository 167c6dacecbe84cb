//! Interrupted work wakes where it stopped.

use words::{say, t};

use super::course::{Course, Moment};
use super::log::GuideLog;
use crate::clock::apart;

/// Where to go on.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Wake {
    /// The step; `None`: all is done.
    pub step: Option<String>,
    /// What to capture first there; empty where nothing is missing.
    pub capture: String,
    /// Where it stopped: "You stopped at “…”, 10:22. Next: time cooling from."
    pub says: String,
}

/// Works out where to go on: in the step touched last while it is not settled, else the next.
pub fn wake(course: &Course, log: &GuideLog, moment: &Moment) -> Wake {
    let touched = log.last_step.as_ref().and_then(|(id, mark)| {
        let view = course.step(id)?;
        (view.ready && !view.is_settled()).then_some((view, Some(*mark)))
    });
    let next = course.next.and_then(|next| course.steps.get(next)).map(|view| (view, None));
    let Some((view, mark)) = touched.or(next) else {
        let says = t("Every step of this job is done.").to_owned();
        return Wake { step: None, capture: String::new(), says };
    };
    let capture = view.to_capture.first().cloned().unwrap_or_default();
    let title = &view.title;
    let mut says = match mark {
        Some(mark) => {
            let time = apart(mark.at, moment.now, moment.utc_offset);
            say!("You stopped at “{title}”, {time}.")
        }
        None => say!("Next: “{title}”."),
    };
    if mark.is_some() && !capture.is_empty() {
        says = say!("{says} Next: {capture}.", capture = t(&capture));
    }
    Wake { step: Some(view.id.clone()), capture, says }
}
