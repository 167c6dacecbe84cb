//! Lines for an invoice, from the steps that were really done. No prices.

use measure::{Decimal, Mark, Typed, Unit, round, show};
use words::{say, t};

use crate::figure::with_unit;
use crate::files::{Cell, csv_line, plain};
use crate::guided::{Capture, PartVerdict};
use crate::owner::last;
use crate::procedure::{Plan, Step};
use crate::{Figure, Job, Record, Shown};

/// What a line is of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum InvoiceKind {
    /// Labour of a stage.
    Time,
    /// A new part.
    Part,
    /// Something used up.
    Consumable,
}

/// A line of an invoice, without its price.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct InvoiceLine {
    /// What it is of.
    pub kind: InvoiceKind,
    /// "Strip", "New seals".
    pub what: String,
    /// How much, where that was written down.
    pub quantity: Option<Decimal>,
    /// Of what: "min", "pcs", "ml"; may be empty.
    pub unit: &'static str,
    /// What it stands on: "12 steps done"; may be empty.
    pub note: String,
}

/// What stands under the lines.
pub const INVOICE_SAYS: &str = "Minutes are what the steps that were done usually take one \
     practised person, waits left out. Write your own time over them. No prices are in here.";

/// Consumables of the steps that are new parts and no stuff.
const PARTS: [&str; 12] = [
    "new seals",
    "O-rings",
    "gaskets",
    "impeller kit",
    "anodes",
    "plug washers",
    "new pinion nut",
    "new pair nut",
    "new yoke nut",
    "new lock tab or wire",
    "new sleeves",
    "prop lock washer or cotter",
];
/// The columns of the table; a name that was given once keeps its meaning.
const COLUMNS: [&str; 6] = ["job", "kind", "what", "quantity", "unit", "note"];

impl InvoiceKind {
    /// Its word in the table.
    pub fn word(self) -> &'static str {
        match self {
            InvoiceKind::Time => "time",
            InvoiceKind::Part => "part",
            InvoiceKind::Consumable => "consumable",
        }
    }
}

/// The lines: time by stage, parts, consumables; empty where no step was done.
pub fn invoice(job: &Job, record: &Record, plan: Option<&Plan>, shown: Shown) -> Vec<InvoiceLine> {
    let is_done = |id: &str| job.guide.steps.get(id).is_some_and(|step| step.done.is_some());
    let steps = plan.iter().flat_map(|plan| &plan.steps).filter(|step| is_done(&step.id));
    let steps: Vec<&Step> = steps.collect();
    let mut lines = times(&steps);
    lines.extend(parts(record, shown));
    lines.extend(used(job, &steps, shown.units.volume));
    lines
}

/// As text, to be copied.
pub fn invoice_text(record: &Record, lines: &[InvoiceLine], mark: Mark) -> String {
    let (boat, unit) = (plain(&record.boat), plain(&record.unit));
    let mut text = say!("Job {number}: {boat}. {unit}.", number = record.number) + "\n";
    for line in lines {
        text.push_str(&format!("- {}\n", plain(&line.says(mark))));
    }
    text + t(INVOICE_SAYS) + "\n"
}

/// As CSV (RFC 4180, UTF-8), numbers with a point; no cell starts a formula.
pub fn invoice_csv(record: &Record, lines: &[InvoiceLine]) -> String {
    let mut table = csv_line(&COLUMNS.map(Cell::text));
    for line in lines {
        table.push_str(&csv_line(&[
            Cell::count(record.number as usize),
            Cell::text(line.kind.word()),
            Cell::text(&line.what),
            line.quantity.map_or_else(|| Cell::text(""), Cell::Number),
            Cell::text(line.unit),
            Cell::text(&line.note),
        ]));
    }
    table
}

impl InvoiceLine {
    /// "Strip: 105 min, 12 steps done".
    pub fn says(&self, mark: Mark) -> String {
        let quantity = self.amount(mark);
        let rest: Vec<&str> =
            [quantity.as_str(), &self.note].into_iter().filter(|it| !it.is_empty()).collect();
        match rest.is_empty() {
            true => self.what.clone(),
            false => format!("{}: {}", self.what, rest.join(", ")),
        }
    }

    /// "105 min"; empty where it was not written down.
    pub fn amount(&self, mark: Mark) -> String {
        let amount = self.quantity.map(|quantity| {
            let quantity = quantity.normalize();
            format!("{} {}", show(quantity, quantity.scale(), mark), self.unit)
        });
        amount.unwrap_or_default()
    }
}

/// Labour of the steps done, stage by stage in the order of work.
fn times(steps: &[&Step]) -> Vec<InvoiceLine> {
    let mut stages: Vec<(&str, u32, u32)> = Vec::new();
    for step in steps {
        let name = step.phase.stage();
        match stages.iter_mut().find(|stage| stage.0 == name) {
            Some(stage) => {
                stage.1 += 1;
                stage.2 += step.minutes;
            }
            None => stages.push((name, 1, step.minutes)),
        }
    }
    let line = |(name, count, minutes): (&str, u32, u32)| InvoiceLine {
        kind: InvoiceKind::Time,
        what: name.to_owned(),
        quantity: Some(minutes.into()),
        unit: "min",
        note: match count {
            1 => t("1 step done").to_owned(),
            _ => say!("{count} steps done"),
        },
    };
    stages.into_iter().map(line).collect()
}

/// Parts that were rejected, and shims of packs that are not as they were found.
fn parts(record: &Record, shown: Shown) -> Vec<InvoiceLine> {
    let rejected = record.parts.iter().filter(|part| part.verdict == PartVerdict::Reject);
    let rejected = rejected.map(|part| InvoiceLine {
        kind: InvoiceKind::Part,
        what: part.name.clone(),
        quantity: None,
        unit: "",
        note: match part.reason.trim() {
            "" => t("rejected").to_owned(),
            reason => say!("rejected: {reason}"),
        },
    });
    let changed =
        record.packs.iter().filter(|pack| !pack.left.is_empty() && pack.left != pack.found);
    let shims = changed.map(|pack| InvoiceLine {
        kind: InvoiceKind::Part,
        what: say!("Shims in pack {pack}", pack = pack.position.id),
        quantity: Some(Decimal::from(pack.left.len())),
        unit: "pcs",
        note: say!("{total} together", total = with_unit(pack.total, Figure::Shim, shown)),
    });
    rejected.chain(shims).collect()
}

/// New parts and stuff that the steps done use, parts first, each once.
fn used(job: &Job, steps: &[&Step], unit: Unit) -> Vec<InvoiceLine> {
    let mut words: Vec<&str> = Vec::new();
    for word in steps.iter().flat_map(|step| &step.consumables) {
        if !words.contains(&word.as_str()) {
            words.push(word);
        }
    }
    let is_part = |word: &&str| PARTS.contains(word);
    let (parts, stuff): (Vec<&str>, Vec<&str>) = words.into_iter().partition(is_part);
    let line = |kind, word: &str| {
        let quantity = (word == "gear lube").then(|| volume(job, unit)).flatten();
        InvoiceLine {
            kind,
            what: crate::guided::labelled(word),
            unit: if quantity.is_some() { unit.symbol() } else { "" },
            quantity,
            note: String::new(),
        }
    };
    let parts = parts.into_iter().map(|word| line(InvoiceKind::Part, word));
    parts.chain(stuff.into_iter().map(|word| line(InvoiceKind::Consumable, word))).collect()
}

/// How much lube went in; in another unit than the one typed to a tenth.
fn volume(job: &Job, unit: Unit) -> Option<Decimal> {
    let Capture::Readings(values) = &last(job, "volume in")?.value else { return None };
    let in_unit = |value: &Typed| match value.unit() == unit {
        true => value.amount().value,
        false => round(value.in_unit(unit), 1),
    };
    Some(values.iter().map(in_unit).sum())
}
