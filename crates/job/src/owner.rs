//! The job in the owner's words: no trade terms, nothing that was not found or done.
//!
//! Sentences come from what was written down; advice on running gently and on the first oil check
//! is common practice, no source.

use words::{say, t};

use crate::guide::Kept;
use crate::guided::{Capture, PartVerdict};
use crate::procedure::{Phase, Plan};
use crate::record::OPENED_AGAIN;
use crate::sheet::listed;
use crate::{CheckState, Job, Record, Shown, clock};

/// What the owner is told. Sentences.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Owner {
    /// What was wrong.
    pub wrong: Vec<String>,
    /// What was done.
    pub done: Vec<String>,
    /// What to do and to watch.
    pub watch: Vec<String>,
    /// When the oil is to be looked at next.
    pub next_check: String,
    /// What can hurt.
    pub cautions: Vec<String>,
    /// What is not covered.
    pub not_covered: Vec<String>,
}

/// What an answer on a step means in plain words: label, word, sentence.
pub(crate) const FOUND: [(&str, &str, &str); 12] = [
    ("first liquid", "water", "Water stood in it instead of oil."),
    ("first liquid", "emulsion", "The oil was milky: water had got in."),
    ("first liquid", "nothing", "There was no oil left in it."),
    ("metal on magnet", "hairs", "There was some metal in the oil."),
    ("metal on magnet", "slivers", "There was metal in the oil."),
    ("metal on magnet", "chunks", "There were pieces of metal in the oil."),
    ("line or wire found", "yes", "Line or wire was wound round the propeller’s shaft."),
    ("hub slipped", "yes", "The rubber inside the propeller slipped."),
    ("shift fault", "jumps out", "It jumped out of gear."),
    ("shift fault", "grinds", "It ground when it was shifted."),
    ("shift fault", "no reverse", "It had no reverse."),
    ("shift fault", "no forward", "It had no forward."),
];

/// What parts are called among people who have no such part on their bench.
const PARTS: [(&str, &str); 12] = [
    ("gears", "the gears"),
    ("taper-bearings", "the main bearings"),
    ("needle-bearings", "the small bearings"),
    ("thrust-parts", "the washers that take the push"),
    ("race-bores", "the seats of the bearings"),
    ("seal-lands", "the shafts where the seals run"),
    ("splines", "the shaft ends"),
    ("case", "the housing"),
    ("anodes", "the anodes, the metal blocks that corrode in place of the housing"),
    ("corrosion", "the sealing faces, by corrosion"),
    ("dogs", "the parts that change gear"),
    ("cone", "the clutch"),
];

/// New parts by the word of the steps, in plain words.
const FITTED: [(&str, &str); 4] = [
    ("new seals", "We fitted new seals."),
    ("O-rings", "We fitted new sealing rings."),
    ("impeller kit", "We fitted a new impeller, which pumps the cooling water."),
    ("new sleeves", "We fitted new sleeves where the seals run."),
];

/// The job in the owner's words.
pub fn owner(job: &Job, record: &Record, plan: Option<&Plan>, shown: Shown) -> Owner {
    let guided = job.guide.scope.is_some();
    Owner {
        wrong: wrong(job, record),
        done: done(job, record, plan),
        watch: watch(job, record, guided),
        next_check: next_check(job, guided, shown),
        cautions: cautions(record, guided),
        not_covered: not_covered(job, record),
    }
}

impl Owner {
    /// As plain text, to be copied.
    pub fn text(&self) -> String {
        let next: Vec<String> = Some(self.next_check.clone()).into_iter().collect();
        let groups = [
            (t("What was wrong"), &self.wrong),
            (t("What was done"), &self.done),
            (t("What you do next"), &self.watch),
            (t("Next check"), &next),
            (t("Take care"), &self.cautions),
            (t("Not covered"), &self.not_covered),
        ];
        let mut text = String::new();
        for (title, lines) in groups {
            let lines: Vec<&String> = lines.iter().filter(|line| !line.is_empty()).collect();
            if lines.is_empty() {
                continue;
            }
            text.push_str(&format!("{title}\n"));
            lines.iter().for_each(|line| text.push_str(&format!("- {line}\n")));
        }
        text
    }
}

fn wrong(job: &Job, record: &Record) -> Vec<String> {
    let mut wrong = Vec::new();
    if !job.complaint.trim().is_empty() {
        wrong.push(say!("You told us: {complaint}.", complaint = ended(&job.complaint)));
    }
    let found = FOUND.iter().filter(|(label, word, _)| chosen(job, label, word));
    wrong.extend(found.map(|row| t(row.2).to_owned()));
    if let Some(parts) = named(record, PartVerdict::Reject) {
        wrong.push(say!("Worn out or damaged: {parts}."));
    }
    let is_out =
        |found: &crate::Judged| matches!(found.state, CheckState::Out | CheckState::TightSpot);
    if record.checks.iter().any(|check| check.found.as_ref().is_some_and(is_out)) {
        wrong.push(t("The gears did not sit within the limits of their manual.").to_owned());
    }
    wrong
}

fn done(job: &Job, record: &Record, plan: Option<&Plan>) -> Vec<String> {
    let is_done = |id: &str| job.guide.steps.get(id).is_some_and(|step| step.done.is_some());
    let steps = plan.iter().flat_map(|plan| &plan.steps).filter(|step| is_done(&step.id));
    let steps: Vec<_> = steps.collect();
    let used = |word: &str| {
        steps.iter().any(|step| {
            let fits = step.phase >= Phase::SetUp;
            fits && step.consumables.iter().any(|used| used == word)
        })
    };
    let in_phase = |phase| steps.iter().any(|step| step.phase == phase);
    let mut done: Vec<String> =
        FITTED.iter().filter(|row| used(row.0)).map(|row| t(row.1).to_owned()).collect();
    let changed =
        record.packs.iter().any(|pack| pack.total != pack.found_total && !pack.left.is_empty());
    if changed {
        done.push(t("We placed the gears anew with measured metal rings.").to_owned());
    }
    let all_in = |check: &crate::RecordCheck| check.state == CheckState::InBand;
    if !record.checks.is_empty() && record.checks.iter().all(all_in) {
        done.push(
            t("We measured how the gears sit: within the limits of their manual.").to_owned(),
        );
    }
    if in_phase(Phase::Test) && !chosen(job, "bubbles", "seen") {
        done.push(t("We put air into it and turned the shafts: it holds.").to_owned());
    }
    if in_phase(Phase::Fill) {
        done.push(t("We filled it with fresh oil.").to_owned());
    }
    if in_phase(Phase::Run) {
        done.push(t("We ran it, and looked at it again afterwards.").to_owned());
    }
    done
}

fn watch(job: &Job, record: &Record, guided: bool) -> Vec<String> {
    let mut watch = Vec::new();
    if guided {
        watch.push(t("Run gently for the first hour.").to_owned());
        watch.push(t("Milky oil or a drip: stop and call.").to_owned());
    }
    if let Some(parts) = named(record, PartVerdict::Watch) {
        watch.push(say!("Still in use though worn: {parts}. Have them looked at next time."));
    }
    if let Some(left) = anodes(job) {
        watch.push(say!("The anodes are at {left} %. Replace them at half."));
    }
    watch.extend(text(job, "open risks and parts reused on request"));
    watch
}

/// The lowest of the anodes, as it was read.
fn anodes(job: &Job) -> Option<String> {
    let Capture::Readings(values) = &last(job, "anode left")?.value else { return None };
    let lowest = values.iter().min_by_key(|value| value.amount().value)?;
    Some(lowest.text().to_owned())
}

fn next_check(job: &Job, guided: bool, shown: Shown) -> String {
    match last(job, "first lube check due").map(|kept| &kept.value) {
        Some(Capture::Time(at)) => {
            say!("Have the oil looked at by {date}.", date = clock::date(*at, shown.utc_offset))
        }
        _ if guided => t("Have the oil looked at after 5 to 10 hours of running.").to_owned(),
        _ => String::new(),
    }
}

fn cautions(record: &Record, guided: bool) -> Vec<String> {
    let mut cautions = Vec::new();
    if guided && !record.draft.is_empty() {
        cautions.push(t("This job is not finished: do not run it.").to_owned());
    }
    cautions.push(t("Never run it with milky oil or without oil.").to_owned());
    cautions.push(t("Engine off and key out before anybody is near the propeller.").to_owned());
    cautions.push(t("What the manual of your unit says comes first.").to_owned());
    cautions
}

fn not_covered(job: &Job, record: &Record) -> Vec<String> {
    let mut said: Vec<String> = text(job, "not covered").into_iter().collect();
    let left = record.left_out.iter().filter(|step| step.what != OPENED_AGAIN).count();
    if left > 0 {
        said.push(match left {
            1 => t("1 step was left out. The record says which, and why.").to_owned(),
            _ => say!("{left} steps were left out. The record says which, and why."),
        });
    }
    said
}

fn named(record: &Record, verdict: PartVerdict) -> Option<String> {
    let parts = record.parts.iter().filter(|part| part.verdict == verdict);
    let plain = |part: &crate::RecordPart| {
        let row = PARTS.iter().find(|row| row.0 == part.part);
        row.map_or_else(|| part.name.to_lowercase(), |row| t(row.1).to_owned())
    };
    let names: Vec<String> = parts.map(plain).collect();
    let names: Vec<&str> = names.iter().map(String::as_str).collect();
    (!names.is_empty()).then(|| listed(&names))
}

fn chosen(job: &Job, label: &str, word: &str) -> bool {
    matches!(last(job, label).map(|kept| &kept.value), Some(Capture::Chosen(words)) if words.iter().any(|it| it == word))
}

fn text(job: &Job, label: &str) -> Option<String> {
    match &last(job, label)?.value {
        Capture::Text(words) if !words.trim().is_empty() => Some(format!("{}.", ended(t(words)))),
        _ => None,
    }
}

/// What was captured last under a label, on whichever step.
pub(crate) fn last<'a>(job: &'a Job, label: &str) -> Option<&'a Kept> {
    let captures = job.guide.captures.iter().filter(|((_, own), _)| own == label);
    captures.map(|(_, kept)| kept).max_by_key(|kept| kept.mark)
}

fn ended(text: &str) -> &str {
    text.trim().trim_end_matches('.')
}
