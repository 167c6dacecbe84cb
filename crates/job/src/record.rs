//! What the record is told: everything that was found, done and left, and why it is a draft.

mod bench;
mod captured;
mod checks;
mod draft;
mod photos;
mod signed;
mod steps;

use pictures::drawing::Drawing;
use words::{say, t};

use crate::guide::{Course, GuideLog, Moment, counts, filled, titled, told};
use crate::procedure::Plan;
use crate::{Job, Sheet, Shown, clock, sheet::listed, stages};

pub use bench::RecordBench;
pub use captured::{RecordStep, RecordTorque};
pub use checks::{RecordCheck, RecordPack};
pub use photos::{RecordPart, RecordPhoto};
pub use signed::RecordSigned;
pub(crate) use steps::OPENED_AGAIN;
pub use steps::RecordLeft;

/// What the record is told. Lengths are mm.
#[derive(Clone, Debug, PartialEq)]
pub struct Record {
    /// Number of the job.
    pub number: u32,
    /// The boat.
    pub boat: String,
    /// The complaint.
    pub complaint: String,
    /// The unit.
    pub unit: String,
    /// The date it was opened.
    pub opened: String,
    /// How much of the unit was agreed to be done; empty while nobody said.
    pub scope: String,
    /// The checks.
    pub checks: Vec<RecordCheck>,
    /// The packs.
    pub packs: Vec<RecordPack>,
    /// "Backlash read at a 30.0 mm arm on the driveshaft, mean of 4 positions."; may be empty.
    pub arm_says: String,
    /// The bench checks kept last, in the order kept.
    pub bench: Vec<RecordBench>,
    /// The seals of the unit with what was kept of each; `None` where none was checked.
    pub seal_map: Option<Drawing>,
    /// Torques, in the order of the steps.
    pub torques: Vec<RecordTorque>,
    /// What else was captured, step by step.
    pub captured: Vec<RecordStep>,
    /// "Pinion rollers: 18 out, 18 in.", a sentence each.
    pub counts: Vec<String>,
    /// "Cooling: from 12 May 2026 10:05, 60 min.", a sentence each.
    pub waits: Vec<String>,
    /// Photos, each once.
    pub photos: Vec<RecordPhoto>,
    /// Parts judged; those used again are among them.
    pub parts: Vec<RecordPart>,
    /// Cautions of the steps that were done, and of the bench checks; each once.
    pub cautions: Vec<String>,
    /// Who agreed, judged or signed, in the order they did.
    pub signed: Vec<RecordSigned>,
    /// Steps left out or opened again, with the reason.
    pub left_out: Vec<RecordLeft>,
    /// What lost its ground and was not done again: a sentence each.
    pub stale: Vec<String>,
    /// Why it is a draft, a sentence each. Empty: nothing on it is stale, out or missing.
    pub draft: Vec<String>,
    /// Stages that are not recorded, in a sentence; empty where the guided job records them.
    pub not_recorded: String,
    /// Remarks.
    pub notes: Vec<String>,
    /// What was done, in order: time and sentence.
    pub history: Vec<(String, String)>,
}

/// What the guided parts of a record are worked out from.
struct Look<'a> {
    job: &'a Job,
    plan: Option<&'a Plan>,
    log: &'a GuideLog,
    shown: Shown,
}

/// Works out the record. `plan`: the steps of the job where a scope was chosen; without them the
/// guided parts stand by the ids of their steps, and that makes it a draft.
pub fn record(job: &Job, sheet: &Sheet, plan: Option<&Plan>, shown: Shown) -> Record {
    let checks: Vec<RecordCheck> = sheet
        .checks()
        .into_iter()
        .map(|check| checks::of_check(check, job, sheet, shown))
        .collect();
    let packs =
        sheet.positions().into_iter().map(|position| checks::of_pack(position, job)).collect();
    let log = plan.map_or_else(|| job.guide.clone(), |plan| filled(job, plan));
    let look = Look { job, plan, log: &log, shown };
    let course = plan.map(|plan| course(job, sheet, plan, &log, shown));
    let mut reasons = draft::of_set_up(job, sheet, &checks);
    match &course {
        Some(course) => reasons.extend(draft::of_course(course)),
        None if is_guided(job) => reasons.push(
            t("The steps of this job’s procedure are not at hand. Open the job once, then come back.")
                .to_owned(),
        ),
        None => {}
    }
    let bench = bench::of(&look);
    Record {
        number: job.number,
        boat: job.boat.clone(),
        complaint: job.complaint.clone(),
        unit: sheet.name.clone(),
        opened: clock::date(job.opened_at, shown.utc_offset),
        scope: job.guide.scope.map(|scope| scope.words().to_owned()).unwrap_or_default(),
        arm_says: checks::arm_says(job, sheet, shown),
        seal_map: bench::seal_map(&look, sheet),
        torques: captured::torques(&look),
        captured: captured::others(&look),
        counts: plan.map(|plan| counted(plan, &log)).unwrap_or_default(),
        waits: captured::waits(&look),
        photos: photos::photos(&look),
        parts: photos::parts(&look),
        cautions: steps::cautions(&look, &bench),
        signed: signed::of(&look),
        left_out: steps::left_out(&look, sheet),
        stale: course.iter().flat_map(|it| &it.steps).filter_map(draft::stale).collect(),
        bench,
        draft: reasons,
        not_recorded: not_recorded(job, sheet),
        notes: sheet.turned_says().into_iter().chain(job.notes.iter().cloned()).collect(),
        history: history(&look),
        checks,
        packs,
    }
}

impl Look<'_> {
    /// The title of a step, where the plan is at hand and has it; else its id.
    fn title(&self, step: &str) -> String {
        let planned = self.plan.and_then(|plan| plan.step(step));
        planned.map_or_else(|| step.to_owned(), |step| step.title.clone())
    }

    /// Date and time of day.
    fn when(&self, at: i64) -> String {
        let offset = self.shown.utc_offset;
        format!("{} {}", clock::date(at, offset), clock::hour_minute(at, offset))
    }

    /// Where a step stands in the order of work; what no plan has comes last.
    fn place(&self, step: &str) -> usize {
        self.plan.and_then(|plan| plan.index(step)).unwrap_or(usize::MAX)
    }
}

/// A scope was chosen, or anything of the guided job was done.
fn is_guided(job: &Job) -> bool {
    job.guide.scope.is_some() || !job.guide.steps.is_empty()
}

fn course(job: &Job, sheet: &Sheet, plan: &Plan, log: &GuideLog, shown: Shown) -> Course {
    // What a step waits for is not told here, so the time is that of the last entry.
    let now = job.last_at;
    let moment = Moment { now, utc_offset: shown.utc_offset, device: String::new() };
    Course::of(plan, log, &told(job, sheet, shown), &moment)
}

fn counted(plan: &Plan, log: &GuideLog) -> Vec<String> {
    let said = counts(plan, log).into_iter().filter_map(|count| {
        let (name, out) = (count.title(), count.out_words()?);
        Some(match count.in_words() {
            Some(inside) => say!("{name}: {out} out, {inside} in.") + &spaced(&count.says),
            None => say!("{name}: {out} out, not counted in."),
        })
    });
    said.collect()
}

fn spaced(says: &str) -> String {
    if says.is_empty() { String::new() } else { format!(" {says}") }
}

fn not_recorded(job: &Job, sheet: &Sheet) -> String {
    if is_guided(job) {
        return String::new();
    }
    let missing: Vec<&str> = stages(job, sheet)
        .iter()
        .filter(|stage| stage.state == crate::StageState::NotRecorded)
        .map(|stage| stage.name)
        .collect();
    say!("Not recorded here: {stages}.", stages = listed(&missing))
}

fn history(look: &Look) -> Vec<(String, String)> {
    let said = |sentence: &String| match look.plan {
        Some(plan) => titled(sentence, plan),
        None => sentence.clone(),
    };
    let history = look.job.history.iter();
    history.map(|(at, sentence)| (look.when(*at), said(sentence))).collect()
}
