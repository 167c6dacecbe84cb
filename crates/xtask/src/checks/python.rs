//! Checks in Python against packages from outside: they run where their packages are installed, each
//! check in an environment of its own, and say what to type where not.

use std::path::{Path, PathBuf};
use std::process::Command;

use super::counted::{Dialect, counted};
use crate::paths;
use crate::report::Report;
use crate::run;
use crate::setup::Tools;

/// Succeeds if every package of a lock file is there in its version.
const ALL_THERE: &str = "
import sys, importlib.metadata as installed
for line in open(sys.argv[1]):
    name, _, version = line.split('#')[0].split(';')[0].strip(' \\\\\\n').partition('==')
    if version and installed.version(name) != version.split()[0]:
        sys.exit(1)
";

/// Runs `tests/FOLDER/check.py`, which prints `# pass N` and `# fail N`.
pub fn check(tools: &Tools, report: &mut Report, name: &str, folder: &str, arguments: &[&Path]) {
    super::heading(name);
    let lock = format!("tests/{folder}/requirements.lock");
    let python = environment(folder).join("bin/python");
    if !all_there(&python, &paths::root().join(&lock)) {
        println!(
            "Not run: it needs the packages of {lock}. To run it from now on, type:\n\
             python3 -m venv target/python/{folder}\n\
             target/python/{folder}/bin/pip install -r {lock}"
        );
        report.not_run(name);
        return;
    }
    let script = format!("tests/{folder}/check.py");
    let mut command = tools.command(&python.to_string_lossy(), &["-B", &script]);
    report.add(counted(name, command.args(arguments), Dialect::Tap));
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
