//! The van list, followed, and what is done about a thing on it.

use job::guide::{Item, Van, effects, inspection, pack_list, van};
use job::{BookId, Fact, Guided, Readied};
use leptos::prelude::*;

use super::super::Guide;
use super::super::acting::Acting;
use super::super::criteria::criteria;
use crate::bench::use_bench;
use crate::device::now::fresh_id;

/// The van list of a job.
#[derive(Clone, Copy)]
pub struct Loading {
    pub guide: Guide,
    van: Memo<Option<Van>>,
    pub acting: Acting,
}

impl Loading {
    /// The list of a job.
    pub fn of(guide: Guide) -> Loading {
        let (criteria, drawer) = (criteria(), use_bench().drawer());
        let load = move |_: Option<&_>| {
            let (criteria, drawer) = (criteria.get(), drawer.get());
            let load = |plan: &_, log: &_, course: &_| {
                let list = pack_list(plan, course, log, &drawer);
                let orders = effects(&inspection(&criteria, plan, log), plan).orders;
                guide.of.look(|(_, sheet, tin), _| van(&list, log, sheet, tin, &orders))
            };
            guide.look(load).flatten()
        };
        Loading { guide, van: Memo::new(load), acting: Acting::here() }
    }

    /// Looks at the list.
    pub fn look<T>(self, at: impl FnOnce(&Van) -> T) -> Option<T> {
        self.van.with(|van| van.as_ref().map(at))
    }

    /// Writes down what was done about a thing.
    pub fn ready(self, tool: &str, how: Readied, from: &str) {
        let (tool, from) = (tool.to_owned(), from.to_owned());
        let fact = Guided::ToolReadied { tool, how, from };
        self.record(vec![(BookId::Job(self.guide.of.id()), fact.into())]);
    }

    /// The tools of these names lie in the drawer.
    pub fn own(self, items: &[Item]) {
        let kept = items.iter().map(|item| {
            let (tool, name) = (fresh_id(), item.name.clone());
            let fact = Guided::ToolKept { tool, name, number: String::new() };
            (BookId::Drawer, fact.into())
        });
        self.record(kept.collect());
    }

    fn record(self, facts: Vec<(BookId, Fact)>) {
        self.acting.record(facts, Vec::new(), Box::new(|| ()));
    }
}
