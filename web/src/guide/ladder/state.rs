//! The ladder, followed, and what is half typed about the rung that is open.

use job::guide::{CountView, Ladder, Rung, RungState, Way, counts, facing, ladder};
use job::{BookId, Guided};
use leptos::prelude::*;

use super::super::Guide;
use super::super::acting::Acting;
use crate::draft::{Draft, use_draft};
use crate::parts::{PhotoDraft, Text};

/// The draft of the open rung says this while a part of the person's own is added.
const OWN: &str = "own part";

/// The ladder and the rung that is open.
#[derive(Clone, Copy)]
pub struct Rungs {
    pub guide: Guide,
    ladder: Memo<Option<Ladder>>,
    pub acting: Acting,
    /// The direction a person chose; else what is there to do decides.
    back: Draft,
    /// The part a person opened, by its id; empty: the next one.
    part: Draft,
    /// The name of an own part.
    name: Draft,
    /// What faced that way.
    what: Draft,
    way: Draft,
    place: Draft,
    /// A place is being typed.
    pub elsewhere: RwSignal<bool>,
    /// At assembly: whether it faces as found.
    pub faces: RwSignal<Option<usize>>,
    pub photo: PhotoDraft,
}

impl Rungs {
    /// The ladder of a job.
    pub fn of(guide: Guide) -> Rungs {
        let at = format!("job/{}/ladder", guide.of.id());
        let draft = |field| use_draft(&at, field);
        Rungs {
            guide,
            ladder: Memo::new(move |_| guide.look(|plan, log, _| ladder(plan, log))),
            acting: Acting::here(),
            back: draft("back"),
            part: draft("part"),
            name: draft("name"),
            what: draft("what"),
            way: draft("way"),
            place: draft("place"),
            elsewhere: RwSignal::new(false),
            faces: RwSignal::new(None),
            photo: PhotoDraft::here(),
        }
    }

    /// Looks at the ladder.
    pub fn look<T>(self, at: impl FnOnce(&Ladder) -> T) -> Option<T> {
        self.ladder.with(|ladder| ladder.as_ref().map(at))
    }

    /// Everything that is counted out and in.
    pub fn counts(self) -> Vec<CountView> {
        self.guide.look(|plan, log, _| counts(plan, log)).unwrap_or_default()
    }

    /// Whether parts go back: as chosen; else once nothing is left to strip.
    pub fn goes_back(self) -> bool {
        match self.back.text().as_str() {
            "" => self.look(Ladder::is_stripped).unwrap_or_default(),
            chosen => chosen == "yes",
        }
    }

    /// Turns the direction.
    pub fn turn(self, back: bool) {
        self.forget();
        self.back.set(if back { "yes" } else { "no" });
    }

    /// Whether a part of the person's own is being added.
    pub fn adds(self) -> bool {
        self.part.text() == OWN
    }

    /// The rung that is open: the one a person opened, else the next.
    pub fn open(self) -> Option<Rung> {
        let (part, back) = (self.part.text(), self.goes_back());
        self.look(|ladder| {
            let chosen = ladder.rungs.iter().find(|rung| rung.part == part);
            let next = if back { ladder.next_on() } else { ladder.next_off() };
            chosen.or_else(|| ladder.rungs.get(next?)).cloned()
        })
        .flatten()
    }

    /// Opens a rung; one that is out with what was said of it.
    pub fn choose(self, rung: &Rung) {
        self.forget();
        self.part.set(&rung.part);
        if rung.state == RungState::Out && !untrack(|| self.goes_back()) {
            self.what.set(&rung.facing);
            self.place.set(&rung.place);
        }
    }

    /// Begins a part of the person's own.
    pub fn add(self) {
        self.forget();
        self.part.set(OWN);
    }

    /// Forgets what is half typed.
    pub fn forget(self) {
        for draft in [self.part, self.name, self.what, self.way, self.place] {
            draft.clear();
        }
        self.elsewhere.set(false);
        self.faces.set(None);
        self.photo.clear();
        self.acting.forget();
    }

    /// The name of an own part, as typed.
    pub fn name(self) -> Draft {
        self.name
    }

    /// What faced that way, as typed.
    pub fn what(self) -> Text {
        self.what.into()
    }

    /// The place as typed.
    pub fn typed_place(self) -> Text {
        self.place.into()
    }

    /// The way chosen, as a place in [`Way::ALL`].
    pub fn way(self) -> Option<usize> {
        self.way.text().parse().ok()
    }

    /// Chooses a way.
    pub fn choose_way(self, at: usize) {
        self.way.set(&at.to_string());
    }

    /// Which way it faced, in words.
    pub fn facing(self) -> String {
        let way = self.way().and_then(|at| Way::ALL.get(at).copied());
        facing(&self.what.text(), way)
    }

    /// Where it can go, the likeliest first; where it lies comes before all.
    pub fn places(self) -> Vec<String> {
        let Some(rung) = self.open() else { return Vec::new() };
        let mut places = self.look(|ladder| ladder.places(&rung)).unwrap_or_default();
        if rung.state == RungState::Out && !self.adds() && !places.contains(&rung.place) {
            places.insert(0, rung.place);
        }
        places
    }

    /// Where it goes: as chosen or typed, else the likeliest.
    pub fn place(self) -> String {
        match self.place.text() {
            none if none.is_empty() && !self.elsewhere.get() => {
                self.places().into_iter().next().unwrap_or_default()
            }
            place => place,
        }
    }

    /// Writes facts of the job down; the open rung closes with it.
    pub fn record(self, facts: Vec<Guided>) {
        let book = BookId::Job(self.guide.of.id());
        let facts = facts.into_iter().map(|fact| (book.clone(), fact.into())).collect();
        let done = Box::new(move || self.forget());
        self.acting.record(facts, self.photo.taken(), done);
    }
}
