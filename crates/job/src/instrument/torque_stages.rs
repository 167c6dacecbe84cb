//! The sequence of a torque: its stages on the wrench, then its turns, each ticked as it is done.

use measure::Decimal;
use words::{key, say, t};

use super::Headline;
use super::stages::{Progress, Stage, ticked_off};

/// The figure that answers while a stage of several is now.
const SET_AT: [&str; 4] = [
    key!("Stage 1: set the wrench to"),
    key!("Stage 2: set the wrench to"),
    key!("Stage 3: set the wrench to"),
    key!("Stage 4: set the wrench to"),
];

/// What one stage asks, and what the wrench is set to for it.
pub(super) struct Setting {
    /// "120 N·m".
    pub asked: String,
    /// As worked out.
    pub exact: Headline,
    /// The line next to it, where the wrench has lines.
    pub on_a_line: Option<Headline>,
}

impl Setting {
    /// What the wrench is set to.
    fn set(&self) -> &Headline {
        self.on_a_line.as_ref().unwrap_or(&self.exact)
    }

    fn how(&self) -> String {
        let exact = without_doubt(&self.exact);
        match &self.on_a_line {
            Some(line) => say!("wrench {exact}, set {set}", set = without_doubt(line)),
            None => say!("wrench {exact}"),
        }
    }
}

/// Number and unit; the ± stands before the unit.
fn without_doubt(figure: &Headline) -> String {
    let unit = figure.unit.rsplit(' ').next().unwrap_or_default();
    format!("{} {unit}", figure.number)
}

/// The stages in their order with how far each is; none where there is only one.
pub(super) fn of_torque(settings: &[Setting], marks: &[Decimal], ticks: &[String]) -> Vec<Stage> {
    let on_the_wrench = settings.iter().zip(1_u32..).map(|(setting, number)| {
        let set = without_doubt(setting.set());
        Stage {
            title: say!("Stage {number}"),
            mark: number.to_string(),
            asked: say!("{asked} at the fastener", asked = setting.asked),
            how: setting.how(),
            act: say!("Stage {number} clicked at {set}"),
            tick: set,
            progress: Progress::Next,
            again: None,
        }
    });
    let turns = marks.iter().zip(1_u32..).map(|(mark, number)| {
        let degrees = mark.normalize();
        Stage {
            title: say!("Turn {number}"),
            mark: "∠".to_owned(),
            asked: say!("{degrees}° past snug"),
            how: t("to the paint line").to_owned(),
            act: say!("Turned to {degrees}°"),
            tick: format!("{degrees} °"),
            progress: Progress::Next,
            again: None,
        }
    });
    let all: Vec<Stage> = on_the_wrench.chain(turns).collect();
    if all.len() > 1 { ticked_off(all, ticks) } else { Vec::new() }
}

/// What to set for the stage that is now; for the last of all where there is one, or all are done.
pub(super) fn headline(stages: &[Stage], settings: &[Setting]) -> Option<Headline> {
    let now = stages.iter().position(|stage| stage.progress == Progress::Now);
    let at = now.unwrap_or(settings.len().saturating_sub(1));
    let set = settings.get(at).map(|setting| setting.set().clone());
    match (set, now) {
        (Some(set), Some(_)) if settings.len() > 1 => {
            Some(Headline { title: SET_AT.get(at).map_or(set.title, |title| t(title)), ..set })
        }
        (Some(set), _) => Some(set),
        (None, _) => stages.get(at).map(|turn| Headline {
            title: t("Turn to the mark"),
            number: turn.tick.trim_end_matches(" °").to_owned(),
            unit: "°".to_owned(),
            note: t("past snug").to_owned(),
        }),
    }
}
