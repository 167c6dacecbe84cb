//! A sequence that is ticked off in its order: what is done, what is now, what is next.

use measure::{Decimal, Sign, Typed, Unit};
use words::{say, t};

use super::Answer;

/// How far a stage is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Progress {
    /// Ticked.
    Done,
    /// The first that is not ticked.
    Now,
    /// It waits for the one that is now.
    Next,
}

/// A stage of a sequence.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Stage {
    /// "Stage 2".
    pub title: String,
    /// The same in a circle: "2".
    pub mark: String,
    /// What is asked: "120 N·m at the fastener".
    pub asked: String,
    /// What to do for it: "wrench 108.5 N·m".
    pub how: String,
    /// The act that ticks it: "Stage 2 clicked at 108.5 N·m".
    pub act: String,
    /// What is kept when it is ticked: "108.5 N·m".
    pub tick: String,
    /// How far it is.
    pub progress: Progress,
    /// It was ticked at another number than it asks now.
    pub again: Option<String>,
}

impl Progress {
    /// The word of its sign.
    pub fn word(self) -> &'static str {
        match self {
            Progress::Done => t("Done"),
            Progress::Now => t("Now"),
            Progress::Next => t("Next"),
        }
    }
}

impl Answer {
    /// The stage that is now, with its place; `None` without a sequence, and once all are done.
    pub fn stage_now(&self) -> Option<(usize, &Stage)> {
        let mut stages = self.stages.iter().enumerate();
        stages.find(|(_, stage)| stage.progress == Progress::Now)
    }
}

/// The stages with how far each is: ticked is what leads up to the first whose tick is not what it asks
/// now.
pub(super) fn ticked_off(mut stages: Vec<Stage>, ticks: &[String]) -> Vec<Stage> {
    let holds = |(stage, tick): (&Stage, &String)| is_same(tick, &stage.tick);
    let done = stages.iter().zip(ticks).take_while(|pair| holds(*pair)).count();
    for (at, stage) in stages.iter_mut().enumerate() {
        stage.progress = match at {
            at if at < done => Progress::Done,
            at if at == done => Progress::Now,
            _ => Progress::Next,
        };
        let before = ticks.get(at).filter(|tick| at == done && !tick.is_empty());
        stage.again = before.map(|before| {
            say!("Ticked at {before}, asked now is {now}: do it again.", now = stage.tick)
        });
    }
    stages
}

/// Whether a tick is for what is asked: nearer than any wrench is true, 1 % (common practice, no source).
fn is_same(tick: &str, asked: &str) -> bool {
    let read = |text: &str| {
        let in_unit = |unit| Typed::parse(text, unit, Sign::NotNegative).ok();
        in_unit(Unit::NewtonMetre).or_else(|| in_unit(Unit::Degree))
    };
    let (Some(tick), Some(asked)) = (read(tick), read(asked)) else { return false };
    let unit = asked.unit();
    if tick.unit().quantity() != unit.quantity() {
        return false;
    }
    let (tick, asked) = (tick.in_unit(unit), asked.in_unit(unit));
    (tick - asked).abs() * Decimal::ONE_HUNDRED <= asked
}
