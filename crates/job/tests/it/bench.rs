//! A bench for the tests: four books and short ways to write in them.

use job::*;
use measure::{Decimal, Sign, Typed, Unit};

/// 10:00 UTC on 12 May 2026.
pub const TEN: i64 = 1_778_580_000_000;
pub const MINUTE: i64 = 60_000;

pub struct Bench {
    pub sheet: Book,
    pub tin: Book,
    pub job: Book,
    pub drawer: Book,
    pub at: i64,
    acts: u32,
}

impl Bench {
    pub fn new() -> Bench {
        Bench {
            sheet: Book::new(BookId::Sheet("s".into())),
            tin: Book::new(BookId::Tin),
            job: Book::new(BookId::Job("j".into())),
            drawer: Book::new(BookId::Drawer),
            at: TEN,
            acts: 0,
        }
    }

    pub fn demo() -> Bench {
        let demo::Demo { sheet, tin, job } = demo::books(TEN);
        let drawer = Book::new(BookId::Drawer);
        Bench { sheet, tin, job, drawer, at: TEN + 60 * MINUTE, acts: 0 }
    }

    /// Records an act, all or nothing, a minute after the last.
    pub fn record(&mut self, facts: Vec<(BookId, Fact)>) -> Result<(), Refusal> {
        self.acts += 1;
        self.at += MINUTE;
        let stamp = Stamp { device: "d".into(), at: self.at, act: format!("t{}", self.acts) };
        let mut written = Vec::new();
        for book in [&self.sheet, &self.tin, &self.job, &self.drawer] {
            let own = facts.iter().filter(|(id, _)| id == book.id()).map(|(_, fact)| fact.clone());
            written.push(book.next(own.collect(), &stamp)?);
        }
        let books = [&mut self.sheet, &mut self.tin, &mut self.job, &mut self.drawer];
        for (book, entries) in books.into_iter().zip(written) {
            *book = book.clone().with(entries);
        }
        Ok(())
    }

    pub fn state(&self) -> (Job, Sheet, Tin) {
        (Job::fold(&self.job), Sheet::fold(&self.sheet), Tin::fold(&self.tin))
    }

    pub fn setup(&self) -> SetUp {
        let (job, sheet, tin) = self.state();
        setup(&job, &sheet, &tin, Shown::default())
    }

    pub fn preview(&self, check: Check, texts: &[&str]) -> Preview {
        let (job, sheet, tin) = self.state();
        preview((&job, &sheet, &tin), check, texts, Unit::Millimetre, None, Shown::default())
    }

    /// Types a series and presses the blue button.
    pub fn read(&mut self, check: Check, texts: &[&str]) {
        let fact = self.preview(check, texts).fact.expect("a full series");
        self.record(vec![(self.job.id().clone(), fact)]).unwrap();
    }

    /// Fits the packs that the advice changes.
    pub fn fit_advice(&mut self) {
        let advice = self.setup().advice;
        let packs: Vec<_> = advice
            .packs
            .iter()
            .filter(|pack| pack.act == PackAct::Fit)
            .map(|pack| (pack.slot, pack.shims.iter().map(|shim| shim.shim.clone()).collect()))
            .collect();
        self.fit(&packs).unwrap();
    }

    pub fn fit(&mut self, packs: &[(Slot, Vec<FittedShim>)]) -> Result<(), Refusal> {
        let (job, sheet, tin) = self.state();
        let mut names = 0;
        let act = self.acts;
        let name = || {
            names += 1;
            format!("out-{act}-{names}")
        };
        self.record(fit(&job, &sheet, &tin, packs, name))
    }

    /// Types fields of the sheet in mm.
    pub fn type_fields(&mut self, typed: &[(Field, &str)]) {
        let typed: Vec<_> =
            typed.iter().map(|(field, text)| (*field, *text, Unit::Millimetre)).collect();
        let facts = read_fields(&Sheet::fold(&self.sheet), &typed).unwrap();
        let id = self.sheet.id().clone();
        self.record(facts.into_iter().map(|fact| (id.clone(), fact)).collect()).unwrap();
    }

    pub fn check(&self, check: Check) -> CheckView {
        self.setup().checks.into_iter().find(|view| view.check == check).unwrap()
    }
}

pub fn mm(text: &str) -> Typed {
    Typed::parse(text, Unit::Millimetre, Sign::Any).unwrap()
}

pub fn dec(text: &str) -> Decimal {
    text.parse().unwrap()
}

/// Rounded to `places`, as a text.
pub fn shown(value: Decimal, places: u32) -> String {
    measure::show(value, places, measure::Mark::Point)
}
