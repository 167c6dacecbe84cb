//! The pack list as the van is loaded: by what a tool is for, with the parts and the shims.

use words::{say, t};

use super::log::GuideLog;
use super::pack_list::{Item, PackList};
use crate::guided::{Readied, SHIMS_FOR, capitalised, item_words};
use crate::{Sheet, Tin, families};

/// What goes into the van, as it is looked for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Van {
    /// Tools that are not in the drawer: to have, to borrow, to order.
    pub not_owned: Vec<Item>,
    /// Everything else, by what it is for.
    pub groups: Vec<VanGroup>,
    /// How many of `not_owned` nothing was done about.
    pub short: usize,
    /// How many things there are.
    pub count: usize,
    /// How many are packed or lent.
    pub packed: usize,
    /// The first thing that can be packed now.
    pub next: Option<String>,
    /// What keeps "van packed" shut: one sentence each.
    pub to_do: Vec<String>,
    /// What the shims may lack: one sentence each.
    pub doubts: Vec<String>,
}

/// Things that are used for the same.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct VanGroup {
    /// What for: "Measure".
    pub name: &'static str,
    /// The things.
    pub items: Vec<Item>,
    /// How many of them are packed or lent.
    pub packed: usize,
}

/// What a tool is for, told by its name; the first that fits counts. Common practice, no source.
const KINDS: [(&str, &[&str]); 3] = [
    (
        "Measure",
        &[
            "gauge",
            "indicator",
            "micrometer",
            "calliper",
            "rule",
            "thermometer",
            "clamp",
            "scale",
            "surface plate",
            "straightedge",
            "V-blocks",
            "timer",
            "feeler",
            "jug",
            "fixture",
            "alignment bar",
        ],
    ),
    (
        "Safe and warm",
        &[
            "heat",
            "glasses",
            "fire",
            "freezer",
            "isolator",
            "lockout",
            "protection",
            "hoist",
            "stand",
            "tray",
            "lamp",
        ],
    ),
    (
        "Turn and pull",
        &[
            "socket",
            "wrench",
            "puller",
            "driver",
            "hammer",
            "bar",
            "keys",
            "spanner",
            "pliers",
            "press",
            "splitter",
            "punch",
            "adaptor",
            "screws",
            "holder",
            "sleeve",
            "hook",
            "pin",
            "tube",
            "bit",
            "plate",
            "offset tool",
            "chisel",
            "iron",
            "wedges",
            "block of wood",
        ],
    ),
];
const REST: &str = "Bench and hand";
const CONSUMABLES: &str = "Consumables";
const PARTS: &str = "Parts to order";
/// What the step data calls the shims to take along; the tin says which.
const ASSORTMENT: &str = "shim assortment";

/// Sorts a pack list for the van, with the shims of the tin and the parts that verdicts order.
pub fn van(list: &PackList, log: &GuideLog, sheet: &Sheet, tin: &Tin, orders: &[String]) -> Van {
    let (not_owned, owned): (Vec<Item>, Vec<Item>) =
        list.tools.iter().cloned().partition(|item| item.tool.is_none());
    let mut sorted: Vec<(&'static str, Vec<Item>)> = Vec::new();
    let names = KINDS.iter().map(|kind| kind.0).chain([REST, CONSUMABLES, PARTS]);
    sorted.extend(names.map(|name| (name, Vec::new())));
    let mut put = |name: &str, item: Item| {
        if let Some((_, items)) = sorted.iter_mut().find(|group| group.0 == name) {
            items.push(item);
        }
    };
    owned.into_iter().for_each(|item| put(kind(&item.name), item));
    let mut doubts = Vec::new();
    for item in &list.consumables {
        if item.name == ASSORTMENT {
            for (item, doubt) in shims(item, log, sheet, tin) {
                put(CONSUMABLES, item);
                doubts.extend(doubt);
            }
        } else {
            put(CONSUMABLES, item.clone());
        }
    }
    let mut ordered: Vec<&String> = Vec::new();
    for order in orders {
        if !ordered.contains(&order) {
            put(PARTS, thing(order, &[], String::new(), log));
            ordered.push(order);
        }
    }
    let groups = sorted.into_iter().filter(|(_, items)| !items.is_empty());
    let groups = groups.map(|(name, items)| {
        let packed = items.iter().filter(|item| item.is_packed()).count();
        VanGroup { name, items, packed }
    });
    told(not_owned, groups.collect(), doubts)
}

fn told(not_owned: Vec<Item>, groups: Vec<VanGroup>, doubts: Vec<String>) -> Van {
    let all = || not_owned.iter().chain(groups.iter().flat_map(|group| &group.items));
    let to_do = all().filter_map(Item::to_do).collect();
    let can_go = |item: &&Item| !item.is_packed() && (item.tool.is_some() || !item.is_tool);
    Van {
        short: not_owned.iter().filter(|item| item.short).count(),
        count: all().count(),
        packed: all().filter(|item| item.is_packed()).count(),
        next: all().find(can_go).map(|item| item.name.clone()),
        to_do,
        doubts,
        not_owned,
        groups,
    }
}

fn kind(name: &str) -> &'static str {
    let fits = |words: &[&str]| words.iter().any(|word| name.contains(word));
    KINDS.iter().find(|kind| fits(kind.1)).map_or(REST, |kind| kind.0)
}

fn thing(name: &str, steps: &[usize], says: String, log: &GuideLog) -> Item {
    let readied = log.tools.get(name).filter(|(how, _)| *how != Readied::Unpacked).cloned();
    let (name, steps) = (name.to_owned(), steps.to_vec());
    Item { name, steps, tool: None, says, readied, short: false, is_tool: false }
}

/// The shims to take along for each pack of the unit, and what they may lack.
fn shims(asked: &Item, log: &GuideLog, sheet: &Sheet, tin: &Tin) -> Vec<(Item, Option<String>)> {
    let stock = tin.stock();
    let positions = sheet.positions();
    let takes = |family: &crate::Family| {
        let own = positions.iter().filter(|position| position.family == family.name);
        own.map(|position| position.slot.tag()).collect::<Vec<_>>()
    };
    let line = |family: crate::Family| {
        let sizes = stock.iter().filter(|line| line.family == family.name).count();
        let tags = takes(&family);
        let tag = tags.first()?;
        let says = match sizes {
            0 => t("none in the tin").to_owned(),
            1 => t("1 size in the tin").to_owned(),
            sizes => say!("{sizes} sizes in the tin"),
        };
        let doubt = match sizes {
            0 => Some(say!("None for {tag} in the tin. Take some, or the pack cannot change.")),
            1 => Some(say!(
                "{tag} has one size only. Take a second size, or the pack may not close."
            )),
            _ => None,
        };
        let name = format!("{SHIMS_FOR}{}", joined(&tags));
        Some((thing(&name, &asked.steps, says, log), doubt))
    };
    families([sheet], tin).into_iter().filter_map(line).collect()
}

/// "B1, B3", each tag once.
fn joined(tags: &[&str]) -> String {
    let mut once: Vec<&str> = Vec::new();
    for tag in tags {
        if !once.contains(tag) {
            once.push(tag);
        }
    }
    once.join(", ")
}

impl Item {
    /// What it is, as it is shown.
    pub fn words(&self) -> String {
        item_words(&self.name)
    }

    /// It is in the van, or somebody lends it.
    pub fn is_packed(&self) -> bool {
        matches!(self.readied, Some((Readied::Packed | Readied::Borrowed, _)))
    }

    /// "steps 13, 39"; empty where no step asks for it.
    pub fn asked_in(&self) -> String {
        let numbers: Vec<String> = self.steps.iter().map(usize::to_string).collect();
        match self.steps.as_slice() {
            [] => String::new(),
            [one] => say!("step {one}"),
            _ => say!("steps {numbers}", numbers = numbers.join(", ")),
        }
    }

    /// What is still to be done about it, in a sentence.
    fn to_do(&self) -> Option<String> {
        let name = capitalised(&self.words());
        match &self.readied {
            Some((Readied::Packed, _)) => None,
            Some((Readied::Borrowed, from)) if from.trim().is_empty() => {
                Some(say!("{name}: say who lends it."))
            }
            Some((Readied::Borrowed, _)) => None,
            Some((Readied::Ordered, _)) => Some(say!("{name}: on order.")),
            _ if self.short => Some(say!("{name}: have, borrow or order it.")),
            _ => Some(say!("{name}: not packed.")),
        }
    }
}
