//! What is asked, and what is ticked, typed and drawn of the answer before it is kept.

use job::guide::{Asked, ConsentRefusal, EXCLUDED, STOPS, asked, effects, inspection};
use job::{Agreement, Answered, BookId, Guided, Signature};
use leptos::prelude::*;
use words::t;

use super::super::Guide;
use super::super::acting::Acting;
use super::super::criteria::criteria;
use crate::device::now::now;
use crate::draft::{Draft, use_draft};
use crate::page::lead_to;
use crate::parts::{Says, Text};

/// The consent and what is half done of it.
#[derive(Clone, Copy)]
pub struct Consenting {
    pub guide: Guide,
    pub acting: Acting,
    asked: Memo<Asked>,
    pub by: Draft,
    pub price: Draft,
    pub limit: Draft,
    pub initials: Draft,
    /// Work that no list offers.
    pub more: Draft,
    /// Why the answer is no.
    pub why_not: Draft,
    /// A no was not kept: what it lacks is said at its field.
    no_lacks: RwSignal<bool>,
    /// It is asked for once more though nothing changed.
    again: Draft,
    how: Draft,
    excluded: Draft,
    /// What is not covered was typed over, maybe with nothing.
    own_words: RwSignal<bool>,
    /// Lines that stand the other way than they began, one a line.
    turned: Draft,
    drawn: Draft,
    pub strokes: RwSignal<Signature>,
}

impl Consenting {
    /// The consent of a job, with what was left half done.
    pub fn of(guide: Guide) -> Consenting {
        let at = format!("job/{}/consent", guide.of.id());
        let draft = |field| use_draft(&at, field);
        let criteria = criteria();
        let drawn = draft("drawn");
        let look = move |_: Option<&_>| {
            let criteria = criteria.get();
            let asked = guide.look(|plan, log, _| {
                asked(plan, log, &effects(&inspection(&criteria, plan, log), plan))
            });
            asked.unwrap_or_default()
        };
        Consenting {
            guide,
            acting: Acting::here(),
            asked: Memo::new(look),
            by: draft("by"),
            price: draft("price"),
            limit: draft("limit"),
            initials: draft("initials"),
            more: draft("more"),
            why_not: draft("why-not"),
            no_lacks: RwSignal::new(false),
            again: draft("again"),
            how: draft("how"),
            excluded: draft("excluded"),
            own_words: RwSignal::new(false),
            turned: draft("turned"),
            strokes: RwSignal::new(Signature::of(&drawn.text_untracked())),
            drawn,
        }
    }

    /// Looks at what is asked; followed.
    pub fn look<T>(self, at: impl FnOnce(&Asked) -> T) -> T {
        self.asked.with(at)
    }

    /// Whether the form is open; followed.
    pub fn is_open(self) -> bool {
        self.look(|asked| !asked.settled) || !self.again.text().is_empty()
    }

    /// Asks once more though nothing changed.
    pub fn ask_again(self) {
        self.again.set("yes");
    }

    /// Whether a line is ticked; `before`: how it began. Followed.
    pub fn ticked(self, line: &str, before: bool) -> bool {
        self.turned.text().lines().any(|other| other == line) != before
    }

    /// Turns a line.
    pub fn turn(self, line: &str) {
        let text = self.turned.text_untracked();
        let mut lines: Vec<&str> = text.lines().filter(|other| *other != line).collect();
        if lines.len() == text.lines().count() {
            lines.push(line);
        }
        self.turned.set(&lines.join("\n"));
    }

    /// What is not covered, as it stands in its field.
    pub fn excluded(self) -> Text {
        let text = move || match self.excluded.text() {
            text if text.is_empty() && !self.own_words.get() => t(EXCLUDED).to_owned(),
            text => text,
        };
        let set = move |text: String| {
            self.own_words.set(true);
            self.excluded.set(&text);
        };
        Text::new(Signal::derive(text), Callback::new(set))
    }

    /// The place of how the answer came; followed.
    pub fn how(self) -> usize {
        self.how.text().parse().unwrap_or_default()
    }

    /// Whether it was given here; followed.
    pub fn is_here(self) -> bool {
        Answered::ALL.get(self.how()) == Some(&Answered::Here)
    }

    /// Says how the answer came.
    pub fn choose(self, at: usize) {
        self.how.set(&at.to_string());
    }

    /// Keeps what is drawn over a reload.
    pub fn hold(self) {
        self.drawn.set(&self.strokes.with_untracked(Signature::text));
    }

    /// Takes the drawing away.
    pub fn sign_again(self) {
        self.strokes.set(Signature::default());
        self.drawn.clear();
    }

    /// The answer as it stands; followed.
    pub fn given(self) -> Agreement {
        let more = self.more.text().trim().to_owned();
        let offered = self.look(|asked| asked.work.clone());
        let ticked = |(line, before): &(String, bool)| self.ticked(line, *before);
        let (work, declined): (Vec<_>, Vec<_>) = offered.into_iter().partition(ticked);
        let lines = |rows: Vec<(String, bool)>| rows.into_iter().map(|row| row.0);
        let here = self.is_here();
        let stops = STOPS.iter().filter(|stop| self.ticked(stop, true));
        Agreement {
            step: String::new(),
            by: self.by.text(),
            how: Answered::ALL.get(self.how()).copied().unwrap_or_default(),
            work: lines(work).chain((!more.is_empty()).then_some(more)).collect(),
            declined: lines(declined).collect(),
            price: self.price.text(),
            limit: self.limit.text(),
            stops: stops.map(|stop| (*stop).to_owned()).collect(),
            excluded: self.excluded().get(),
            initials: self.initials.text(),
            drawn: if here { self.strokes.get() } else { Signature::default() },
        }
    }

    /// What is missing before it can be kept; followed.
    pub fn lacks(self) -> Vec<ConsentRefusal> {
        self.look(|asked| asked.lacks(&self.given()))
    }

    /// Keeps a yes.
    pub fn agree(self) {
        self.keep(untrack(|| self.look(|asked| asked.agree(self.given(), now()))));
    }

    /// Keeps a no.
    pub fn refuse(self) {
        let why = self.why_not.text_untracked();
        let no = untrack(|| self.look(|asked| asked.refuse(&self.given(), &why)));
        match no {
            Ok(fact) => self.keep(Ok(vec![fact])),
            Err(lacks) => {
                self.no_lacks.set(true);
                lead_to(field(lacks));
            }
        }
    }

    /// What a no lacks of this field; followed.
    pub fn says(self, at: &'static str) -> Signal<Option<Says>> {
        Signal::derive(move || {
            let no = || self.look(|asked| asked.refuse(&self.given(), ""));
            let lacks = self.no_lacks.get().then(no)?.err()?;
            (field(lacks) == at).then(|| Says::Refused(lacks.to_string()))
        })
    }

    fn keep(self, facts: Result<Vec<Guided>, ConsentRefusal>) {
        let facts = match facts {
            Ok(facts) => facts,
            Err(why) => return self.acting.refuse(why.to_string()),
        };
        let agreed = facts.iter().any(|fact| matches!(fact, Guided::ConsentSigned(_)));
        let book = BookId::Job(self.guide.of.id());
        let facts = facts.into_iter().map(|fact| (book.clone(), fact.into())).collect();
        // A no is rarely the last word: what was offered stays for the next call.
        let done: &[Draft] = if agreed { &self.drafts() } else { &[self.why_not] };
        let forgets: Vec<_> = done.iter().copied().map(Draft::forgets).collect();
        let then = move || {
            self.no_lacks.try_set(false);
            forgets.into_iter().for_each(|forget| forget());
            if agreed {
                self.strokes.try_set(Signature::default());
                self.own_words.try_set(false);
            }
        };
        self.acting.record(facts, Vec::new(), Box::new(then));
    }

    fn drafts(self) -> [Draft; 11] {
        [
            self.by,
            self.price,
            self.limit,
            self.initials,
            self.more,
            self.why_not,
            self.again,
            self.how,
            self.excluded,
            self.turned,
            self.drawn,
        ]
    }
}

/// Where that is typed, ticked or drawn.
pub fn field(lacks: ConsentRefusal) -> &'static str {
    match lacks {
        ConsentRefusal::NoWork => "work",
        ConsentRefusal::NoPrice => "price",
        ConsentRefusal::NothingExcluded => "excluded",
        ConsentRefusal::NoLimit => "limit",
        ConsentRefusal::NoStops => "stops",
        ConsentRefusal::NoName => "by",
        ConsentRefusal::NotSigned
        | ConsentRefusal::OnlyADot
        | ConsentRefusal::NotLetters
        | ConsentRefusal::NobodyTookIt => "initials",
    }
}
