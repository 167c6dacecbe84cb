//! Counting what passed and what failed.

use crate::run::Outcome;

/// One kind of check with its counts.
#[derive(Debug, Default)]
pub struct Group {
    pub name: String,
    pub passed: u32,
    pub failed: u32,
}

/// All groups of one run, in order.
#[derive(Debug, Default)]
pub struct Report {
    groups: Vec<Group>,
    not_run: Vec<String>,
}

impl Report {
    pub fn add(&mut self, group: Group) {
        self.groups.push(group);
    }

    /// Adds a check that either holds or does not; what it says is shown at once.
    pub fn check(&mut self, name: &str, outcome: Outcome) {
        if let Err(sentence) = &outcome {
            eprintln!("\n{sentence}\n");
        }
        let failed = u32::from(outcome.is_err());
        self.add(Group { name: name.to_owned(), passed: 1 - failed, failed });
    }

    /// Notes a check that could not run here, so that its silence is not taken for a pass.
    pub fn not_run(&mut self, name: &str) {
        self.not_run.push(name.to_owned());
    }

    /// Prints the table and, as the last line, the totals; any failure is a failure, with all of it
    /// said already.
    pub fn finish(self) -> Outcome {
        println!("\n{:>7} {:>7}", "passed", "failed");
        for group in &self.groups {
            println!("{:>7} {:>7}  {}", group.passed, group.failed, group.name);
        }
        for name in &self.not_run {
            println!("{:>15}  {name}", "not run");
        }
        let passed: u32 = self.groups.iter().map(|group| group.passed).sum();
        let failed: u32 = self.groups.iter().map(|group| group.failed).sum();
        let stands = failed == 0 && passed > 0;
        if !stands {
            println!("\nLook for the first failure above.");
        }
        println!("\n{passed} passed, {failed} failed");
        if stands { Ok(()) } else { Err(String::new()) }
    }
}
