//! The drawer, followed, and what is half typed about a tool.

use std::sync::Arc;
use words::{say, t};

use job::guide::pack_list;
use job::{BookId, Drawer, Guided, Tool};
use leptos::prelude::*;

use super::super::Guide;
use super::super::acting::Acting;
use crate::bench::use_bench;
use crate::device::now::fresh_id;
use crate::draft::{Draft, use_draft};

/// The draft of the open tool says this while one is added.
const NEW: &str = "new";

/// The drawer and the tool that is open.
#[derive(Clone, Copy)]
pub struct Drawing {
    guide: Option<Guide>,
    drawer: Memo<Arc<Drawer>>,
    pub acting: Acting,
    /// What is looked for.
    pub find: Draft,
    /// The tool a person opened, by its id.
    tool: Draft,
    /// A new tool: its name and its number.
    pub name: Draft,
    pub number: Draft,
    /// Another name of the open tool.
    pub other: Draft,
    /// A number that is wrong for it, and what is right.
    pub wrong: Draft,
    pub note: Draft,
}

impl Drawing {
    /// The drawer; with a job, the steps of its unit.
    pub fn of(guide: Option<Guide>) -> Drawing {
        let draft = |field| use_draft("tools", field);
        Drawing {
            guide,
            drawer: use_bench().drawer(),
            acting: Acting::here(),
            find: draft("find"),
            tool: draft("tool"),
            name: draft("name"),
            number: draft("number"),
            other: draft("other"),
            wrong: draft("wrong"),
            note: draft("note"),
        }
    }

    /// "12 tools".
    pub fn count(self) -> String {
        match self.drawer.with(|drawer| drawer.tools().count()) {
            0 => t("Empty").to_owned(),
            1 => t("1 tool").to_owned(),
            count => say!("{count} tools"),
        }
    }

    /// The tools that are found, each with what to mind; all where nothing is looked for.
    pub fn found(self) -> Vec<(Tool, String)> {
        let text = self.find.text();
        self.drawer.with(|drawer| match text.trim() {
            "" => drawer.tools().map(|tool| (tool.clone(), String::new())).collect(),
            text => {
                let found = drawer.search(text).into_iter();
                found.map(|found| (found.tool.clone(), found.minds)).collect()
            }
        })
    }

    /// The tool that is open.
    pub fn open(self) -> Option<Tool> {
        let id = self.tool.text();
        self.drawer.with(|drawer| drawer.tools().find(|tool| tool.id == id).cloned())
    }

    /// Whether a tool is being added.
    pub fn adds(self) -> bool {
        self.tool.text() == NEW
    }

    /// The steps of the job that ask for a tool.
    pub fn asked_in(self, tool: &Tool) -> Option<String> {
        let list = |plan: &_, log: &_, course: &_| {
            self.drawer.with(|drawer| pack_list(plan, course, log, drawer))
        };
        let list = self.guide?.look(list)?;
        let item = list.tools.iter().find(|item| item.tool.as_ref() == Some(&tool.id))?;
        Some(item.asked_in())
    }

    /// Opens a tool.
    pub fn choose(self, id: &str) {
        self.forget();
        self.tool.set(id);
    }

    /// Begins a new tool; what was looked for is its name.
    pub fn add(self) {
        self.forget();
        self.tool.set(NEW);
        self.name.set(&self.find.text_untracked());
    }

    /// Keeps the new tool.
    pub fn keep_new(self) {
        let tool = fresh_id();
        let (name, number) = (self.name.text_untracked(), self.number.text_untracked());
        let (name, number) = (name.trim().to_owned(), number.trim().to_owned());
        let done = move |tool: String| {
            self.find.clear();
            self.choose(&tool);
        };
        let id = tool.clone();
        self.record(Guided::ToolKept { tool, name, number }, Box::new(move || done(id)));
    }

    /// Keeps a correction of the open tool.
    pub fn keep_correction(self) {
        let Some(tool) = untrack(|| self.open()).map(|tool| tool.id) else { return };
        let (wrong, note) = (self.wrong.text_untracked(), self.note.text_untracked());
        let (wrong, note) = (wrong.trim().to_owned(), note.trim().to_owned());
        let done = Box::new(move || {
            self.wrong.clear();
            self.note.clear();
        });
        self.record(Guided::ToolCorrected { tool, wrong, note }, done);
    }

    /// Keeps another name of the open tool.
    pub fn keep_other(self) {
        let Some(tool) = untrack(|| self.open()).map(|tool| tool.id) else { return };
        let other = self.other.text_untracked().trim().to_owned();
        let done = Box::new(move || self.other.clear());
        self.record(Guided::ToolNamed { tool, other }, done);
    }

    /// The open tool is not in the drawer any more.
    pub fn gone(self) {
        let Some(tool) = untrack(|| self.open()).map(|tool| tool.id) else { return };
        let done = Box::new(move || self.forget());
        self.record(Guided::ToolGone { tool, why: String::new() }, done);
    }

    fn forget(self) {
        let drafts = [self.tool, self.name, self.number, self.other, self.wrong, self.note];
        drafts.into_iter().for_each(Draft::clear);
        self.acting.forget();
    }

    fn record(self, fact: Guided, then: Box<dyn FnOnce()>) {
        self.acting.record(vec![(BookId::Drawer, fact.into())], Vec::new(), then);
    }
}
