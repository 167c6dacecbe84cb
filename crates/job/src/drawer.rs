//! The tool drawer: its book folded. One tool can have several numbers, and a printed one can be
//! wrong.

use std::collections::BTreeMap;
use words::say;

use crate::{Book, Fact, Guided};

/// The tools a person owns.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Drawer {
    tools: BTreeMap<String, Tool>,
}

/// A tool in the drawer.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Tool {
    /// Its id.
    pub id: String,
    /// What the steps call it.
    pub name: String,
    /// What is written on it; may be empty.
    pub number: String,
    /// Other names and numbers it goes by.
    pub others: Vec<String>,
    /// Numbers that are wrong for it, each with what is right.
    pub corrections: Vec<(String, String)>,
    /// It is in the drawer; one that is gone is still found.
    pub here: bool,
}

/// A tool found, and why.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Found<'a> {
    /// The tool.
    pub tool: &'a Tool,
    /// What to mind: "13 is wrong: does not enter the spline, 31 fits." Empty where nothing is.
    pub minds: String,
}

impl Drawer {
    /// Folds a book. Total: what does not belong in the drawer is passed over.
    pub fn fold(book: &Book) -> Drawer {
        let mut drawer = Drawer::default();
        for entry in book.live() {
            if let Fact::Guided(fact) = &entry.fact {
                drawer.take(fact);
            }
        }
        drawer
    }

    fn take(&mut self, fact: &Guided) {
        match fact {
            Guided::ToolKept { tool, name, number } => {
                let kept = self.tool_mut(tool);
                kept.name.clone_from(name);
                kept.number.clone_from(number);
                kept.here = true;
            }
            Guided::ToolNamed { tool, other } => {
                let kept = self.tool_mut(tool);
                if !kept.others.contains(other) {
                    kept.others.push(other.clone());
                }
            }
            Guided::ToolCorrected { tool, wrong, note } => {
                let kept = self.tool_mut(tool);
                kept.corrections.retain(|(other, _)| other != wrong);
                kept.corrections.push((wrong.clone(), note.clone()));
            }
            Guided::ToolGone { tool, .. } => self.tool_mut(tool).here = false,
            _ => {}
        }
    }

    fn tool_mut(&mut self, id: &str) -> &mut Tool {
        let tool = self.tools.entry(id.to_owned()).or_default();
        id.clone_into(&mut tool.id);
        tool
    }

    /// The tools in the drawer.
    pub fn tools(&self) -> impl Iterator<Item = &Tool> {
        self.tools.values().filter(|tool| tool.here)
    }

    /// The tool that serves what a step asks for: by its name or another it goes by.
    pub fn serves(&self, name: &str) -> Option<&Tool> {
        self.tools().find(|tool| {
            same(&tool.name, name) || tool.others.iter().any(|other| same(other, name))
        })
    }

    /// Every tool that any part of a name or number fits, also by a number that is wrong for it.
    pub fn search(&self, text: &str) -> Vec<Found<'_>> {
        let wanted = text.trim().to_lowercase();
        if wanted.is_empty() {
            return Vec::new();
        }
        let fits = |text: &str| text.to_lowercase().contains(&wanted);
        self.tools()
            .filter_map(|tool| {
                let wrong = tool.corrections.iter().find(|(wrong, _)| fits(wrong));
                let known = fits(&tool.name) || fits(&tool.number);
                let found = known || tool.others.iter().any(|other| fits(other)) || wrong.is_some();
                let minds = wrong.map(|(wrong, note)| sentence(wrong, note)).unwrap_or_default();
                found.then_some(Found { tool, minds })
            })
            .collect()
    }
}

impl Tool {
    /// Its number and what is wrong about others: "no. 31; 13 is wrong: does not fit."
    pub(crate) fn numbers(&self) -> String {
        let number = Some(&self.number).filter(|number| !number.trim().is_empty());
        let number = number.map(|number| say!("no. {number}"));
        let wrong = self.corrections.iter().map(|(wrong, note)| sentence(wrong, note));
        number.into_iter().chain(wrong).collect::<Vec<_>>().join("; ")
    }
}

fn sentence(wrong: &str, note: &str) -> String {
    say!("{wrong} is wrong: {}.", note.trim().trim_end_matches('.'))
}

fn same(one: &str, other: &str) -> bool {
    one.trim().to_lowercase() == other.trim().to_lowercase()
}
