//! Gates: what is missing, in words.

use words::{say, t};

use super::counts::{self, count};
use super::course::Told;
use super::log::{GuideLog, Kept};
use super::packs;
use crate::guided::{Capture, capitalised, labelled};
use crate::procedure::{Gate, Phase, Plan, Proof, Record, RecordKind, Step};
use crate::sheet::listed;

/// A gate as it stands.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct GateView {
    /// The condition in words.
    pub words: String,
    /// What keeps it shut: one sentence each; empty: nothing that can be seen from here.
    pub missing: Vec<String>,
    /// The condition speaks of something a person must compare: they say yes or no.
    pub asks: bool,
    /// Who said yes, where it asks.
    pub judged_by: Option<String>,
    /// It is open.
    pub passed: bool,
}

/// Words of conditions that only the manual, the sheet or an eye can decide.
const ASKS: [&str; 14] = [
    "band",
    "limit",
    "within",
    "agree",
    "as found",
    "by manual",
    "unchanged",
    "inside",
    "rated",
    "warm",
    "explained",
    "equal set-up",
    "match",
    "in the unit sheet",
];

pub(super) fn view(plan: &Plan, log: &GuideLog, step: &Step, told: &[Told]) -> Option<GateView> {
    let gate = step.gate.as_ref()?;
    let looked = Look { plan, log, step, told };
    let mut missing = looked.counts_differ(gate);
    missing.extend(looked.packs_differ(gate));
    let excused = looked.stands_instead(gate);
    for proof in &gate.proof {
        if let Some(why) = looked.lacks(proof, excused) {
            missing.push(why);
        }
    }
    missing.extend(looked.out_of_band(gate));
    let asks = ASKS.iter().any(|word| gate.words.contains(word)) && !looked.all_told(gate);
    let own = log.steps.get(&step.id);
    let judged_by = own.and_then(|own| {
        let (mark, by) = own.passed.as_ref()?;
        let after_opening = own.reopened.as_ref().is_none_or(|(reopened, _)| reopened < mark);
        let after_proof = looked.captured(gate).all(|kept| kept.mark < *mark);
        (after_opening && after_proof).then(|| by.clone())
    });
    let passed = missing.is_empty() && (!asks || judged_by.is_some());
    Some(GateView { words: t(&gate.words).to_owned(), missing, asks, judged_by, passed })
}

struct Look<'a> {
    plan: &'a Plan,
    log: &'a GuideLog,
    step: &'a Step,
    told: &'a [Told],
}

impl<'a> Look<'a> {
    /// The step, record and capture of a proof; `None` where it is not of this plan.
    fn find(&self, proof: &Proof) -> Option<(&'a Step, &'a Record, Option<&'a Kept>)> {
        let holder = match &proof.step {
            None => self.step,
            Some(id) => self.plan.step(id)?,
        };
        let record = holder.record(&proof.label)?;
        Some((holder, record, self.log.capture(&holder.id, &record.label)))
    }

    fn captured(&self, gate: &'a Gate) -> impl Iterator<Item = &'a Kept> {
        gate.proof.iter().filter_map(|proof| self.find(proof)?.2)
    }

    /// A reason such as "not applicable because" stands in place of what was not captured.
    fn stands_instead(&self, gate: &Gate) -> bool {
        let is_reason = |proof: &&Proof| proof.label.starts_with("not ");
        let mut reasons = gate.proof.iter().filter(is_reason);
        reasons.any(|proof| self.find(proof).is_some_and(|found| found.2.is_some()))
    }

    /// Why a proof does not stand.
    fn lacks(&self, proof: &Proof, excused: bool) -> Option<String> {
        let (holder, record, kept) = self.find(proof)?;
        let label = labelled(&record.label);
        let Some(kept) = kept else {
            let may_lack = excused || proof.label.starts_with("not ");
            return (!may_lack).then(|| say!("{label}: not captured."));
        };
        if holder.id == self.step.id
            && let Some((_, reason)) = self.opened_after(kept)
        {
            return Some(say!("{label}: captured before this was opened again: {reason}."));
        }
        let reading = record.kind == RecordKind::Measure && holder.phase >= Phase::SetUp;
        if reading
            && let Some((pack, _)) =
                packs::changed_under(self.plan, self.log, &record.label, kept.mark)
        {
            return Some(say!("{label}: read before {pack} changed. Read it again."));
        }
        match &kept.value {
            Capture::Chosen(words) => words
                .iter()
                .find(|word| {
                    record.choices.iter().any(|choice| choice.shuts && choice.word == **word)
                })
                .map(|word| {
                    say!("{label}: {word}. Put it right, then answer again.", word = t(word))
                }),
            Capture::Readings(values) if record.is_count() => {
                let counts: Vec<_> = values.iter().map(|value| value.amount().value).collect();
                let differ = counts.iter().any(|count| counts.first() != Some(count));
                differ.then(|| {
                    let said: Vec<&str> = values.iter().map(measure::Typed::text).collect();
                    say!(
                        "{label}: counted {counts}. Count until they agree.",
                        counts = listed(&said)
                    )
                })
            }
            _ => None,
        }
    }

    fn opened_after(&self, kept: &Kept) -> Option<&(super::log::Mark, String)> {
        let reopened = self.log.steps.get(&self.step.id)?.reopened.as_ref()?;
        (reopened.0 > kept.mark).then_some(reopened)
    }

    /// Each own count against the count out that stands beside it.
    fn counts_differ(&self, gate: &Gate) -> Vec<String> {
        let mut differ = Vec::new();
        for (_, came_in, inside) in gate.proof.iter().filter_map(|proof| self.own(proof)) {
            let Some(name) = counts::name_in(came_in).filter(|_| came_in.is_count()) else {
                continue;
            };
            let outs = gate.proof.iter().filter_map(|proof| self.find(proof));
            for (.., outside) in outs.filter(|out| counts::name_out(out.1) == Some(name)) {
                let pair = (inside.and_then(count), outside.and_then(count));
                if let (Some(inside), Some(outside)) = pair
                    && inside != outside
                {
                    differ.push(counts::sentence(name, outside, inside));
                }
            }
        }
        differ
    }

    fn own(&self, proof: &Proof) -> Option<(&'a Step, &'a Record, Option<&'a Kept>)> {
        if proof.step.is_some() { None } else { self.find(proof) }
    }

    /// Each pack fitted against the pack frozen, or listed where nothing was frozen.
    fn packs_differ(&self, gate: &Gate) -> Vec<String> {
        let mut differ = Vec::new();
        for (_, fitted, kept) in gate.proof.iter().filter_map(|proof| self.own(proof)) {
            let Some((position, "fitted")) = fitted.pack() else { continue };
            let agreed = gate.proof.iter().filter_map(|proof| self.find(proof)).find_map(
                |(_, record, kept)| match record.pack() {
                    Some((other, state @ ("frozen" | "listed"))) if other == position => {
                        Some((state, kept?.value.pack_total()?))
                    }
                    _ => None,
                },
            );
            let total = kept.and_then(|kept| kept.value.pack_total());
            if let (Some(total), Some((state, agreed))) = (total, agreed)
                && total != agreed
            {
                let [total, agreed] =
                    [total, agreed].map(|value| measure::show(value, 3, measure::Mark::Point));
                differ.push(match state {
                    "frozen" => say!(
                        "{position} fitted is {total} mm, frozen was {agreed} mm. Fit the frozen pack."
                    ),
                    _ => say!(
                        "{position} fitted is {total} mm, listed was {agreed} mm. Fit the listed pack."
                    ),
                });
            }
        }
        differ
    }

    fn out_of_band(&self, gate: &Gate) -> Vec<String> {
        self.checks(gate)
            .filter(|told| !told.in_band)
            .map(|told| format!("{}: {}.", capitalised(t(&told.check)), told.words.to_lowercase()))
            .collect()
    }

    /// Whether the set-up has judged every reading this gate speaks of.
    fn all_told(&self, gate: &Gate) -> bool {
        let mut readings = gate.proof.iter().filter_map(|proof| self.find(proof)).filter(|found| {
            found.1.kind == RecordKind::Measure && !found.1.label.starts_with("arm radius")
        });
        let mut any = false;
        let all = readings.all(|(_, record, _)| {
            any = true;
            self.told.iter().any(|told| packs::reads(&record.label, &told.check))
        });
        any && all && self.step.phase == Phase::SetUp
    }

    fn checks(&self, gate: &'a Gate) -> impl Iterator<Item = &'a Told> {
        let speaks = self.step.phase == Phase::SetUp;
        self.told.iter().filter(move |told| {
            speaks && gate.proof.iter().any(|proof| packs::reads(&proof.label, &told.check))
        })
    }
}
