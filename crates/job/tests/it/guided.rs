//! A hand for the tests of the guided job: does steps as a mechanic would.

use job::guide::*;
use job::procedure::{Act, NEWEST, Plan, Procedure, Record, RecordKind, Scope};
use job::*;
use measure::{Sign, Typed, Unit};

use crate::bench::Bench;
use crate::procedures;

pub struct Hand {
    pub bench: Bench,
    pub procedure: Procedure,
    pub scope: Scope,
    pub told: Vec<Told>,
}

pub fn typed(text: &str, unit: Unit) -> Typed {
    Typed::parse(text, unit, Sign::Any).unwrap()
}

pub fn pack(texts: &[&str]) -> Capture {
    pack_shims(texts, None).unwrap()
}

pub fn readings(texts: &[&str], unit: Unit) -> Capture {
    Capture::Readings(texts.iter().map(|text| typed(text, unit)).collect())
}

impl Hand {
    /// A layout (b) job, opened.
    pub fn new(scope: Scope) -> Hand {
        let mut bench = Bench::new();
        let opened = Fact::JobOpened {
            boat: "Invented".into(),
            complaint: "Whines ahead".into(),
            sheet: "s".into(),
            number: 1,
        };
        let job = bench.job.id().clone();
        bench.record(vec![(job, opened)]).unwrap();
        let mut hand = Hand::on(bench, scope);
        hand.write(Guided::ProcedurePinned { layout: "b".into(), revision: NEWEST });
        hand.write(Guided::ScopeChosen { scope, reason: String::new() });
        hand
    }

    /// The job of a bench.
    pub fn on(bench: Bench, scope: Scope) -> Hand {
        Hand { bench, procedure: procedures::procedure("b"), scope, told: Vec::new() }
    }

    pub fn write(&mut self, fact: Guided) {
        self.write_all(vec![fact]);
    }

    /// One act with several facts.
    pub fn write_all(&mut self, facts: Vec<Guided>) {
        let job = self.bench.job.id();
        let facts = facts.into_iter().map(|fact| (job.clone(), fact.into())).collect();
        self.bench.record(facts).unwrap();
    }

    pub fn log(&self) -> GuideLog {
        Job::fold(&self.bench.job).guide
    }

    pub fn plan(&self) -> Plan {
        Plan::of(&self.procedure, self.scope, &Sheet::fold(&self.bench.sheet).changes)
    }

    /// Now, on the bench's own device.
    pub fn moment(&self) -> Moment {
        Moment { now: self.bench.at, utc_offset: 0, device: "d".into() }
    }

    pub fn course(&self) -> Course {
        Course::of(&self.plan(), &self.log(), &self.told, &self.moment())
    }

    pub fn state(&self, step: &str) -> StepState {
        self.course().step(step).unwrap().state.clone()
    }

    pub fn missing(&self, step: &str) -> Vec<String> {
        self.course().step(step).unwrap().gate.clone().unwrap().missing
    }

    pub fn capture(&mut self, step: &str, label: &str, value: Capture) {
        let (step, label) = (step.to_owned(), label.to_owned());
        self.write(Guided::Captured { step, label, value });
    }

    /// Captures what a step asks for and is not captured yet, as if all were well.
    pub fn capture_all(&mut self, step: &str) {
        let plan = self.plan();
        let planned = plan.step(step).unwrap().clone();
        let at = self.bench.at;
        let to_capture = self.course().step(step).unwrap().to_capture.clone();
        let facts = to_capture.into_iter().map(|label| {
            let value = usual(planned.record(&label).unwrap(), at);
            Guided::Captured { step: step.to_owned(), label, value }
        });
        self.write_all(facts.collect());
    }

    /// Bags what comes off, ticks what goes on, captures the rest, judges the gate, closes the step.
    pub fn finish(&mut self, step: &str) -> Result<(), GuideRefusal> {
        let planned = self.plan().step(step).unwrap().clone();
        for part in planned.parts_of(Act::Off) {
            let fact = bag(&self.log(), step, part, "bag 1", "as it lay", Some("p".into()));
            // Opened again, a step does not take its parts off twice.
            if let Ok(fact) = fact {
                self.write(fact);
            }
        }
        self.capture_all(step);
        let packs = ladder(&self.plan(), &self.log()).rungs.into_iter();
        for pack in packs.filter(|rung| rung.step == step && rung.pack.is_some()) {
            let place = pack.pack.clone().unwrap_or_default();
            if let Ok(fact) = bag(&self.log(), step, &pack.part, &place, "", Some("p".into())) {
                self.write(fact);
            }
        }
        if self.course().finish(step).is_err_and(|why| matches!(why, GuideRefusal::Asks { .. })) {
            let (step, by) = (step.to_owned(), "JK".to_owned());
            self.write(Guided::GateJudged { step, passed: true, by, reason: String::new() });
        }
        let done = self.course().finish(step)?;
        let rungs = ladder(&self.plan(), &self.log()).rungs.into_iter();
        for rung in rungs.filter(|rung| rung.back_in.as_deref() == Some(step)) {
            if let Some(number) = rung.number {
                self.write(Guided::PartFitted { number });
            }
        }
        self.write(done);
        Ok(())
    }

    /// Does the proposed step until `step` is the next, or all is done.
    pub fn work_to(&mut self, step: &str) {
        while let Some(next) = self.next() {
            if next == step {
                return;
            }
            self.finish(&next).unwrap_or_else(|why| panic!("{next}: {why}"));
        }
    }

    pub fn next(&self) -> Option<String> {
        let course = self.course();
        Some(course.steps[course.next?].id.clone())
    }
}

/// What a record gets where all is well: the same number every time, so that counts and packs agree.
fn usual(record: &Record, at: i64) -> Capture {
    let values = record.wanted().unwrap_or(2);
    match record.kind {
        RecordKind::Measure => {
            Capture::Readings((0..values).map(|_| typed("18", record.unit().unwrap())).collect())
        }
        RecordKind::Torque => Capture::Torque {
            values: vec![typed("95", Unit::NewtonMetre); values],
            asked: Some(typed("100", Unit::NewtonMetre)),
            offset: Some(typed("40", Unit::Millimetre)),
            set: Some(typed("95", Unit::NewtonMetre)),
            on: Some(TorqueOn::Dry),
        },
        RecordKind::Pack => pack(&["0.40", "0.05"]),
        RecordKind::Choice => {
            let opens = record.choices.iter().find(|choice| !choice.shuts).unwrap();
            Capture::Chosen(vec![opens.word.clone(); values])
        }
        RecordKind::Sign => Capture::SignSeen,
        RecordKind::Photo => Capture::Photo("p".into()),
        RecordKind::Orientation => Capture::Facing { words: "as found".into(), photo: None },
        RecordKind::Text => Capture::Text("MR".into()),
        RecordKind::Time => Capture::Time(at),
    }
}
