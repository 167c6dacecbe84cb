//! Checks in Python against packages from outside, each in an environment of its own that is made on
//! the first run.

use std::path::{Path, PathBuf};
use std::process::Command;

use super::counted::{Dialect, counted};
use crate::paths;
use crate::report::Report;
use crate::run::{self, Outcome};
use crate::setup::Tools;

/// Succeeds if every package of a lock file is there in its version.
const ALL_THERE: &str = "
import sys, importlib.metadata as installed
for line in open(sys.argv[1]):
    name, _, version = line.split('#')[0].split(';')[0].strip(' \\\\\\n').partition('==')
    if version and installed.version(name) != version.split()[0]:
        sys.exit(1)
";

/// What becomes of a check whose packages cannot be installed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Needed {
    /// It is counted as not run.
    IfThere,
    /// It has failed.
    Always,
}

/// Runs `tests/FOLDER/check.py`, which prints `# pass N` and `# fail N`, installing its packages first
/// where they are missing.
pub fn check(
    tools: &Tools,
    report: &mut Report,
    (name, folder): (&str, &str),
    command: &Path,
    needed: Needed,
) {
    super::heading(name);
    let python = match (install(folder), needed) {
        (Ok(python), _) => python,
        (Err(sentence), Needed::Always) => return report.check(name, Err(sentence)),
        (Err(sentence), Needed::IfThere) => {
            println!("{sentence}");
            return report.not_run(name);
        }
    };
    let script = format!("tests/{folder}/check.py");
    let mut run = tools.command(&python.to_string_lossy(), &["-B", &script]);
    report.add(counted(name, run.arg(command), Dialect::Tap));
}

/// The Python of a check, with every package of its lock file.
fn install(folder: &str) -> Outcome<PathBuf> {
    let lock = paths::root().join(format!("tests/{folder}/requirements.lock"));
    let environment = environment(folder);
    let python = environment.join("bin/python");
    if all_there(&python, &lock) {
        return Ok(python);
    }
    println!("Installing the packages of {} into {} …", lock.display(), environment.display());
    let mut make = Command::new("python3");
    let mut fetch = Command::new(&python);
    let packages = ["-m", "pip", "install", "--quiet", "--disable-pip-version-check", "-r"];
    run::succeed(make.args(["-m", "venv"]).arg(&environment))
        .and_then(|()| run::succeed(fetch.args(packages).arg(&lock)))
        .map_err(|sentence| {
            format!(
                "Not run: {sentence} It needs Python 3.11 or newer with venv, and a package index to \
                 install {} from. Once both are there, run the same command again.",
                lock.display()
            )
        })?;
    Ok(python)
}

/// The folder of a check's Python environment.
fn environment(folder: &str) -> PathBuf {
    paths::target().join("python").join(folder)
}

fn all_there(python: &Path, lock: &Path) -> bool {
    run::answer(Command::new(python).args(["-c", ALL_THERE]).arg(lock)).is_some()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_python_that_is_not_there_has_no_packages() {
        assert!(!all_there(Path::new("no-such-python"), Path::new("no-such-lock")));
    }
}
