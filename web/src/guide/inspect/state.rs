//! The part that is judged, and what is ticked and typed about it before the verdict is kept.

use job::guide::{Effect, PartView, effects, inspection, suggest};
use job::{BookId, Guided, PartVerdict};
use leptos::prelude::*;
use words::t;

use super::super::Guide;
use super::super::acting::Acting;
use super::super::criteria::criteria;
use crate::draft::{Draft, use_draft};
use crate::parts::{PhotoDraft, Text};

/// The verdicts, as they are offered.
pub const VERDICTS: [PartVerdict; 3] =
    [PartVerdict::Reject, PartVerdict::Watch, PartVerdict::Reuse];

/// Signs as a person words them.
pub fn told(signs: &[String]) -> String {
    signs.iter().map(|sign| t(sign)).collect::<Vec<_>>().join(", ")
}

/// The inspection and the part that is open.
#[derive(Clone, Copy)]
pub struct Judging {
    pub guide: Guide,
    parts: Memo<Vec<PartView>>,
    pub acting: Acting,
    /// The place of the open part, from 0.
    at: Memo<Option<usize>>,
    /// The part a person opened; empty: the first without a verdict.
    part: Draft,
    /// The part that the drafts below are about; empty: nothing was touched.
    touched: Draft,
    /// The signs ticked, one a line.
    signs: Draft,
    verdict: Draft,
    reason: Draft,
    pub photo: PhotoDraft,
}

impl Judging {
    /// The inspection of a job.
    pub fn of(guide: Guide) -> Judging {
        let at = format!("job/{}/inspect", guide.of.id());
        let draft = |field| use_draft(&at, field);
        let criteria = criteria();
        let parts = move |_: Option<&_>| {
            let criteria = criteria.get();
            guide.look(|plan, log, _| inspection(&criteria, plan, log)).unwrap_or_default()
        };
        let (parts, part) = (Memo::new(parts), draft("part"));
        let at = move |_: Option<&_>| {
            let part = part.text();
            parts.with(|parts: &Vec<PartView>| {
                let chosen = parts.iter().position(|view| view.criteria.part == part);
                let open = || parts.iter().position(|view| view.judged.is_none());
                chosen.or_else(open).or((!parts.is_empty()).then_some(0))
            })
        };
        Judging {
            guide,
            parts,
            at: Memo::new(at),
            acting: Acting::here(),
            part,
            touched: draft("touched"),
            signs: draft("signs"),
            verdict: draft("verdict"),
            reason: draft("reason"),
            photo: PhotoDraft::here(),
        }
    }

    /// Looks at the parts.
    pub fn look<T>(self, at: impl FnOnce(&[PartView]) -> T) -> T {
        self.parts.with(|parts| at(parts))
    }

    /// What the verdicts change.
    pub fn effect(self) -> Effect {
        let effect = self.guide.look(|plan, _, _| self.look(|parts| effects(parts, plan)));
        effect.unwrap_or_default()
    }

    /// The place of the part that is open, from 0.
    pub fn at(self) -> Option<usize> {
        self.at.get()
    }

    /// The part that is open.
    pub fn open(self) -> Option<PartView> {
        let at = self.at()?;
        self.look(|parts| parts.get(at).cloned())
    }

    /// The next part without a verdict, apart from the open one.
    pub fn next(self) -> Option<PartView> {
        let here = self.open()?.criteria.part;
        self.look(|parts| {
            let open = |view: &&PartView| view.judged.is_none() && view.criteria.part != here;
            parts.iter().find(open).cloned()
        })
    }

    /// Opens a part.
    pub fn choose(self, part: &str) {
        self.forget();
        self.part.set(part);
    }

    /// Whether something is ticked or typed that is not kept.
    pub fn is_touched(self) -> bool {
        self.open().is_some_and(|open| open.criteria.part == self.touched.text())
    }

    /// The signs that are ticked.
    pub fn signs(self) -> Vec<String> {
        match (self.is_touched(), self.open()) {
            (false, Some(PartView { judged: Some(judged), .. })) => judged.signs,
            _ => self.signs.text().lines().map(str::to_owned).collect(),
        }
    }

    /// Ticks a sign, or unticks it; the reason follows until a person words it.
    pub fn tick(self, sign: &str, ticked: bool) {
        self.touch();
        let before = untrack(|| self.signs());
        let mut signs: Vec<String> = before.iter().filter(|it| *it != sign).cloned().collect();
        if ticked {
            signs.push(sign.to_owned());
        }
        let reason = self.reason.text_untracked();
        if reason.is_empty() || reason == told(&before) {
            self.reason.set(&told(&signs));
        }
        self.signs.set(&signs.join("\n"));
    }

    /// The verdict: as chosen, else what the ticks say.
    pub fn verdict(self) -> Option<PartVerdict> {
        let open = self.open()?;
        if !self.is_touched() {
            return open.judged.map(|judged| judged.verdict);
        }
        let chosen = self.verdict.text().parse().ok().and_then(|at: usize| VERDICTS.get(at));
        chosen.copied().or_else(|| self.ticks_say())
    }

    /// What the ticks speak for.
    pub fn ticks_say(self) -> Option<PartVerdict> {
        suggest(&self.open()?.criteria, &self.signs())
    }

    /// Chooses a verdict.
    pub fn decide(self, at: usize) {
        self.touch();
        self.verdict.set(&at.to_string());
    }

    /// The reason, as typed.
    pub fn reason(self) -> Text {
        let text = move || match (self.is_touched(), self.open()) {
            (false, Some(PartView { judged: Some(judged), .. })) => judged.reason,
            _ => self.reason.text(),
        };
        let set = move |text: String| {
            self.touch();
            self.reason.set(&text);
        };
        Text::new(Signal::derive(text), Callback::new(set))
    }

    /// From here on the drafts are about the open part, beginning with what was kept of it.
    fn touch(self) {
        let Some(open) = untrack(|| self.open()) else { return };
        if self.touched.text_untracked() == open.criteria.part {
            return;
        }
        let kept = open.judged.unwrap_or(job::guide::Judged {
            verdict: PartVerdict::Reuse,
            signs: Vec::new(),
            reason: String::new(),
            photo: None,
            mark: job::guide::Mark::default(),
        });
        self.signs.set(&kept.signs.join("\n"));
        self.reason.set(&kept.reason);
        self.part.set(&open.criteria.part);
        self.touched.set(&open.criteria.part);
    }

    /// A photo alone is something to keep too.
    pub fn has_photo(self) -> bool {
        self.photo.id().is_some()
    }

    fn forget(self) {
        for draft in [self.part, self.touched, self.signs, self.verdict, self.reason] {
            draft.clear();
        }
        self.photo.clear();
        self.acting.forget();
    }

    /// Keeps the verdict.
    pub fn keep(self) {
        let (open, verdict, reason) =
            untrack(|| (self.open(), self.verdict(), self.reason().get()));
        let (Some(open), Some(verdict)) = (open, verdict) else { return };
        let before = open.judged.and_then(|judged| judged.photo);
        let judged = Guided::PartJudged {
            part: open.criteria.part,
            verdict,
            signs: untrack(|| self.signs()),
            reason,
            photo: untrack(|| self.photo.id()).or(before),
        };
        self.record(vec![judged], Box::new(move || self.forget()));
    }

    /// Writes facts of the job down.
    pub fn record(self, facts: Vec<Guided>, then: Box<dyn FnOnce()>) {
        let book = BookId::Job(self.guide.of.id());
        let facts = facts.into_iter().map(|fact| (book.clone(), fact.into())).collect();
        self.acting.record(facts, self.photo.taken(), then);
    }
}
