//! An invented unit, tin and job, so that practice and pages for builders have content.
//!
//! Nothing here is any maker's value: the unit, its limits, its shims and its readings are made up.

use measure::{Sign, Typed, Unit};

use crate::{
    ArmShaft, Book, BookId, Check, Fact, Field, FittedShim, Mesh, Slot, Stamp, read_fields,
};
use crate::{Sheet, record_found};

/// Name of the invented unit.
pub const UNIT: &str = "Demo unit 14/21, invented";

/// How the id of an invented unit or shim begins, so that it is told from a real one.
const INVENTED: &str = "invented-";

/// The id of an invented unit or shim.
pub(crate) fn invented(id: &str) -> String {
    format!("{INVENTED}{id}")
}

/// Whether a unit or shim of that id is invented.
pub(crate) fn is_invented(id: &str) -> bool {
    id.starts_with(INVENTED)
}

/// The invented books.
#[derive(Clone, Debug)]
pub struct Demo {
    /// The unit sheet.
    pub sheet: Book,
    /// The shim tin.
    pub tin: Book,
    /// The job, as found.
    pub job: Book,
}

/// What the demo writes down, act by act, each to be recorded in one transaction.
///
/// `sheet` and `job` are ids that were never used before, the sheet's gets "invented-" before it; `name` gives names for shims.
pub fn acts(sheet: &str, job: &str, mut name: impl FnMut() -> String) -> Vec<Vec<(BookId, Fact)>> {
    let sheet = invented(sheet);
    let sheet_book = BookId::Sheet(sheet.clone());
    let job_book = BookId::Job(job.to_owned());
    let mut acts = vec![
        with(&sheet_book, sheet_facts()),
        with(&BookId::Tin, shims(&mut name)),
        with(
            &job_book,
            vec![Fact::JobOpened {
                boat: "Demo boat, invented".to_owned(),
                complaint: "Whines ahead".to_owned(),
                sheet,
                number: 1,
            }],
        ),
    ];
    let opened = crate::Job { id: job.to_owned(), ..crate::Job::default() };
    let found = FOUND.map(|(slot, shims)| {
        let shims = shims.iter().filter_map(|text| mm(text)).map(FittedShim::Measured);
        record_found(&opened, slot, shims.collect())
    });
    acts.push(found.to_vec());
    acts.extend(READ.map(|(check, texts)| with(&job_book, vec![reading(check, texts)])));
    acts
}

/// The demo as books, the first act at `start` (milliseconds since 1970), five minutes apart.
pub fn books(start: i64) -> Demo {
    let mut count = 0;
    let name = || {
        count += 1;
        format!("shim-{count}")
    };
    let (sheet, job) = ("demo-sheet", "demo-job");
    let mut demo = Demo {
        sheet: Book::new(BookId::Sheet(invented(sheet))),
        tin: Book::new(BookId::Tin),
        job: Book::new(BookId::Job(job.to_owned())),
    };
    for (number, act) in (0i64..).zip(acts(sheet, job, name)) {
        let at = start.saturating_add(number * 300_000);
        let stamp = Stamp { device: "demo".to_owned(), at, act: format!("demo{number}") };
        for book in [&mut demo.sheet, &mut demo.tin, &mut demo.job] {
            let facts = act.iter().filter(|(id, _)| id == book.id()).map(|(_, fact)| fact.clone());
            // A test holds every fact of the demo to be admitted.
            if let Ok(entries) = book.next(facts.collect(), &stamp) {
                *book = book.clone().with(entries);
            }
        }
    }
    demo
}

/// Fields as typed, all in mm and degrees.
const TYPED: [(Field, &str); 23] = [
    (Field::PinionTeeth, "14"),
    (Field::Teeth(Mesh::Forward), "21"),
    (Field::Teeth(Mesh::Reverse), "21"),
    (Field::PinionRadius, "24.0"),
    (Field::PressureAngle, "20"),
    (Field::SpiralAngle, "35"),
    (Field::ArmRadius, "30.0"),
    (Field::ArmShaft, "driveshaft"),
    (Field::Low(Check::Depth), "0.62"),
    (Field::High(Check::Depth), "0.68"),
    (Field::Aim(Check::Depth), "0.65"),
    (Field::DepthSide, "mesh"),
    (Field::Source(Check::Depth), SOURCE),
    (Field::Low(Check::FORWARD), "0.20"),
    (Field::High(Check::FORWARD), "0.35"),
    (Field::Radius(Mesh::Forward), "22.0"),
    (Field::Shaft(Mesh::Forward), "driveshaft"),
    (Field::Source(Check::FORWARD), SOURCE),
    (Field::Low(Check::REVERSE), "0.30"),
    (Field::High(Check::REVERSE), "0.55"),
    (Field::Radius(Mesh::Reverse), "22.0"),
    (Field::Shaft(Mesh::Reverse), "driveshaft"),
    (Field::Source(Check::REVERSE), SOURCE),
];

const SOURCE: &str = "invented for the demo";

const FOUND: [(Slot, &[&str]); 3] =
    [(Slot::B1, &["0.50", "0.10"]), (Slot::B2, &["0.40", "0.15"]), (Slot::B3, &["0.30", "0.20"])];

const READ: [(Check, &[&str]); 3] = [
    (Check::Depth, &["0.71", "0.72", "0.71"]),
    (Check::FORWARD, &["0.45", "0.46", "0.44", "0.45"]),
    (Check::REVERSE, &["0.72", "0.71", "0.73", "0.72"]),
];

/// Family, the two places, what is marked.
const SHIMS: [(&str, &str, &str, &str); 12] = [
    ("driveshaft", "0.152", "0.154", "0.15"),
    ("driveshaft", "0.202", "0.202", "0.20"),
    ("driveshaft", "0.053", "0.053", "0.05"),
    ("driveshaft", "0.302", "0.302", "0.30"),
    ("forward race", "0.252", "0.252", "0.25"),
    ("forward race", "0.303", "0.301", "0.30"),
    ("forward race", "0.203", "0.203", "0.20"),
    ("forward race", "0.102", "0.102", "0.10"),
    ("reverse", "0.152", "0.152", "0.15"),
    ("reverse", "0.252", "0.252", "0.25"),
    ("reverse", "0.102", "0.104", "0.10"),
    ("reverse", "0.052", "0.052", "0.05"),
];

fn sheet_facts() -> Vec<Fact> {
    let mut facts = vec![Fact::SheetOpened { name: UNIT.to_owned(), layout: "b".to_owned() }];
    let typed = TYPED.map(|(field, text)| (field, text, Unit::Millimetre));
    facts.extend(read_fields(&Sheet::default(), &typed).unwrap_or_default());
    facts.push(Fact::VariantChosen { slot: Slot::B4, position: None });
    for slot in [Slot::B1, Slot::B2, Slot::B3] {
        let position = slot.tag().to_owned();
        facts.push(Fact::VariantChosen { slot, position: Some(position.clone()) });
        facts.push(Fact::SignConfirmed { position });
    }
    facts
}

fn shims(name: &mut impl FnMut() -> String) -> Vec<Fact> {
    let added = |(family, one, other, marked): (&str, &str, &str, &str)| {
        Some(Fact::ShimsAdded {
            shim: invented(&name()),
            family: family.to_owned(),
            places: [mm(one)?, mm(other)?],
            zero: mm("0.002")?,
            marked: mm(marked),
            count: 1,
        })
    };
    SHIMS.into_iter().filter_map(added).collect()
}

fn reading(check: Check, texts: &[&str]) -> Fact {
    let values = texts.iter().filter_map(|text| mm(text)).collect();
    let (arm, on) =
        if check.has_arm() { (mm("30.0"), Some(ArmShaft::Driveshaft)) } else { (None, None) };
    Fact::ReadingTaken { check, values, arm, on }
}

fn mm(text: &str) -> Option<Typed> {
    Typed::parse(text, Unit::Millimetre, Sign::NotNegative).ok()
}

fn with(book: &BookId, facts: Vec<Fact>) -> Vec<(BookId, Fact)> {
    facts.into_iter().map(|fact| (book.clone(), fact)).collect()
}
