//! What goes into the van: from this unit's own steps, minus what the drawer holds.

use super::course::Course;
use super::log::GuideLog;
use crate::drawer::{Drawer, Tool};
use crate::guided::Readied;
use crate::procedure::Plan;

/// What goes into the van.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PackList {
    /// Tools the steps still to do ask for.
    pub tools: Vec<Item>,
    /// Consumables.
    pub consumables: Vec<Item>,
    /// Tools that are neither in the drawer, nor packed, lent or on order.
    pub short: usize,
    /// How many of all are packed or lent.
    pub packed: usize,
}

/// A tool or consumable on the list.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Item {
    /// Its name in the steps.
    pub name: String,
    /// The numbers of the steps that ask for it.
    pub steps: Vec<usize>,
    /// The tool of the drawer that serves, by its id.
    pub tool: Option<String>,
    /// What is written on it, and what is wrong about its numbers: "no. 31; 13 is wrong: …".
    pub says: String,
    /// What was done about it last, and from whom or where.
    pub readied: Option<(Readied, String)>,
    /// It is neither owned, packed, lent nor on order.
    pub short: bool,
    /// It is a tool, not something that is used up.
    pub is_tool: bool,
}

/// Works out the list.
pub fn pack_list(plan: &Plan, course: &Course, log: &GuideLog, drawer: &Drawer) -> PackList {
    let to_do: Vec<_> = plan
        .steps
        .iter()
        .zip(&course.steps)
        .filter(|(_, view)| !view.is_settled())
        .map(|(step, view)| (step, view.number))
        .collect();
    let tools = to_do.iter().map(|(step, number)| (*number, step.tools.as_slice()));
    let tools = items(tools, log, drawer, true);
    let consumables = to_do.iter().map(|(step, number)| (*number, step.consumables.as_slice()));
    let consumables = items(consumables, log, drawer, false);
    PackList {
        short: tools.iter().filter(|item| item.short).count(),
        packed: tools.iter().chain(&consumables).filter(|item| item.is_packed()).count(),
        tools,
        consumables,
    }
}

fn items<'a>(
    asked: impl Iterator<Item = (usize, &'a [String])>,
    log: &GuideLog,
    drawer: &Drawer,
    is_tool: bool,
) -> Vec<Item> {
    let mut items: Vec<Item> = Vec::new();
    for (number, names) in asked {
        for name in names {
            match items.iter_mut().find(|item| item.name == *name) {
                Some(item) => item.steps.push(number),
                None => items.push(item(name, number, log, drawer, is_tool)),
            }
        }
    }
    items
}

fn item(name: &str, step: usize, log: &GuideLog, drawer: &Drawer, is_tool: bool) -> Item {
    let readied = log.tools.get(name).filter(|(how, _)| *how != Readied::Unpacked).cloned();
    let tool = drawer.serves(name);
    Item {
        name: name.to_owned(),
        steps: vec![step],
        tool: tool.map(|tool| tool.id.clone()),
        says: tool.map(Tool::numbers).unwrap_or_default(),
        short: is_tool && tool.is_none() && readied.is_none(),
        readied,
        is_tool,
    }
}
