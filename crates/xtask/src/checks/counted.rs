//! Reading counts out of what test runners print.

use std::process::Command;

use crate::report::Group;
use crate::run;

/// How a runner reports its counts.
#[derive(Debug, Clone, Copy)]
pub enum Dialect {
    /// `test result: ok. 12 passed; 0 failed; …`, once for each binary.
    Cargo,
    /// `# pass 12` and `# fail 0`, once at the end.
    Tap,
}

/// Runs the tests and counts them. A runner that stops without counting a failure is one failure.
pub fn counted(name: &str, command: &mut Command, dialect: Dialect) -> Group {
    let mut group = Group { name: name.to_owned(), ..Group::default() };
    let outcome = run::watched(command, |line| {
        let (passed, failed) = read(line, dialect);
        group.passed += passed;
        group.failed += failed;
    });
    if let Err(sentence) = &outcome {
        eprintln!("{sentence}");
    }
    if outcome != Ok(true) && group.failed == 0 {
        group.failed = 1;
    }
    group
}

fn read(line: &str, dialect: Dialect) -> (u32, u32) {
    match dialect {
        Dialect::Cargo if line.starts_with("test result:") => {
            (number_before(line, " passed"), number_before(line, " failed"))
        }
        Dialect::Cargo => (0, 0),
        Dialect::Tap => {
            let after = |mark| line.strip_prefix(mark).and_then(|rest| rest.trim().parse().ok());
            (after("# pass ").unwrap_or(0), after("# fail ").unwrap_or(0))
        }
    }
}

fn number_before(line: &str, word: &str) -> u32 {
    let before = line.split(word).next().unwrap_or_default();
    before.rsplit(' ').next().and_then(|digits| digits.parse().ok()).unwrap_or(0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn both_dialects_are_read() {
        let cargo = "test result: FAILED. 12 passed; 3 failed; 1 ignored; 0 measured";
        assert_eq!(read(cargo, Dialect::Cargo), (12, 3));
        assert_eq!(read("test passes ... ok", Dialect::Cargo), (0, 0));
        assert_eq!(read("# pass 7", Dialect::Tap), (7, 0));
        assert_eq!(read("# fail 2", Dialect::Tap), (0, 2));
    }

    #[test]
    fn a_runner_that_breaks_is_a_failure() {
        let group = counted("broken", &mut Command::new("false"), Dialect::Cargo);
        assert_eq!((group.passed, group.failed), (0, 1));
    }
}
