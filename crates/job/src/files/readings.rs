//! The readings of jobs as a table for a spreadsheet and as plain text.

use measure::{Quantity, Typed, Unit};
use words::say;

use super::table::{Cell, csv_line};
use crate::{ArmShaft, Book, Capture, Entry, Fact, FittedShim, Guided, Job, Sheet, Slot, clock};

/// The columns of the table. A column that was given once keeps its name and meaning; new ones
/// come behind.
const COLUMNS: [&str; 13] = [
    "job",
    "boat",
    "unit",
    "written",
    "device",
    "what",
    "kind",
    "place",
    "value",
    "value unit",
    "value mm",
    "arm mm",
    "arm on",
];

/// The readings of jobs as CSV (RFC 4180, UTF-8), a line for each value, numbers with a point.
///
/// `utc_offset` is minutes ahead of UTC. What was taken back is left out.
pub fn csv<'a>(jobs: impl IntoIterator<Item = (&'a Book, &'a Sheet)>, utc_offset: i32) -> String {
    let mut table = csv_line(&COLUMNS.map(Cell::text));
    for (book, sheet) in jobs {
        let job = Job::fold(book);
        for row in rows(book) {
            let what = [
                Cell::count(job.number as usize),
                Cell::text(&job.boat),
                Cell::text(&sheet.name),
                Cell::Text(clock::iso_minute(row.entry.at, utc_offset)),
                Cell::text(&row.entry.device),
            ];
            table.push_str(&csv_line(&[&what[..], &row.cells()].concat()));
        }
    }
    table
}

/// The readings of jobs as plain text, a line for each series.
pub fn text<'a>(jobs: impl IntoIterator<Item = (&'a Book, &'a Sheet)>, utc_offset: i32) -> String {
    let mut page = String::new();
    for (book, sheet) in jobs {
        let job = Job::fold(book);
        let plain = |text: &str| Cell::text(text).plain();
        let opened = clock::date(job.opened_at, utc_offset);
        let (boat, unit) = (plain(&job.boat), plain(&sheet.name));
        page.push_str(&say!("Job {}: {boat}. {unit}. Opened {opened}.\n", job.number));
        for entry in book.live() {
            let when = clock::iso_minute(entry.at, utc_offset);
            page.push_str(&format!("  {when}  {}\n", plain(&entry.sentence())));
        }
        page.push('\n');
    }
    page
}

/// One value of a series.
struct Row<'a> {
    entry: &'a Entry,
    what: String,
    kind: &'static str,
    place: usize,
    value: Value<'a>,
    arm: Option<&'a Typed>,
    on: Option<ArmShaft>,
}

enum Value<'a> {
    Typed(&'a Typed),
    Net(&'a FittedShim),
}

impl Row<'_> {
    fn cells(&self) -> Vec<Cell> {
        let nothing = || Cell::text("");
        let millimetres = |typed: &Typed| match typed.unit().quantity() {
            Quantity::Length => Cell::Number(typed.in_unit(Unit::Millimetre)),
            _ => nothing(),
        };
        let [value, unit, mm] = match self.value {
            Value::Typed(typed) => [
                Cell::Number(typed.amount().value),
                Cell::text(typed.unit().symbol()),
                millimetres(typed),
            ],
            Value::Net(shim) => {
                let net = Cell::Number(shim.net());
                [net.clone(), Cell::text(Unit::Millimetre.symbol()), net]
            }
        };
        let arm = self.arm.map_or_else(nothing, millimetres);
        let on = self.on.map_or_else(nothing, |on| Cell::text(on.id()));
        let what = Cell::text(&self.what);
        vec![what, Cell::text(self.kind), Cell::count(self.place), value, unit, mm, arm, on]
    }
}

/// The values of a job that count, in order.
fn rows(book: &Book) -> Vec<Row<'_>> {
    book.live().into_iter().flat_map(of_entry).collect()
}

fn of_entry(entry: &Entry) -> Vec<Row<'_>> {
    match &entry.fact {
        Fact::ReadingTaken { check, values, arm, on } => {
            let rows = numbered(entry, check.written().to_owned(), "reading", typed(values));
            rows.map(|row| Row { arm: arm.as_ref(), on: *on, ..row }).collect()
        }
        Fact::PackFitted { slot, shims, as_found } => {
            let kind = if *as_found { "shim as found" } else { "shim fitted" };
            numbered(entry, pack(*slot), kind, shims.iter().map(Value::Net)).collect()
        }
        Fact::Guided(Guided::Captured { label, value, .. }) => {
            let (kind, values) = match value {
                Capture::Readings(values) => ("captured", values),
                Capture::Pack(values) => ("shim measured", values),
                Capture::Torque { values, .. } => ("torque", values),
                _ => return Vec::new(),
            };
            numbered(entry, label.clone(), kind, typed(values)).collect()
        }
        _ => Vec::new(),
    }
}

fn typed(values: &[Typed]) -> impl Iterator<Item = Value<'_>> {
    values.iter().map(Value::Typed)
}

fn pack(slot: Slot) -> String {
    format!("pack {}", slot.tag())
}

fn numbered<'a>(
    entry: &'a Entry,
    what: String,
    kind: &'static str,
    values: impl Iterator<Item = Value<'a>>,
) -> impl Iterator<Item = Row<'a>> {
    values.enumerate().map(move |(at, value)| Row {
        entry,
        what: what.clone(),
        kind,
        place: at + 1,
        value,
        arm: None,
        on: None,
    })
}
